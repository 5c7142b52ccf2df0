/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The question "where does the load go, and what does the rod make of it?": for each
 * setup shown, how many newtons of a load stand on the strut tower and how many on floor
 * or subframe; and against lateral acceleration what bending of the damper's rod costs in
 * camber and toe, the side force on it and the stress in it. The caution stands below,
 * always. */

#pragma once

#include "drawing/chart/title-block.h"
#include "model/load/load-study.h"

typedef struct {
  const LoadStudy *loads; /* solved */
  Theme theme;
  bool hold_axes;             /* axes may grow but not shrink: in a drag */
  bool caution_stands_beside; /* who shows this says it himself */
  const TitleBlock *title;    /* for exports; NULL in a window */
} LoadsView;

typedef struct LoadsBoard LoadsBoard;
LoadsBoard *loads_board_new (void);
void loads_board_free (LoadsBoard *board);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LoadsBoard, loads_board_free)

void loads_board_draw (
    LoadsBoard *board, cairo_t *cr, const LoadsView *view, double width, double height);

/* The height from which on everything finds room at that width. */
double loads_board_height (LoadsBoard *board, const LoadsView *view, double width);

typedef enum {
  ROD_CHART_CAMBER,
  ROD_CHART_TOE,
  ROD_CHART_SIDE_FORCE,
  ROD_CHART_STRESS,
  N_ROD_CHARTS
} RodChart;

/* The frame of a chart's plot in the last drawing; false when it was not drawn. */
bool loads_board_frame (const LoadsBoard *board,
                        RodChart chart,
                        double *x,
                        double *y,
                        double *width,
                        double *height);

/* The setup whose bars lie under a pixel of the last drawing, or -1. */
int loads_board_hit (const LoadsBoard *board, double x, double y);
