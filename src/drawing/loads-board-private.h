/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the board of loads only: its two parts. */

#pragma once

#include "drawing/loads-board.h"
#include "drawing/plot-frame.h"

typedef struct {
  cairo_t *cr;
  TextCache *texts;
  const LoadsView *view;
  const Theme *theme;
} LoadsPen;

bool loads_shows (const LoadsView *view, unsigned setup);
unsigned loads_count_shown (const LoadsView *view);
SetupStyle loads_style (const LoadsView *view, unsigned setup);

/* Bars of what stands on tower and floor, all to one scale. */
typedef struct {
  Frame frame;
  AxisRange range; /* of newtons; zero before the first fit */
} LoadsBars;

void loads_bars_fit (LoadsBars *bars, const LoadsView *view, bool hold);
/* Of all rows with their axis. */
double loads_bars_height (const LoadsView *view);
void loads_bars_draw (const LoadsBars *bars, const LoadsPen *pen);
int loads_bars_hit (const LoadsBars *bars, const LoadsView *view, double x, double y);

/* The charts of the rods against lateral acceleration. */
typedef struct {
  PlotFrame frame[N_ROD_CHARTS];
  AxisRange range[N_ROD_CHARTS]; /* of y; zero before the first fit */
  bool is_drawn[N_ROD_CHARTS];
} RodCharts;

/* Whether any setup shown has a rod. */
bool rod_charts_has_rods (const LoadsView *view);
void rod_charts_fit (RodCharts *charts, const LoadsView *view, bool hold);
/* As many charts as find room in @frame, two beside each other where it is wide. */
void rod_charts_place (RodCharts *charts, const LoadsPen *pen, Frame frame);
void rod_charts_draw (const RodCharts *charts, const LoadsPen *pen);
