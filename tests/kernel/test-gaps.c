/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What cannot be assembled says so, and leaves no numbers behind. */

#include "check-data.h"
#include "random-corner.h"

static void
assert_all_nan (const void *doubles, gsize size)
{
  const double *d = doubles;

  for (gsize i = 0; i < size / sizeof *d; i++)
    g_assert_true (isnan (d[i]));
}

static void
assert_gap (const Station *s)
{
  G_STATIC_ASSERT (sizeof (Pose) % sizeof (double) == 0);
  G_STATIC_ASSERT (sizeof (Measures) % sizeof (double) == 0);

  g_assert_cmpint (s->status, !=, POSE_OK);
  assert_all_nan (&s->pose, sizeof s->pose);
  assert_all_nan (&s->measures, sizeof s->measures);
}

/* A position that claims to be one: the asked place, the rod and the arm whole. */
static void
assert_sound (const MeasuredCorner *m, const Corner *corner, const Station *s)
{
  const Pose *p = &s->pose;

  g_assert_cmpfloat (p->lift, >, 0.0);
  /* where the wheel moves far for little of the arm, the arm's rounding counts */
  check_near ("travel", s->travel, p->travel, s->travel, fmax (1e-11, 2e-15 * p->lift));
  check_near ("arm", s->travel,
              vec3_distance (p->ball_joint, m->at[POINT_ARM_FRONT_PIVOT]),
              vec3_distance (m->at[POINT_BALL_JOINT], m->at[POINT_ARM_FRONT_PIVOT]),
              1e-9);
  check_near ("tie rod", s->travel, vec3_distance (p->tie_rod_outer, p->tie_rod_inner),
              corner->tie_rod_length, 1e-6);
  for (Quantity q = 0; q < N_QUANTITIES; q++)
    g_assert_true (q == QUANTITY_SWING_ARM_LENGTH || isfinite (s->measures.value[q]));
}

/* The assembled stations stand side by side, and a cold start agrees with each. */
static void
check_absurd_sweep (const MeasuredCorner *m, const Corner *corner, SweepRange range)
{
  g_autofree Station *s = g_new (Station, range.n_stations);
  gsize n_sound = 0, n_edges = 0;

  const gsize n = sweep_travel (corner, range, 0.0, s);
  for (gsize i = 0; i < range.n_stations; i++) {
    const bool sound = s[i].status == POSE_OK;
    Station cold;

    g_assert_cmpfloat (s[i].travel, ==, sweep_place (range, i));
    if (sound)
      assert_sound (m, corner, &s[i]);
    else
      assert_gap (&s[i]);
    station_solve (corner, s[i].travel, 0.0, &cold);
    if ((cold.status == POSE_OK) != sound)
      g_error ("at %g the sweep says %d, a cold start %d", s[i].travel, s[i].status,
               cold.status);
    n_sound += sound;
    n_edges += i > 0 && sound != (s[i - 1].status == POSE_OK);
  }
  g_assert_cmpuint (n, ==, n_sound);
  g_assert_cmpuint (n_edges, <=, 2);
}

/* A reset that leaves a corner standing has brought its toe back; next to the tie rod's
 * dead point rounding grows ten-thousandfold. */
static void
check_absurd_reset (const MeasuredCorner *m, const Corner *corner)
{
  Station s;

  if (station_solve (corner, 0.0, 0.0, &s) == POSE_OK)
    check_near ("toe-in", 0, s.measures.value[QUANTITY_TOE_IN], m->toe_in, 1e-7);
}

static void
test_absurd_mounts (void)
{
  Dice dice = { 201 };

  for (int i = 0; i < 1500; i++) {
    RandomCase c = dice_case (&dice);
    const double reach = dice_between (&dice, 50.0, 900.0);

    c.adjustment.mount = (MountOffset){ dice_between (&dice, -reach, reach),
                                        dice_between (&dice, -reach, reach),
                                        dice_between (&dice, -reach, reach) };
    c.adjustment.toe = i % 2 == 0 ? TOE_AS_MOVED : TOE_RESET;
    const Corner corner = check_assemble (&c.measured, c.adjustment);

    check_absurd_sweep (&c.measured, &corner, (SweepRange){ -150, 150, 31 });
    if (c.adjustment.toe == TOE_RESET)
      check_absurd_reset (&c.measured, &corner);
  }
}

static void
test_each_pose_status (void)
{
  const Corner whole = check_assemble (&set_m, (Adjustment){ 0 });
  /* the mount 10 mm above the ball joint, which is 20.6 mm from the strut's axis */
  const Corner squashed = check_assemble_moved (&set_m, -125, -40, -640);
  const Adjustment lying = { .mount = { .rearward = 8000 }, .toe = TOE_RESET };
  const Corner toeless = check_assemble (&set_m, lying);
  Station s;

  g_assert_cmpint (station_solve (&whole, 2000.0, 0.0, &s), ==, POSE_OUT_OF_REACH);
  assert_gap (&s);
  g_assert_cmpint (station_solve (&whole, 0.0, 500.0, &s), ==, POSE_TIE_ROD_CANNOT_REACH);
  assert_gap (&s);
  g_assert_cmpint (station_solve (&squashed, 0.0, 0.0, &s), ==, POSE_STRUT_TOO_SHORT);
  assert_gap (&s);
  g_assert_cmpint (station_solve (&toeless, 0.0, 0.0, &s), ==, POSE_TOE_OUT_OF_REACH);
  assert_gap (&s);
}

/* A rack driven through the tie rod's dead point, and on until the rod would close again
 * on its far side: what lies beyond the gap cannot be reached. */
static void
test_rack_past_the_dead_point (void)
{
  const Corner corner = check_assemble (&set_m, (Adjustment){ 0 });
  const SweepRange racks = { -1000, 1000, 401 };
  g_autofree Station *s = g_new (Station, racks.n_stations);
  guint n_edges = 0, n_sound = 0;

  const gsize n = sweep_rack (&corner, 0.0, racks, s);
  for (gsize i = 0; i < racks.n_stations; i++) {
    const bool sound = s[i].status == POSE_OK;

    if (!sound)
      assert_gap (&s[i]);
    n_sound += sound;
    n_edges += i > 0 && sound != (s[i - 1].status == POSE_OK);
  }
  g_assert_cmpuint (n, ==, n_sound);
  g_assert_cmpint (s[200].status, ==, POSE_OK);
  g_assert_cmpint (s[0].status, ==, POSE_TIE_ROD_CANNOT_REACH);
  g_assert_cmpint (s[400].status, ==, POSE_TIE_ROD_CANNOT_REACH);
  g_assert_cmpuint (n_edges, ==, 2);
}

static CornerVerdict
judge (const MeasuredCorner *measured)
{
  const Adjustment none = { 0 };
  Corner corner;

  return corner_assemble (measured, &none, &corner);
}

static void
assert_verdict (const MeasuredCorner *m, CornerStatus status, PointName first)
{
  const CornerVerdict v = judge (m);

  g_assert_cmpint (v.status, ==, status);
  g_assert_cmpint (v.first, ==, first);
}

static MeasuredCorner
with_point (PointName name, Vec3 place)
{
  MeasuredCorner m = set_m;

  m.at[name] = place;
  return m;
}

static void
test_numbers_that_are_no_corner (void)
{
  MeasuredCorner m = set_m;

  assert_verdict (&m, CORNER_OK, N_POINTS);
  for (PointName i = 0; i < N_POINTS; i++) {
    m = with_point (i, (Vec3){ 0.0, NAN, 0.0 });
    assert_verdict (&m, CORNER_NOT_FINITE, i);
    m = with_point (i, (Vec3){ 0.0, 0.0, -INFINITY });
    assert_verdict (&m, CORNER_NOT_FINITE, i);
  }
  m = set_m;
  m.toe_in = NAN;
  assert_verdict (&m, CORNER_NOT_FINITE, N_POINTS);
  m = set_m;
  m.loaded_radius = 0.0;
  assert_verdict (&m, CORNER_BAD_RADIUS, N_POINTS);
  m = set_m;
  m.camber = RADIANS (46);
  assert_verdict (&m, CORNER_BAD_ANGLE, N_POINTS);
  m = set_m;
  m.toe_in = RADIANS (-46);
  assert_verdict (&m, CORNER_BAD_ANGLE, N_POINTS);
}

static void
test_coincident_points (void)
{
  for (PointName i = 0; i < N_POINTS; i++)
    for (PointName j = i + 1; j < N_POINTS; j++) {
      const MeasuredCorner m = with_point (j, set_m.at[i]);
      const CornerVerdict v = judge (&m);

      g_assert_cmpint (v.status, ==, CORNER_COINCIDENT);
      g_assert_cmpint (v.first, ==, i);
      g_assert_cmpint (v.second, ==, j);
    }
}

static Vec3
between (PointName a, PointName b, double share)
{
  return vec3_along (set_m.at[a], share, vec3_sub (set_m.at[b], set_m.at[a]));
}

static void
test_shapes_that_are_no_corner (void)
{
  const PointName B = POINT_BALL_JOINT, U = POINT_UPPER_MOUNT;
  const PointName A1 = POINT_ARM_FRONT_PIVOT, A2 = POINT_ARM_REAR_PIVOT;
  MeasuredCorner m = with_point (B, between (A1, A2, 0.3));

  assert_verdict (&m, CORNER_BALL_ON_HINGE, B);
  m = with_point (U, (Vec3){ -35, 575, 150 });
  assert_verdict (&m, CORNER_STRUT_UPSIDE_DOWN, U);
  m = with_point (POINT_STRUT_FOOT, (Vec3){ -12, 640, 900 });
  assert_verdict (&m, CORNER_STRUT_UPSIDE_DOWN, U);
  m = with_point (POINT_TIE_ROD_OUTER, between (B, U, 0.2));
  assert_verdict (&m, CORNER_TIE_ROD_ON_AXIS, POINT_TIE_ROD_OUTER);
  m = with_point (POINT_TIE_ROD_INNER, between (B, U, -0.2));
  assert_verdict (&m, CORNER_TIE_ROD_ON_AXIS, POINT_TIE_ROD_OUTER);
  /* the inner end in the plane of the steering axis and the outer end */
  m = with_point (POINT_TIE_ROD_INNER, between (POINT_TIE_ROD_OUTER, B, 3.0));
  assert_verdict (&m, CORNER_TIE_ROD_DEAD, POINT_TIE_ROD_OUTER);
  /* a hinge that stands upright swings the arm level */
  m = set_p;
  m.at[A1] = (Vec3){ 0, 380, 300 };
  m.at[A2] = (Vec3){ 0, 380, 100 };
  m.at[U] = (Vec3){ 0, 700, 835 };
  m.at[POINT_STRUT_FOOT] = (Vec3){ 0, 700, 412.5 };
  assert_verdict (&m, CORNER_ARM_CANNOT_LIFT, B);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/kernel/gaps/absurd-mounts", test_absurd_mounts);
  g_test_add_func ("/kernel/gaps/each-status", test_each_pose_status);
  g_test_add_func ("/kernel/gaps/rack-past-dead-point", test_rack_past_the_dead_point);
  g_test_add_func ("/kernel/refusals/numbers", test_numbers_that_are_no_corner);
  g_test_add_func ("/kernel/refusals/coincident", test_coincident_points);
  g_test_add_func ("/kernel/refusals/shapes", test_shapes_that_are_no_corner);
  return g_test_run ();
}
