/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the fitting card's plan: from places on the tower to points on the paper, and
 * small labels that keep clear of each other. */

#pragma once

#include "drawing/card/fitting-card-plan.h"

#define FRAME_MOST_ROOMS 64
#define FRAME_MOST_LINES 64

typedef struct {
  double x, y;
} FittingPoint;

typedef struct {
  const FittingPen *pen;
  const ChoiceAnswer *answer;
  CarSide side;
  FittingBox box;
  double per_mm;             /* points for a mm */
  double origin_x, origin_y; /* of the mount as measured */
  FittingBox taken[FRAME_MOST_ROOMS];
  guint n_taken;
  FittingPoint lines[FRAME_MOST_LINES][2];
  guint n_lines;
  struct {
    FittingPoint centre;
    double radius;
  } circles[FRAME_MOST_LINES];
  guint n_circles;
} FittingFrame;

/* As one stands before the car: forward is down, and outboard is to the right on the left
 * side and to the left on the right. */
FittingPoint
fitting_frame_point (const FittingFrame *frame, double inboard, double rearward);
FittingPoint fitting_frame_place (const FittingFrame *frame, PlateSetting setting);
/* +1 where outboard lies to the right. */
double fitting_frame_outboard (const FittingFrame *frame);

/* What labels keep off: the room of a text, and lines where there is another way. */
void fitting_frame_take (FittingFrame *frame, FittingBox room);
void fitting_frame_add_line (FittingFrame *frame, FittingPoint a, FittingPoint b);
void fitting_frame_add_circle (FittingFrame *frame, FittingPoint centre, double radius);

/* A line of the drawing that labels keep off, stroked in the current pen. */
void fitting_frame_line (FittingFrame *frame, FittingPoint a, FittingPoint b);

/* Written in the middle of the first of the places that is free; gives it, or -1. */
int fitting_frame_label (FittingFrame *frame,
                         const char *text,
                         Colour colour,
                         const FittingPoint *places,
                         guint n_places);
/* Names for several marks, all on the same side of them and equally far, where they meet
 * the least; the name of @most_wanted is written first. */
typedef struct {
  FittingPoint at;
  char *name;
} FittingMark;
void fitting_frame_label_marks (FittingFrame *frame,
                                const FittingMark *marks,
                                guint n_marks,
                                guint most_wanted);
/* For a mark on a circle about @from: as far outside as it takes; a thin line leads to
 * it. */
void fitting_frame_label_away (FittingFrame *frame,
                               const char *text,
                               Colour colour,
                               FittingPoint mark,
                               FittingPoint from);

/* Where the plate can put the bearing, and, once all lines are drawn, its settings. */
void fitting_reach_draw (FittingFrame *frame);
void fitting_reach_label (FittingFrame *frame);
