/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Verdicts speak where their rule says so and not beside it. */

#include "check-data.h"
#include "spring-fixture.h"

#include "model/load/spring-verdict.h"

/* NULL where that verdict is not given. */
static const SpringVerdict *
find (const GPtrArray *verdicts, const char *id)
{
  for (guint i = 0; i < verdicts->len; i++) {
    const SpringVerdict *v = verdicts->pdata[i];

    g_assert_true (g_str_has_prefix (v->rule, "Rule: "));
    if (g_str_equal (v->id, id))
      return v;
  }
  return NULL;
}

static void
check_says (const StandingCar *standing,
            guint setup,
            const char *id,
            gboolean is_warning,
            const char *part)
{
  g_autoptr (GPtrArray) verdicts = spring_verdicts (standing->springs, setup);
  const SpringVerdict *v = find (verdicts, id);

  g_assert_nonnull (v);
  if (strstr (v->sentence, part) == NULL)
    g_error ("“%s” is not in “%s”", part, v->sentence);
  g_assert_cmpint (v->is_warning, ==, is_warning);
}

static void
check_silent (const StandingCar *standing, const char *id)
{
  g_autoptr (GPtrArray) verdicts = spring_verdicts (standing->springs, 0);

  g_assert_null (find (verdicts, id));
}

/* The worked set with 2600 N on each wheel, on a bar and a coil that stand at travel 0
 * together, the coil with @share of it: 2731 N carry all there, and so do 815.139 N·m. */
static CarSprings
springs_with_share (double share)
{
  const double length =
      vec3_distance (worked_set.at[POINT_UPPER_MOUNT], worked_set.at[POINT_STRUT_FOOT]);
  CarSprings springs = car_springs_none ();

  springs.bar.is_there = TRUE;
  springs.bar.rate_nm_per_deg = 30.0;
  springs.bar.clamp_angle_deg = (1.0 - share) * 815.139 / 30.0;
  springs.coil = (CarCoil){ .is_there = TRUE,
                            .rate_n_per_mm = 20.0,
                            .free_length_mm = length + share * 2731.0 / 20.0 };
  return springs;
}

static StandingCar
standing_on (CarSprings springs)
{
  Car *car = fixture_car_of (&worked_set);

  car->body.front_mass_kg = 5200.0 / SPRING_GRAVITY;
  car->springs = springs;
  return standing_car_new (car);
}

/* At travel 0 by its springs: 4.9 mm of lowering are let pass, 5.1 mm are told. */
static void
test_height (void)
{
  g_auto (StandingCar) near = standing_on (springs_with_share (0.5));
  Car *car = car_copy (near.car);

  check_silent (&near, "height");
  for (int i = 0; i < 2; i++) {
    Car *lowered = car_copy (car);

    car_setup (lowered, 0)->lowering_mm = i == 0 ? 4.9 : 5.1;
    g_auto (StandingCar) standing = standing_car_new (lowered);
    if (i == 0)
      check_silent (&standing, "height");
    else
      check_says (&standing, 0, "height", TRUE, "this setup has it at 5.1 mm");
  }
  car_free (car);
}

/* Whatever warns stands before whatever does not. */
static void
test_warnings_come_first (void)
{
  g_auto (StandingCar) base = standing_on (springs_with_share (0.5));
  Car *car = car_copy (base.car);

  car_setup (car, 0)->lowering_mm = 20.0;
  g_auto (StandingCar) standing = standing_car_new (car);
  g_autoptr (GPtrArray) verdicts = spring_verdicts (standing.springs, 0);
  guint n_warnings = 0, n_after = 0;

  for (guint i = 0; i < verdicts->len; i++) {
    const gboolean warns = ((const SpringVerdict *) verdicts->pdata[i])->is_warning;

    g_assert_true (g_str_has_prefix (((const SpringVerdict *) verdicts->pdata[i])->marked,
                                     "⚠ ") == warns);
    n_warnings += warns ? 1 : 0;
    n_after += warns && i >= n_warnings ? 1 : 0;
  }
  g_assert_cmpuint (n_warnings, >, 0);
  g_assert_cmpuint (n_warnings, <, verdicts->len);
  g_assert_cmpuint (n_after, ==, 0);
}

static void
test_role (void)
{
  static const struct {
    double share;
    const char *words[2];
  } rows[] = { { 0.30, { "30 %", "it is a helper" } },
               { 0.36, { "36 %", "it shares the work" } },
               { 0.64, { "64 %", "it shares the work" } },
               { 0.70, { "70 %", "it is the main spring" } } };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_auto (StandingCar) standing = standing_on (springs_with_share (rows[i].share));

    check_near ("standing", i, standing_corner (&standing)->standing, 0.0, 0.05);
    check_says (&standing, 0, "coil-role", FALSE, rows[i].words[0]);
    check_says (&standing, 0, "coil-role", FALSE, rows[i].words[1]);
  }
}

static void
test_no_spring (void)
{
  g_auto (StandingCar) standing = standing_on (car_springs_none ());
  g_autoptr (GPtrArray) verdicts = spring_verdicts (standing.springs, 0);

  g_assert_cmpint (verdicts->len, ==, 0);
}

/* A tie rod half a metre too long. */
static void
test_nothing_assembles (void)
{
  g_auto (StandingCar) standing = standing_on (springs_with_share (1.0));

  car_setup (standing.car, 0)->corrections.tie_rod_length_mm = 500.0;
  standing_car_solve (&standing);
  g_autoptr (GPtrArray) verdicts = spring_verdicts (standing.springs, 0);

  g_assert_cmpint (standing_corner (&standing)->corner->n_assembled, ==, 0);
  g_assert_cmpint (verdicts->len, ==, 0);
  g_assert_true (isnan (standing_corner (&standing)->standing));
  g_assert_cmpint (standing_corner (&standing)->n_events, ==, 0);
}

static void
test_standing (void)
{
  CarSprings springs = springs_with_share (0.0);

  springs.coil.is_there = FALSE;
  springs.bar.clamp_angle_deg = -20.0;
  g_auto (StandingCar) standing = standing_on (springs);

  check_says (&standing, 0, "standing", TRUE, "sinks");
  check_silent (&standing, "coil-role");
  standing.car->springs.bar.clamp_angle_deg = 90.0;
  standing_car_solve (&standing);
  check_says (&standing, 0, "standing", TRUE, "end of droop");
}

/* Built on a bar, −31.9 N of 2600 N on the tower; a coil in its place brings 2643.5 N. */
static void
test_tower (void)
{
  g_auto (StandingCar) standing = standing_on (springs_with_share (0.0));
  const CarSetup coil = { .name = g_strdup ("coil"),
                          .has_springs = TRUE,
                          .springs = springs_with_share (1.0) };
  const CarSetup little = { .name = g_strdup ("little"),
                            .has_springs = TRUE,
                            .springs = springs_with_share (0.08) };
  const CarSetup more = { .name = g_strdup ("more"),
                          .has_springs = TRUE,
                          .springs = springs_with_share (0.11) };

  g_array_append_val (standing.car->setups, coil);
  g_array_append_val (standing.car->setups, little);
  g_array_append_val (standing.car->setups, more);
  standing_car_solve (&standing);
  check_says (&standing, 0, "tower-load", FALSE,
              "carries −32 N; as built it carried −32 N");
  check_says (&standing, 1, "tower-load", TRUE, "as built it carried −32 N");
  check_says (&standing, 1, "tower-load", TRUE, "carries 264");
  check_says (&standing, 2, "tower-load", FALSE, "as built");
  check_says (&standing, 3, "tower-load", TRUE, "must be rated");
  standing.car->springs = car_springs_none ();
  standing_car_solve (&standing);
  check_says (&standing, 1, "tower-load", FALSE, "is not known");
}

/* The coil alone, stiffer and stiffer. */
static void
test_frequency (void)
{
  gboolean seen[4] = { FALSE };
  static const char *const words[4] = { "sick", "usual", "sports", "harsh" };

  for (double rate = 4.0; rate < 90.0; rate *= 1.1) {
    CarSprings springs = springs_with_share (1.0);

    springs.bar.is_there = FALSE;
    springs.coil.free_length_mm -= 2731.0 / 20.0 - 2731.0 / rate;
    springs.coil.rate_n_per_mm = rate;
    g_auto (StandingCar) standing = standing_on (springs);
    const double f = standing_corner (&standing)->frequency;
    const int band = f < 1.0 ? 0 : f < 1.5 ? 1 : f < 2.0 ? 2 : 3;

    check_says (&standing, 0, "frequency", band == 0 || band == 3, words[band]);
    seen[band] = TRUE;
  }
  for (int i = 0; i < 4; i++)
    g_assert_true (seen[i]);
}

static void
test_damping (void)
{
  gboolean seen[4] = { FALSE };
  static const char *const words[4] = { "under-damped", "comfortable", "firm",
                                        "over-damped" };

  for (double force = 40.0; force < 1200.0; force *= 1.1) {
    const double table[][2] = { { -0.1, -1.5 * force }, { 0.1, 0.5 * force } };
    CarSprings springs = springs_with_share (1.0);

    springs.damper.table = fixture_table (2, table);
    g_auto (StandingCar) standing = standing_on (springs);
    const SpringCorner *corner = standing_corner (&standing);
    const double mean = 2.0 * corner->damping_ratio_bump;
    const int band = mean < 0.2 ? 0 : mean < 0.4 ? 1 : mean <= 0.7 ? 2 : 3;

    check_near ("rebound", force, corner->damping_ratio_rebound, 1.5 * mean, 1e-12);
    check_says (&standing, 0, "damping", band == 0 || band == 3, words[band]);
    seen[band] = TRUE;
  }
  for (int i = 0; i < 4; i++)
    g_assert_true (seen[i]);
  g_auto (StandingCar) bare = standing_on (springs_with_share (1.0));
  check_silent (&bare, "damping");
}

/* Strut ratio about 0.95 to 0.97 there: 20 mm of wheel are 19.2 mm of strut. */
static void
test_bump_stop (void)
{
  const double table[][2] = { { 0, 0 }, { 30, 3000 } };
  CarSprings springs = springs_with_share (1.0);

  springs.bump_stop.is_there = TRUE;
  springs.bump_stop.table = fixture_table (2, table);
  springs.bump_stop.gap_mm = 19.0;
  g_auto (StandingCar) standing = standing_on (springs);

  check_says (&standing, 0, "bump-stop-near", TRUE, "touches 19.8 mm");
  standing.car->springs.bump_stop.gap_mm = 19.5;
  standing_car_solve (&standing);
  check_silent (&standing, "bump-stop-near");
  standing.car->springs.bump_stop.gap_mm = -5.0;
  standing_car_solve (&standing);
  check_says (&standing, 0, "bump-stop-near", TRUE, "stands on its bump stop");
}

/* The coil that carries 2731 N with 20 N/mm is 136.6 mm shorter where it stands; strut
 * ratio about 0.95 to 0.97 above. 30 mm on the strut are 31 mm of wheel. */
static void
test_solid (void)
{
  const double table[][2] = { { 0, 0 }, { 30, 3000 } };
  CarSprings springs = springs_with_share (1.0);

  springs.coil.solid_length_mm = springs.coil.free_length_mm - 2731.0 / 20.0 - 30.0;
  g_auto (StandingCar) standing = standing_on (springs);
  CarSprings *s = &standing.car->springs;

  check_says (&standing, 0, "coil-bound", TRUE, "The coil is solid at 31.");
  check_says (&standing, 0, "coil-bound", TRUE, "no bump stop touches before");
  s->bump_stop = (CarBumpStop){ .is_there = TRUE, .gap_mm = 50.0 };
  s->bump_stop.table = fixture_table (2, table);
  standing_car_solve (&standing);
  check_says (&standing, 0, "coil-bound", TRUE, "before the bump stop would touch at 5");
  s->bump_stop.gap_mm = 29.0;
  standing_car_solve (&standing);
  check_silent (&standing, "coil-bound");
  s->coil.solid_length_mm += 31.0;
  standing_car_solve (&standing);
  g_assert_cmpint (standing_corner (&standing)->stands, ==, STANDS_NOWHERE_BOUND);
  check_says (&standing, 0, "standing", TRUE, "The coil is solid at −1.");
  check_says (&standing, 0, "standing", TRUE, "before it carries");
  s->coil.solid_length_mm += 200.0;
  standing_car_solve (&standing);
  check_says (&standing, 0, "standing", TRUE, "solid at every wheel travel");
}

/* One on seats of its own ends the travel as a coil does; on top of a coil it may close.
 */
static void
test_solid_helper (void)
{
  CarSprings springs = springs_with_share (0.5);
  const double seated = springs.coil.free_length_mm - 0.5 * 2731.0 / 20.0;

  springs.helper = (CarHelper){ .is_there = TRUE,
                                .place = HELPER_IN_PARALLEL,
                                .rate_n_per_mm = springs.coil.rate_n_per_mm,
                                .free_length_mm = springs.coil.free_length_mm,
                                .solid_length_mm = seated - 30.0 };
  springs.coil = (CarCoil){ 0 };
  g_auto (StandingCar) standing = standing_on (springs);
  CarSprings *s = &standing.car->springs;

  check_says (&standing, 0, "coil-bound", TRUE, "The helper is solid at 31.");
  s->helper.solid_length_mm = seated + 1.0;
  standing_car_solve (&standing);
  check_says (&standing, 0, "standing", TRUE, "The helper is solid at −1.");
  s->coil = springs_with_share (0.5).coil;
  s->helper = (CarHelper){ .is_there = TRUE,
                           .place = HELPER_IN_SERIES,
                           .rate_n_per_mm = 10.0,
                           .free_length_mm = 60.0,
                           .solid_length_mm = 15.0 };
  s->coil.free_length_mm -= 15.0;
  standing_car_solve (&standing);
  check_silent (&standing, "coil-bound");
}

/* 2731 N of 40 N/mm leave the seat 68 mm of strut below, 0.907 to 0.953 of it a mm. */
static void
test_seat (void)
{
  CarSprings springs = springs_with_share (1.0);

  g_auto (StandingCar) standing = standing_on (springs);
  check_says (&standing, 0, "coil-slack", FALSE, "stays on its seats");
  springs.coil.free_length_mm -= 2731.0 / 20.0 - 2731.0 / 40.0;
  springs.coil.rate_n_per_mm = 40.0;
  standing.car->springs = springs;
  standing_car_solve (&standing);
  check_says (&standing, 0, "coil-slack", TRUE, "goes slack at −73");
  standing.car->springs.droop_stop_mm = 70.0;
  standing_car_solve (&standing);
  check_says (&standing, 0, "coil-slack", FALSE, "The coil stays on its seats");
}

/* Alone with the bar, on seats that the coil had. */
static void
test_seat_of_a_helper (void)
{
  CarSprings springs = springs_with_share (0.5);

  springs.helper = (CarHelper){ .is_there = TRUE,
                                .place = HELPER_IN_PARALLEL,
                                .rate_n_per_mm = springs.coil.rate_n_per_mm,
                                .free_length_mm = springs.coil.free_length_mm };
  springs.coil = (CarCoil){ 0 };
  g_auto (StandingCar) standing = standing_on (springs);
  check_says (&standing, 0, "coil-slack", TRUE, "The helper goes slack at −7");
  standing.car->springs.droop_stop_mm = 60.0;
  standing_car_solve (&standing);
  check_says (&standing, 0, "coil-slack", FALSE, "The helper stays on its seats");
}

/* 16 T/(π d³): 815.139 N·m on Ø 20 are 519 N/mm² standing, more in bump. */
static void
test_bar_stress (void)
{
  CarSprings springs = springs_with_share (0.0);

  springs.coil.is_there = FALSE;
  springs.bar.rate_nm_per_deg = 0.0;
  springs.bar.n_sections = 1;
  springs.bar.sections[0].outer_mm = 20.0;
  springs.bar.sections[0].length_mm = 1000.0;
  springs.bar.shear_modulus_gpa = 80.0;
  springs.bar.clamp_angle_deg = DEGREES (815139.0 * 1000.0 / 80000.0 / 15707.963);
  g_auto (StandingCar) standing = standing_on (springs);

  check_near ("stress", 0, standing_corner (&standing)->at_standing.bar_stress, 518.93,
              0.1);
  check_silent (&standing, "bar-stress");
  standing.car->springs.bar.sections[0].length_mm = 600.0;
  standing.car->springs.bar.clamp_angle_deg *= 0.6;
  standing_car_solve (&standing);
  check_near ("stress", 1, standing_corner (&standing)->at_standing.bar_stress, 518.93,
              0.1);
  check_silent (&standing, "bar-stress");
  standing.car->springs.bar.sections[0].length_mm = 300.0;
  standing.car->springs.bar.clamp_angle_deg *= 0.5;
  standing_car_solve (&standing);
  check_says (&standing, 0, "bar-stress", TRUE, "at 80 mm");
}

/* The bar at 30 N·m/° is wound up by 27°, more than all its droop unwinds; at 120 N·m/°
 * by 7°, which is less. A droop stop before that keeps the wheel from it. */
static void
test_wheel_lifts (void)
{
  CarSprings springs = springs_with_share (0.0);

  springs.coil.is_there = FALSE;
  g_auto (StandingCar) soft = standing_on (springs);
  check_silent (&soft, "wheel-lifts");

  springs.bar.clamp_angle_deg *= 30.0 / 120.0;
  springs.bar.rate_nm_per_deg = 120.0;
  g_auto (StandingCar) stiff = standing_on (springs);
  check_says (&stiff, 0, "wheel-lifts", TRUE, "no longer reaches the road");

  springs.droop_stop_mm = 15.0;
  g_auto (StandingCar) stopped = standing_on (springs);
  check_silent (&stopped, "wheel-lifts");
}

/* Sizes weigh, rates do not; a helper has no wire to weigh. */
static void
test_masses_say_their_parts (void)
{
  CarSprings springs = springs_with_share (0.5);
  g_auto (StandingCar) rates = standing_on (springs);

  check_says (&rates, 0, "mass-counted", FALSE,
              "The springs' own mass is not known. Not counted in it, for want of sizes: "
              "Torsion bar, Coil. Arm, knuckle, strut and wheel are not counted at all");
  springs.coil.wire_mm = 12.0;
  springs.coil.mean_diameter_mm = 110.0;
  springs.coil.total_coils = 7.0;
  springs.helper = (CarHelper){ .is_there = TRUE,
                                .place = HELPER_IN_SERIES,
                                .rate_n_per_mm = 300.0,
                                .free_length_mm = 5.0 };
  g_auto (StandingCar) sized = standing_on (springs);
  sized.car->body.unsprung_corner_kg = 31.5;
  standing_car_solve (&sized);
  check_says (&sized, 0, "mass-counted", FALSE,
              "Counted in the springs' own mass: Coil. Not counted in it, for want of "
              "sizes: Torsion bar, Helper. Arm, knuckle, strut and wheel are in the "
              "31.5 kg unsprung");
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/spring-verdict/height", test_height);
  g_test_add_func ("/spring-verdict/order", test_warnings_come_first);
  g_test_add_func ("/spring-verdict/role", test_role);
  g_test_add_func ("/spring-verdict/seat-of-a-helper", test_seat_of_a_helper);
  g_test_add_func ("/spring-verdict/no-spring", test_no_spring);
  g_test_add_func ("/spring-verdict/nothing-assembles", test_nothing_assembles);
  g_test_add_func ("/spring-verdict/standing", test_standing);
  g_test_add_func ("/spring-verdict/tower", test_tower);
  g_test_add_func ("/spring-verdict/frequency", test_frequency);
  g_test_add_func ("/spring-verdict/damping", test_damping);
  g_test_add_func ("/spring-verdict/bump-stop", test_bump_stop);
  g_test_add_func ("/spring-verdict/solid", test_solid);
  g_test_add_func ("/spring-verdict/solid-helper", test_solid_helper);
  g_test_add_func ("/spring-verdict/seat", test_seat);
  g_test_add_func ("/spring-verdict/wheel-lifts", test_wheel_lifts);
  g_test_add_func ("/spring-verdict/mass", test_masses_say_their_parts);
  g_test_add_func ("/spring-verdict/bar-stress", test_bar_stress);
  return g_test_run ();
}
