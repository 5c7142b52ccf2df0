/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which way things go: the trade's rules, signs, symmetries, and the alignment bay. */

#include "check-data.h"
#include "random-corner.h"

#include "kernel/mount-place.h"

static double
change (const Measures *from, const Measures *to, Quantity quantity)
{
  return check_shown (to, quantity) - check_shown (from, quantity);
}

static Measures
measured_m (void)
{
  const Corner corner = check_assemble (&set_m, (Adjustment){ 0 });

  return check_solve (&corner, 0.0, 0.0);
}

/* Common practice, no published source; figures computed independently. That toe follows
 * depends on where the tie rod lies: on set M, behind the axle and low, it is toe-in. */
static void
test_mount_inboard (void)
{
  const Corner moved = check_assemble_moved (&set_m, 10, 0, 0);
  const Measures was = measured_m (), is = check_solve (&moved, 0, 0);

  check_near ("camber", 0, change (&was, &is, QUANTITY_CAMBER), -0.863, 5e-4);
  check_near ("SAI", 0, change (&was, &is, QUANTITY_SAI), 0.835, 5e-4);
  check_near ("toe-in", 0, change (&was, &is, QUANTITY_TOE_IN), 0.358, 5e-4);
}

/* A car maker's practice as told in a forum; figures computed independently. */
static void
test_mount_rearward (void)
{
  const Corner moved = check_assemble_moved (&set_m, 0, 10, 0);
  const Measures was = measured_m (), is = check_solve (&moved, 0, 0);

  check_near ("caster", 0, change (&was, &is, QUANTITY_CASTER), 0.878, 5e-4);
  check_near ("trail", 0, change (&was, &is, QUANTITY_TRAIL), 4.64, 5e-3);
  check_near ("camber", 0, change (&was, &is, QUANTITY_CAMBER), 0.008, 5e-4);
}

/* The change that @mount makes to a corner that is else as measured. */
typedef struct {
  double camber, sai, caster, trail, toe; /* toe before a reset */
} MountChange;

static MountChange
change_by_mount (const MeasuredCorner *measured, MountOffset mount)
{
  const Adjustment as_moved = { .toe = TOE_AS_MOVED };
  MountPlace from, to;

  g_assert_cmpint (mount_place_solve (measured, &as_moved, (MountOffset){ 0 }, &from), ==,
                   POSE_OK);
  g_assert_cmpint (mount_place_solve (measured, &as_moved, mount, &to), ==, POSE_OK);
  return (MountChange){
    to.value[QUANTITY_CAMBER] - from.value[QUANTITY_CAMBER],
    to.value[QUANTITY_SAI] - from.value[QUANTITY_SAI],
    to.value[QUANTITY_CASTER] - from.value[QUANTITY_CASTER],
    to.value[QUANTITY_TRAIL] - from.value[QUANTITY_TRAIL],
    to.toe_as_moved - from.toe_as_moved,
  };
}

/* Common practice, no published source: inboard is more negative camber and more SAI,
 * rearward more caster and more trail, with the camber nearly as it was. */
static void
check_trade_rules (const MeasuredCorner *measured)
{
  for (double way = 2.0; way <= 20.0; way += 3.0) {
    const MountChange in = change_by_mount (measured, (MountOffset){ .inboard = way });
    const MountChange out = change_by_mount (measured, (MountOffset){ .inboard = -way });
    const MountChange back = change_by_mount (measured, (MountOffset){ .rearward = way });
    const MountChange ahead =
        change_by_mount (measured, (MountOffset){ .rearward = -way });

    g_assert_true (in.camber < 0.0 && in.sai > 0.0);
    g_assert_true (out.camber > 0.0 && out.sai < 0.0);
    g_assert_true (back.caster > 0.0 && back.trail > 0.0);
    g_assert_true (ahead.caster < 0.0 && ahead.trail < 0.0);
    g_assert_cmpfloat (fabs (back.camber), <, fabs (in.camber) / 5.0);
    g_assert_cmpfloat (fabs (in.caster), <, fabs (back.caster) / 5.0);
  }
}

static void
test_rules_of_the_mount (void)
{
  Dice dice = { 31 };

  check_trade_rules (&set_m);
  check_trade_rules (&set_p);
  check_trade_rules (&worked_set);
  for (int i = 0; i < 100; i++) {
    const MeasuredCorner m = dice_corner (&dice);

    check_trade_rules (&m);
  }
}

/* Toe follows the mount by where the tie rod lies. Set M and the worked set have theirs
 * behind the axle, higher than the ball joint: inboard is toe-in, rearward toe-out
 * (figures computed independently). Ahead of the axle it is the other way about. */
static void
test_toe_by_tie_rod_place (void)
{
  const MeasuredCorner *cars[] = { &set_m, &worked_set };
  const double inboard[] = { 0.358, 0.402 }, way[] = { 10, 15 };
  const double rearward[] = { -0.0277, -0.082 };

  for (size_t i = 0; i < G_N_ELEMENTS (cars); i++) {
    MeasuredCorner ahead = *cars[i];

    for (int k = 0; k < N_POINTS; k++)
      ahead.at[k].x *= -1.0;
    ahead.toe_in *= -1.0;
    const MountChange in = change_by_mount (cars[i], (MountOffset){ .inboard = way[i] });
    const MountChange back =
        change_by_mount (cars[i], (MountOffset){ .rearward = way[i] });
    const MountChange mirrored =
        change_by_mount (&ahead, (MountOffset){ .inboard = way[i] });

    check_near ("toe inboard", i, DEGREES (in.toe), inboard[i], 6e-4);
    check_near ("toe rearward", i, DEGREES (back.toe), rearward[i], 6e-4);
    check_near ("ahead of the axle", i, mirrored.toe, -in.toe, 1e-12);
  }
}

/* Set P with its tie rod @up from the ball joint's height, @behind the axle. */
static MeasuredCorner
flat_with_tie_rod (double up, double behind)
{
  MeasuredCorner m = set_p;

  m.at[POINT_TIE_ROD_OUTER].x = m.at[POINT_TIE_ROD_INNER].x = -behind;
  m.at[POINT_TIE_ROD_OUTER].z += up;
  m.at[POINT_TIE_ROD_INNER].z += up;
  return m;
}

/* On a flat corner the knuckle leans about the ball joint when the mount goes inboard. A
 * tie rod level with the ball joint takes no part in that: toe stays, exactly. Above it
 * the tie rod's end would go inboard too, and its rod keeps it out: behind the axle that
 * is toe-in. Below, or ahead, it is the other way about. Nothing of it changes caster. */
static void
test_toe_on_a_flat_corner (void)
{
  static const struct {
    double up, behind, sign;
  } rows[] = { { 50, 130, 1 }, { -50, 130, -1 }, { 50, -130, -1 }, { -50, -130, 1 } };

  for (double way = -15.0; way <= 15.0; way += 5.0) {
    const MountChange level = change_by_mount (&set_p, (MountOffset){ .inboard = way });

    check_near ("level", way, level.toe, 0.0, 1e-12);
    check_near ("caster", way, level.caster, 0.0, 1e-12);
  }
  for (size_t i = 0; i < G_N_ELEMENTS (rows); i++) {
    const MeasuredCorner m = flat_with_tie_rod (rows[i].up, rows[i].behind);
    const MountChange in = change_by_mount (&m, (MountOffset){ .inboard = 10 });
    /* the lean moves the end sideways by its height, which turns the wheel by its reach
     */
    const double toe = -in.camber * rows[i].up / rows[i].behind;

    g_assert_cmpfloat (in.toe * rows[i].sign, >, RADIANS (0.2));
    check_near ("toe", i, in.toe / toe, 1.0, 0.05);
  }
}

/* Lowering drops the roll centre more than the body and takes camber gain away.
 * Rule: genb.jp; figures computed independently: 84 mm for 30 mm on set M, and 2.77 mm
 * per mm on set P. */
static void
test_lowering (void)
{
  const Corner m = check_assemble (&set_m, (Adjustment){ 0 });
  const Corner p = check_assemble (&set_p, (Adjustment){ 0 });
  const Measures was = measured_m (), is = check_solve (&m, 30, 0);
  const Measures p_was = check_solve (&p, 0, 0), p_is = check_solve (&p, 30, 0);
  const Quantity rc = QUANTITY_ROLL_CENTRE_HEIGHT;

  check_near ("roll centre of M", 30, change (&was, &is, rc), -84, 0.5);
  check_near ("roll centre of P", 30, change (&p_was, &p_is, rc) / -30, 2.77, 5e-3);
  check_near ("gain", 0, check_shown (&was, QUANTITY_CAMBER_GAIN), -0.0175, 5e-5);
  check_near ("gain", 30, check_shown (&is, QUANTITY_CAMBER_GAIN), -0.0109, 5e-5);
}

/* Computed independently: by the millimetre over the first 10 of bump. */
static void
test_caster_grows_in_bump (void)
{
  const Corner corner = check_assemble (&set_m, (Adjustment){ 0 });
  const Measures from = measured_m (), to = check_solve (&corner, 10, 0);

  check_near ("caster", 10, change (&from, &to, QUANTITY_CASTER) / 10, 0.0084, 5e-5);
  g_assert_cmpfloat (from.slope[QUANTITY_CASTER], >, 0.0);
}

/* Caster sends the inner wheel to positive camber and the outer to negative; SAI drifts
 * both positive. Common practice, no published source; figures computed independently. */
static void
test_camber_in_a_turn (void)
{
  const Corner corner = check_assemble (&set_m, (Adjustment){ 0 });
  Station s[3];

  g_assert_cmpuint (sweep_rack (&corner, 0.0, (SweepRange){ -75, 75, 3 }, s), ==, 3);
  const double inner = check_shown (&s[0].measures, QUANTITY_CAMBER);
  const double straight = check_shown (&s[1].measures, QUANTITY_CAMBER);
  const double outer = check_shown (&s[2].measures, QUANTITY_CAMBER);

  check_near ("inner", -75, inner, 3.68, 5e-3);
  check_near ("outer", 75, outer, -0.56, 5e-3);
  g_assert_cmpfloat (inner + outer - 2.0 * straight, >, 0.0);
}

/* No camber, caster nor SAI: steering cannot lean the wheel. Exact. */
static void
test_upright_axis_keeps_camber (void)
{
  MeasuredCorner upright = set_p;
  Station s[21];

  upright.at[POINT_UPPER_MOUNT] = (Vec3){ 0, 700, 835 };
  upright.at[POINT_STRUT_FOOT] = (Vec3){ 0, 690, 412.5 };
  const Corner corner = check_assemble (&upright, (Adjustment){ 0 });
  g_assert_cmpuint (sweep_rack (&corner, 0.0, (SweepRange){ -50, 50, 21 }, s), ==, 21);
  for (int i = 0; i < 21; i++)
    check_near ("camber", s[i].rack, s[i].measures.value[QUANTITY_CAMBER], 0.0, 1e-15);
  g_assert_cmpfloat (fabs (s[0].measures.value[QUANTITY_TOE_IN]), >, RADIANS (15));
}

static double
rise_by_lifted_pivots (const MeasuredCorner *measured)
{
  MeasuredCorner lifted = *measured;

  lifted.at[POINT_ARM_FRONT_PIVOT].z += 10;
  lifted.at[POINT_ARM_REAR_PIVOT].z += 10;
  const Corner before = check_assemble (measured, (Adjustment){ 0 });
  const Corner after = check_assemble (&lifted, (Adjustment){ 0 });
  const Measures was = check_solve (&before, 0, 0), is = check_solve (&after, 0, 0);

  return change (&was, &is, QUANTITY_ROLL_CENTRE_HEIGHT);
}

/* Computed independently: +28.9 mm of roll centre for 10 mm of both pivots with the wheel
 * held, which is the flat construction on set P. In space the rise is less than that
 * while the rack stays where it is; there only the direction is asserted. */
static void
test_lifting_the_arm_pivots (void)
{
  check_near ("flat", 0, rise_by_lifted_pivots (&set_p), 28.9, 0.05);
  g_assert_cmpfloat (rise_by_lifted_pivots (&set_m), >, 10.0);
  g_assert_cmpfloat (rise_by_lifted_pivots (&worked_set), >, 10.0);
}

/* A corner whose steering axis has the given caster and SAI. */
static MeasuredCorner
bay_corner (double caster, double sai, double camber)
{
  MeasuredCorner m = set_m;
  const Vec3 axis = { -650 * tan (caster), -650 * tan (sai), 650 };

  m.at[POINT_UPPER_MOUNT] = vec3_add (m.at[POINT_BALL_JOINT], axis);
  m.camber = camber;
  m.toe_in = 0.0;
  return m;
}

/* Camber with the wheel turned by @steer (left positive, read in plan), by halving the
 * rack's travel. */
static double
camber_at_steer (const Corner *corner, double steer)
{
  double low = -80.0, high = 80.0;
  Station s;

  for (int i = 0; i < 60; i++) {
    const double rack = (low + high) / 2.0;

    g_assert_cmpuint (sweep_rack (corner, 0.0, (SweepRange){ rack, rack, 1 }, &s), ==, 1);
    if (-s.measures.value[QUANTITY_TOE_IN] > steer)
      low = rack;
    else
      high = rack;
  }
  check_near ("steer", steer, -s.measures.value[QUANTITY_TOE_IN], steer, 1e-12);
  return check_shown (&s.measures, QUANTITY_CAMBER);
}

/* Caster read from the change of camber over a swing of the wheel.
 * Source: January, SAE 850219 (1985): definition; formula from memory; table computed
 * independently by turning the spin axis about a fixed line. */
static void
test_alignment_bay_caster (void)
{
  g_autoptr (CheckTable) t = check_table_read ("caster-swing.csv");

  for (guint i = 0; i < t->n_rows; i++) {
    const double caster = check_table_get (t, i, "caster_deg");
    const double steer = RADIANS (check_table_get (t, i, "steer_deg"));
    const MeasuredCorner measured =
        bay_corner (RADIANS (caster), RADIANS (check_table_get (t, i, "sai_deg")),
                    RADIANS (check_table_get (t, i, "camber_deg")));
    const Corner corner = check_assemble (&measured, (Adjustment){ 0 });
    const double left = camber_at_steer (&corner, steer);
    const double right = camber_at_steer (&corner, -steer);
    const double reading = (left - right) / (2.0 * sin (steer));

    check_column (t, i, "camber_left_turn_deg", left, 1e-6);
    check_column (t, i, "camber_right_turn_deg", right, 1e-6);
    check_column (t, i, "caster_estimate_deg", reading, 1e-6);
    check_near ("caster", steer, reading, caster, 0.05);
  }
}

static bool
points_forward (Quantity q)
{
  return q == QUANTITY_TOE_IN || q == QUANTITY_CASTER || q == QUANTITY_TRAIL ||
         q == QUANTITY_WHEELBASE_CHANGE || q == QUANTITY_BUMP_STEER ||
         q == QUANTITY_SIDE_VIEW_SLOPE || q == QUANTITY_ANTI_DIVE ||
         q == QUANTITY_TRAIL_IN_TYRE || q == QUANTITY_TRAIL_AT_CENTRE;
}

static void
assert_like (Quantity quantity, double value, double expected)
{
  /* a long swing arm is only as good as its inverse */
  const double size = quantity == QUANTITY_SWING_ARM_LENGTH
                          ? fmax (1.0, expected * expected / 1e3)
                          : fmax (1.0, fabs (expected));

  check_near ("quantity", quantity, value, expected, 1e-9 * size);
}

/* The mirror of the corner (y → −y), seen after half a turn of the axes about z, is the
 * left corner with x → −x: what is counted along x changes its sign, nothing else moves.
 */
static void
test_mirror (void)
{
  Dice dice = { 3 };

  for (int i = 0; i < 200; i++) {
    const RandomCase one = dice_case (&dice);
    RandomCase other = one;

    for (int k = 0; k < N_POINTS; k++)
      other.measured.at[k].x *= -1.0;
    other.measured.toe_in *= -1.0;
    other.adjustment.mount.rearward *= -1.0;
    const Corner a = check_assemble (&one.measured, one.adjustment);
    const Corner b = check_assemble (&other.measured, other.adjustment);
    const Measures m = check_solve (&a, one.travel, one.rack);
    const Measures mirrored = check_solve (&b, one.travel, one.rack);

    for (Quantity q = 0; q < N_QUANTITIES; q++) {
      const double sign = points_forward (q) ? -1.0 : 1.0;

      assert_like (q, mirrored.value[q], sign * m.value[q]);
      if (q != QUANTITY_SWING_ARM_LENGTH)
        assert_like (q, mirrored.slope[q], sign * m.slope[q]);
    }
  }
}

static int
power_of_length (Quantity q)
{
  switch (quantity_dimension (q)) {
  case DIMENSION_LENGTH:
    return 1;
  case DIMENSION_ANGLE_PER_LENGTH:
  case DIMENSION_PER_LENGTH:
    return -1;
  default:
    return 0;
  }
}

/* A corner twice as large turns by the same angles: every quantity has the dimension that
 * it says it has. */
static void
test_twice_as_large (void)
{
  Dice dice = { 5 };

  for (int i = 0; i < 200; i++) {
    const RandomCase one = dice_case (&dice);
    MeasuredCorner large = one.measured;
    const MountOffset m = one.adjustment.mount;

    for (int k = 0; k < N_POINTS; k++)
      large.at[k] = vec3_scale (large.at[k], 2.0);
    large.loaded_radius *= 2.0;
    const Corner a = check_assemble (&one.measured, one.adjustment);
    const Corner b =
        check_assemble_moved (&large, 2 * m.inboard, 2 * m.rearward, 2 * m.up);
    const Measures small = check_solve (&a, one.travel, one.rack);
    const Measures twice = check_solve (&b, 2 * one.travel, 2 * one.rack);

    for (Quantity q = 0; q < N_QUANTITIES; q++) {
      const double factor = exp2 (power_of_length (q));

      assert_like (q, twice.value[q] / factor, small.value[q]);
      if (q != QUANTITY_SWING_ARM_LENGTH)
        assert_like (q, twice.slope[q] * 2 / factor, small.slope[q]);
    }
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/kernel/directions/mount-inboard", test_mount_inboard);
  g_test_add_func ("/kernel/directions/mount-rearward", test_mount_rearward);
  g_test_add_func ("/kernel/directions/mount-rules", test_rules_of_the_mount);
  g_test_add_func ("/kernel/directions/toe-by-tie-rod", test_toe_by_tie_rod_place);
  g_test_add_func ("/kernel/directions/toe-on-a-flat-corner", test_toe_on_a_flat_corner);
  g_test_add_func ("/kernel/directions/lowering", test_lowering);
  g_test_add_func ("/kernel/directions/caster-in-bump", test_caster_grows_in_bump);
  g_test_add_func ("/kernel/directions/camber-in-a-turn", test_camber_in_a_turn);
  g_test_add_func ("/kernel/directions/upright-axis", test_upright_axis_keeps_camber);
  g_test_add_func ("/kernel/directions/arm-pivots", test_lifting_the_arm_pivots);
  g_test_add_func ("/kernel/alignment-bay/caster", test_alignment_bay_caster);
  g_test_add_func ("/kernel/symmetry/mirror", test_mirror);
  g_test_add_func ("/kernel/symmetry/scale", test_twice_as_large);
  return g_test_run ();
}
