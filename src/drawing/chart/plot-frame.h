/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The frame of a plot of anything against anything: grid, axes, and figures at both. */

#pragma once

#include "drawing/chart/chart.h"
#include "drawing/pen/axis.h"

typedef struct {
  Frame plot;
  AxisRange x_range, y_range;
  Axis x, y;
} PlotFrame;

PlotFrame plot_frame (Frame plot, AxisRange x_range, AxisRange y_range);

/* Room that figures take to the left of the plot, and below it. */
double plot_frame_left (AxisRange y_range, TextCache *texts, const Theme *theme);
double plot_frame_foot (const Theme *theme);

/* Grid, left side, foot, both zero lines, and the figures. */
void plot_frame_draw (const PlotFrame *frame,
                      cairo_t *cr,
                      TextCache *texts,
                      const Theme *theme);

/* Bold name and unit over the plot, what has no room is left out. */
void plot_frame_title (const PlotFrame *frame,
                       cairo_t *cr,
                       TextCache *texts,
                       const Theme *theme,
                       const char *name,
                       const char *unit);
