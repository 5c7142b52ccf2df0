/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Springs at work on a corner: against textbook figures, against splines and roots by
 * GSL, and against statics, which knows forces and no ratios. */

#include "check-data.h"
#include "spring-fixture.h"

#include "kernel/statics.h"

#include <gsl/gsl_spline.h>
#include <string.h>

#define N_CASES 200
#define SEED 5150u

/* What the corner feels with the wheel at @travel. */
static SpringStation
station_at (const Car *car, const CarSprings *springs, double travel)
{
  const MeasuredCorner measured = car_measured_corner (car);
  const Corner corner = check_assemble (&measured, (Adjustment){ 0 });
  g_autoptr (SpringLaw) law = spring_law_new (car, springs);
  SpringStation station;
  Pose pose;

  g_assert_cmpint (pose_at_travel (&corner, travel, 0.0, NULL, &pose), ==, POSE_OK);
  spring_law_station (law, &corner, &pose, &station);
  return station;
}

static double
strut_length_of_p (void)
{
  return vec3_distance (set_p.at[POINT_UPPER_MOUNT], set_p.at[POINT_STRUT_FOOT]);
}

/* On the strut's own axis from foot to mount, squashed by @squash as measured. */
static CarCoil
coil_on_p (double rate, double squash)
{
  return (CarCoil){ .is_there = TRUE,
                    .rate_n_per_mm = rate,
                    .free_length_mm = strut_length_of_p () + squash };
}

/* Two springs around each other, the inner 10 mm shorter; 100 N squash the outer one by
 * 20 mm: 60 N and 40 N. Data and method: open textbook companion to a text on strength of
 * materials, problem 8.8. */
static void
test_nested_springs (void)
{
  g_autoptr (Car) car = fixture_car_of (&set_p);
  CarSprings springs = car_springs_none ();

  springs.coil = coil_on_p (0.0, 20.0);
  springs.coil.wire_mm = 3.0;
  springs.coil.mean_diameter_mm = 30.0;
  springs.coil.active_coils = 10.0;
  springs.coil.shear_modulus_gpa = 80.0;
  springs.helper = (CarHelper){ .is_there = TRUE,
                                .place = HELPER_IN_PARALLEL,
                                .rate_n_per_mm = 4.0,
                                .free_length_mm = strut_length_of_p () + 10.0 };
  const SpringStation s = station_at (car, &springs, 0.0);

  check_near ("outer", 0, s.coil_force, 60.0, 1e-9);
  check_near ("inner", 0, s.helper_force, 40.0, 1e-9);
  check_near ("both at the wheel", 0, s.load, 100.0 * s.paths.strut.ratio, 1e-9);
}

static CarSprings
series_on_p (double coil_rate, double helper_rate, double squash)
{
  CarSprings springs = car_springs_none ();

  springs.coil = coil_on_p (coil_rate, squash);
  springs.coil.free_length_mm -= 60.0;
  springs.helper = (CarHelper){ .is_there = TRUE,
                                .rate_n_per_mm = helper_rate,
                                .free_length_mm = 60.0,
                                .solid_length_mm = 20.0 };
  return springs;
}

/* 20 and 15 N/mm: in series 60/7, in parallel 35; by definition. */
static void
test_series_and_parallel (void)
{
  g_autoptr (Car) car = fixture_car_of (&set_p);
  CarSprings springs = series_on_p (20.0, 15.0, 50.0);
  SpringStation s = station_at (car, &springs, 0.0);
  const double ratio = s.paths.strut.ratio;

  check_near ("series force", 0, s.coil_force, 50.0 * 60.0 / 7.0, 1e-9);
  check_near ("series rate", 0, (s.rate - s.geometric_rate) / ratio / ratio, 60.0 / 7.0,
              1e-9);
  check_near ("helper's squash", 0, 60.0 - s.helper_length, 50.0 * 4.0 / 7.0, 1e-9);
  check_near ("both lengths", 0, s.coil_length + s.helper_length, strut_length_of_p (),
              1e-9);
  springs.coil = coil_on_p (20.0, 50.0);
  springs.helper.place = HELPER_IN_PARALLEL;
  springs.helper.free_length_mm = strut_length_of_p () + 10.0;
  s = station_at (car, &springs, 0.0);
  check_near ("parallel rate", 0, (s.rate - s.geometric_rate) / ratio / ratio, 35.0,
              1e-9);
}

/* 40 mm of helper at 15 N/mm close under 600 N, which take 30 mm of a coil of 20 N/mm. */
static void
test_helper_closes (void)
{
  g_autoptr (Car) car = fixture_car_of (&set_p);

  for (double squash = 66.0; squash <= 74.0; squash += 1.0) {
    const CarSprings springs = series_on_p (20.0, 15.0, squash);
    const SpringStation s = station_at (car, &springs, 0.0);
    const gboolean is_closed = squash >= 70.0;

    check_near ("force", squash, s.coil_force,
                is_closed ? 20.0 * (squash - 40.0) : squash * 60.0 / 7.0, 1e-9);
    check_near ("helper's rate", squash, s.helper_rate_n_per_mm, is_closed ? 0.0 : 15.0,
                0.0);
  }
}

/* One of the two so stiff that only the other gives. */
static void
test_series_limits (void)
{
  g_autoptr (Car) car = fixture_car_of (&set_p);
  const CarSprings stiff = series_on_p (20.0, 2e10, 50.0);
  const CarSprings soft = series_on_p (2e10, 15.0, 30.0);

  check_near ("coil alone", 0, station_at (car, &stiff, 0.0).coil_force, 1000.0, 1e-4);
  check_near ("helper alone", 0, station_at (car, &soft, 0.0).coil_force, 450.0, 1e-4);
}

static void
test_coil_only_pushes (void)
{
  g_autoptr (Car) car = fixture_car_of (&set_p);
  CarSprings springs = car_springs_none ();

  springs.coil = coil_on_p (20.0, -1.0);
  const SpringStation s = station_at (car, &springs, 0.0);

  g_assert_cmpfloat (s.coil_force, ==, 0.0);
  g_assert_cmpfloat (s.load, ==, 0.0);
  g_assert_cmpfloat (s.rate, ==, 0.0);
}

/* The strut can go no further: no load is claimed. */
static void
test_gap_past_solid (void)
{
  g_autoptr (Car) car = fixture_car_of (&set_p);
  CarSprings springs = car_springs_none ();

  springs.coil = coil_on_p (20.0, 100.0);
  springs.coil.solid_length_mm = strut_length_of_p () - 1e-6;
  g_assert_true (isfinite (station_at (car, &springs, 0.0).load));
  springs.coil.solid_length_mm = strut_length_of_p () + 1e-6;
  g_assert_true (isnan (station_at (car, &springs, 0.0).load));
  springs.coil.solid_length_mm = 0.0;
  springs.droop_stop_mm = 30.0;
  g_assert_true (isfinite (station_at (car, &springs, -29.9).load));
  g_assert_true (isnan (station_at (car, &springs, -30.1).load));
}

/* Through its points, between them as GSL's own spline has it, and straight on. */
static void
test_progressive_coil (void)
{
  const double points[][2] = { { 30, 300 }, { 80, 1000 }, { 120, 2400 } };
  const double x[] = { 0, 30, 80, 120 }, y[] = { 0, 300, 1000, 2400 };
  g_autoptr (Car) car = fixture_car_of (&set_p);
  gsl_spline *spline = gsl_spline_alloc (gsl_interp_steffen, 4);
  CarSprings springs = car_springs_none ();

  gsl_spline_init (spline, x, y, 4);
  for (double squash = 5.0; squash <= 160.0; squash += 5.0) {
    const double inside = MIN (squash, 120.0);
    const double slope = gsl_spline_eval_deriv (spline, inside, NULL);

    springs.coil = coil_on_p (0.0, squash);
    springs.coil.table = fixture_table (3, points);
    const SpringStation s = station_at (car, &springs, 0.0);
    const double ratio = s.paths.coil.ratio;

    check_near ("force", squash, s.coil_force,
                gsl_spline_eval (spline, inside, NULL) + slope * (squash - inside), 1e-9);
    check_near ("rate", squash, (s.rate - s.geometric_rate) / ratio / ratio, slope, 1e-9);
  }
  gsl_spline_free (spline);
}

/* A progressive coil under a helper: both forces alike, both squashes together. */
static void
test_progressive_series (void)
{
  const double points[][2] = { { 30, 300 }, { 80, 1000 }, { 120, 2400 } };
  g_autoptr (Car) car = fixture_car_of (&set_p);

  for (double squash = 1.0; squash <= 150.0; squash += 1.0) {
    CarSprings springs = series_on_p (0.0, 15.0, squash), alone = car_springs_none ();

    springs.coil.table = fixture_table (3, points);
    const SpringStation s = station_at (car, &springs, 0.0);
    const double coil_squash = springs.coil.free_length_mm - s.coil_length;

    check_near ("sum", squash, coil_squash + 60.0 - s.helper_length, squash, 1e-9);
    if (s.helper_rate_n_per_mm > 0.0)
      check_near ("helper", squash, 15.0 * (60.0 - s.helper_length), s.coil_force, 1e-8);
    else
      check_near ("helper", squash, s.helper_length, 20.0, 1e-9);
    alone.coil = coil_on_p (0.0, coil_squash);
    alone.coil.table = springs.coil.table;
    check_near ("coil", squash, station_at (car, &alone, 0.0).coil_force, s.coil_force,
                1e-8);
  }
}

static void
test_absent_parts_change_nothing (void)
{
  Dice dice = { SEED };

  for (int i = 0; i < N_CASES; i++) {
    const RandomCase c = dice_case (&dice);
    g_autoptr (Car) car = fixture_car_of (&c.measured);
    CarSprings springs = dice_springs (&dice, car);

    springs.helper = (CarHelper){ 0 };
    springs.bump_stop = (CarBumpStop){ 0 };
    const SpringStation without = station_at (car, &springs, c.travel);

    springs.helper =
        (CarHelper){ .is_there = TRUE,
                     .place = i % 2 == 0 ? HELPER_IN_SERIES : HELPER_IN_PARALLEL,
                     .free_length_mm = 700.0,
                     .perch_mm = 40.0 };
    springs.bump_stop = (CarBumpStop){ .is_there = TRUE, .gap_mm = -50.0 };
    springs.anti_roll_bar.is_there = TRUE;
    const SpringStation with = station_at (car, &springs, c.travel);

    g_assert_cmpmem (&without, sizeof without, &with, sizeof with);
  }
}

/* Torsion of round bars: rate with the fourth power. */
static void
test_double_bar (void)
{
  g_autoptr (Car) car = fixture_car_of (&set_p);
  CarSprings springs = car_springs_none ();

  springs.bar.is_there = TRUE;
  springs.bar.n_sections = 1;
  springs.bar.sections[0].outer_mm = 20.0;
  springs.bar.sections[0].length_mm = 600.0;
  springs.bar.shear_modulus_gpa = 80.0;
  springs.bar.clamp_angle_deg = 5.0;
  const SpringStation thin = station_at (car, &springs, 10.0);

  g_autoptr (SpringLaw) law = spring_law_new (car, &springs);
  check_near ("π d⁴ G/(32 L)", 0, spring_law_bar_rate (law), 2094395.1, 0.05);
  springs.bar.sections[0].outer_mm = 40.0;
  const SpringStation thick = station_at (car, &springs, 10.0);

  check_near ("load", 0, thick.load, 16.0 * thin.load, 1e-9 * thick.load);
  check_near ("rate", 0, thick.rate, 16.0 * thin.rate, 1e-9 * thick.rate);
}

/* Statics, given what coil, bar and strut push, asks the strut for nothing else where the
 * contact load is the one that the ratios say. */
static void
test_virtual_work (void)
{
  Dice dice = { SEED };
  int n_checked = 0;

  for (int i = 0; i < N_CASES; i++) {
    const RandomCase c = dice_case (&dice);
    g_autoptr (Car) car = fixture_car_of (&c.measured);
    car->body.unsprung_corner_kg = dice_between (&dice, 0.0, 50.0);
    const CarSprings springs = dice_springs (&dice, car);
    g_autoptr (SpringLaw) law = spring_law_new (car, &springs);
    const Corner corner = check_assemble (&c.measured, c.adjustment);
    SpringStation s;
    Pose pose;
    JointForces forces;

    g_assert_cmpint (pose_at_travel (&corner, c.travel, 0.0, NULL, &pose), ==, POSE_OK);
    spring_law_station (law, &corner, &pose, &s);
    if (isnan (s.load))
      continue;
    const double weight = car->body.unsprung_corner_kg * SPRING_GRAVITY;
    const CornerLoad load = { .contact = { 0, 0, s.load }, .wheel_centre.z = -weight };
    const SpringHold hold = { .found = CARRIED_BY_STRUT,
                              .coil = s.coil_force,
                              .torque = s.bar_torque,
                              .coil_top = corner.upper_mount,
                              .coil_direction = s.paths.coil_direction };

    g_assert_true (joint_forces (&corner, &pose, &load, &hold, &forces));
    check_near ("strut", i, forces.strut, s.strut_force, 1e-9 * MAX (s.load, 1000.0));
    n_checked++;
  }
  g_assert_cmpint (n_checked, >, N_CASES / 2);
}

static void
test_damper (void)
{
  const double points[][2] = {
    { -0.3, -900 }, { -0.1, -500 }, { 0.1, 250 }, { 0.3, 500 }
  };
  g_autoptr (Car) car = fixture_car_of (&set_p);
  CarSprings springs = car_springs_none ();

  springs.damper.table = fixture_table (4, points);
  g_autoptr (SpringLaw) law = spring_law_new (car, &springs);

  for (gsize i = 0; i < G_N_ELEMENTS (points); i++)
    check_near ("force", points[i][0], spring_law_damping (law, points[i][0]),
                points[i][1], 1e-9);
  g_assert_cmpfloat (spring_law_damping (law, 0.0), ==, 0.0);
  check_near ("straight on", 1, spring_law_damping (law, 0.4),
              500 + 0.1 * spring_law_damping_rate (law, 0.3), 1e-9);
}

/* G J/(L a²) of a bar of Ø 20 that twists over 600 mm, at an arm of 200 mm, by the rate
 * of the same bar above. */
static void
test_anti_roll_bar (void)
{
  g_autoptr (Car) car = fixture_car_of (&set_p);
  CarSprings springs = car_springs_none ();

  springs.anti_roll_bar = (CarAntiRollBar){ .is_there = TRUE,
                                            .diameter_mm = 20.0,
                                            .length_mm = 600.0,
                                            .arm_mm = 200.0,
                                            .shear_modulus_gpa = 80.0 };
  g_autoptr (SpringLaw) law = spring_law_new (car, &springs);

  check_near ("rate", 0, spring_law_link_rate (law), 2094395.1 / 4e4, 1e-6);
  g_assert_cmpfloat (station_at (car, &springs, 20.0).load, ==, 0.0);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/spring-law/nested-springs", test_nested_springs);
  g_test_add_func ("/spring-law/series-and-parallel", test_series_and_parallel);
  g_test_add_func ("/spring-law/helper-closes", test_helper_closes);
  g_test_add_func ("/spring-law/series-limits", test_series_limits);
  g_test_add_func ("/spring-law/coil-only-pushes", test_coil_only_pushes);
  g_test_add_func ("/spring-law/gap-past-solid", test_gap_past_solid);
  g_test_add_func ("/spring-law/progressive-coil", test_progressive_coil);
  g_test_add_func ("/spring-law/progressive-series", test_progressive_series);
  g_test_add_func ("/spring-law/absent-parts-change-nothing",
                   test_absent_parts_change_nothing);
  g_test_add_func ("/spring-law/double-bar", test_double_bar);
  g_test_add_func ("/spring-law/virtual-work", test_virtual_work);
  g_test_add_func ("/spring-law/damper", test_damper);
  g_test_add_func ("/spring-law/anti-roll-bar", test_anti_roll_bar);
  return g_test_run ();
}
