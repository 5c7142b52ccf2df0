/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The eight points while they are being entered: from the front and in plan, turned as on
 * the sheet (outboard to the right, forward down in plan), with the car's axes and their
 * origin. A point that is not entered yet stands faintly where such points usually lie,
 * so that one sees which is meant. The coordinate in hand is shown as a dimension. */

#pragma once

#include "drawing/pen/text.h"
#include "kernel/corner.h"

#define POINT_SKETCH_NONE (-1)

typedef struct {
  Vec3 points[N_POINTS]; /* mm, the left side's; what is not entered is NAN */
  double loaded_radius;  /* mm, or NAN */
  int point, axis;       /* in hand: 0 x, 1 y, 2 z; or POINT_SKETCH_NONE */
  Theme theme;
} PointSketchView;

/* How the drawing lies on the canvas: where the origin of the car's axes is. */
typedef struct {
  double scale; /* pixels per mm */
  double x;     /* of the centre plane, in both views */
  double front; /* of the ground, in the view from the front */
  double plan;  /* of the front axle, in plan */
} PointSketchFit;

PointSketchFit
point_sketch_fit (const PointSketchView *view, double width, double height);

void point_sketch_draw (TextCache *texts,
                        cairo_t *cr,
                        const PointSketchView *view,
                        double width,
                        double height);

/* A ring round the point in hand, for other drawings too. */
void point_sketch_ring (cairo_t *cr, const Theme *theme, double x, double y);
