/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The question "where does the roll centre go?": against lowering of the body, the
 * heights of roll centre and centre of gravity with the roll lever arm between them as a
 * band, and camber gain and bump steer; below, what lowering does in one sentence, and
 * how far the flat construction is off.
 *
 * Every shown setup is drawn, with its marker where it stands. */

#pragma once

#include "drawing/chart/title-block.h"
#include "model/study/study.h"

/* How far above the measured height the axis begins where it is_raised, mm. */
#define LOWERING_RAISED 20.0

typedef struct {
  const Study *study;
  Theme theme;
  int lit;                 /* the Quantity that is lit up, or -1 */
  bool is_raised;          /* the axis begins with a raised body */
  bool show_cursor;        /* at study->travel, where that lies on the axis */
  bool hold_axes;          /* axes may grow but not shrink: while something is dragged */
  const TitleBlock *title; /* for exports; NULL in a window */
} LoweringView;

typedef struct Lowering Lowering;
Lowering *lowering_new (void);
void lowering_free (Lowering *lowering);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Lowering, lowering_free)

void lowering_draw (Lowering *lowering,
                    cairo_t *cr,
                    const LoweringView *view,
                    double width,
                    double height);

/* What lies under a pixel of the last drawing. */
typedef struct {
  int quantity;    /* of the chart (roll-centre height for the large one), or -1 */
  int setup;       /* the one whose marker is there, or -1 */
  double lowering; /* under the pixel, held inside the axis, mm */
  bool on_plot;    /* inside the axes' frame */
} LoweringHit;
LoweringHit lowering_hit (const Lowering *lowering, double x, double y);

/* The frame of a quantity's plot in the last drawing; false when it was not drawn. */
bool lowering_frame (const Lowering *lowering,
                     Quantity quantity,
                     double *x,
                     double *y,
                     double *width,
                     double *height);

/* Where a setup's marker on the roll centre's curve was drawn last; false where it does
 * not stand on the axis, is not shown, or cannot be assembled. */
bool
lowering_standing_place (const Lowering *lowering, unsigned setup, double *x, double *y);
