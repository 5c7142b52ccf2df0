/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every answer is applied to the setup and read again by the kernel alone. */
#include "car-fixture.h"
#include "check-data.h"
#include "random-corner.h"

#include "model/advice/restore.h"
#include "model/study/toe-curve.h"

#include <math.h>

#define N_RANDOM 40
#define SEED 20240229u

static const RestoreLimits wide = { -40.0, 120.0 };

static Car *
car_of (const MeasuredCorner *measured)
{
  Car *car = car_new ();

  for (PointName i = 0; i < N_POINTS; i++)
    car->points[i] = measured->at[i];
  car->camber_deg = DEGREES (measured->camber);
  car->toe_in_deg = DEGREES (measured->toe_in);
  car->loaded_radius_mm = measured->loaded_radius;
  return car;
}

static guint
add_setup (Car *car, double lowering, ToeMode toe)
{
  const CarSetup setup = { .name = g_strdup ("tried"),
                           .lowering_mm = lowering,
                           .toe = toe };

  g_array_append_val (car->setups, setup);
  return car->setups->len - 1;
}

static Corner
corner_of (const Car *car, const CarSetup *setup)
{
  const MeasuredCorner measured = car_measured_corner (car);

  return check_assemble (&measured, car_adjustment (setup));
}

static double
standing_value (const Car *car, const CarSetup *setup, Quantity quantity)
{
  const Corner corner = corner_of (car, setup);
  Station station;

  station_solve (&corner, setup->lowering_mm, 0.0, &station);
  return station.measures.value[quantity];
}

/* A car with a baseline that is lowered and moved a little itself, and a setup further
 * down. */
static Car *
random_car (Dice *dice, guint *setup)
{
  const MeasuredCorner measured = dice_corner (dice);
  Car *car = car_of (&measured);
  CarSetup *baseline = car_setup (car, 0);

  baseline->lowering_mm = dice_between (dice, -5.0, 5.0);
  baseline->mount.inboard = dice_between (dice, -5.0, 5.0);
  const ToeMode toe = dice_between (dice, 0.0, 1.0) < 0.5 ? TOE_AS_MOVED : TOE_RESET;
  *setup = add_setup (car, dice_between (dice, 10.0, 60.0), toe);
  car_setup (car, *setup)->mount.inboard = dice_between (dice, -10.0, 10.0);
  return car;
}

/* No part of a grid within the limits comes nearer. */
static void
check_nearest (const Car *car,
               const CarSetup *with,
               Quantity quantity,
               const RestoreAnswer *answer)
{
  for (int i = 0; i <= 32; i++) {
    CarSetup trial = *with;

    trial.corrections.ball_joint_spacer_mm =
        wide.least + (wide.most - wide.least) * i / 32.0;
    const double value = standing_value (car, &trial, quantity);
    g_assert_false (fabs (value - answer->target) <
                    fabs (answer->after - answer->target));
  }
}

static gboolean
check_spacer (
    const Car *car, guint setup, RestoreGoal goal, Quantity quantity, double tolerance)
{
  const RestoreAnswer answer = restore_solve (car, setup, goal, wide, 40.0);
  const double target = standing_value (car, car_setup (car, 0), quantity);
  CarSetup with = *car_setup (car, setup);

  g_assert_cmpint (answer.status, !=, RESTORE_NOT_ASSEMBLED);
  g_assert_cmpfloat_with_epsilon (answer.target, target, 1e-12);
  g_assert_cmpfloat_with_epsilon (answer.before, standing_value (car, &with, quantity),
                                  1e-12);
  restore_apply (&with, goal, answer.value);
  g_assert_cmpfloat (with.corrections.ball_joint_spacer_mm, ==, answer.value);
  const double reread = standing_value (car, &with, quantity);
  g_assert_cmpfloat_with_epsilon (answer.after, reread, 1e-12);
  if (answer.status == RESTORE_OK)
    g_assert_cmpfloat_with_epsilon (reread, target, tolerance);
  else
    check_nearest (car, &with, quantity, &answer);
  return answer.status == RESTORE_OK;
}

static void
test_a_spacer_gives_the_baseline_back (void)
{
  Dice dice = { SEED };
  guint n_roll_centre = 0, n_camber_gain = 0;

  for (int i = 0; i < N_RANDOM; i++) {
    guint setup;
    g_autoptr (Car) car = random_car (&dice, &setup);

    n_roll_centre +=
        check_spacer (car, setup, RESTORE_ROLL_CENTRE, QUANTITY_ROLL_CENTRE_HEIGHT, 1e-6);
    n_camber_gain +=
        check_spacer (car, setup, RESTORE_CAMBER_GAIN, QUANTITY_CAMBER_GAIN, 1e-11);
  }
  g_test_message ("of %d: %u roll centres, %u camber gains", N_RANDOM, n_roll_centre,
                  n_camber_gain);
  g_assert_cmpuint (n_roll_centre, >=, N_RANDOM * 3 / 4);
  g_assert_cmpuint (n_camber_gain, >=, N_RANDOM / 2);
}

/* Set P, exact in closed form: lowering 30 mm takes the roll centre from 82.1011 to
 * −0.9039 mm. */
static void
test_a_lowered_flat_corner (void)
{
  g_autoptr (Car) car = car_of (&set_p);
  const guint setup = add_setup (car, 30.0, TOE_AS_MOVED);
  const RestoreAnswer answer =
      restore_solve (car, setup, RESTORE_ROLL_CENTRE,
                     restore_usual_limits (RESTORE_ROLL_CENTRE), 40.0);

  g_assert_cmpint (answer.status, ==, RESTORE_OK);
  g_assert_cmpfloat_with_epsilon (answer.target, 82.1011, 5e-5);
  g_assert_cmpfloat_with_epsilon (answer.before, -0.9039, 5e-5);
  g_assert_cmpfloat_with_epsilon (answer.after, answer.target, 1e-6);
  /* Common practice, no published source: a spacer about as thick as the car was lowered.
   */
  g_assert_cmpfloat_with_epsilon (answer.value, 30.0, 6.0);
}

static void
test_no_answer_within_limits_is_said (void)
{
  g_autoptr (Car) car = fixture_car ("set-m-lowered");
  const RestoreLimits low = { 0.0, 20.0 }, high = { 50.0, 60.0 };
  const RestoreAnswer most = restore_solve (car, 1, RESTORE_ROLL_CENTRE, low, 40.0);
  const RestoreAnswer least = restore_solve (car, 1, RESTORE_ROLL_CENTRE, high, 40.0);
  const RestoreAnswer rack =
      restore_solve (car, 1, RESTORE_BUMP_STEER_BY_RACK, low, 40.0);
  g_autofree char *sentence = restore_sentence (RESTORE_ROLL_CENTRE, &most);
  g_autofree char *rack_sentence = restore_sentence (RESTORE_BUMP_STEER_BY_RACK, &rack);

  g_assert_cmpint (most.status, ==, RESTORE_OUT_OF_LIMITS);
  g_assert_cmpfloat (most.value, ==, 20.0);
  g_assert_cmpfloat (most.after, <, most.target);
  g_assert_cmpint (least.status, ==, RESTORE_OUT_OF_LIMITS);
  g_assert_cmpfloat (least.value, ==, 50.0);
  g_assert_cmpfloat (least.after, >, least.target);
  g_assert_cmpint (rack.status, ==, RESTORE_OUT_OF_LIMITS);
  g_assert_cmpfloat (rack.value, ==, 0.0);
  g_assert_cmpfloat (rack.after, ==, rack.before);
  g_assert_true (g_str_has_prefix (sentence,
                                   "No ball-joint spacer from 0 to 20 mm puts the roll "
                                   "centre back to the baseline's 76.7 mm"));
  g_assert_true (g_str_has_prefix (rack_sentence,
                                   "The rack height that brings bump steer "
                                   "nearest to the baseline's lies outside "
                                   "0 to 20 mm"));
}

/* By stations of the kernel, one by one. NAN where one cannot be assembled. */
static double
rms_difference (const Car *car, const CarSetup *setup, double from, double to)
{
  const CarSetup *both[] = { setup, car_setup (car, 0) };
  double sum = 0.0;

  for (int i = 0; i < TOE_CURVE_STATIONS; i++) {
    double toe[2];

    for (int s = 0; s < 2; s++) {
      const Corner corner = corner_of (car, both[s]);
      const double stands = both[s]->lowering_mm;
      const double place = from + (to - from) * i / (TOE_CURVE_STATIONS - 1.0);
      Station here, standing;

      station_solve (&corner, stands + place, 0.0, &here);
      station_solve (&corner, stands, 0.0, &standing);
      toe[s] =
          here.measures.value[QUANTITY_TOE_IN] - standing.measures.value[QUANTITY_TOE_IN];
    }
    sum += (toe[0] - toe[1]) * (toe[0] - toe[1]);
  }
  return sqrt (sum / TOE_CURVE_STATIONS);
}

static gboolean
check_bump_steer (const Car *car, guint setup, RestoreGoal goal)
{
  const RestoreLimits limits = restore_usual_limits (goal);
  const RestoreAnswer answer = restore_solve (car, setup, goal, limits, 30.0);
  const double width = limits.most - limits.least;
  CarSetup with = *car_setup (car, setup);
  double best = INFINITY;

  g_assert_cmpint (answer.status, !=, RESTORE_NOT_ASSEMBLED);
  g_assert_cmpfloat_with_epsilon (answer.before,
                                  rms_difference (car, &with, answer.from, answer.to),
                                  1e-12);
  restore_apply (&with, goal, answer.value);
  g_assert_cmpfloat_with_epsilon (answer.after,
                                  rms_difference (car, &with, answer.from, answer.to),
                                  1e-12);
  for (int i = 0; i <= 60; i++) {
    restore_apply (&with, goal, limits.least + width * i / 60.0);
    best = fmin (best, rms_difference (car, &with, answer.from, answer.to));
  }
  for (int i = -10; i <= 10; i++) {
    restore_apply (&with, goal,
                   CLAMP (answer.value + 1e-3 * i, limits.least, limits.most));
    best = fmin (best, rms_difference (car, &with, answer.from, answer.to));
  }
  g_assert_cmpfloat (answer.after, <=, best + 1e-13);
  return answer.status == RESTORE_OK;
}

static void
test_no_grid_beats_the_least_squares (void)
{
  Dice dice = { SEED + 1u };
  guint n_found = 0;

  for (int i = 0; i < N_RANDOM / 2; i++) {
    guint setup;
    g_autoptr (Car) car = random_car (&dice, &setup);

    n_found += check_bump_steer (car, setup, RESTORE_BUMP_STEER_BY_SPACER);
    n_found += check_bump_steer (car, setup, RESTORE_BUMP_STEER_BY_RACK);
  }
  g_test_message ("%u of %d within limits", n_found, N_RANDOM);
  g_assert_cmpuint (n_found, >=, N_RANDOM * 3 / 4);
}

/* Set P with its tie rod's inner end @up mm off: toe-in at −60, −40, −20, 20, 40, 60 mm
 * as computed apart from this program (raw constraints in a general-purpose root finder;
 * closed form in 30 digits). */
typedef struct {
  double up, toe[6];
} RackCase;

static const RackCase rack_cases[] = {
  { 5.0, { -0.43322, -0.28327, -0.13933, 0.13600, 0.26995, 0.40315 } },
  { -5.0, { 0.42940, 0.28104, 0.13836, -0.13530, -0.26878, -0.40177 } },
};

static void
check_toe_table (const Corner *corner, const double toe[6])
{
  for (int i = 0; i < 3; i++) {
    const double reach = 60.0 - 20.0 * i;
    const ToeCurveRange range = { 0.0, -reach, reach };
    ToeCurve curve;

    g_assert_true (toe_curve_solve (corner, range, &curve));
    g_assert_cmpfloat_with_epsilon (DEGREES (curve.toe[0]), toe[i], 5.1e-6);
    g_assert_cmpfloat_with_epsilon (DEGREES (curve.toe[TOE_CURVE_STATIONS - 1]),
                                    toe[5 - i], 5.1e-6);
  }
}

/* The baseline has the rack back where the tie rod is parallel and equal to the arm. */
static void
test_a_rack_at_the_wrong_height_is_found (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (rack_cases); i++) {
    const RackCase *c = &rack_cases[i];
    MeasuredCorner measured = set_p;

    measured.at[POINT_TIE_ROD_INNER].z += c->up;
    g_autoptr (Car) car = car_of (&measured);
    const guint setup = add_setup (car, 0.0, TOE_RESET);
    car_setup (car, 0)->toe = TOE_RESET;
    car_setup (car, 0)->corrections.rack_raise_mm = -c->up;
    const Corner corner = corner_of (car, car_setup (car, setup));
    check_toe_table (&corner, c->toe);

    const RestoreAnswer answer =
        restore_solve (car, setup, RESTORE_BUMP_STEER_BY_RACK,
                       restore_usual_limits (RESTORE_BUMP_STEER_BY_RACK), 60.0);
    g_assert_cmpint (answer.status, ==, RESTORE_OK);
    g_assert_cmpfloat_with_epsilon (answer.value, -c->up, 1e-9);
    g_assert_cmpfloat (DEGREES (answer.before), >, 0.2);
    g_assert_cmpfloat_with_epsilon (answer.after, 0.0, 1e-12);
    g_assert_cmpfloat (answer.from, ==, -60.0);
    g_assert_cmpfloat (answer.to, ==, 60.0);
  }
}

/* Central differences of curves that are solved anew. */
static void
check_rates (const Car *car, guint setup, TieRodMove move, RestoreGoal goal)
{
  const CarSetup *now = car_setup (car, setup);
  const ToeCurveRange range = { now->lowering_mm, -30.0, 20.0 };
  const double step = 1e-3;
  Corner corner = corner_of (car, now);
  ToeCurve curve, sides[2];
  double rates[TOE_CURVE_STATIONS];

  g_assert_true (toe_curve_solve (&corner, range, &curve));
  toe_curve_rates (&corner, &curve, move, now->toe == TOE_RESET, rates);
  for (int side = 0; side < 2; side++) {
    CarSetup moved = *now;

    restore_apply (&moved, goal, side == 0 ? -step : step);
    corner = corner_of (car, &moved);
    g_assert_true (toe_curve_solve (&corner, range, &sides[side]));
  }
  for (int i = 0; i < TOE_CURVE_STATIONS; i++)
    g_assert_cmpfloat_with_epsilon (rates[i],
                                    (sides[1].toe[i] - sides[0].toe[i]) / (2.0 * step),
                                    1e-9);
}

static void
test_rates_are_those_of_the_curve (void)
{
  Dice dice = { SEED + 2u };

  for (int i = 0; i < N_RANDOM; i++) {
    guint setup;
    g_autoptr (Car) car = random_car (&dice, &setup);

    car_setup (car, setup)->corrections.camber_bolt_deg = -1.0;
    check_rates (car, setup, TIE_ROD_OUTER_DOWN, RESTORE_BUMP_STEER_BY_SPACER);
    check_rates (car, setup, TIE_ROD_INNER_UP, RESTORE_BUMP_STEER_BY_RACK);
  }
}

/* A car 60 mm down has 20 mm of its 80 mm of bump left. */
static void
test_travel_that_is_not_there_does_not_count (void)
{
  g_autoptr (Car) car = fixture_car ("set-m-lowered");

  car_setup (car, 1)->lowering_mm = 60.0;
  const RestoreAnswer answer =
      restore_solve (car, 1, RESTORE_BUMP_STEER_BY_SPACER, wide, 50.0);
  g_assert_cmpfloat (answer.from, ==, -50.0);
  g_assert_cmpfloat (answer.to, ==, 20.0);
}

static void
test_what_is_right_stays (void)
{
  g_autoptr (Car) car = fixture_car ("set-m-lowered");

  car->baseline = 1;
  for (RestoreGoal goal = 0; goal < N_RESTORE_GOALS; goal++) {
    const RestoreAnswer answer =
        restore_solve (car, 1, goal, restore_usual_limits (goal), 40.0);

    g_assert_cmpint (answer.status, ==, RESTORE_OK);
    g_assert_cmpfloat (answer.value, ==, 0.0);
    g_assert_cmpfloat (answer.after, ==, answer.before);
  }
}

static void
test_what_cannot_be_assembled_is_said (void)
{
  g_autoptr (Car) car = fixture_car ("impossible-setup");

  for (RestoreGoal goal = 0; goal < N_RESTORE_GOALS; goal++)
    for (guint baseline = 0; baseline < 2; baseline++) {
      car->baseline = baseline;
      const RestoreAnswer answer =
          restore_solve (car, 1 - baseline, goal, restore_usual_limits (goal), 40.0);
      g_autofree char *sentence = restore_sentence (goal, &answer);

      g_assert_cmpint (answer.status, ==, RESTORE_NOT_ASSEMBLED);
      g_assert_true (isnan (answer.value));
      g_assert_true (
          g_str_has_prefix (sentence, "The setup or the baseline cannot be assembled"));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/restore/spacer", test_a_spacer_gives_the_baseline_back);
  g_test_add_func ("/restore/flat", test_a_lowered_flat_corner);
  g_test_add_func ("/restore/limits", test_no_answer_within_limits_is_said);
  g_test_add_func ("/restore/least-squares", test_no_grid_beats_the_least_squares);
  g_test_add_func ("/restore/rack", test_a_rack_at_the_wrong_height_is_found);
  g_test_add_func ("/restore/rates", test_rates_are_those_of_the_curve);
  g_test_add_func ("/restore/travel", test_travel_that_is_not_there_does_not_count);
  g_test_add_func ("/restore/right", test_what_is_right_stays);
  g_test_add_func ("/restore/gaps", test_what_cannot_be_assembled_is_said);
  return g_test_run ();
}
