/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What must hold of every corner at every place, whatever the numbers are. */

#include "check-data.h"
#include "random-corner.h"

#include <string.h>

#define N_CORNERS 200
#define N_RIGID 15

static Vec3
moved_mount (const RandomCase *c)
{
  const MountOffset m = c->adjustment.mount;

  return vec3_add (c->measured.at[POINT_UPPER_MOUNT],
                   (Vec3){ -m.rearward, -m.inboard, m.up });
}

/* Lengths that the parts of the corner keep: in the knuckle, of the arm, of the tie rod;
 * the mount's distance from the strut axis; and the knuckle's points along the axis. */
static void
rigid_lengths (const MeasuredCorner *m, const Pose *p, Vec3 mount, double length[N_RIGID])
{
  const Vec3 u = p->strut_direction, from_foot = vec3_sub (mount, p->strut_foot);
  const double lengths[N_RIGID] = {
    vec3_distance (p->ball_joint, p->strut_foot),
    vec3_distance (p->ball_joint, p->tie_rod_outer),
    vec3_distance (p->ball_joint, p->wheel_centre),
    vec3_distance (p->strut_foot, p->tie_rod_outer),
    vec3_distance (p->strut_foot, p->wheel_centre),
    vec3_distance (p->tie_rod_outer, p->wheel_centre),
    vec3_distance (p->ball_joint, m->at[POINT_ARM_FRONT_PIVOT]),
    vec3_distance (p->ball_joint, m->at[POINT_ARM_REAR_PIVOT]),
    vec3_distance (p->tie_rod_outer, p->tie_rod_inner),
    vec3_length (vec3_reject (from_foot, u)),
    vec3_dot (vec3_sub (p->ball_joint, p->strut_foot), u),
    vec3_dot (vec3_sub (p->wheel_centre, p->strut_foot), u),
    vec3_dot (vec3_sub (p->wheel_centre, p->ball_joint), p->spin_axis),
    vec3_dot (vec3_sub (p->wheel_centre, p->tie_rod_outer), p->spin_axis),
    1000.0 * vec3_dot (u, p->spin_axis),
  };

  memcpy (length, lengths, sizeof lengths);
}

static Pose
pose_as_measured (const MeasuredCorner *m)
{
  const double cos_camber = cos (m->camber);

  return (Pose){
    .ball_joint = m->at[POINT_BALL_JOINT],
    .strut_foot = m->at[POINT_STRUT_FOOT],
    .tie_rod_outer = m->at[POINT_TIE_ROD_OUTER],
    .tie_rod_inner = m->at[POINT_TIE_ROD_INNER],
    .wheel_centre = m->at[POINT_WHEEL_CENTRE],
    .spin_axis = { cos_camber * sin (m->toe_in), cos_camber * cos (m->toe_in),
                   -sin (m->camber) },
    .strut_direction =
        vec3_unit (vec3_sub (m->at[POINT_UPPER_MOUNT], m->at[POINT_STRUT_FOOT])),
  };
}

static void
test_rigid_lengths (void)
{
  Dice dice = { 101 };

  for (int i = 0; i < N_CORNERS; i++) {
    const RandomCase c = dice_case (&dice);
    const Corner corner = check_assemble (&c.measured, c.adjustment);
    const Pose home = pose_as_measured (&c.measured);
    double before[N_RIGID], now[N_RIGID];
    Station s[33];

    rigid_lengths (&c.measured, &home, c.measured.at[POINT_UPPER_MOUNT], before);
    g_assert_cmpuint (sweep_travel (&corner, (SweepRange){ -80, 80, 33 }, c.rack, s), ==,
                      33);
    for (int k = 0; k < 33; k++) {
      rigid_lengths (&c.measured, &s[k].pose, moved_mount (&c), now);
      for (int l = 0; l < N_RIGID; l++)
        check_near ("length", l, now[l], before[l], 1e-9);
      check_near ("spin axis", i, vec3_length (s[k].pose.spin_axis), 1.0, 1e-12);
      check_near ("travel", i, s[k].pose.travel, s[k].travel, 1e-11);
    }
  }
}

/* Romberg's table of central differences over 4, 2 and 1 mm. */
static double
differenced (const Corner *corner, const Station *at, Quantity quantity)
{
  double d[3];

  for (int i = 0; i < 3; i++) {
    const double h = 4.0 / (1 << i);
    const Measures up = check_solve (corner, at->travel + h, at->rack);
    const Measures down = check_solve (corner, at->travel - h, at->rack);

    d[i] = (up.value[quantity] - down.value[quantity]) / (2.0 * h);
  }
  const double coarse = (4.0 * d[1] - d[0]) / 3.0, fine = (4.0 * d[2] - d[1]) / 3.0;
  return (16.0 * fine - coarse) / 15.0;
}

static double
slope_tolerance (Quantity quantity)
{
  switch (quantity_dimension (quantity)) {
  case DIMENSION_LENGTH:
  case DIMENSION_PERCENT:
    return 1e-6;
  case DIMENSION_ANGLE_PER_LENGTH:
  case DIMENSION_PER_LENGTH:
    return 1e-11;
  default:
    return 1e-9;
  }
}

/* The swing arm's length goes through infinity; its inverse is the curve to difference.
 */
static void
test_slopes_are_derivatives (void)
{
  Dice dice = { 102 };

  for (int i = 0; i < 60; i++) {
    const RandomCase c = dice_case (&dice);
    const Corner corner = check_assemble (&c.measured, c.adjustment);
    Station s;

    g_assert_cmpint (station_solve (&corner, c.travel, c.rack, &s), ==, POSE_OK);
    for (Quantity q = 0; q < N_QUANTITIES; q++)
      if (q != QUANTITY_SWING_ARM_LENGTH)
        check_near ("slope", q, s.measures.slope[q], differenced (&corner, &s, q),
                    slope_tolerance (q));
  }
}

/* A quantity that is a rate is the slope of the quantity that it is the rate of. */
static void
test_rates_are_slopes (void)
{
  Dice dice = { 103 };

  for (int i = 0; i < N_CORNERS; i++) {
    const RandomCase c = dice_case (&dice);
    const Corner corner = check_assemble (&c.measured, c.adjustment);
    const Measures m = check_solve (&corner, c.travel, c.rack);

    check_near ("camber gain", i, m.value[QUANTITY_CAMBER_GAIN], m.slope[QUANTITY_CAMBER],
                1e-15);
    check_near ("bump steer", i, m.value[QUANTITY_BUMP_STEER], m.slope[QUANTITY_TOE_IN],
                1e-15);
    check_near ("strut ratio", i, m.value[QUANTITY_STRUT_RATIO],
                -m.slope[QUANTITY_STRUT_LENGTH], 1e-14);
    check_near ("arm ratio", i, m.value[QUANTITY_ARM_RATIO], m.slope[QUANTITY_ARM_ANGLE],
                1e-15);
  }
}

/* Which side of the plane of steering axis and tie-rod inner end the outer end is on. */
static double
side_of (const Pose *p, Vec3 mount)
{
  const Vec3 axis = vec3_sub (mount, p->ball_joint);
  const Vec3 r = vec3_sub (p->tie_rod_inner, p->ball_joint);
  const Vec3 t = vec3_sub (p->tie_rod_outer, p->ball_joint);

  return vec3_dot (axis, vec3_cross (r, t)) < 0.0 ? -1.0 : 1.0;
}

static Vec3
velocity (const Pose *p, Vec3 point)
{
  const Vec3 turning = vec3_cross (p->turn_rate, vec3_sub (point, p->ball_joint));

  return vec3_scale (vec3_add (p->ball_velocity, turning), 1.0 / p->lift);
}

/* From one station to the next a point goes where its velocity takes it (trapezoid rule,
 * left out: a twelfth of the step cubed times the third derivative, below 1e-6 mm). */
static void
assert_walks_on (const Pose *a, const Pose *b, Vec3 from, Vec3 to)
{
  const double dz = b->travel - a->travel;
  const Vec3 middle = vec3_scale (vec3_add (velocity (a, from), velocity (b, to)), 0.5);

  g_assert_cmpfloat (vec3_distance (vec3_along (from, dz, middle), to), <, 1e-5);
}

static void
test_fine_sweep_never_jumps (void)
{
  Dice dice = { 104 };
  const guint n = 641;
  g_autofree Station *s = g_new (Station, n);

  for (int i = 0; i < 60; i++) {
    const RandomCase c = dice_case (&dice);
    const Corner corner = check_assemble (&c.measured, c.adjustment);
    const double side =
        side_of (&(Pose){ .ball_joint = c.measured.at[POINT_BALL_JOINT],
                          .tie_rod_inner = c.measured.at[POINT_TIE_ROD_INNER],
                          .tie_rod_outer = c.measured.at[POINT_TIE_ROD_OUTER] },
                 c.measured.at[POINT_UPPER_MOUNT]);

    g_assert_cmpfloat (corner.tie_rod_side, ==, side);
    g_assert_cmpuint (sweep_travel (&corner, (SweepRange){ -80, 80, n }, c.rack, s), ==,
                      n);
    for (guint k = 0; k < n; k++) {
      g_assert_cmpfloat (side_of (&s[k].pose, moved_mount (&c)), ==, side);
      if (k == 0)
        continue;
      const Pose *a = &s[k - 1].pose, *b = &s[k].pose;
      assert_walks_on (a, b, a->ball_joint, b->ball_joint);
      assert_walks_on (a, b, a->tie_rod_outer, b->tie_rod_outer);
      assert_walks_on (a, b, a->wheel_centre, b->wheel_centre);
      assert_walks_on (a, b, a->strut_foot, b->strut_foot);
    }
  }
}

static void
test_rack_sweep_never_jumps (void)
{
  Dice dice = { 105 };
  const guint n = 361;
  g_autofree Station *s = g_new (Station, n);

  for (int i = 0; i < 60; i++) {
    const RandomCase c = dice_case (&dice);
    const Corner corner = check_assemble (&c.measured, c.adjustment);

    g_assert_cmpuint (sweep_rack (&corner, c.travel, (SweepRange){ -45, 45, n }, s), ==,
                      n);
    for (guint k = 1; k < n; k++)
      g_assert_cmpfloat (vec3_distance (s[k - 1].pose.tie_rod_outer,
                                        s[k].pose.tie_rod_outer),
                         <, 1.0);
    check_near ("middle", i, s[n / 2].pose.travel, c.travel, 1e-11);
  }
}

/* A cold start finds what the sweep found. */
static void
test_station_equals_sweep (void)
{
  Dice dice = { 106 };

  for (int i = 0; i < N_CORNERS; i++) {
    const RandomCase c = dice_case (&dice);
    const Corner corner = check_assemble (&c.measured, c.adjustment);
    Station s[17], cold;

    g_assert_cmpuint (sweep_travel (&corner, (SweepRange){ -80, 80, 17 }, c.rack, s), ==,
                      17);
    for (int k = 0; k < 17; k++) {
      g_assert_cmpint (station_solve (&corner, s[k].travel, c.rack, &cold), ==, POSE_OK);
      for (Quantity q = 0; q < N_QUANTITIES; q++) {
        const double value = s[k].measures.value[q];
        const double size = q == QUANTITY_SWING_ARM_LENGTH ? value * value / 1e3 : 1.0;

        check_near ("cold start", q, cold.measures.value[q], value,
                    1e-9 * fmax (size, 1));
      }
      g_assert_cmpfloat (vec3_distance (cold.pose.wheel_centre, s[k].pose.wheel_centre),
                         <, 1e-9);
      g_assert_cmpfloat (vec3_distance (cold.pose.tie_rod_outer, s[k].pose.tie_rod_outer),
                         <, 1e-9);
    }
  }
}

static void
test_toe_reset (void)
{
  Dice dice = { 107 };

  for (int i = 0; i < N_CORNERS; i++) {
    RandomCase c = dice_case (&dice);
    Station s;

    c.adjustment.lowering = dice_between (&dice, -40.0, 60.0);
    c.adjustment.toe = TOE_RESET;
    const Corner corner = check_assemble (&c.measured, c.adjustment);
    const double standing = c.adjustment.lowering;

    g_assert_cmpint (station_solve (&corner, standing, 0.0, &s), ==, POSE_OK);
    check_near ("toe-in", i, s.measures.value[QUANTITY_TOE_IN], c.measured.toe_in, 1e-12);
    check_near ("height", i, s.pose.wheel_centre.z - c.measured.loaded_radius, standing,
                1e-11);
    check_near ("tie rod", i,
                vec3_distance (s.pose.tie_rod_outer, s.pose.tie_rod_inner) -
                    vec3_distance (c.measured.at[POINT_TIE_ROD_OUTER],
                                   c.measured.at[POINT_TIE_ROD_INNER]),
                corner_tie_rod_change (&corner), 1e-10);
  }
}

static void
assert_same_bits (const Station *a, const Station *b)
{
  g_assert_cmpint (a->status, ==, b->status);
  g_assert_cmpmem (&a->pose, sizeof a->pose, &b->pose, sizeof b->pose);
  g_assert_cmpmem (&a->measures, sizeof a->measures, &b->measures, sizeof b->measures);
}

static void
test_nothing_moved_resets_nothing (void)
{
  Dice dice = { 108 };

  for (int i = 0; i < N_CORNERS; i++) {
    const RandomCase c = dice_case (&dice);
    const Corner kept = check_assemble (&c.measured, (Adjustment){ 0 });
    const Corner reset = check_assemble (&c.measured, (Adjustment){ .toe = TOE_RESET });
    Station a, b;

    g_assert_cmpfloat (corner_tie_rod_change (&reset), ==, 0.0);
    station_solve (&kept, c.travel, c.rack, &a);
    station_solve (&reset, c.travel, c.rack, &b);
    assert_same_bits (&a, &b);
  }
}

static gpointer
solve_all (gpointer data)
{
  Station *stations = data;
  Dice dice = { 109 };

  for (int i = 0; i < N_CORNERS; i++) {
    const RandomCase c = dice_case (&dice);
    Corner corner;

    corner_assemble (&c.measured, &c.adjustment, &corner);
    sweep_travel (&corner, (SweepRange){ -80, 80, 17 }, c.rack, stations + 17 * i);
  }
  return NULL;
}

static void
test_threads_agree_to_the_bit (void)
{
  const gsize n = 17 * N_CORNERS;
  g_autofree Station *alone = g_new0 (Station, n);
  Station *together[4];
  GThread *threads[4];

  solve_all (alone);
  for (int t = 0; t < 4; t++) {
    together[t] = g_new0 (Station, n);
    threads[t] = g_thread_new ("solve", solve_all, together[t]);
  }
  for (int t = 0; t < 4; t++) {
    g_thread_join (threads[t]);
    for (gsize i = 0; i < n; i++)
      assert_same_bits (&alone[i], &together[t][i]);
    g_free (together[t]);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/kernel/invariants/rigid-lengths", test_rigid_lengths);
  g_test_add_func ("/kernel/invariants/slopes", test_slopes_are_derivatives);
  g_test_add_func ("/kernel/invariants/rates", test_rates_are_slopes);
  g_test_add_func ("/kernel/invariants/fine-sweep", test_fine_sweep_never_jumps);
  g_test_add_func ("/kernel/invariants/rack-sweep", test_rack_sweep_never_jumps);
  g_test_add_func ("/kernel/invariants/cold-start", test_station_equals_sweep);
  g_test_add_func ("/kernel/invariants/toe-reset", test_toe_reset);
  g_test_add_func ("/kernel/invariants/nothing-moved", test_nothing_moved_resets_nothing);
  g_test_add_func ("/kernel/invariants/threads", test_threads_agree_to_the_bit);
  return g_test_run ();
}
