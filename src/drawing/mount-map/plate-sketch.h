/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A plate in plan, to scale, turned as the plan view of the sheet is (outboard to the
 * right, forward down): where it can put the bearing, every indexed place a dot with its
 * mark, the ends of scales with their figures, the reach of swapped plates in dashes, and
 * the mount as measured.
 *
 * The right side is drawn as the left one is: inboard and rearward are its own. */

#pragma once

#include "drawing/pen/text.h"
#include "model/plate/plate.h"

typedef struct {
  const Plate *plate; /* may be one that cannot be saved */
  Theme theme;
} PlateSketchView;

/* How the drawing lies on the canvas. */
typedef struct {
  double scale;      /* pixels per mm */
  double x, y;       /* of the mount as measured, pixels */
  double grid;       /* mm between the lines of the grid */
  double key_height; /* of the key, at the foot */
} PlateSketchFit;

PlateSketchFit
plate_sketch_fit (const PlateSketchView *view, double width, double height);

void plate_sketch_draw (TextCache *texts,
                        cairo_t *cr,
                        const PlateSketchView *view,
                        double width,
                        double height);
