/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a place costs, against figures that were worked out elsewhere and against stations
 * of the kernel one by one. */
#include "car-fixture.h"
#include "check-data.h"
#include "choice-fixture.h"

#include <math.h>

#define GRAVITY 9.80665
#define N_STATIONS 41

static const char *const demos[] = { "wren", "fieldfare", "lapwing" };

static ChoicePlace
place_at (const Car *car, guint setup, double inboard, double rearward)
{
  const ChoiceQuestion question = { .setup = setup };
  g_autoptr (Plate) plate = choice_fixture_fixed (inboard, rearward);

  return choice_place (car, &question, SIDE_LEFT, plate, (PlateSetting){ 0 }, 0.0);
}

/* Common practice, no published source: top in is negative camber and more inclination,
 * top back is caster and trail. */
static void
test_directions_of_the_trade (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (demos); i++) {
    g_autoptr (Car) car = fixture_demo (demos[i]);

    for (guint setup = 0; setup < car->setups->len; setup++) {
      const ChoicePlace here = place_at (car, setup, 0.0, 0.0);
      const ChoicePlace inboard = place_at (car, setup, 10.0, 0.0);
      const ChoicePlace rearward = place_at (car, setup, 0.0, 10.0);

      g_assert_cmpfloat (inboard.value[QUANTITY_CAMBER], <, here.value[QUANTITY_CAMBER]);
      g_assert_cmpfloat (inboard.value[QUANTITY_SAI], >, here.value[QUANTITY_SAI]);
      g_assert_cmpfloat (rearward.value[QUANTITY_CASTER], >, here.value[QUANTITY_CASTER]);
      g_assert_cmpfloat (rearward.value[QUANTITY_TRAIL], >, here.value[QUANTITY_TRAIL]);
    }
  }
}

/* The worked set, computed independently by raw constraints in a root finder: the mount
 * 15 mm inboard, and 15 mm rearward. */
static void
test_worked_set (void)
{
  g_autoptr (Car) car = choice_fixture_car (&worked_set, 0.0, TOE_AS_MOVED);
  const ChoicePlace inboard = place_at (car, 1, 15.0, 0.0);
  const ChoicePlace rearward = place_at (car, 1, 0.0, 15.0);

  check_near ("camber", 15, inboard.aim_value[AIM_CAMBER], -1.928, 5e-4);
  check_near ("toe", 15, DEGREES (inboard.toe_before_reset), 0.452, 5e-4);
  check_near ("toe change", 15, inboard.aim_value[AIM_TOE_CHANGE], 0.402, 1e-3);
  check_near ("caster", 15, inboard.aim_value[AIM_CASTER], 2.951, 5e-4);
  check_near ("inclination", 15, inboard.aim_value[AIM_SAI], 13.074, 5e-4);
  check_near ("scrub", 15, inboard.aim_value[AIM_SCRUB_RADIUS], 8.20, 5e-3);
  check_near ("scrub change", 15, inboard.aim_value[AIM_SCRUB_CHANGE], 8.20 - 8.05, 1e-2);
  check_near ("roll centre", 15, inboard.aim_value[AIM_ROLL_CENTRE_HEIGHT], 85.68, 5e-3);
  check_near ("camber", -15, rearward.aim_value[AIM_CAMBER], -0.480, 5e-4);
  check_near ("caster", -15, rearward.aim_value[AIM_CASTER], 4.435, 5e-4);
  check_near ("trail", -15, rearward.aim_value[AIM_TRAIL], 11.87, 5e-3);
  check_near ("toe", -15, DEGREES (rearward.toe_before_reset), -0.032, 5e-4);
}

/* The worked set under 2600 N, from the same independent source: with a coil 366.6 N on
 * the rod, with a torsion bar 210.9 N. */
static void
test_side_force (void)
{
  g_autoptr (Car) car = choice_fixture_car (&worked_set, 0.0, TOE_AS_MOVED);
  g_autoptr (Plate) plate = choice_fixture_fixed (0.0, 0.0);
  ChoiceQuestion question = { .setup = 1, .carrier = CARRIED_BY_COIL };

  car->body.front_mass_kg = 2.0 * 2600.0 / GRAVITY;
  const ChoicePlace coil =
      choice_place (car, &question, SIDE_LEFT, plate, (PlateSetting){ 0 }, 0.0);
  question.carrier = CARRIED_BY_TORSION_BAR;
  const ChoicePlace bar =
      choice_place (car, &question, SIDE_LEFT, plate, (PlateSetting){ 0 }, 0.0);
  check_near ("coil", 0, coil.side_force, 366.6, 0.05);
  check_near ("bar", 0, bar.side_force, 210.9, 0.05);
}

/* Screwed into the tie rod of a setup that is left as moved, the change brings back the
 * toe as measured. */
static void
test_tie_rod_brings_the_toe_back (void)
{
  Dice dice = { 11 };

  for (int i = 0; i < 20; i++) {
    g_autoptr (Car) car = choice_fixture_random_car (&dice);
    car_setup (car, 1)->toe = TOE_RESET;
    const ChoicePlace reset = place_at (car, 1, 12.0, -6.0);

    g_assert_cmpfloat_with_epsilon (DEGREES (reset.value[QUANTITY_TOE_IN]),
                                    car->toe_in_deg, 1e-9);
    g_assert_cmpfloat_with_epsilon (reset.tie_rod_turns * car->thread_pitch_mm,
                                    reset.tie_rod_change, 1e-12);
    car_setup (car, 1)->toe = TOE_AS_MOVED;
    const ChoicePlace moved = place_at (car, 1, 12.0, -6.0);
    g_assert_cmpfloat_with_epsilon (moved.value[QUANTITY_TOE_IN], reset.toe_before_reset,
                                    1e-12);
    g_assert_cmpfloat (fabs (moved.aim_value[AIM_TOE_CHANGE]), >, 0.01);
    car_setup (car, 1)->corrections.tie_rod_length_mm = reset.tie_rod_change;
    const ChoicePlace screwed = place_at (car, 1, 12.0, -6.0);
    g_assert_cmpfloat_with_epsilon (DEGREES (screwed.value[QUANTITY_TOE_IN]),
                                    car->toe_in_deg, 1e-7);
  }
}

static Vec3
measured_strut (const MeasuredCorner *measured)
{
  return vec3_unit (
      vec3_sub (measured->at[POINT_UPPER_MOUNT], measured->at[POINT_STRUT_FOOT]));
}

/* Over what the car has of the travel used, by stations from a cold start each. */
static void
test_travel_used (void)
{
  Dice dice = { 12 };

  for (int i = 0; i < 10; i++) {
    g_autoptr (Car) car = choice_fixture_random_car (&dice);
    CarSetup *setup = car_setup (car, 1);
    car->bump_mm = setup->lowering_mm + 12.0;
    setup->mount.inboard = 9.0;
    const ChoicePlace place = place_at (car, 1, 9.0, 0.0);
    const MeasuredCorner measured = car_measured_corner (car);
    const Corner corner = check_assemble (&measured, car_adjustment (setup));
    const Measures standing = check_solve (&corner, setup->lowering_mm, 0.0);
    const double from = setup->lowering_mm - car->limits.travel_used_mm;
    double furthest = 0.0, tilt = 0.0;

    for (int k = 0; k < N_STATIONS; k++) {
      const double travel = from + (car->bump_mm - from) * k / (N_STATIONS - 1);
      Station station;
      g_assert_cmpint (station_solve (&corner, travel, 0.0, &station), ==, POSE_OK);
      const double toe =
          station.measures.value[QUANTITY_TOE_IN] - standing.value[QUANTITY_TOE_IN];

      if (fabs (toe) > fabs (furthest))
        furthest = toe;
      tilt = fmax (tilt, acos (fmin (vec3_dot (station.pose.strut_direction,
                                               measured_strut (&measured)),
                                     1.0)));
    }
    g_assert_cmpfloat_with_epsilon (place.bump_steer, furthest, 1e-10);
    g_assert_cmpfloat_with_epsilon (place.aim_value[AIM_BUMP_STEER],
                                    DEGREES (fabs (furthest)), 1e-8);
    g_assert_cmpfloat_with_epsilon (place.bearing_tilt, tilt, 1e-7);
  }
}

static void
test_tower (void)
{
  g_autoptr (Car) car = choice_fixture_car (&set_m, 0.0, TOE_AS_MOVED);
  g_autoptr (Plate) plate = choice_fixture_fixed (6.0, 8.0);
  const ChoiceQuestion question = { .setup = 1 };
  const PlateSetting setting = { 0 };
  ChoicePlace place = choice_place (car, &question, SIDE_LEFT, plate, setting, 0.0);

  g_assert_true (isnan (place.edge_margin));
  car->tower = (CarTower){ .opening_diameter_mm = 80.0,
                           .opening_inboard_mm = 2.0,
                           .opening_rearward_mm = 5.0 };
  g_assert_true (
      isnan (choice_place (car, &question, SIDE_LEFT, plate, setting, 0.0).edge_margin));
  plate->bearing_diameter_mm = 60.0;
  place = choice_place (car, &question, SIDE_LEFT, plate, setting, 0.0);
  /* 40 − 5 − 30: the bearing stands 4 and 3 mm off the centre */
  g_assert_cmpfloat_with_epsilon (place.edge_margin, 5.0, 1e-12);
  g_assert_cmpuint (place.faults, ==, 0);
  car->limits.edge_margin_mm = 5.5;
  place = choice_place (car, &question, SIDE_LEFT, plate, setting, 0.0);
  g_assert_cmpuint (place.faults, ==, CHOICE_EDGE_TOO_NEAR);
}

/* The room to tube and seat is the knuckle's own: no mount changes it, a bolt does. */
static void
test_tyre (void)
{
  g_autoptr (Car) car = fixture_demo ("fieldfare");
  g_autoptr (Plate) plate = choice_fixture_fixed (8.0, 3.0);
  const ChoiceQuestion question = { .setup = 1 };
  const PlateSetting setting = { 0 };
  const ChoicePlace here = place_at (car, 1, 0.0, 0.0);
  const ChoicePlace moved = place_at (car, 1, 8.0, 3.0);
  const ChoicePlace leaning =
      choice_place (car, &question, SIDE_LEFT, plate, setting, RADIANS (-1.0));

  for (StrutPart part = STRUT_TUBE; part < STRUT_SPRING; part++) {
    g_assert_cmpfloat_with_epsilon (here.clearance.room[part], moved.clearance.room[part],
                                    1e-9);
    g_assert_cmpfloat (leaning.clearance.room[part], !=, here.clearance.room[part]);
  }
  car->limits.tyre_clearance_mm = here.clearance.least + 0.1;
  g_assert_cmpuint (place_at (car, 1, 0.0, 0.0).faults & CHOICE_TYRE_TOO_NEAR, ==,
                    CHOICE_TYRE_TOO_NEAR);
  car->limits.tyre_clearance_mm = here.clearance.least - 0.1;
  g_assert_cmpuint (place_at (car, 1, 0.0, 0.0).faults & CHOICE_TYRE_TOO_NEAR, ==, 0);
}

/* Misses count in units, n² + n/2 and weighted: camber 0.1°, trail 1 mm. */
static void
test_cost (void)
{
  g_autoptr (Car) car = choice_fixture_car (&worked_set, 0.0, TOE_AS_MOVED);
  const ChoicePlace plain = place_at (car, 1, 15.0, 0.0);
  const double camber = plain.aim_value[AIM_CAMBER];

  g_assert_cmpfloat (plain.cost, ==, 0.0);
  choice_fixture_aim (car, AIM_CAMBER, camber - 1.0, camber - 0.5, 2.0);
  choice_fixture_aim (car, AIM_SCRUB_CHANGE, -INFINITY, 2.0, 1.0);
  choice_fixture_aim (car, AIM_TRAIL, plain.aim_value[AIM_TRAIL] + 3.0, INFINITY, 0.25);
  const ChoicePlace place = place_at (car, 1, 15.0, 0.0);
  /* 2 · (5² + 5/2) + 0 + 0.25 · (3² + 3/2) */
  g_assert_cmpfloat_with_epsilon (place.cost, 57.625, 1e-9);
  g_assert_cmpfloat_with_epsilon (place.aim_miss[AIM_CAMBER], 0.5, 1e-12);
  g_assert_cmpfloat (place.aim_miss[AIM_SCRUB_CHANGE], ==, 0.0);
  g_assert_cmpfloat_with_epsilon (place.aim_miss[AIM_TRAIL], -3.0, 1e-12);
  g_assert_cmpuint (place.faults, ==, CHOICE_MISSES_AIM);
}

/* A change counts from the baseline where it stands. */
static void
test_baseline (void)
{
  g_autoptr (Car) car = choice_fixture_car (&set_m, 20.0, TOE_AS_MOVED);
  const ChoicePlace from_measured = place_at (car, 1, 10.0, 0.0);
  const ChoicePlace unmoved = place_at (car, 1, 0.0, 0.0);

  car->baseline = 1;
  const ChoicePlace from_lowered = place_at (car, 1, 10.0, 0.0);
  g_assert_cmpfloat_with_epsilon (from_lowered.aim_value[AIM_SCRUB_CHANGE],
                                  from_lowered.value[QUANTITY_SCRUB_RADIUS] -
                                      unmoved.value[QUANTITY_SCRUB_RADIUS],
                                  1e-12);
  g_assert_cmpfloat_with_epsilon (from_measured.aim_value[AIM_TOE_CHANGE] -
                                      from_lowered.aim_value[AIM_TOE_CHANGE],
                                  unmoved.aim_value[AIM_TOE_CHANGE], 1e-9);
}

static void
test_out_of_reach (void)
{
  g_autoptr (Car) car = choice_fixture_car (&set_m, 0.0, TOE_AS_MOVED);

  choice_fixture_aim (car, AIM_CAMBER, -2.0, -1.0, 1.0);
  car->bump_mm = car->droop_mm = car->limits.travel_used_mm = 500.0;
  const ChoicePlace travels_too_far = place_at (car, 1, 0.0, 0.0);
  g_assert_true (travels_too_far.faults & CHOICE_NOT_ASSEMBLED);
  g_assert_true (isfinite (travels_too_far.value[QUANTITY_CAMBER]));
  g_assert_true (isnan (travels_too_far.bump_steer));
  car_setup (car, 1)->lowering_mm = 400.0;
  const ChoicePlace cannot_stand = place_at (car, 1, 0.0, 0.0);
  g_assert_cmpuint (cannot_stand.faults, ==, CHOICE_NOT_ASSEMBLED);
  g_assert_true (isnan (cannot_stand.value[QUANTITY_CAMBER]));
  g_assert_cmpfloat (cannot_stand.cost, ==, INFINITY);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/choice/place/directions", test_directions_of_the_trade);
  g_test_add_func ("/choice/place/worked-set", test_worked_set);
  g_test_add_func ("/choice/place/side-force", test_side_force);
  g_test_add_func ("/choice/place/tie-rod", test_tie_rod_brings_the_toe_back);
  g_test_add_func ("/choice/place/travel-used", test_travel_used);
  g_test_add_func ("/choice/place/tower", test_tower);
  g_test_add_func ("/choice/place/tyre", test_tyre);
  g_test_add_func ("/choice/place/cost", test_cost);
  g_test_add_func ("/choice/place/baseline", test_baseline);
  g_test_add_func ("/choice/place/out-of-reach", test_out_of_reach);
  return g_test_run ();
}
