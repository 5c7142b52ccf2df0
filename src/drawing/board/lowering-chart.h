/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One quantity of all shown setups against lowering. The chart of the roll centre carries
 * the centre of gravity and the lever arm as well. */

#pragma once

#include "drawing/board/lowering.h"
#include "drawing/pen/axis.h"
#include "drawing/pen/text.h"
#include "model/study/quantity-info.h"

/* In place of a setup's index: the corner as measured. */
#define LOWERING_MEASURED (-1)

typedef struct {
  double x, y, width, height;
} LoweringBox;

typedef struct {
  Quantity quantity;
  LoweringBox slot, plot; /* title, labels and plot; plot */
  AxisRange range;        /* of y */
  Axis x, y;
} LoweringChart;

typedef struct {
  cairo_t *cr;
  TextCache *texts;
  const Theme *theme;
  const Study *study;
  AxisRange lowering; /* of x, with its ticks */
  bool is_lit, show_cursor;
} LoweringPen;

/* Whether a reference stands beside the setup in hand: another linkage or height. */
bool lowering_has_reference (const Study *study);

/* Whether setup @index, or LOWERING_MEASURED, is drawn. */
bool lowering_shows (const Study *study, int index);
const StudyCorner *lowering_corner (const Study *study, int index);

bool lowering_chart_is_heights (const LoweringChart *chart);

/* At the screen's scale; NAN where not assembled. */
double lowering_chart_value (const LoweringChart *chart, const Station *station);

/* Sets chart->range for @most_steps steps; with @hold it never shrinks. */
void lowering_chart_fit (LoweringChart *chart,
                         const Study *study,
                         AxisRange lowering,
                         int most_steps,
                         bool hold);
void lowering_chart_place (LoweringChart *chart,
                           LoweringBox slot,
                           LoweringBox plot,
                           AxisRange lowering);

double lowering_chart_label_width (const LoweringChart *chart,
                                   TextCache *texts,
                                   const Theme *theme);
/* Of the widest name that stands at a curve's end; 0 where none do. */
double lowering_name_width (const LoweringChart *chart,
                            TextCache *texts,
                            const Theme *theme,
                            const Study *study);
double lowering_title_height (const Theme *theme);

/* Where a setup's marker stands; false where it has no place on the chart. */
bool lowering_chart_standing (const LoweringChart *chart,
                              const StudyCorner *corner,
                              double *x,
                              double *y);

void lowering_chart_draw (const LoweringChart *chart, const LoweringPen *pen);

/* Inside the chart: curves, markers and names of all shown setups. */
void lowering_curves_draw (const LoweringChart *chart, const LoweringPen *pen);

/* Inside the chart of heights: the band and the figures of the setup in hand where it
 * stands. */
void lowering_band_draw (const LoweringChart *chart, const LoweringPen *pen);
void lowering_lever_draw (const LoweringChart *chart, const LoweringPen *pen);

TextStyle lowering_style (const Theme *theme, TextWeight weight, bool is_small);
