/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A handle of the sheet being moved: begin, move, nudge, on plain values. Pointer, arrow keys
 * and tests all go through here.
 *
 * A drag keeps the place where the handle was grabbed, so that nothing jumps; values settle
 * on 0.1 mm, and stay inside the limits. Cancelling is the caller's: it has @start. */

#pragma once

#include "drawing/sheet.h"

#define POINT_DRAG_MOUNT_LIMIT 150.0 /* mm, either way, each axis */

/* What handles move: the mount offset, or the wheel travel. */
typedef struct {
  MountOffset mount;
  double travel;
} HandleValue;

typedef struct {
  SheetHandle handle;
  SheetViewName view;
  SweepRange travel_range;
  HandleValue start; /* at begin */
  HandleValue value; /* now */
  /* where the present stretch (coarse or fine) began, so that switching does not jump */
  HandleValue stretch_value;
  double stretch_dx, stretch_dy;
  bool is_fine;
} PointDrag;

PointDrag point_drag_begin (SheetHandle handle,
                            SheetViewName view,
                            HandleValue start,
                            SweepRange travel_range);

/* The pointer is (dx, dy) pixels from where the drag began. @fine: a tenth of the way. */
void point_drag_move (PointDrag *drag, const Sheet *sheet, double dx, double dy, bool fine);

/* One arrow key: (right, up) is one of (±1, 0), (0, ±1) on the screen; @step in mm. */
HandleValue point_nudge (SheetHandle handle,
                         SheetViewName view,
                         HandleValue value,
                         SweepRange travel_range,
                         int right,
                         int up,
                         double step);
