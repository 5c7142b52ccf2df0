/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The corner at a place of its mount: the same as a setup that has its mount there, the
 * same by a root finder, the same on a grid. */

#include "check-data.h"
#include "random-corner.h"
#include "raw-measures.h"

#include "kernel/mount-place.h"

#include <gsl/gsl_errno.h>
#include <string.h>

#define N_CORNERS 200

static MountOffset
dice_mount (Dice *dice, double reach)
{
  const double inboard = dice_between (dice, -reach, reach);
  const double rearward = dice_between (dice, -reach, reach);
  const double up = dice_between (dice, -reach, reach);

  return (MountOffset){ inboard, rearward, up };
}

/* A setup with everything on it. */
static Adjustment
dice_setup (Dice *dice, ToeMode toe)
{
  Adjustment a = { .mount = dice_mount (dice, 25.0),
                   .lowering = dice_between (dice, -20.0, 50.0),
                   .toe = toe };

  a.corrections.clamp_tilt = dice_between (dice, -0.03, 0.03);
  a.corrections.ball_joint_spacer = dice_between (dice, 0.0, 20.0);
  a.corrections.tie_rod_lengthening = dice_between (dice, -2.0, 2.0);
  a.corrections.wheel_spacer = dice_between (dice, 0.0, 25.0);
  return a;
}

typedef struct {
  Corner corner;
  Station station;
} Standing;

static Standing
stand (const MeasuredCorner *measured, Adjustment a, MountOffset mount, ToeMode toe)
{
  Standing s;

  a.mount = mount;
  a.toe = toe;
  s.corner = check_assemble (measured, a);
  station_solve (&s.corner, a.lowering, 0.0, &s.station);
  return s;
}

static void
check_place (const MeasuredCorner *m, const Adjustment *a, MountOffset mount)
{
  const Standing moved = stand (m, *a, mount, TOE_AS_MOVED);
  const Standing reset = stand (m, *a, mount, TOE_RESET);
  const Standing *standing = a->toe == TOE_RESET ? &reset : &moved;
  MountPlace place;

  g_assert_cmpint (mount_place_solve (m, a, mount, &place), ==, POSE_OK);
  g_assert_cmpint (place.status, ==, POSE_OK);
  g_assert_cmpmem (place.value, sizeof place.value, standing->station.measures.value,
                   sizeof place.value);
  check_near ("toe as moved", 0, place.toe_as_moved,
              moved.station.measures.value[QUANTITY_TOE_IN], 1e-15);
  check_near ("tie rod", 0, place.tie_rod_change,
              corner_tie_rod_change (&reset.corner) -
                  corner_tie_rod_change (&moved.corner),
              1e-12);
}

/* To the bit, wherever the mount of the setup itself is. */
static void
test_place_is_a_setup (void)
{
  Dice dice = { 401 };

  for (int i = 0; i < N_CORNERS; i++) {
    const MeasuredCorner m = dice_corner (&dice);
    Adjustment a = dice_setup (&dice, i % 2);

    check_place (&m, &a, dice_mount (&dice, 25.0));
    a.corrections = (Corrections){ 0 };
    check_place (&m, &a, dice_mount (&dice, 25.0));
    check_place (&m, &a, (MountOffset){ 0 });
  }
}

/* As measured nothing changes, whatever the toe mode; lowering alone asks for a reset. */
static void
test_as_measured (void)
{
  for (ToeMode toe = TOE_AS_MOVED; toe <= TOE_RESET; toe++) {
    const Adjustment as_is = { .toe = toe }, low = { .toe = toe, .lowering = 30 };
    MountPlace place;

    g_assert_cmpint (mount_place_solve (&set_m, &as_is, (MountOffset){ 0 }, &place), ==,
                     POSE_OK);
    check_near ("toe", 0, place.toe_as_moved, set_m.toe_in, 1e-15);
    check_near ("camber", 0, place.value[QUANTITY_CAMBER], set_m.camber, 1e-15);
    g_assert_true (place.tie_rod_change == 0.0);
    check_near ("tilt", 0, place.bearing_tilt, 0.0, 1e-15);

    g_assert_cmpint (mount_place_solve (&set_m, &low, (MountOffset){ 0 }, &place), ==,
                     POSE_OK);
    g_assert_cmpfloat (fabs (place.tie_rod_change), >, 0.01);
    g_assert_cmpfloat (fabs (place.toe_as_moved - set_m.toe_in), >, RADIANS (0.01));
  }
}

/* Little by little from the corner as measured to the place. */
static RawPose
march (RawCorner *raw, MountOffset mount, double travel)
{
  RawPose pose = raw_corner_measured_pose (raw);

  for (int i = 1; i <= 5; i++) {
    const double t = i / 5.0;
    const RawPose start = pose;

    raw_corner_ask (raw,
                    (MountOffset){ mount.inboard * t, mount.rearward * t, mount.up * t },
                    travel * t, 0.0);
    g_assert_cmpfloat (raw_corner_solve (raw, &start, 1e-12, &pose), <, 1e-9);
  }
  return pose;
}

static double
raw_toe (const RawCorner *raw, const RawPose *pose)
{
  const Vec3 n = raw_spin_axis (raw, pose);

  return atan (n.x / n.y);
}

static double
raw_tilt (const RawCorner *raw, const RawPose *pose)
{
  const Vec3 now = raw_pose_direction (pose, raw->strut);

  return 2.0 * asin (vec3_distance (now, raw->strut) / 2.0);
}

/* The root finder's knuckle at the same place: its toe, its strut, and, with the tie rod
 * as much longer as the place says, the static toe again. */
static void
test_second_way (void)
{
  Dice dice = { 402 };

  for (int i = 0; i < N_CORNERS; i++) {
    const MeasuredCorner m = dice_corner (&dice);
    const Adjustment a = { .lowering = dice_between (&dice, -20.0, 50.0), .toe = i % 2 };
    const MountOffset mount = dice_mount (&dice, 25.0);
    MountPlace place;
    RawCorner raw;

    g_assert_cmpint (mount_place_solve (&m, &a, mount, &place), ==, POSE_OK);
    raw_corner_init (&m, &raw);
    const RawPose moved = march (&raw, mount, a.lowering);
    check_near ("toe as moved", i, place.toe_as_moved, raw_toe (&raw, &moved), 1e-11);
    raw.tie_rod += place.tie_rod_change;
    const RawPose reset = march (&raw, mount, a.lowering);
    check_near ("static toe", i, raw_toe (&raw, &reset), m.toe_in, 1e-11);

    const RawPose *standing = a.toe == TOE_RESET ? &reset : &moved;
    const Vec3 n = raw_spin_axis (&raw, standing);
    check_near ("camber", i, place.value[QUANTITY_CAMBER], asin (-n.z), 1e-11);
    check_near ("tilt", i, place.bearing_tilt, raw_tilt (&raw, standing), 1e-11);
    raw_corner_clear (&raw);
  }
}

/* Computed independently: the table of set M's mount moves, the toe as moved. */
static void
test_set_m_moves (void)
{
  static const struct {
    MountOffset mount;
    double camber, toe, caster, sai, scrub, trail, roll_centre;
  } rows[] = {
    { { 10, 0, 0 }, -1.3630, 0.4581, 3.5164, 11.7202, 7.190, 15.853, 81.25 },
    { { 0, 10, 0 }, -0.4922, 0.0723, 4.3997, 10.8875, 6.993, 21.022, 76.95 },
    { { 0, 0, 10 }, -0.3634, 0.0445, 3.4690, 10.7263, 7.111, 16.184, 75.28 },
    { { 15, 10, 0 }, -1.7911, 0.5869, 4.3909, 12.1372, 7.250, 20.212, 83.78 },
  };
  const Adjustment as_moved = { .toe = TOE_AS_MOVED };

  for (size_t i = 0; i < G_N_ELEMENTS (rows); i++) {
    MountPlace p;

    mount_place_solve (&set_m, &as_moved, rows[i].mount, &p);
    check_near ("camber", i, DEGREES (p.value[QUANTITY_CAMBER]), rows[i].camber, 5.1e-5);
    check_near ("toe-in", i, DEGREES (p.toe_as_moved), rows[i].toe, 5.1e-5);
    check_near ("caster", i, DEGREES (p.value[QUANTITY_CASTER]), rows[i].caster, 5.1e-5);
    check_near ("SAI", i, DEGREES (p.value[QUANTITY_SAI]), rows[i].sai, 5.1e-5);
    check_near ("scrub", i, p.value[QUANTITY_SCRUB_RADIUS], rows[i].scrub, 5.1e-4);
    check_near ("trail", i, p.value[QUANTITY_TRAIL], rows[i].trail, 5.1e-4);
    check_near ("roll centre", i, p.value[QUANTITY_ROLL_CENTRE_HEIGHT],
                rows[i].roll_centre, 5.1e-3);
  }
}

/* Computed independently, to the digits printed. */
static void
test_worked_set_moves (void)
{
  const Adjustment as_moved = { .toe = TOE_AS_MOVED };
  MountPlace p;

  mount_place_solve (&worked_set, &as_moved, (MountOffset){ .inboard = 15 }, &p);
  check_near ("camber", 15, DEGREES (p.value[QUANTITY_CAMBER]), -1.928, 5e-4);
  check_near ("toe-in", 15, DEGREES (p.toe_as_moved), 0.452, 5e-4);
  check_near ("caster", 15, DEGREES (p.value[QUANTITY_CASTER]), 2.951, 5e-4);
  check_near ("SAI", 15, DEGREES (p.value[QUANTITY_SAI]), 13.074, 5e-4);
  check_near ("scrub", 15, p.value[QUANTITY_SCRUB_RADIUS], 8.20, 5e-3);
  check_near ("roll centre", 15, p.value[QUANTITY_ROLL_CENTRE_HEIGHT], 85.68, 5e-3);

  mount_place_solve (&worked_set, &as_moved, (MountOffset){ .rearward = 15 }, &p);
  check_near ("camber", 15, DEGREES (p.value[QUANTITY_CAMBER]), -0.480, 5e-4);
  check_near ("toe-in", 15, DEGREES (p.toe_as_moved), -0.032, 5e-4);
  check_near ("caster", 15, DEGREES (p.value[QUANTITY_CASTER]), 4.435, 5e-4);
  check_near ("trail", 15, p.value[QUANTITY_TRAIL], 11.87, 5e-3);
  check_near ("roll centre", 15, p.value[QUANTITY_ROLL_CENTRE_HEIGHT], 78.44, 5e-3);
}

/* Set P is flat: with its strut through the ball joint, the strut leans as the steering
 * axis does, by the angle at B between the mount as measured and as moved. */
static void
test_tilt_on_a_flat_corner (void)
{
  const Adjustment as_moved = { .toe = TOE_AS_MOVED };

  for (double inboard = -20.0; inboard <= 20.0; inboard += 5.0) {
    MountPlace p;

    mount_place_solve (&set_p, &as_moved, (MountOffset){ .inboard = inboard }, &p);
    check_near ("tilt", inboard, p.bearing_tilt,
                fabs (p.value[QUANTITY_SAI] - atan2 (125.0, 650.0)), 1e-12);
    check_near ("camber", inboard, fabs (p.value[QUANTITY_CAMBER]), p.bearing_tilt,
                1e-12);
  }
}

static void
check_close (Quantity q, double value, double expected)
{
  /* a long swing arm is only as good as its inverse */
  const double size = q == QUANTITY_SWING_ARM_LENGTH ? fmax (1.0, expected * expected)
                                                     : fmax (1.0, fabs (expected));

  check_near ("quantity", q, value, expected, 1e-9 * size);
}

static void
check_same_place (const MountPlace *a, const MountPlace *b)
{
  g_assert_cmpint (a->status, ==, b->status);
  if (a->status != POSE_OK) {
    for (Quantity q = 0; q < N_QUANTITIES; q++)
      g_assert_true (isnan (a->value[q]) && isnan (b->value[q]));
    g_assert_true (isnan (a->toe_as_moved) && isnan (a->tie_rod_change) &&
                   isnan (a->bearing_tilt));
    return;
  }
  for (Quantity q = 0; q < N_QUANTITIES; q++)
    check_close (q, a->value[q], b->value[q]);
  g_assert_true (isnan (a->toe_as_moved) == isnan (b->toe_as_moved));
  g_assert_true (isnan (a->tie_rod_change) == isnan (b->tie_rod_change));
  if (!isnan (a->toe_as_moved))
    check_near ("toe as moved", 0, a->toe_as_moved, b->toe_as_moved, 1e-12);
  if (!isnan (a->tie_rod_change))
    check_near ("tie rod", 0, a->tie_rod_change, b->tie_rod_change, 1e-9);
  check_near ("tilt", 0, a->bearing_tilt, b->bearing_tilt, 1e-12);
}

/* Every node against the place by itself. Returns how many are POSE_OK. */
static size_t
check_grid (const MeasuredCorner *m, const Adjustment *a, const MountGrid *grid)
{
  const size_t n = grid->n_inboard * grid->n_rearward;
  g_autofree MountPlace *places = g_new (MountPlace, n);
  const size_t solved = mount_grid_solve (m, a, grid, 0, grid->n_rearward, places);
  size_t counted = 0;

  for (size_t row = 0; row < grid->n_rearward; row++)
    for (size_t i = 0; i < grid->n_inboard; i++) {
      MountPlace alone;

      mount_place_solve (m, a, mount_grid_at (grid, i, row), &alone);
      check_same_place (&places[row * grid->n_inboard + i], &alone);
      counted += alone.status == POSE_OK;
    }
  g_assert_cmpuint (solved, ==, counted);
  return solved;
}

static void
test_grid_is_its_places (void)
{
  Dice dice = { 403 };

  for (int i = 0; i < 60; i++) {
    const MeasuredCorner m = dice_corner (&dice);
    const Adjustment a = dice_setup (&dice, i % 2);
    const double reach = dice_between (&dice, 5.0, 40.0);
    const MountGrid grid = { -reach,     reach,      -10.0,    reach,
                             a.mount.up, 2 + i % 20, 2 + i % 7 };

    g_assert_cmpuint (check_grid (&m, &a, &grid), ==, grid.n_inboard * grid.n_rearward);
  }
}

static void
test_grid_as_measured (void)
{
  const Adjustment as_is = { .toe = TOE_RESET };
  const MountGrid grid = { -20, 20, -20, 20, 0, 41, 41 };

  g_assert_cmpuint (check_grid (&set_m, &as_is, &grid), ==, 41 * 41);
  g_assert_cmpuint (check_grid (&set_p, &as_is, &grid), ==, 41 * 41);
  g_assert_cmpuint (check_grid (&worked_set, &as_is, &grid), ==, 41 * 41);
}

/* What cannot be reached is the same on a grid, and so is what lies next to it. */
static void
test_absurd_grids (void)
{
  Dice dice = { 404 };
  size_t n_solved = 0, n_all = 0;

  for (int i = 0; i < 150; i++) {
    const MeasuredCorner m = dice_corner (&dice);
    Adjustment a = dice_setup (&dice, i % 2);
    const double reach = dice_between (&dice, 50.0, 900.0);
    const MountGrid grid = {
      -reach, reach, -reach, reach, dice_between (&dice, -600, 300), 13, 11
    };

    a.lowering = dice_between (&dice, -200.0, 200.0);
    n_solved += check_grid (&m, &a, &grid);
    n_all += 13 * 11;
  }
  g_assert_cmpuint (n_solved, >, n_all / 20);
  g_assert_cmpuint (n_solved, <, n_all * 19 / 20);
}

/* Threads share a grid by rows: only the rows asked for are written, and they are the
 * same whoever solved the rows before. */
static void
test_rows_by_themselves (void)
{
  const Adjustment low = { .lowering = 30, .toe = TOE_RESET };
  const MountGrid grid = { -5, 25, -15, 15, 3, 9, 10 };
  MountPlace whole[90], parts[90];
  size_t n = 0;

  g_assert_cmpuint (mount_grid_solve (&set_m, &low, &grid, 0, 10, whole), ==, 90);
  memset (parts, 0xa5, sizeof parts);
  n += mount_grid_solve (&set_m, &low, &grid, 4, 3, parts);
  for (int i = 0; i < 90; i++)
    g_assert_true ((i >= 36 && i < 63) ==
                   (((const unsigned char *) &parts[i])[0] != 0xa5));
  n += mount_grid_solve (&set_m, &low, &grid, 0, 4, parts);
  n += mount_grid_solve (&set_m, &low, &grid, 7, 3, parts);
  n += mount_grid_solve (&set_m, &low, &grid, 5, 0, parts);
  g_assert_cmpuint (n, ==, 90);
  for (int i = 0; i < 90; i++)
    check_same_place (&parts[i], &whole[i]);
}

static void
test_grid_places (void)
{
  const MountGrid grid = { -4, 12, 3, 7, -2, 5, 3 };
  const MountOffset first = mount_grid_at (&grid, 0, 0);
  const MountOffset middle = mount_grid_at (&grid, 1, 1);
  const MountOffset last = mount_grid_at (&grid, 4, 2);

  g_assert_true (first.inboard == -4.0 && first.rearward == 3.0 && first.up == -2.0);
  g_assert_true (middle.inboard == 0.0 && middle.rearward == 5.0);
  g_assert_true (last.inboard == 12.0 && last.rearward == 7.0 && last.up == -2.0);
}

/* The mount 10 mm above the ball joint, which is 20.6 mm from the strut's axis; and so
 * far back that no turn of the knuckle brings the toe back. */
static void
test_out_of_reach (void)
{
  const Adjustment as_moved = { .toe = TOE_AS_MOVED }, reset = { .toe = TOE_RESET };
  const MountOffset squashed = { -125, -40, -640 }, lying = { .rearward = 8000 };
  MountPlace place;

  g_assert_cmpint (mount_place_solve (&set_m, &as_moved, squashed, &place), ==,
                   POSE_STRUT_TOO_SHORT);
  g_assert_true (isnan (place.value[QUANTITY_CAMBER]) && isnan (place.toe_as_moved));
  g_assert_true (isnan (place.tie_rod_change) && isnan (place.bearing_tilt));
  g_assert_cmpint (mount_place_solve (&set_m, &reset, lying, &place), ==,
                   POSE_TOE_OUT_OF_REACH);
  g_assert_true (isnan (place.value[QUANTITY_CAMBER]));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  gsl_set_error_handler_off ();
  g_test_add_func ("/kernel/mount-place/setup", test_place_is_a_setup);
  g_test_add_func ("/kernel/mount-place/as-measured", test_as_measured);
  g_test_add_func ("/kernel/mount-place/second-way", test_second_way);
  g_test_add_func ("/kernel/mount-place/set-m", test_set_m_moves);
  g_test_add_func ("/kernel/mount-place/worked-set", test_worked_set_moves);
  g_test_add_func ("/kernel/mount-place/tilt", test_tilt_on_a_flat_corner);
  g_test_add_func ("/kernel/mount-place/out-of-reach", test_out_of_reach);
  g_test_add_func ("/kernel/mount-grid/places", test_grid_places);
  g_test_add_func ("/kernel/mount-grid/same", test_grid_is_its_places);
  g_test_add_func ("/kernel/mount-grid/as-measured", test_grid_as_measured);
  g_test_add_func ("/kernel/mount-grid/absurd", test_absurd_grids);
  g_test_add_func ("/kernel/mount-grid/rows", test_rows_by_themselves);
  return g_test_run ();
}
