/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The corner with its upper mount at one place after another, each where the setup
 * stands: what the map over the tower is drawn from, and what a plate is chosen by.
 * Every place is solved exactly, by the same path as everything else. */

#pragma once

#include "kernel/sweep.h"

typedef struct {
  PoseStatus status;          /* all below is NAN unless POSE_OK */
  double value[N_QUANTITIES]; /* at the setup's standing height, with its toe mode */
  /* Whatever the toe mode; NAN where that mode has no answer. Both count from the tie rod
   * as measured with the setup's lengthening. */
  double toe_as_moved;   /* rad: the toe before any reset */
  double tie_rod_change; /* mm that a reset makes the tie rod longer */
  double bearing_tilt;   /* rad: between the strut there and the strut as measured */
} MountPlace;

/* @adjustment with its mount at @mount, standing at its lowering. @measured is sound. */
PoseStatus mount_place_solve (const MeasuredCorner *measured,
                              const Adjustment *adjustment,
                              MountOffset mount,
                              MountPlace *place);

/* Places in rows: all of one rearward place, from the least inboard to the most. At
 * least two each way. */
typedef struct {
  double inboard_from, inboard_to, rearward_from, rearward_to, up; /* mm */
  size_t n_inboard, n_rearward;
} MountGrid;

MountOffset mount_grid_at (const MountGrid *grid, size_t inboard, size_t rearward);

/* Fills rows @first_row … @first_row + @n_rows − 1 of the n_inboard · n_rearward @places
 * of the whole grid, so that threads may share one; returns how many of them are POSE_OK.
 * Gives what mount_place_solve () gives. */
size_t mount_grid_solve (const MeasuredCorner *measured,
                         const Adjustment *adjustment,
                         const MountGrid *grid,
                         size_t first_row,
                         size_t n_rows,
                         MountPlace *places);
