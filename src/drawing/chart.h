/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One quantity against wheel travel: the corner as measured and the setup.
 *
 * A chart holds its two curves in the units of the screen, its axes and its place. What
 * stands still (grid, labels, measured curve) and what moves (setup, cursor, values) are
 * drawn apart, so that the board can keep the first. */

#pragma once

#include "drawing/axis.h"
#include "drawing/text.h"
#include "model/quantity-info.h"
#include "model/study.h"

typedef struct {
  double x, y, width, height;
} Frame;

typedef enum {
  WORDS_NOWHERE,
  WORDS_RIGHT,
  WORDS_LEFT
} WordsPlace;

typedef struct {
  Quantity quantity;
  QuantityInfo info;
  Frame slot; /* title, labels and plot */
  Frame plot;
  Axis x, y;
  AxisRange range; /* of y */
  bool is_clipped; /* values go past the axis: the quantity runs to infinity */
  double measured[STUDY_STATIONS], setup[STUDY_STATIONS]; /* NAN: not assembled */
  WordsPlace words_above, words_below;                    /* the sign words in the plot */
} Chart;

void chart_init (Chart *chart, Quantity quantity);

/* Takes the values over; true when they differ from those held. */
bool chart_load_measured (Chart *chart, const StudyCorner *corner);
bool chart_load_setup (Chart *chart, const StudyCorner *corner);

/* Sets chart->range to what both curves need, with room for @most_steps steps; with @hold
 * it never shrinks. True when it changed. */
bool chart_fit (Chart *chart, int most_steps, bool hold);

/* Puts the chart and its axes in place. */
void chart_place (Chart *chart, Frame slot, Frame plot, SweepRange travel);

/* Whether neither curve runs through a box of the plot. */
bool chart_is_free (const Chart *chart, Frame box);

/* Chooses corners for the sign words that no curve runs through, the old ones if they
 * will do. True when it changed. */
bool chart_place_words (Chart *chart, TextCache *texts, const Theme *theme);

/* The width of the widest label at the y axis. */
double chart_label_width (const Chart *chart, TextCache *texts, const Theme *theme);

/* The curve as a path in the plot of @chart; breaks at what is not assembled and where a
 * quantity passes through infinity. Returns the number of pieces. */
int chart_trace (const Chart *chart, cairo_t *cr, const double values[STUDY_STATIONS]);

/* Stations that cannot be assembled, first and last. */
typedef struct {
  int first, last;
  PoseStatus status;
} ChartGap;
#define CHART_MOST_GAPS 4
int chart_find_gaps (const StudyCorner *corner, ChartGap gaps[CHART_MOST_GAPS]);

TextStyle chart_title_style (const Theme *theme);
TextStyle chart_small_style (const Theme *theme);
double chart_title_height (const Theme *theme);

/* What chart_draw_… need beside the chart. */
typedef struct {
  cairo_t *cr;
  TextCache *texts;
  const Theme *theme;
  const Study *study;
  AxisRange travel;   /* of x, with its ticks */
  bool has_reference; /* the measured curve differs from the setup's */
  bool show_cursor, is_lit, names_gaps;
} ChartPen;

void chart_draw_still (const Chart *chart, const ChartPen *pen);
void chart_draw_moving (const Chart *chart, const ChartPen *pen);
