/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the board of loads only: its two parts. */

#pragma once

#include "drawing/chart/plot-frame.h"
#include "drawing/loads/loads-board.h"

typedef struct {
  cairo_t *cr;
  TextCache *texts;
  const LoadsView *view;
  const Theme *theme;
} LoadsPen;

bool loads_shows (const LoadsView *view, unsigned setup);
SetupStyle loads_style (const LoadsView *view, unsigned setup);

#define LOADS_MOST_ROWS 24

/* Bars of what stands on tower and floor, all to one scale: a row for each setup. */
typedef struct {
  Frame frame;
  AxisRange range; /* of newtons; zero before the first fit */
  Axis axis;
  double names;   /* width of the names beside the bars; 0: they stand above them */
  bool has_words; /* the figures say what they are of */
  double row;     /* height of one */
  unsigned n_rows, rows[LOADS_MOST_ROWS]; /* setups */
} LoadsBars;

/* As many rows as find room in @area, that of the setup in hand before others; returns
 * what they take with their axis. */
double loads_bars_place (LoadsBars *bars, const LoadsPen *pen, Frame area, bool hold);
void loads_bars_draw (const LoadsBars *bars, const LoadsPen *pen);
int loads_bars_hit (const LoadsBars *bars, double x, double y);

/* The charts of the rods against lateral acceleration. */
typedef struct {
  PlotFrame frame[N_ROD_CHARTS];
  AxisRange range[N_ROD_CHARTS]; /* of y; zero before the first fit */
  bool is_drawn[N_ROD_CHARTS];
} RodCharts;

/* Whether any setup shown has a rod. */
bool rod_charts_has_rods (const LoadsView *view);
void rod_charts_fit (RodCharts *charts, const LoadsView *view, bool hold);
/* From which on all of them find room at that width. */
double rod_charts_height (const LoadsPen *pen, double width);
/* As many charts as find room in @frame, two beside each other where it is wide; false
 * where none does. */
bool rod_charts_place (RodCharts *charts, const LoadsPen *pen, Frame frame);
void rod_charts_draw (const RodCharts *charts, const LoadsPen *pen);
