/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Corrections: none changes nothing; each gives the parts the shape that the hardware
 * gives them, and moves the corner the way that the trade expects. */

#include "check-data.h"
#include "random-corner.h"
#include "raw-measures.h"

#include "kernel/construction.h"

#include <gsl/gsl_errno.h>
#include <stdlib.h>
#include <string.h>

#define N_CORNERS 200
#define N_CORRECTIONS (sizeof (Corrections) / sizeof (double))

static double *
correction_at (Corrections *c, size_t i)
{
  return (double *) (gpointer) ((char *) c + i * sizeof (double));
}

static Corner
corrected (const MeasuredCorner *measured, Corrections c)
{
  return check_assemble (measured, (Adjustment){ .corrections = c });
}

/* To the bit, the sign of a zero included. */
static void
assert_same_vector (Vec3 a, Vec3 b)
{
  g_assert_cmpmem (&a, sizeof a, &b, sizeof b);
}

static void
assert_same_number (double a, double b)
{
  g_assert_cmpmem (&a, sizeof a, &b, sizeof b);
}

/* The parts straight from the measured points, without a word of corrections. */
static void
check_parts_as_measured (const MeasuredCorner *m, const Corner *corner)
{
  const Vec3 b = m->at[POINT_BALL_JOINT], a1 = m->at[POINT_ARM_FRONT_PIVOT];
  const Vec3 a = vec3_unit (vec3_sub (m->at[POINT_ARM_REAR_PIVOT], a1));
  const Vec3 foot = vec3_sub (m->at[POINT_STRUT_FOOT], b);
  const Vec3 up =
      vec3_unit (vec3_sub (m->at[POINT_UPPER_MOUNT], m->at[POINT_STRUT_FOOT]));

  assert_same_vector (corner->arm_pivot, a1);
  assert_same_vector (corner->radius_0, vec3_reject (vec3_sub (b, a1), a));
  assert_same_vector (corner->hinge_centre, vec3_sub (b, corner->radius_0));
  assert_same_vector (corner->strut_foot, foot);
  assert_same_vector (corner->strut_direction, up);
  assert_same_vector (corner->strut_perpendicular, vec3_reject (foot, up));
  assert_same_vector (corner->wheel_centre, vec3_sub (m->at[POINT_WHEEL_CENTRE], b));
  assert_same_vector (corner->tie_rod_outer, vec3_sub (m->at[POINT_TIE_ROD_OUTER], b));
  assert_same_vector (corner->tie_rod_inner, m->at[POINT_TIE_ROD_INNER]);
  assert_same_number (corner->tie_rod_length, vec3_distance (m->at[POINT_TIE_ROD_OUTER],
                                                             m->at[POINT_TIE_ROD_INNER]));
}

static void
check_same_stations (const Corner *a, const Corner *b, double travel, double rack)
{
  Station one, other;

  memset (&one, 0, sizeof one);
  memset (&other, 0, sizeof other);
  g_assert_cmpint (station_solve (a, travel, rack, &one), ==,
                   station_solve (b, travel, rack, &other));
  g_assert_cmpmem (&one.pose, sizeof one.pose, &other.pose, sizeof other.pose);
  g_assert_cmpmem (&one.measures, sizeof one.measures, &other.measures,
                   sizeof other.measures);
}

static void
check_zeros (const RandomCase *one)
{
  Adjustment zeros = one->adjustment;
  const Adjustment as_is = { 0 };
  const Corner plain = check_assemble (&one->measured, as_is);
  const Corner without = check_assemble (&one->measured, one->adjustment);

  check_parts_as_measured (&one->measured, &plain);
  for (size_t i = 0; i < N_CORRECTIONS; i++) {
    *correction_at (&zeros.corrections, i) = -0.0;
    const Corner with = check_assemble (&one->measured, zeros);

    check_same_stations (&without, &with, one->travel, one->rack);
  }
}

/* Holds whatever else the setup does, for a zero of either sign, and where a measured
 * height is itself −0. */
static void
test_zero_changes_nothing (void)
{
  Dice dice = { 17 };
  RandomCase flat = { .measured = set_p, .travel = 10.0 };

  for (int i = 0; i < N_CORNERS; i++) {
    RandomCase one = dice_case (&dice);

    one.adjustment.lowering = i % 3 == 0 ? 0.0 : 20.0;
    one.adjustment.toe = i % 2 == 0 ? TOE_AS_MOVED : TOE_RESET;
    check_zeros (&one);
  }
  flat.measured.at[POINT_TIE_ROD_INNER].z = -0.0;
  flat.measured.at[POINT_TIE_ROD_OUTER].z = -0.0;
  check_zeros (&flat);
  g_assert_false (adjustment_changes_linkage (&flat.adjustment));
}

/* The least of any of them makes another linkage. */
static void
test_each_changes_the_linkage (void)
{
  for (size_t i = 0; i < N_CORRECTIONS; i++) {
    Adjustment one = { 0 };

    *correction_at (&one.corrections, i) = -1e-9;
    g_assert_true (adjustment_changes_linkage (&one));
  }
}

static Corrections
random_corrections (Dice *dice)
{
  return (Corrections){ .clamp_tilt = dice_between (dice, -0.03, 0.03),
                        .ball_joint_spacer = dice_between (dice, 0, 25),
                        .tie_rod_end_spacer = dice_between (dice, -10, 20),
                        .front_pivot_raise = dice_between (dice, -15, 15),
                        .rear_pivot_raise = dice_between (dice, -15, 15),
                        .pivot_outboard = dice_between (dice, -8, 8),
                        .rack_raise = dice_between (dice, -15, 15),
                        .tie_rod_lengthening = dice_between (dice, -3, 3),
                        .wheel_spacer = dice_between (dice, -10, 40) };
}

/* The knuckle on the bench with its hardware fitted, at the reference orientation. */
static Pose
knuckle_on_the_bench (const MeasuredCorner *m, const Corrections *c)
{
  const Vec3 foot = m->at[POINT_STRUT_FOOT];
  const Vec3 u = vec3_unit (vec3_sub (m->at[POINT_UPPER_MOUNT], foot));
  /* seen from behind, a point at height v and breadth w */
  const double v = u.z * cos (c->clamp_tilt) + u.y * sin (c->clamp_tilt);
  const double w = u.y * cos (c->clamp_tilt) - u.z * sin (c->clamp_tilt);
  Pose pose = { .ball_joint = m->at[POINT_BALL_JOINT],
                .strut_foot = foot,
                .tie_rod_outer = m->at[POINT_TIE_ROD_OUTER],
                .wheel_centre = m->at[POINT_WHEEL_CENTRE],
                .spin_axis = { cos (m->camber) * sin (m->toe_in),
                               cos (m->camber) * cos (m->toe_in), -sin (m->camber) },
                .strut_direction = { u.x, w, v } };

  pose.ball_joint.z -= c->ball_joint_spacer;
  pose.tie_rod_outer.z -= c->tie_rod_end_spacer;
  pose.wheel_centre = vec3_along (pose.wheel_centre, c->wheel_spacer, pose.spin_axis);
  return pose;
}

static double
volume (Vec3 a, Vec3 b, Vec3 c)
{
  return vec3_dot (a, vec3_cross (b, c));
}

/* Two knuckles are the same body if all that can be measured on them is the same; the
 * volume tells a mirror image. */
static void
check_same_knuckle (const Pose *p, const Pose *bench)
{
  const Vec3 at[2][4] = {
    { p->ball_joint, p->strut_foot, p->tie_rod_outer, p->wheel_centre },
    { bench->ball_joint, bench->strut_foot, bench->tie_rod_outer, bench->wheel_centre },
  };

  for (int i = 0; i < 4; i++)
    for (int j = 0; j < 4; j++) {
      const Vec3 d = vec3_sub (at[0][i], at[0][j]), e = vec3_sub (at[1][i], at[1][j]);

      check_near ("length", i + j, vec3_length (d), vec3_length (e), 1e-9);
      check_near ("along strut", i + j, vec3_dot (d, p->strut_direction),
                  vec3_dot (e, bench->strut_direction), 1e-9);
      check_near ("along spindle", i + j, vec3_dot (d, p->spin_axis),
                  vec3_dot (e, bench->spin_axis), 1e-9);
    }
  check_near ("handedness", 0,
              volume (vec3_sub (at[0][2], at[0][3]), p->strut_direction, p->spin_axis),
              volume (vec3_sub (at[1][2], at[1][3]), bench->strut_direction,
                      bench->spin_axis),
              1e-9);
}

/* Everything that joins the knuckle to the body. */
static void
check_joints (const MeasuredCorner *m, const Adjustment *adjustment, const Pose *p)
{
  const Corrections *c = &adjustment->corrections;
  const MountOffset offset = adjustment->mount;
  const Vec3 a1 = m->at[POINT_ARM_FRONT_PIVOT], a2 = m->at[POINT_ARM_REAR_PIVOT];
  const Vec3 front = vec3_add (a1, (Vec3){ 0, c->pivot_outboard, c->front_pivot_raise });
  const Vec3 rear = vec3_add (a2, (Vec3){ 0, c->pivot_outboard, c->rear_pivot_raise });
  const Vec3 arm = vec3_sub (m->at[POINT_BALL_JOINT], a1);
  const Vec3 arm_now = vec3_sub (p->ball_joint, front);
  const Vec3 mount = vec3_add (m->at[POINT_UPPER_MOUNT],
                               (Vec3){ -offset.rearward, -offset.inboard, offset.up });
  const Vec3 inner =
      vec3_add (m->at[POINT_TIE_ROD_INNER], (Vec3){ 0, p->rack, c->rack_raise });
  const double rod =
      vec3_distance (m->at[POINT_TIE_ROD_OUTER], m->at[POINT_TIE_ROD_INNER]);

  check_near ("arm", 0, vec3_length (arm_now), vec3_length (arm), 1e-9);
  check_near ("arm along hinge", 0,
              vec3_dot (arm_now, vec3_unit (vec3_sub (rear, front))),
              vec3_dot (arm, vec3_unit (vec3_sub (a2, a1))), 1e-9);
  check_near ("mount off strut", 0,
              vec3_length (
                  vec3_cross (vec3_sub (mount, p->strut_foot), p->strut_direction)),
              0.0, 1e-9);
  check_near ("tie rod", 0, vec3_distance (p->tie_rod_outer, inner),
              rod + c->tie_rod_lengthening, 1e-9);
}

/* All of them at once: the solved position is checked against the parts as they lie on
 * the bench, joint by joint, without a second solver. */
static void
test_parts_take_the_shape_of_the_hardware (void)
{
  Dice dice = { 23 };
  int n_solved = 0;

  for (int i = 0; i < N_CORNERS; i++) {
    RandomCase one = dice_case (&dice);
    Station s;

    one.adjustment.corrections = random_corrections (&dice);
    const Corner corner = check_assemble (&one.measured, one.adjustment);
    if (station_solve (&corner, one.travel / 2, one.rack / 2, &s) != POSE_OK)
      continue;
    const Pose bench = knuckle_on_the_bench (&one.measured, &one.adjustment.corrections);
    check_same_knuckle (&s.pose, &bench);
    check_joints (&one.measured, &one.adjustment, &s.pose);
    check_near ("travel", i,
                s.pose.wheel_centre.z - one.measured.at[POINT_WHEEL_CENTRE].z,
                one.travel / 2, 1e-9);
    n_solved++;
  }
  g_assert_cmpint (n_solved, >, N_CORNERS * 9 / 10);
}

/* The points of a corrected corner as it stands, measured anew. */
static MeasuredCorner
measure_anew (const MeasuredCorner *m, const Corrections *c)
{
  const Corner corner = corrected (m, *c);
  MeasuredCorner anew = *m;
  Station s;

  g_assert_cmpint (station_solve (&corner, 0.0, 0.0, &s), ==, POSE_OK);
  anew.at[POINT_ARM_FRONT_PIVOT].y += c->pivot_outboard;
  anew.at[POINT_ARM_FRONT_PIVOT].z += c->front_pivot_raise;
  anew.at[POINT_ARM_REAR_PIVOT].y += c->pivot_outboard;
  anew.at[POINT_ARM_REAR_PIVOT].z += c->rear_pivot_raise;
  anew.at[POINT_BALL_JOINT] = s.pose.ball_joint;
  anew.at[POINT_STRUT_FOOT] = s.pose.strut_foot;
  anew.at[POINT_TIE_ROD_OUTER] = s.pose.tie_rod_outer;
  anew.at[POINT_TIE_ROD_INNER] = s.pose.tie_rod_inner;
  anew.at[POINT_WHEEL_CENTRE] = s.pose.wheel_centre;
  anew.camber = asin (-s.pose.spin_axis.z);
  anew.toe_in = atan2 (s.pose.spin_axis.x, s.pose.spin_axis.y);
  return anew;
}

static bool
counts_from_the_reference (Quantity q)
{
  return q == QUANTITY_HALF_TRACK_CHANGE || q == QUANTITY_WHEELBASE_CHANGE ||
         q == QUANTITY_ARM_ANGLE;
}

static void
check_measured_anew (const MeasuredCorner *m, Corrections c)
{
  const MeasuredCorner anew = measure_anew (m, &c);
  const Corner before = corrected (m, c);
  const Corner after = check_assemble (&anew, (Adjustment){ 0 });

  for (double travel = -60.0; travel <= 60.0; travel += 15.0) {
    const Measures one = check_solve (&before, travel, 0.0);
    const Measures other = check_solve (&after, travel, 0.0);

    for (Quantity q = 0; q < N_QUANTITIES; q++) {
      /* a long swing arm is only as good as its inverse */
      const double tolerance =
          q == QUANTITY_SWING_ARM_LENGTH ? 1e-10 * one.value[q] * one.value[q] : 1e-8;

      if (!counts_from_the_reference (q))
        check_near ("quantity", q, other.value[q], one.value[q], tolerance);
    }
  }
}

static void
test_a_corrected_corner_measured_anew_is_the_same (void)
{
  check_measured_anew (&set_m, (Corrections){ .ball_joint_spacer = 20 });
  check_measured_anew (&set_m, (Corrections){ .tie_rod_end_spacer = 15 });
  check_measured_anew (&set_m, (Corrections){ .clamp_tilt = RADIANS (-1.5) });
  check_measured_anew (&set_m, (Corrections){ .rear_pivot_raise = 12 });
  check_measured_anew (&set_m, (Corrections){ .pivot_outboard = 5, .rack_raise = -8 });
  check_measured_anew (&set_m, (Corrections){ .tie_rod_lengthening = 2 });
  check_measured_anew (&set_m, (Corrections){ .wheel_spacer = 20 });
}

static double
change (Corrections c, Quantity quantity)
{
  const Corner before = check_assemble (&set_m, (Adjustment){ 0 });
  const Corner after = corrected (&set_m, c);
  const Measures was = check_solve (&before, 0, 0), is = check_solve (&after, 0, 0);

  return check_shown (&is, quantity) - check_shown (&was, quantity);
}

/* Common practice, no published source: what each part is fitted for. The tie rod of set
 * M lies behind the axle, which sets the signs of toe. */
static void
test_each_goes_its_way (void)
{
  const Corrections bolt = { .clamp_tilt = RADIANS (-1) };
  const Corrections spacer = { .ball_joint_spacer = 20 };
  const Corrections end = { .tie_rod_end_spacer = 10 }, rack = { .rack_raise = 10 };
  const Corrections longer = { .tie_rod_lengthening = 1 };
  const Corrections bush = { .pivot_outboard = 3 }, wheel = { .wheel_spacer = 15 };

  g_assert_cmpfloat (change (bolt, QUANTITY_CAMBER), <, -0.5);
  g_assert_cmpfloat (change (bolt, QUANTITY_CAMBER), >, -1.0);
  g_assert_cmpfloat (change (spacer, QUANTITY_ROLL_CENTRE_HEIGHT), >, 20.0);
  g_assert_cmpfloat (change (spacer, QUANTITY_CAMBER_GAIN), <, 0.0);
  g_assert_cmpfloat (change (end, QUANTITY_BUMP_STEER), >, 0.0);
  g_assert_cmpfloat (change (rack, QUANTITY_BUMP_STEER), >, 0.0);
  g_assert_cmpfloat (change (longer, QUANTITY_TOE_IN), >, 0.0);
  g_assert_cmpfloat (change (bush, QUANTITY_CAMBER), <, 0.0);
  g_assert_cmpfloat (change (bush, QUANTITY_SAI), >, 0.0);
  check_near ("scrub", 15, change (wheel, QUANTITY_SCRUB_RADIUS), 15, 0.05);
  check_near ("half-track", 15, change (wheel, QUANTITY_HALF_TRACK_CHANGE), 15, 0.05);
}

/* Set P is flat and its strut runs through the ball joint. With the arm held, the line
 * from B to U stands still, and the knuckle's turn about B is a triangle: the axis passes
 * B at |BS| sin τ, so it leans asin (|BS| sin τ / |BU|) against that line. */
static void
test_camber_bolt_on_a_flat_corner (void)
{
  const double bs =
      vec3_distance (set_p.at[POINT_BALL_JOINT], set_p.at[POINT_STRUT_FOOT]);
  const double bu =
      vec3_distance (set_p.at[POINT_BALL_JOINT], set_p.at[POINT_UPPER_MOUNT]);

  for (double tilt = -3.0; tilt <= 3.0; tilt += 0.5) {
    const double t = RADIANS (tilt);
    const Corner corner = corrected (&set_p, (Corrections){ .clamp_tilt = t });
    Pose pose;

    g_assert_cmpint (pose_at_arm_angle (&corner, 0.0, 0.0, &pose), ==, POSE_OK);
    check_near ("camber", tilt, asin (-pose.spin_axis.z), t - asin (bs * sin (t) / bu),
                1e-12);
    check_near ("toe-in", tilt, pose.spin_axis.x, 0.0, 1e-12);
  }
}

/* Set P is flat and its wheel upright as measured, so a spacer of any length moves the
 * contact straight outboard and nothing else: the instant centre stays where it is, and
 * the roll centre lies on the line to it from the new contact. */
static void
test_wheel_spacer_on_a_flat_corner (void)
{
  const Corner bare = check_assemble (&set_p, (Adjustment){ 0 });
  const Measures was = check_solve (&bare, 0, 0);
  static const Quantity same[] = {
    QUANTITY_CAMBER, QUANTITY_TOE_IN,       QUANTITY_CASTER,    QUANTITY_SAI,
    QUANTITY_TRAIL,  QUANTITY_STRUT_LENGTH, QUANTITY_ARM_ANGLE,
  };

  for (double spacer = -20.0; spacer <= 40.0; spacer += 5.0) {
    const Corner corner = corrected (&set_p, (Corrections){ .wheel_spacer = spacer });
    const Measures is = check_solve (&corner, 0, 0);
    const double contact = 740.0 + spacer;

    for (size_t i = 0; i < G_N_ELEMENTS (same); i++)
      check_near ("same", spacer, is.value[same[i]], was.value[same[i]], 1e-12);
    check_near ("contact", spacer, is.contact.y, contact, 1e-12);
    check_near ("half-track", spacer, is.value[QUANTITY_HALF_TRACK_CHANGE], spacer,
                1e-12);
    check_near ("scrub", spacer,
                is.value[QUANTITY_SCRUB_RADIUS] - was.value[QUANTITY_SCRUB_RADIUS],
                spacer, 1e-12);
    check_near ("roll centre", spacer, is.value[QUANTITY_ROLL_CENTRE_HEIGHT],
                contact * was.instant_centre_z / (contact - was.instant_centre_y), 1e-9);
  }
}

/* The wheel of set M leans in, so 20 mm of spacer lift its centre on the knuckle by
 * 20 sin 0.5°; the height as measured stays what travel counts from, and the arm stands
 * as much lower. */
static void
test_travel_with_a_wheel_spacer (void)
{
  const Corner bare = check_assemble (&set_m, (Adjustment){ 0 });
  const Corner spaced = corrected (&set_m, (Corrections){ .wheel_spacer = 20 });
  Station was, is;

  g_assert_cmpint (station_solve (&bare, 0, 0, &was), ==, POSE_OK);
  g_assert_cmpint (station_solve (&spaced, 0, 0, &is), ==, POSE_OK);
  check_near ("centre", 0, is.pose.wheel_centre.z, 300, 1e-9);
  /* the ball joint goes down nearly as far as the wheel's centre would have come up */
  check_near ("ball joint", 0, is.pose.ball_joint.z - was.pose.ball_joint.z,
              -20.0 * sin (RADIANS (0.5)), 0.01);
}

typedef struct {
  double exact, constructed;
} RollCentre;

static RollCentre
roll_centre (const Corner *corner, double travel)
{
  Station s;

  g_assert_cmpint (station_solve (corner, travel, 0.0, &s), ==, POSE_OK);
  return (RollCentre){
    s.measures.value[QUANTITY_ROLL_CENTRE_HEIGHT],
    construction_draw (corner, &s.pose, s.measures.contact).roll_centre_height
  };
}

static void
solve_raw (RawCorner *raw, double travel, const RawPose *start, RawPose *pose)
{
  raw_corner_ask (raw, (MountOffset){ 0 }, travel, 0.0);
  g_assert_cmpfloat (raw_corner_solve (raw, start, 1e-12, pose), <, 1e-9);
}

/* By a root finder and differences of neighbouring solutions, with the arm's hinge up by
 * @raise, little by little. */
static double
raw_roll_centre (double raise)
{
  RawCorner raw;
  RawPose row[RAW_ROW], *middle = &row[RAW_REACH];

  raw_corner_init (&set_m, &raw);
  *middle = raw_corner_measured_pose (&raw);
  for (int i = 1; i <= 5; i++) {
    const RawPose start = *middle;

    raw.hinge.z = set_m.at[POINT_ARM_FRONT_PIVOT].z + raise * i / 5.0;
    solve_raw (&raw, 0.0, &start, middle);
  }
  for (int side = -1; side <= 1; side += 2)
    for (int k = side; abs (k) <= RAW_REACH; k += side)
      solve_raw (&raw, k * RAW_STEP, middle + k - side, middle + k);

  const double height = raw_measures (&raw, row).value[QUANTITY_ROLL_CENTRE_HEIGHT];
  raw_corner_clear (&raw);
  return height;
}

/* Computed independently: both arm pivots up by 10 mm with the wheel held at its height
 * lift the constructed roll centre of set M by 28.9 mm. The exact one rises by less, as
 * the rack stays where it is and the tie rod holds the knuckle back. */
static void
test_raised_arm_pivots (void)
{
  const Corner before = check_assemble (&set_m, (Adjustment){ 0 });
  const Corner after = corrected (&set_m, (Corrections){ .front_pivot_raise = 10,
                                                         .rear_pivot_raise = 10 });
  const RollCentre was = roll_centre (&before, 0.0), is = roll_centre (&after, 0.0);

  check_near ("constructed", 0, is.constructed - was.constructed, 28.9, 0.05);
  g_assert_cmpfloat (is.exact - was.exact, <, is.constructed - was.constructed);
  check_near ("exact", 0, is.exact - was.exact,
              raw_roll_centre (10) - raw_roll_centre (0), 1e-5);
  check_near ("exact", 0, is.exact - was.exact, 26.4, 0.05);
}

/* Computed independently, in closed form. */
static void
test_lowering_a_flat_corner (void)
{
  const Corner corner =
      check_assemble (&set_p, (Adjustment){ .lowering = 30, .toe = TOE_RESET });

  check_near ("as measured", 0, roll_centre (&corner, 0.0).exact, 82.101, 5e-4);
  check_near ("lowered", 30, roll_centre (&corner, 30.0).exact, -0.904, 5e-4);
  check_near ("constructed", 30, roll_centre (&corner, 30.0).constructed, -0.904, 5e-4);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  gsl_set_error_handler_off ();
  g_test_add_func ("/kernel/corrections/zero", test_zero_changes_nothing);
  g_test_add_func ("/kernel/corrections/linkage", test_each_changes_the_linkage);
  g_test_add_func ("/kernel/corrections/parts",
                   test_parts_take_the_shape_of_the_hardware);
  g_test_add_func ("/kernel/corrections/measured-anew",
                   test_a_corrected_corner_measured_anew_is_the_same);
  g_test_add_func ("/kernel/corrections/directions", test_each_goes_its_way);
  g_test_add_func ("/kernel/corrections/camber-bolt", test_camber_bolt_on_a_flat_corner);
  g_test_add_func ("/kernel/corrections/wheel-spacer",
                   test_wheel_spacer_on_a_flat_corner);
  g_test_add_func ("/kernel/corrections/spacer-and-travel",
                   test_travel_with_a_wheel_spacer);
  g_test_add_func ("/kernel/corrections/arm-pivots", test_raised_arm_pivots);
  g_test_add_func ("/kernel/corrections/lowering", test_lowering_a_flat_corner);
  return g_test_run ();
}
