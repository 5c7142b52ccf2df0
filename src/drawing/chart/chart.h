/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One quantity against wheel travel: a curve for every setup that is shown.
 *
 * A chart holds its curves in the units of the screen, its axes and its place. What
 * stands still (grid, labels, the other setups) and what moves (the setup in hand,
 * cursor, values) are drawn apart, so that the board can keep the first. */

#pragma once

#include "drawing/chart/curve-labels.h"
#include "drawing/pen/axis.h"
#include "drawing/pen/text.h"
#include "model/study/quantity-info.h"
#include "model/study/study.h"

typedef struct {
  double x, y, width, height;
} Frame;

typedef enum {
  WORDS_NOWHERE,
  WORDS_RIGHT,
  WORDS_LEFT
} WordsPlace;

#define CHART_MEASURED (-1)

typedef struct {
  int setup;     /* its place in the car, or CHART_MEASURED */
  unsigned rank; /* among the curves of the chart, for what is staggered */
  double values[STUDY_STATIONS]; /* NAN: not assembled */
  double standing, at_standing;  /* travel and value where the setup stands */
} ChartCurve;

typedef struct {
  Quantity quantity;
  QuantityInfo info;
  Frame slot; /* title, labels and plot */
  Frame plot;
  Axis x, y;
  AxisRange range;    /* of y */
  bool is_clipped;    /* values go past the axis: the quantity runs to infinity */
  ChartCurve hand;    /* of the setup in hand */
  ChartCurve *others; /* what it is drawn over, the reference among them */
  unsigned n_others, n_allocated;
  double *sorted;                      /* room to sort all values in */
  WordsPlace words_above, words_below; /* the sign words in the plot */
} Chart;

/* A chart of zeros, or one that was cleared, becomes one of @quantity. */
void chart_init (Chart *chart, Quantity quantity);
void chart_clear (Chart *chart);

/* Whether the corner as measured has a curve of its own: as the reference of a baseline
 * in hand, unless a shown setup has moved nothing and so is the same. */
bool chart_shows_measured (const Study *study);

/* Takes the curves of all setups shown over; true when others than the one in hand differ
 * from those held. Allocates only when there are more than ever. */
bool chart_load (Chart *chart, const Study *study);

/* Sets chart->range to what all curves need, with room for @most_steps steps; with @hold
 * it never shrinks. True when it changed. */
bool chart_fit (Chart *chart, int most_steps, bool hold);

/* Puts the chart and its axes in place. */
void chart_place (Chart *chart, Frame slot, Frame plot, SweepRange travel);

/* Whether a curve runs through a box of the plot, and whether none does. */
bool chart_runs_through (const Chart *chart, const ChartCurve *curve, Frame box);
bool chart_is_free (const Chart *chart, Frame box);

/* Chooses corners for the sign words that no curve runs through, the old ones if they
 * will do. True when it changed. */
bool chart_place_words (Chart *chart, TextCache *texts, const Theme *theme);

/* The width of the widest label at the y axis. */
double chart_label_width (const Chart *chart, TextCache *texts, const Theme *theme);

/* The curve as a path in the plot of @chart, of as few lines as pass every station within
 * 0.02 pixels; breaks at what is not assembled and where a quantity passes through
 * infinity. Returns the number of pieces. */
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
  bool has_reference; /* the setup in hand is compared with another curve */
  bool show_cursor, is_lit, names_gaps;
  bool says_way_left; /* at the foot: how far it is to either end of the car's travel */
  double label_room;  /* to the right of the plot, for names at the curves' ends; or 0 */
} ChartPen;

/* How a curve of the chart looks, and what it is called. */
SetupStyle
chart_curve_style (const Chart *chart, const ChartCurve *curve, const Theme *theme);
const char *chart_curve_name (const ChartCurve *curve, const Study *study);

/* The curves' names in place, in the order hand, others; returns how many. */
unsigned chart_place_labels (const Chart *chart,
                             const ChartPen *pen,
                             CurveLabel labels[CURVE_LABELS_MOST]);

/* The parts of a chart that chart_draw_… put together: of the curves … */
void chart_draw_others (const Chart *chart, const ChartPen *pen);
void chart_draw_hand (const Chart *chart, const ChartPen *pen);
void chart_draw_names (const Chart *chart, const ChartPen *pen);

/* Stretches of travel that the setup in hand cannot reach, and why. */
void chart_draw_gaps (const Chart *chart, const ChartPen *pen);

/* Of the title line: its baseline, and how far name and unit reach. */
double chart_title_baseline (const Chart *chart, const Theme *theme);
double chart_title_width (const Chart *chart, const ChartPen *pen);

void chart_draw_still (const Chart *chart, const ChartPen *pen);
void chart_draw_moving (const Chart *chart, const ChartPen *pen);
