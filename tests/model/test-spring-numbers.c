/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Numbers of a corner on its springs: against worked figures, against hand calculation,
 * and against the body rolled wheel by wheel. */

#include "check-data.h"
#include "spring-fixture.h"

#include <gsl/gsl_deriv.h>

#define N_CASES 15
#define SEED 77101u

/* The forum's worked front corner (eng-tips, May 2013): wheel rate 75 357 N/m, with the
 * tyre 60 922 N/m, 2.22 Hz; Barton & Fieldhouse, Automotive Chassis Engineering, p. 209,
 * whose two-mass answer is 1.25 Hz; static deflections of 50 to 250 mm by √(g/δ)/(2π)
 * (Gillespie, Fundamentals of Vehicle Dynamics, ch. 5, from memory). */
static void
test_frequencies (void)
{
  const double wheel = 140.101 * 0.7334 * 0.7334;
  const double tyre = 1.0 / (1.0 / wheel + 1.0 / 318.030);
  const double deflections[][2] = {
    { 50, 2.2289 }, { 100, 1.5761 }, { 150, 1.2869 }, { 200, 1.1145 }, { 250, 0.9968 }
  };

  check_near ("wheel rate", 0, 1000.0 * wheel, 75357, 0.5);
  check_near ("with the tyre", 0, 1000.0 * tyre, 60922, 0.5);
  check_near ("forum", 0, ride_frequency (tyre, 312.0), 2.22, 0.005);
  check_near ("quarter car", 0, ride_frequency (1.0 / (1.0 / 22.0 + 1.0 / 192.0), 317.5),
              1.25488, 5e-6);
  for (gsize i = 0; i < G_N_ELEMENTS (deflections); i++)
    check_near ("deflection", deflections[i][0],
                ride_frequency (250.0 * SPRING_GRAVITY / deflections[i][0], 250.0),
                deflections[i][1], 5e-5);
  check_near ("critical", 0, damping_ratio (2.0 * sqrt (20000.0 * 250.0), 20.0, 250.0),
              1.0, 1e-12);
}

/* The body rolled by φ, wheel by wheel, and its moment differentiated. */
static double
springs_moment (double roll, void *data)
{
  const SpringCorner *corner = data;
  const Station at = check_solve_at_contact (&corner->corner->corner, 0.0);
  Station home;

  station_solve (&corner->corner->corner, corner->standing, 0.0, &home);
  const double half = home.measures.contact.y;
  const double standing = home.measures.contact.z - at.measures.contact.z;

  return (fixture_load_at_rise (corner, standing + half * roll) -
          fixture_load_at_rise (corner, standing - half * roll)) *
         half;
}

static double
link_height (double travel, void *data)
{
  const SpringCorner *corner = data;
  const CarSprings *s = corner->springs;
  const Corner *c = &corner->corner->corner;
  SpringPlaces places = { .link_carrier = s->anti_roll_bar.link_carrier,
                          .link_point = s->anti_roll_bar.link_point };
  SpringPaths paths;
  Pose pose;

  pose_at_travel (c, travel, 0.0, NULL, &pose);
  spring_paths (c, &pose, &places, &paths);
  return paths.link_point.z;
}

static double
contact_height (double travel, void *data)
{
  const SpringCorner *corner = data;
  Station at;

  station_solve (&corner->corner->corner, travel, 0.0, &at);
  return at.measures.contact.z;
}

static void
check_roll_stiffness (int i, const SpringCorner *corner)
{
  const double per_degree = G_PI / 180.0 / 1000.0;
  gsl_function moment = { springs_moment, (void *) corner };
  gsl_function link = { link_height, (void *) corner };
  gsl_function contact = { contact_height, (void *) corner };
  double springs, rise, height, error;
  Station home;

  station_solve (&corner->corner->corner, corner->standing, 0.0, &home);
  gsl_deriv_central (&moment, 0.0, 1e-4, &springs, &error);
  check_near ("springs", i, corner->roll_stiffness, springs * per_degree,
              1e-5 * corner->roll_stiffness);
  gsl_deriv_central (&link, corner->standing, 0.1, &rise, &error);
  gsl_deriv_central (&contact, corner->standing, 0.1, &height, &error);
  /* ±(t/2)φ at the contacts; the bar's two forces on levers of t/2 */
  const double ratio = rise / height, half = home.measures.contact.y;

  check_near ("bar", i, corner->roll_stiffness_bar,
              25.0 * ratio * (2.0 * half) * ratio * half * 2.0 * per_degree,
              1e-7 * corner->roll_stiffness_bar);
}

static void
test_roll_stiffness (void)
{
  Dice dice = { SEED };
  int n_checked = 0;

  for (int i = 0; i < N_CASES; i++) {
    g_auto (StandingCar) standing = dice_standing_car (&dice);
    CarSprings *s = &standing.car->springs;

    s->helper.is_there = s->bump_stop.is_there = FALSE;
    s->coil.solid_length_mm = 0.0;
    s->anti_roll_bar = (CarAntiRollBar){ .is_there = TRUE,
                                         .rate_n_per_mm = 25.0,
                                         .link_carrier = LINK_ON_STRUT,
                                         .has_link_point = TRUE };
    s->anti_roll_bar.link_point = standing.car->points[POINT_STRUT_FOOT];
    standing_car_solve (&standing);
    if (standing_corner (&standing)->stands != STANDS_BY_SPRINGS)
      continue;
    check_roll_stiffness (i, standing_corner (&standing));
    n_checked++;
  }
  g_assert_cmpint (n_checked, >, N_CASES / 2);
}

/* Ø 20 × 600 mm of steel: 1.480 kg. A coil of Ø 12 wire, 8 turns on 120 mm, 300 mm long:
 * 0.8878 kg/m over √((8 π 120)² + 300²) = 3030.8 mm: 2.691 kg, half of it unsprung. By
 * hand, 7850 kg/m³. */
static void
test_masses (void)
{
  g_auto (StandingCar) standing = standing_car_new (fixture_car_of (&set_m));
  CarSprings *s = &standing.car->springs;

  *s = car_springs_none ();
  s->bar.is_there = s->coil.is_there = TRUE;
  s->bar.n_sections = 1;
  s->bar.sections[0].outer_mm = 20.0;
  s->bar.sections[0].length_mm = 600.0;
  standing_car_solve (&standing);
  check_near ("bar", 0, standing_corner (&standing)->spring_kg, 1.480, 5e-4);
  check_near ("unsprung", 0, standing_corner (&standing)->spring_unsprung_kg, 0.0, 0.0);
  check_near ("height", 0, standing_corner (&standing)->spring_height, 205.0, 0.02);
  s->coil.wire_mm = 12.0;
  s->coil.mean_diameter_mm = 120.0;
  s->coil.active_coils = 6.0;
  s->coil.total_coils = 8.0;
  s->coil.free_length_mm = 300.0;
  standing_car_solve (&standing);
  check_near ("both", 0, standing_corner (&standing)->spring_kg, 1.480 + 2.691, 1e-3);
  check_near ("unsprung", 0, standing_corner (&standing)->spring_unsprung_kg, 2.691 / 2,
              5e-4);
}

/* c/(2 √(k m)) of 1000 N·s/m at the damper, its ratio squared. */
static void
test_damping (void)
{
  const double points[][2] = { { -0.1, -300 }, { 0.1, 100 } };
  Dice dice = { SEED + 1 };
  g_auto (StandingCar) standing = dice_standing_car (&dice);

  standing.car->springs.damper.table = fixture_table (2, points);
  standing_car_solve (&standing);
  const SpringCorner *corner = standing_corner (&standing);
  Station home;

  g_assert_cmpint (corner->stands, ==, STANDS_BY_SPRINGS);
  station_solve (&corner->corner->corner, corner->standing, 0.0, &home);
  const double ratio = home.measures.value[QUANTITY_STRUT_RATIO] /
                       corner->at_standing.paths.contact_per_travel;

  check_near ("bump", 0, corner->damping_ratio_bump,
              1000.0 * ratio * ratio /
                  (2.0 * sqrt (1000.0 * corner->wheel_rate * corner->sprung_kg)),
              1e-9);
  check_near ("rebound", 0, corner->damping_ratio_rebound,
              3.0 * corner->damping_ratio_bump, 1e-9);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/spring-numbers/frequencies", test_frequencies);
  g_test_add_func ("/spring-numbers/roll-stiffness", test_roll_stiffness);
  g_test_add_func ("/spring-numbers/masses", test_masses);
  g_test_add_func ("/spring-numbers/damping", test_damping);
  return g_test_run ();
}
