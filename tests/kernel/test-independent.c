/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The kernel against a second solution of the same corner: joints as equations, a
 * general-purpose root finder, central differences. Computed independently. */

#include "random-corner.h"
#include "raw-measures.h"

#include "kernel/sweep.h"

#include <gsl/gsl_errno.h>

#include <glib.h>

#define N_CORNERS 240
#define CASES_EACH 4
#define MARCH 5
#define POINT_TOLERANCE 1e-8 /* mm */

typedef struct {
  RawCorner raw;
  RawPose row[RAW_ROW];
  Corner corner;
  Station station;
} Pair;

static void
solve_tightly (RawCorner *raw, const RawPose *start, RawPose *pose)
{
  const double left = raw_corner_solve (raw, start, 1e-12, pose);

  g_assert_cmpfloat (left, <, 1e-9);
}

/* From the corner as measured to what is asked, little by little. */
static void
march (const RandomCase *c, RawCorner *raw, RawPose *pose)
{
  const MountOffset m = c->adjustment.mount;

  *pose = raw_corner_measured_pose (raw);
  for (int i = 1; i <= MARCH; i++) {
    const double t = (double) i / MARCH;
    const MountOffset mount = { m.inboard * t, m.rearward * t, m.up * t };
    const RawPose start = *pose;

    raw_corner_ask (raw, mount, c->travel * t, c->rack * t);
    solve_tightly (raw, &start, pose);
  }
}

static void
solve_row (const RandomCase *c, Pair *pair)
{
  RawPose *middle = &pair->row[RAW_REACH];

  march (c, &pair->raw, middle);
  for (int side = -1; side <= 1; side += 2)
    for (int k = side; abs (k) <= RAW_REACH; k += side) {
      raw_corner_ask (&pair->raw, c->adjustment.mount, c->travel + k * RAW_STEP, c->rack);
      solve_tightly (&pair->raw, middle + k - side, middle + k);
    }
}

static void
solve_both (const RandomCase *c, Pair *pair)
{
  raw_corner_init (&c->measured, &pair->raw);
  raw_space_wheel (&pair->raw, c->adjustment.corrections.wheel_spacer);
  solve_row (c, pair);

  g_assert_cmpint (corner_assemble (&c->measured, &c->adjustment, &pair->corner).status,
                   ==, CORNER_OK);
  g_assert_cmpint (station_solve (&pair->corner, c->travel, c->rack, &pair->station), ==,
                   POSE_OK);
}

static void
assert_same (Vec3 a, Vec3 b, double tolerance)
{
  g_assert_cmpfloat (vec3_distance (a, b), <, tolerance);
}

static void
compare_points (const Pair *pair)
{
  const RawPose *raw_pose = &pair->row[RAW_REACH];
  const RawCorner *raw = &pair->raw;
  const Vec3 *p = raw->measured.at;
  const Pose *pose = &pair->station.pose;
  const double e = POINT_TOLERANCE;

  assert_same (raw_pose_point (raw, raw_pose, p[POINT_BALL_JOINT]), pose->ball_joint, e);
  assert_same (raw_pose_point (raw, raw_pose, p[POINT_STRUT_FOOT]), pose->strut_foot, e);
  assert_same (raw_pose_point (raw, raw_pose, p[POINT_TIE_ROD_OUTER]),
               pose->tie_rod_outer, e);
  assert_same (raw_pose_point (raw, raw_pose, raw->wheel), pose->wheel_centre, e);
  assert_same (raw_contact (raw, raw_pose), pair->station.measures.contact, e);
  assert_same (raw_spin_axis (raw, raw_pose), pose->spin_axis, 1e-11);
  assert_same (raw_pose_direction (raw_pose, raw->strut), pose->strut_direction, 1e-11);
}

typedef struct {
  double value, slope;
} Tolerance;

/* What a difference of sixth order over points good to 1e-12 mm can promise, with a
 * hundredfold in hand. The roll centre carries a factor of half the track. */
static Tolerance
tolerance_of (Quantity quantity)
{
  if (quantity == QUANTITY_ROLL_CENTRE_HEIGHT)
    return (Tolerance){ 1e-5, 1e-6 };
  switch (quantity_dimension (quantity)) {
  case DIMENSION_ANGLE:
    return (Tolerance){ 1e-11, 1e-9 };
  case DIMENSION_LENGTH:
    return (Tolerance){ 1e-8, 1e-7 };
  case DIMENSION_PERCENT:
    return (Tolerance){ 1e-5, 1e-6 };
  case DIMENSION_RATIO:
    return (Tolerance){ 1e-8, 1e-8 };
  case DIMENSION_ANGLE_PER_LENGTH:
    return (Tolerance){ 1e-9, 1e-10 };
  case DIMENSION_PER_LENGTH:
    return (Tolerance){ 1e-10, 1e-11 };
  }
  g_assert_not_reached ();
}

/* The length goes through infinity and cannot be differenced: held to its inverse, which
 * is compared with the second solution. */
static void
compare_swing_arm (const Measures *m)
{
  const double inverse = m->value[QUANTITY_SWING_ARM_CURVATURE];
  const double slope = -m->slope[QUANTITY_SWING_ARM_CURVATURE] / (inverse * inverse);

  g_assert_cmpfloat_with_epsilon (m->value[QUANTITY_SWING_ARM_LENGTH] * inverse, 1.0,
                                  1e-13);
  g_assert_cmpfloat_with_epsilon (m->slope[QUANTITY_SWING_ARM_LENGTH] / slope, 1.0,
                                  1e-11);
}

static void
compare_measures (const Pair *pair)
{
  const RawMeasures raw = raw_measures (&pair->raw, pair->row);
  const Measures *m = &pair->station.measures;

  for (Quantity i = 0; i < N_QUANTITIES; i++) {
    const Tolerance t = tolerance_of (i);

    if (i == QUANTITY_SWING_ARM_LENGTH)
      continue;
    g_assert_cmpfloat_with_epsilon (raw.value[i], m->value[i], t.value);
    g_assert_cmpfloat_with_epsilon (raw.slope[i], m->slope[i], t.slope);
  }
  compare_swing_arm (m);
}

/* Every other case with a wheel spacer, or the wheel set inboard by another offset. */
static void
test_points_quantities_rates (void)
{
  Dice dice = { 20250101 };

  for (int i = 0; i < N_CORNERS; i++) {
    const MeasuredCorner measured = dice_corner (&dice);

    for (int j = 0; j < CASES_EACH; j++) {
      RandomCase c = dice_case (&dice);
      Pair pair;

      c.measured = measured;
      if (j % 2 == 1)
        c.adjustment.corrections.wheel_spacer = dice_between (&dice, -20.0, 40.0);
      solve_both (&c, &pair);
      compare_points (&pair);
      compare_measures (&pair);
      raw_corner_clear (&pair.raw);
    }
  }
}

/* Given the tie-rod length that the kernel found, the root finder finds the static toe.
 */
static void
test_toe_reset_length (void)
{
  Dice dice = { 7 };

  for (int i = 0; i < N_CORNERS; i++) {
    RandomCase c = dice_case (&dice);
    Corner corner;
    RawCorner raw;
    RawPose pose;

    c.adjustment.toe = TOE_RESET;
    c.adjustment.lowering = c.travel;
    c.adjustment.corrections.wheel_spacer = i % 2 == 0 ? 0.0 : 20.0;
    c.rack = 0.0;
    g_assert_cmpint (corner_assemble (&c.measured, &c.adjustment, &corner).status, ==,
                     CORNER_OK);
    raw_corner_init (&c.measured, &raw);
    raw_space_wheel (&raw, c.adjustment.corrections.wheel_spacer);
    raw.tie_rod += corner_tie_rod_change (&corner);
    march (&c, &raw, &pose);

    const Vec3 n = raw_spin_axis (&raw, &pose);
    g_assert_cmpfloat_with_epsilon (atan2 (n.x, n.y), c.measured.toe_in, 1e-11);
    raw_corner_clear (&raw);
  }
}

static Vec3
across (Vec3 v)
{
  return (Vec3){ v.x, -v.y, v.z };
}

/* The right corner, solved by itself on the other side of the car with its own inboard
 * and the rack moved the other way, is the mirror of the left one. */
static void
test_right_corner_is_the_mirror (void)
{
  Dice dice = { 11 };

  for (int i = 0; i < N_CORNERS; i++) {
    const RandomCase left = dice_case (&dice);
    RandomCase right = left;
    Corner corner;
    Station station;
    RawCorner raw;
    RawPose pose;

    for (int k = 0; k < N_POINTS; k++)
      right.measured.at[k] = across (left.measured.at[k]);
    right.rack = -left.rack;
    right.adjustment.mount.inboard = -left.adjustment.mount.inboard;
    raw_corner_init (&right.measured, &raw);
    march (&right, &raw, &pose);

    corner_assemble (&left.measured, &left.adjustment, &corner);
    g_assert_cmpint (station_solve (&corner, left.travel, left.rack, &station), ==,
                     POSE_OK);
    const Vec3 *p = raw.measured.at;
    assert_same (across (raw_pose_point (&raw, &pose, p[POINT_WHEEL_CENTRE])),
                 station.pose.wheel_centre, POINT_TOLERANCE);
    assert_same (across (raw_pose_point (&raw, &pose, p[POINT_BALL_JOINT])),
                 station.pose.ball_joint, POINT_TOLERANCE);
    assert_same (across (raw_pose_point (&raw, &pose, p[POINT_TIE_ROD_OUTER])),
                 station.pose.tie_rod_outer, POINT_TOLERANCE);
    assert_same (across (raw_pose_point (&raw, &pose, p[POINT_STRUT_FOOT])),
                 station.pose.strut_foot, POINT_TOLERANCE);
    raw_corner_clear (&raw);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  gsl_set_error_handler_off ();
  g_test_add_func ("/kernel/independent/points-quantities-rates",
                   test_points_quantities_rates);
  g_test_add_func ("/kernel/independent/toe-reset-length", test_toe_reset_length);
  g_test_add_func ("/kernel/independent/right-corner", test_right_corner_is_the_mirror);
  return g_test_run ();
}
