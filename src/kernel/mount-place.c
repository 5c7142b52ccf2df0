/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "kernel/mount-place.h"

#include <assert.h>

static void
leave_gap (PoseStatus status, MountPlace *place)
{
  place->status = status;
  for (int i = 0; i < N_QUANTITIES; i++)
    place->value[i] = NAN;
  place->toe_as_moved = place->tie_rod_change = place->bearing_tilt = NAN;
}

/* Angle between two unit vectors; exact where they are nearly the same too. */
static double
angle_between (Vec3 a, Vec3 b)
{
  return atan2 (vec3_length (vec3_cross (a, b)), vec3_dot (a, b));
}

static Vec3
measured_strut (const MeasuredCorner *m)
{
  return vec3_unit (vec3_sub (m->at[POINT_UPPER_MOUNT], m->at[POINT_STRUT_FOOT]));
}

static PoseStatus
stand (const MeasuredCorner *measured,
       Adjustment adjustment,
       ToeMode toe,
       Corner *corner,
       Station *station)
{
  adjustment.toe = toe;
  const CornerVerdict verdict = corner_assemble (measured, &adjustment, corner);

  assert (verdict.status == CORNER_OK);
  (void) verdict;
  return station_solve (corner, adjustment.lowering, 0.0, station);
}

PoseStatus
mount_place_solve (const MeasuredCorner *measured,
                   const Adjustment *adjustment,
                   MountOffset mount,
                   MountPlace *place)
{
  Adjustment here = *adjustment;
  Corner corner[2];
  Station station[2];
  PoseStatus status[2];

  here.mount = mount;
  for (ToeMode toe = TOE_AS_MOVED; toe <= TOE_RESET; toe++)
    status[toe] = stand (measured, here, toe, &corner[toe], &station[toe]);
  if (status[here.toe] != POSE_OK) {
    leave_gap (status[here.toe], place);
    return place->status;
  }

  const Station *standing = &station[here.toe];

  place->status = POSE_OK;
  for (int i = 0; i < N_QUANTITIES; i++)
    place->value[i] = standing->measures.value[i];
  place->toe_as_moved = station[TOE_AS_MOVED].measures.value[QUANTITY_TOE_IN];
  place->tie_rod_change =
      status[TOE_RESET] == POSE_OK
          ? corner[TOE_RESET].tie_rod_length - corner[TOE_AS_MOVED].tie_rod_length
          : NAN;
  place->bearing_tilt =
      angle_between (standing->pose.strut_direction, measured_strut (measured));
  return POSE_OK;
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

size_t
mount_grid_solve (const MeasuredCorner *measured,
                  const Adjustment *adjustment,
                  const MountGrid *grid,
                  size_t first_row,
                  size_t n_rows,
                  MountPlace *places)
{
  size_t n_solved = 0;

  assert (first_row + n_rows <= grid->n_rearward);
  for (size_t row = first_row; row < first_row + n_rows; row++)
    for (size_t i = 0; i < grid->n_inboard; i++)
      if (mount_place_solve (measured, adjustment, mount_grid_at (grid, i, row),
                             &places[row * grid->n_inboard + i]) == POSE_OK)
        n_solved++;
  return n_solved;
}
