/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "kernel/mount-place.h"
#include "kernel/corner-assembly.h"
#include "kernel/pose-closure.h"

#include <assert.h>
#include <string.h>

/* A place is solved twice: with the tie rod as it is, and with the tie rod that brings
 * the toe back. Both stand at the same travel, at arm angles that differ a little, as the
 * knuckle's turn lifts the wheel centre.
 *
 * On a grid only the mount moves. Newton's method starts from the arm angle that the
 * places behind foretell: the polynomial through them, one step further on. Where that
 * start is not next to the wanted travel, or the corner is so far from how it was
 * measured that it might have a second assembly there, the place is solved as a place by
 * itself: it gets the same answer, or the same reason for none. */

#define N_TOE_MODES 2
#define N_BEHIND 4
#define NEAR_BY 0.5 /* mm of travel */
/* No second assembly was found within these. */
#define LEAST_COSINE 0.97    /* between wheel or strut and how they were measured: 14° */
#define LEAST_LIFT_SHARE 0.3 /* of the arm's length */
#define LARGEST_ARM_ANGLE 0.3 /* rad */
#define SMALL_ARM_ANGLE 0.15  /* rad: from here the wheel must hang together at 0 too */

/* The arm angles of the places behind in a line, the nearest first. */
typedef struct {
  double angle[N_TOE_MODES][N_BEHIND];
  int n;
} Trail;

typedef struct {
  const MeasuredCorner *measured;
  Adjustment adjustment;
  Vec3 strut; /* its direction as measured */
  Corner prepared;
  /* of the present place, by toe mode */
  Corner corner[N_TOE_MODES];
  Pose pose[N_TOE_MODES];
  PoseStatus status[N_TOE_MODES];
} MountSolver;

static void
remember (const MountSolver *s, Trail *trail)
{
  if (s->status[TOE_AS_MOVED] != POSE_OK || s->status[TOE_RESET] != POSE_OK) {
    trail->n = 0;
    return;
  }
  trail->n = trail->n < N_BEHIND ? trail->n + 1 : N_BEHIND;
  for (int toe = 0; toe < N_TOE_MODES; toe++) {
    double *a = trail->angle[toe];

    for (int i = trail->n - 1; i > 0; i--)
      a[i] = a[i - 1];
    a[0] = s->pose[toe].arm_angle;
  }
}

static double
foretell (const Trail *trail, ToeMode toe)
{
  static const double weight[N_BEHIND][N_BEHIND] = {
    { 1 }, { 2, -1 }, { 3, -3, 1 }, { 4, -6, 4, -1 }
  };
  double angle = 0.0;

  for (int i = 0; i < trail->n; i++)
    angle += weight[trail->n - 1][i] * trail->angle[toe][i];
  return angle;
}

static void
begin (const MeasuredCorner *measured, const Adjustment *adjustment, MountSolver *solver)
{
  const Vec3 foot = measured->at[POINT_STRUT_FOOT];
  CornerVerdict verdict;

  solver->measured = measured;
  solver->adjustment = *adjustment;
  solver->strut = vec3_unit (vec3_sub (measured->at[POINT_UPPER_MOUNT], foot));
  verdict = corner_prepare (measured, adjustment, &solver->prepared);
  assert (verdict.status == CORNER_OK);
  (void) verdict;
  for (ToeMode toe = 0; toe < N_TOE_MODES; toe++)
    solver->corner[toe] = solver->prepared;
}

/* As a place by itself. */
static void
stand (MountSolver *s)
{
  for (ToeMode toe = 0; toe < N_TOE_MODES; toe++) {
    Adjustment here = s->adjustment;

    here.toe = toe;
    s->corner[toe] = s->prepared;
    corner_hang (s->measured, &here, &s->corner[toe]);
    s->status[toe] =
        pose_at_travel (&s->corner[toe], here.lowering, 0.0, NULL, &s->pose[toe]);
  }
}

/* Where a place by itself starts from, if the wheel hangs together there. */
static bool
hangs_at_rest (const Corner *corner, Closure closure)
{
  Pose rest;

  return pose_at_arm_angle_closed (corner, 0.0, 0.0, closure, &rest) == POSE_OK &&
         rest.lift > 0.0;
}

static bool
is_like_measured (const Corner *corner, const Pose *pose)
{
  const double least_lift = LEAST_LIFT_SHARE * vec3_length (corner->radius_0);

  return fabs (pose->arm_angle) < LARGEST_ARM_ANGLE && pose->lift > least_lift &&
         vec3_dot (pose->spin_axis, corner->spin_axis) > LEAST_COSINE &&
         vec3_dot (pose->strut_direction, corner->strut_direction) > LEAST_COSINE;
}

static bool
stand_from (
    const Corner *corner, double travel, double arm_angle, Closure closure, Pose *pose)
{
  return pose_at_arm_angle_closed (corner, arm_angle, 0.0, closure, pose) == POSE_OK &&
         is_like_measured (corner, pose) &&
         (fabs (arm_angle) < SMALL_ARM_ANGLE || hangs_at_rest (corner, closure)) &&
         fabs (pose->travel - travel) < NEAR_BY &&
         pose_at_travel_closed (corner, travel, 0.0, closure, pose, pose) == POSE_OK;
}

/* The same, from the places behind. False where that is not safe. */
static bool
stand_beside (const Trail *trail, MountSolver *s)
{
  Corner *moved = &s->corner[TOE_AS_MOVED], *reset = &s->corner[TOE_RESET];
  Pose *pose = &s->pose[TOE_RESET];
  const double travel = s->adjustment.lowering;

  if (trail->n == 0 || !adjustment_changes_linkage (&s->adjustment))
    return false;

  moved->upper_mount = corner_mount_at (s->measured, s->adjustment.mount);
  reset->upper_mount = moved->upper_mount;
  moved->tie_rod_length = s->prepared.tie_rod_length;
  if (!stand_from (moved, travel, foretell (trail, TOE_AS_MOVED), CLOSE_TIE_ROD,
                   &s->pose[TOE_AS_MOVED]) ||
      !stand_from (reset, travel, foretell (trail, TOE_RESET), CLOSE_TOE, pose))
    return false;

  reset->tie_rod_length = vec3_distance (pose->tie_rod_outer, pose->tie_rod_inner);
  s->status[TOE_AS_MOVED] = s->status[TOE_RESET] = POSE_OK;
  return stand_from (reset, travel, pose->arm_angle, CLOSE_TIE_ROD, pose);
}

static void
leave_gap (PoseStatus status, MountPlace *place)
{
  place->status = status;
  for (int i = 0; i < N_QUANTITIES; i++)
    place->value[i] = NAN;
  place->toe_as_moved = place->tie_rod_change = place->bearing_tilt = NAN;
}

static double
toe_in (Vec3 spin_axis)
{
  return atan2 (spin_axis.x, spin_axis.y);
}

/* Between two unit vectors; exact where they are nearly the same too. */
static double
angle_between (Vec3 a, Vec3 b)
{
  return atan2 (vec3_length (vec3_cross (a, b)), vec3_dot (a, b));
}

static PoseStatus
write_place (const MountSolver *s, MountPlace *place)
{
  const ToeMode mode = s->adjustment.toe;
  const Corner *moved = &s->corner[TOE_AS_MOVED], *reset = &s->corner[TOE_RESET];
  Measures measures;

  if (s->status[mode] != POSE_OK) {
    leave_gap (s->status[mode], place);
    return place->status;
  }
  pose_measure (&s->corner[mode], &s->pose[mode], &measures);
  place->status = POSE_OK;
  memcpy (place->value, measures.value, sizeof place->value);
  place->toe_as_moved =
      s->status[TOE_AS_MOVED] == POSE_OK ? toe_in (s->pose[TOE_AS_MOVED].spin_axis) : NAN;
  place->tie_rod_change = s->status[TOE_RESET] == POSE_OK
                              ? reset->tie_rod_length - moved->tie_rod_length
                              : NAN;
  place->bearing_tilt = angle_between (s->pose[mode].strut_direction, s->strut);
  return POSE_OK;
}

PoseStatus
mount_place_solve (const MeasuredCorner *measured,
                   const Adjustment *adjustment,
                   MountOffset mount,
                   MountPlace *place)
{
  MountSolver solver;

  begin (measured, adjustment, &solver);
  solver.adjustment.mount = mount;
  stand (&solver);
  return write_place (&solver, place);
}

static double
between (double from, double to, size_t i, size_t n)
{
  return i + 1 == n ? to : from + (to - from) * (double) i / (double) (n - 1);
}

MountOffset
mount_grid_at (const MountGrid *grid, size_t inboard, size_t rearward)
{
  assert (inboard < grid->n_inboard && rearward < grid->n_rearward);
  return (MountOffset){
    between (grid->inboard_from, grid->inboard_to, inboard, grid->n_inboard),
    between (grid->rearward_from, grid->rearward_to, rearward, grid->n_rearward), grid->up
  };
}

static PoseStatus
solve_onward (MountOffset mount, Trail *trail, MountSolver *solver, MountPlace *place)
{
  solver->adjustment.mount = mount;
  if (!stand_beside (trail, solver))
    stand (solver);
  remember (solver, trail);
  return write_place (solver, place);
}

/* Each row starts from the first places of the rows behind. */
size_t
mount_grid_solve (const MeasuredCorner *measured,
                  const Adjustment *adjustment,
                  const MountGrid *grid,
                  size_t first_row,
                  size_t n_rows,
                  MountPlace *places)
{
  MountSolver solver;
  Trail firsts = { .n = 0 };
  size_t n_solved = 0;

  assert (first_row + n_rows <= grid->n_rearward);
  begin (measured, adjustment, &solver);
  for (size_t row = first_row; row < first_row + n_rows; row++) {
    Trail trail = { .n = 0 };

    for (size_t i = 0; i < grid->n_inboard; i++) {
      if (solve_onward (mount_grid_at (grid, i, row), i == 0 ? &firsts : &trail, &solver,
                        &places[row * grid->n_inboard + i]) == POSE_OK)
        n_solved++;
      if (i == 0)
        remember (&solver, &trail);
    }
  }
  return n_solved;
}
