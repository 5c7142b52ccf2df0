/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a bent rod costs: against a second solution (joints as equations in a root finder,
 * twelve equations of balance in GSL, the beam formula by hand), against the slopes of a
 * table computed independently, and against its own limits. */

#include "check-data.h"
#include "raw-balance.h"
#include "raw-measures.h"

#include "kernel/bent-rod.h"

#include <gsl/gsl_errno.h>

#define N_CASES 120
#define ROUNDS 25
#define E 207000.0 /* N/mm², steel: Shigley, Table A-5 (from memory) */

static const Vec3 standing = { 0, 0, 3500 }, cornering = { 0, -2500, 5200 };

/* A rod of 22 mm with 180 mm between mount and guide, 150 between guide and piston. */
static Rod
plain_rod (const LoadedCorner *at)
{
  const double length = at->station.measures.value[QUANTITY_STRUT_LENGTH];

  return (
      Rod){ .outer = 22, .modulus = E, .guide_height = length - 180, .piston_drop = 330 };
}

static LoadedCorner
loaded (const MeasuredCorner *measured, Vec3 contact)
{
  LoadedCorner at = { .load.contact = contact };

  at.corner = check_assemble (measured, (Adjustment){ 0 });
  g_assert_cmpint (station_solve (&at.corner, 0.0, 0.0, &at.station), ==, POSE_OK);
  return at;
}

/* A coil on the strut's axis carries. */
static BentRod
bend (const LoadedCorner *at, const Rod *rod)
{
  const Pose *pose = &at->station.pose;
  const SpringHold hold = spring_hold_alone (&at->corner, pose, CARRIED_BY_COIL);
  BentRod bent;

  g_assert_true (bent_rod_solve (&at->corner, pose, rod, &at->load, &hold, &bent));
  return bent;
}

typedef struct {
  LoadedCorner at;
  RawCorner raw;
  Rod rod;
  SpringHold hold;
  bool is_on_axis;
  Vec3 link_on_knuckle, link_on_arm; /* as measured */
  double travel;
} Case;

static void
dice_rod (Dice *dice, Case *c)
{
  const double length = c->at.station.measures.value[QUANTITY_STRUT_LENGTH];
  const double overhang = dice_between (dice, 80, 200);

  c->rod.outer = dice_between (dice, 18, 25);
  c->rod.inner = dice_between (dice, 0, 12);
  c->rod.modulus = E;
  c->rod.guide_height = length - overhang;
  c->rod.piston_drop = overhang + dice_between (dice, 100, 250);
  c->rod.bush_spacing = dice_between (dice, -100, 100);
}

/* Every other coil leans and stands beside the mount, with strut and bar helping. */
static void
dice_hold (Dice *dice, int i, Case *c)
{
  const Pose *pose = &c->at.station.pose;
  const Vec3 lean = { 0.05, dice_between (dice, -0.1, 0.1), 0 };

  c->is_on_axis = i % 2 == 0;
  c->hold = spring_hold_alone (&c->at.corner, pose, (SpringCarrier) (i % 3));
  c->hold.strut = 150;
  c->hold.torque = dice_between (dice, 0, 3e5);
  c->hold.coil = dice_between (dice, 0, 2000);
  if (c->is_on_axis)
    return;
  c->hold.coil_direction = vec3_unit (vec3_add (pose->strut_direction, lean));
  c->hold.coil_top = vec3_add (c->at.corner.upper_mount, (Vec3){ 5, 20, -30 });
}

/* From the corner as measured to @travel, little by little. */
static RawPose
march (RawCorner *raw, double travel)
{
  RawPose pose = raw_corner_measured_pose (raw);

  for (int i = 1; i <= 5; i++) {
    const RawPose start = pose;

    raw_corner_ask (raw, (MountOffset){ 0 }, travel * i / 5, 0.0);
    g_assert_cmpfloat (raw_corner_solve (raw, &start, 1e-12, &pose), <, 1e-9);
  }
  return pose;
}

static Case
dice_bent_case (Dice *dice, int i)
{
  const MeasuredCorner measured = dice_corner (dice);
  Case c = { .travel = dice_between (dice, -60, 60) };
  const Vec3 *p = measured.at;

  c.at.corner = check_assemble (&measured, (Adjustment){ 0 });
  g_assert_cmpint (station_solve (&c.at.corner, c.travel, 0.0, &c.at.station), ==,
                   POSE_OK);
  raw_corner_init (&measured, &c.raw);
  const RawPose straight = march (&c.raw, c.travel);

  c.link_on_knuckle = vec3_add (p[POINT_STRUT_FOOT], (Vec3){ 60, -20, 50 });
  c.link_on_arm = vec3_add (p[POINT_BALL_JOINT], (Vec3){ 40, -90, 10 });
  c.at.load.contact =
      (Vec3){ dice_between (dice, -1500, 500), dice_between (dice, -2500, 1500),
              dice_between (dice, 1500, 5000) };
  c.at.load.wheel_centre = (Vec3){ 0, 50, -300 };
  c.at.load.on_knuckle = (Vec3){ 0, 0, dice_between (dice, -800, 800) };
  c.at.load.on_knuckle_at = raw_pose_point (&c.raw, &straight, c.link_on_knuckle);
  c.at.load.on_arm = (Vec3){ 0, 30, dice_between (dice, -800, 800) };
  c.at.load.on_arm_at = raw_pose_arm_point (&c.raw, &straight, c.link_on_arm);
  dice_rod (dice, &c);
  dice_hold (dice, i, &c);
  return c;
}

static Pose
raw_to_pose (const RawCorner *raw, const RawPose *x)
{
  const Vec3 *p = raw->measured.at;

  return (Pose){
    .ball_joint = raw_pose_point (raw, x, p[POINT_BALL_JOINT]),
    .strut_foot = raw_pose_point (raw, x, p[POINT_STRUT_FOOT]),
    .tie_rod_outer = raw_pose_point (raw, x, p[POINT_TIE_ROD_OUTER]),
    .tie_rod_inner = raw->inner_end,
    .wheel_centre = raw_pose_point (raw, x, p[POINT_WHEEL_CENTRE]),
    .spin_axis = raw_spin_axis (raw, x),
    .strut_direction = raw_pose_direction (x, raw->strut),
  };
}

/* a² (a + l)/(3 E I) */
static double
compliance (const Rod *rod, double length)
{
  const double I = G_PI * (pow (rod->outer, 4) - pow (rod->inner, 4)) / 64.0;
  const double a = length - rod->guide_height;
  const double l = rod->bush_spacing > 0 ? rod->bush_spacing : rod->piston_drop - a;

  return a * a * (a + l) / (3.0 * rod->modulus * I);
}

/* One round of the second way. The tube is hung on the mount by the end of a rod that is
 * bent by @shift: in the tube's frame the end stands off the axis, and with it the whole
 * line from foot to end. The mount itself stays where it is. */
static Vec3
bend_raw (const Case *c, Vec3 shift, RawPose *x)
{
  const Vec3 foot = c->raw.measured.at[POINT_STRUT_FOOT];
  const Vec3 here = raw_pose_point (&c->raw, x, foot);
  const Vec3 bent_foot = raw_pose_point_as_measured (&c->raw, x, vec3_add (here, shift));
  const RawPose start = *x;
  RawCorner raw = c->raw;
  Corner corner = c->at.corner;
  CornerLoad load = c->at.load;
  SpringHold hold = c->hold;

  raw.foot = vec3_sub (bent_foot, raw.wheel);
  g_assert_cmpfloat (raw_corner_solve (&raw, &start, 1e-12, x), <, 1e-9);
  const Pose pose = raw_to_pose (&raw, x);

  load.on_knuckle_at = raw_pose_point (&raw, x, c->link_on_knuckle);
  load.on_arm_at = raw_pose_arm_point (&raw, x, c->link_on_arm);
  corner.upper_mount = vec3_sub (raw.mount, shift);
  if (c->is_on_axis) {
    hold.coil_top = corner.upper_mount;
    hold.coil_direction = pose.strut_direction;
  }
  const JointForces f = raw_balance (&corner, &pose, &load, &hold);
  const double length = vec3_distance (corner.upper_mount, pose.strut_foot);

  return vec3_scale (f.side, compliance (&c->rod, length));
}

static void
check_second_way (const Case *c, int i)
{
  RawCorner raw = c->raw;
  const RawPose straight = march (&raw, c->travel);
  RawPose x = straight;
  Vec3 shift = { 0 };
  BentRod bent;

  g_assert_true (bent_rod_solve (&c->at.corner, &c->at.station.pose, &c->rod, &c->at.load,
                                 &c->hold, &bent));
  for (int round = 0; round < ROUNDS; round++)
    shift = bend_raw (c, shift, &x);

  const Vec3 before = raw_spin_axis (&raw, &straight), after = raw_spin_axis (&raw, &x);

  check_vector ("shift", i, bent.shift, shift, 1e-9);
  check_vector ("spin axis", i, bent.pose.spin_axis, after, 1e-11);
  check_near ("camber", i, bent.camber_change, asin (before.z) - asin (after.z), 1e-11);
  check_near ("toe", i, bent.toe_change,
              atan2 (after.x, after.y) - atan2 (before.x, before.y), 1e-11);
  check_near ("travel", i, bent.pose.travel, c->travel, 1e-9);
  check_near ("deflection", i, bent.bending.deflection, vec3_length (shift), 1e-9);
}

static void
test_second_way (void)
{
  Dice dice = { 330 };

  for (int i = 0; i < N_CASES; i++) {
    Case c = dice_bent_case (&dice, i);

    check_second_way (&c, i);
    raw_corner_clear (&c.raw);
  }
}

/* By hand. Standing, the contact lies outboard of the ball joint and its load tips the
 * wheel's top inboard: the body holds the tube's top by pushing it outboard. The rod's
 * end goes outboard off the tube's axis; the mount stays, so the tube's top goes inboard,
 * and the wheel leans in: camber becomes more negative. In a corner the tyre's side force
 * pulls the contact inboard and tips the top out: all the other way. Camber is lost. */
static void
test_which_way (void)
{
  const LoadedCorner stands = loaded (&set_p, standing);
  const LoadedCorner corners = loaded (&set_p, cornering);
  const Rod rod = plain_rod (&stands);
  const BentRod s = bend (&stands, &rod), t = bend (&corners, &rod);

  g_assert_cmpfloat (s.forces.side.y, >, 100);
  g_assert_cmpfloat (s.shift.y, >, 0.1);
  g_assert_cmpfloat (s.camber_change, <, RADIANS (-0.01));
  g_assert_cmpfloat (t.forces.side.y, <, -100);
  g_assert_cmpfloat (t.shift.y, <, -0.1);
  g_assert_cmpfloat (t.camber_change, >, RADIANS (0.01));
}

/* Set M's table of moved mounts, computed independently: 10 mm inboard −0.8630° of camber
 * and 0.3581° of toe-in, rearward 0.0078 and −0.0277, up 0.1366 and −0.0555. A shift of
 * less than a mm goes by those slopes to some 3 %. */
static void
test_slopes_of_the_table (void)
{
  const Vec3 loads[] = { standing, cornering };

  for (size_t i = 0; i < G_N_ELEMENTS (loads); i++) {
    const LoadedCorner at = loaded (&set_m, loads[i]);
    const Rod rod = plain_rod (&at);
    const BentRod b = bend (&at, &rod);
    /* the mount goes against the shift: outboard shift, inboard mount */
    const double inboard = b.shift.y, rearward = b.shift.x, up = -b.shift.z;
    const double camber = -0.08630 * inboard + 0.00078 * rearward + 0.01366 * up;
    const double toe = 0.03581 * inboard - 0.00277 * rearward - 0.00555 * up;

    check_near ("camber", (double) i, DEGREES (b.camber_change), camber,
                0.03 * fabs (camber));
    check_near ("toe", (double) i, DEGREES (b.toe_change), toe, 0.05 * fabs (toe));
  }
}

/* Set P: by the side force of the straight rod the end moves 0.316691 mm (computed
 * independently); with the load solved anew a few per cent more or less. */
static void
test_set_p_shift (void)
{
  const LoadedCorner at = loaded (&set_p, standing);
  const Rod rod = plain_rod (&at);
  Rod stiff = rod;

  stiff.modulus = 1e4 * E;
  check_near ("stiff", 0, bend (&at, &stiff).bending.deflection * 1e4, 0.316691, 1e-5);
  check_near ("steel", 0, bend (&at, &rod).bending.deflection, 0.316691, 0.05 * 0.316691);
  g_assert_cmpfloat (bend (&at, &rod).bending.deflection, !=, 0.316691);
}

static void
test_stiff_rod_changes_nothing (void)
{
  const LoadedCorner at = loaded (&set_m, cornering);
  const JointForces straight = check_balance_alone (&at, CARRIED_BY_COIL);
  Rod rod = plain_rod (&at);

  rod.modulus = INFINITY;
  const BentRod b = bend (&at, &rod);

  g_assert_true (b.camber_change == 0.0 && b.toe_change == 0.0);
  g_assert_true (vec3_length (b.shift) == 0.0 && b.bending.deflection == 0.0);
  check_same_forces (&b.forces, &straight, 0, 0.0, 1.0);
  check_vector ("wheel", 0, b.pose.wheel_centre, at.station.pose.wheel_centre, 0.0);
}

static double
cost (const LoadedCorner *at, double modulus)
{
  Rod rod = plain_rod (at);

  rod.modulus = modulus;
  return bend (at, &rod).camber_change;
}

/* Twice the modulus, half the cost: off by a share that goes with the compliance, and so
 * is a hundredth for a rod a hundred times as stiff. */
static void
test_twice_the_modulus (void)
{
  const LoadedCorner at = loaded (&set_m, cornering);
  const double steel = cost (&at, E) / cost (&at, 2 * E) - 2.0;
  const double stiff = cost (&at, 100 * E) / cost (&at, 200 * E) - 2.0;

  g_assert_cmpfloat (fabs (steel), <, 0.1);
  g_assert_cmpfloat (fabs (steel), >, 1e-6);
  check_near ("hundredth", 0, stiff / steel, 0.01, 0.002);
}

static void
test_sizes (void)
{
  const LoadedCorner at = loaded (&set_m, cornering);
  const Rod rod = plain_rod (&at);
  Rod thick = rod, hollow = rod;

  thick.outer = 25;
  hollow.inner = 14;
  const double plain = bend (&at, &rod).camber_change;

  g_assert_cmpfloat (plain, >, 0.0);
  g_assert_cmpfloat (bend (&at, &thick).camber_change, <, plain);
  g_assert_cmpfloat (bend (&at, &hollow).camber_change, >, plain);
  /* I of 25 over I of 22, less what the load gives way */
  check_near ("diameter", 0, plain / bend (&at, &thick).camber_change,
              pow (25.0 / 22.0, 4), 0.05);
}

/* What stays: the travel, the tie rod's length, the mount in the body, the balance. */
static void
test_what_stays (void)
{
  const LoadedCorner at = loaded (&set_m, cornering);
  const Rod rod = plain_rod (&at);
  const BentRod b = bend (&at, &rod);
  const Vec3 end =
      vec3_add (vec3_along (b.pose.strut_foot,
                            vec3_dot (vec3_sub (at.corner.upper_mount, b.pose.strut_foot),
                                      b.pose.strut_direction),
                            b.pose.strut_direction),
                b.shift);

  check_near ("travel", 0, b.pose.travel, at.station.pose.travel, 1e-10);
  check_near ("tie rod", 0, vec3_distance (b.pose.tie_rod_outer, b.pose.tie_rod_inner),
              at.corner.tie_rod_length, 1e-10);
  check_vector ("the rod's end is at the mount", 0, end, at.corner.upper_mount, 1e-9);
  check_vector ("shift along the side force", 0,
                vec3_cross (b.shift, vec3_unit (b.forces.side)), (Vec3){ 0 }, 1e-12);
}

/* A coil along the free line leaves the rod straight. */
static void
test_coil_on_the_free_line (void)
{
  const LoadedCorner at = loaded (&set_m, standing);
  const JointForces on_axis = check_balance_alone (&at, CARRIED_BY_COIL);
  const Rod rod = plain_rod (&at);
  SpringHold hold = spring_hold_alone (&at.corner, &at.station.pose, CARRIED_BY_COIL);
  BentRod b;

  hold.coil_direction = joint_forces_free_line (&on_axis);
  g_assert_true (
      bent_rod_solve (&at.corner, &at.station.pose, &rod, &at.load, &hold, &b));
  check_vector ("shift", 0, b.shift, (Vec3){ 0 }, 1e-12);
  check_near ("camber", 0, b.camber_change, 0.0, 1e-14);
}

static void
check_no_answer (const LoadedCorner *at, const Rod *rod)
{
  const Pose *pose = &at->station.pose;
  const SpringHold hold = spring_hold_alone (&at->corner, pose, CARRIED_BY_COIL);
  BentRod b;

  g_assert_false (bent_rod_solve (&at->corner, pose, rod, &at->load, &hold, &b));
  for (size_t i = 0; i < sizeof b / sizeof (double); i++)
    g_assert_true (isnan (((double *) &b)[i]));
}

static void
test_no_answer (void)
{
  LoadedCorner at = loaded (&set_m, cornering);
  const Rod rod = plain_rod (&at);
  Rod none = rod, short_rod = rod, wire = rod;

  none.outer = 0;
  short_rod.piston_drop = 170;
  wire.outer = 4; /* the load bends it out of the corner's reach */
  check_no_answer (&at, &none);
  check_no_answer (&at, &short_rod);
  check_no_answer (&at, &wire);
  /* a dead point: nothing steers */
  at.corner.tie_rod_inner =
      vec3_along (at.station.pose.ball_joint, 0.2,
                  vec3_sub (at.corner.upper_mount, at.station.pose.ball_joint));
  check_no_answer (&at, &rod);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  gsl_set_error_handler_off ();
  g_test_add_func ("/kernel/bent-rod/second-way", test_second_way);
  g_test_add_func ("/kernel/bent-rod/which-way", test_which_way);
  g_test_add_func ("/kernel/bent-rod/slopes-of-the-table", test_slopes_of_the_table);
  g_test_add_func ("/kernel/bent-rod/set-p-shift", test_set_p_shift);
  g_test_add_func ("/kernel/bent-rod/stiff-rod", test_stiff_rod_changes_nothing);
  g_test_add_func ("/kernel/bent-rod/twice-the-modulus", test_twice_the_modulus);
  g_test_add_func ("/kernel/bent-rod/sizes", test_sizes);
  g_test_add_func ("/kernel/bent-rod/what-stays", test_what_stays);
  g_test_add_func ("/kernel/bent-rod/free-line", test_coil_on_the_free_line);
  g_test_add_func ("/kernel/bent-rod/no-answer", test_no_answer);
  return g_test_run ();
}
