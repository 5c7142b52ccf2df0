/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Dragging and nudging the sheet's handles, on plain values: pointer, arrow keys and
 * tests all go through here.
 *
 * A drag follows the pointer by its moves, so the handle keeps the place at which it was
 * grabbed, and a change between plain and fine on the way does not jump. Values stop at
 * their limits but the pointer is still followed: the handle moves again once it is back.
 */

#pragma once

#include "drawing/sheet/sheet.h"

#define POINT_DRAG_MOST_MOUNT 150.0 /* mm, each way on each axis */

/* What the handles move. */
typedef struct {
  MountOffset mount;
  double travel;
  double lowering; /* of the body; the wheel then stands at this travel */
} PointPlace;

typedef struct {
  double least, most; /* of the travel, and so of the lowering, mm */
} TravelLimits;

typedef struct {
  SheetHandle handle;
  SheetViewName view;
  TravelLimits limits;
  PointPlace start; /* where a cancelled drag returns to */
  PointPlace place; /* in hand, in steps of 0.1 mm on the axes that were moved */
  Vec3 moved;       /* of the pointer since the start, fine moves counted as such, mm */
  double x, y;      /* of the pointer, last */
} PointDrag;

PointDrag point_drag_begin (SheetHandle handle,
                            SheetViewName view,
                            PointPlace start,
                            TravelLimits limits,
                            double x,
                            double y);

/* The pointer is at (x, y) now; @fine counts the way there a tenth. Returns the new
 * place, which is also in @drag. */
PointPlace
point_drag_to (PointDrag *drag, const Sheet *sheet, double x, double y, bool fine);

/* Back to the start. */
PointPlace point_drag_cancel (PointDrag *drag);

typedef enum {
  POINT_STEP_FINE,   /* 0.1 mm */
  POINT_STEP_PLAIN,  /* 1 mm */
  POINT_STEP_COARSE, /* 5 mm */
} PointStep;

/* Arrow keys: @right and @up count steps as the view shows them. Where a view or handle
 * cannot move that way, nothing does. */
PointPlace point_nudge (PointPlace place,
                        SheetHandle handle,
                        SheetViewName view,
                        TravelLimits limits,
                        PointStep step,
                        int right,
                        int up);
