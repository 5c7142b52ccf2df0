/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/board/lowering-chart.h"

#include <glib/gi18n-lib.h>

#define N STUDY_STATIONS

/* Room above and below the curves, in parts of their span. */
#define PADDING 0.03

/* Leaves room for half a marker. */
#define LABEL_GAP 10.0

bool
lowering_has_reference (const Study *study)
{
  return study_has_reference (study) ||
         study_in_hand (study)->lowering != study_reference (study)->lowering;
}

bool
lowering_shows (const Study *study, int index)
{
  if (index != LOWERING_MEASURED)
    return study->setups[index].is_shown;
  for (unsigned i = 0; i < study->n_setups; i++)
    if (study->setups[i].is_shown && !study->setups[i].is_moved &&
        study->setups[i].lowering == study->measured.lowering)
      return false; /* which is the same */
  return study->baseline == study->in_hand && lowering_has_reference (study);
}

const StudyCorner *
lowering_corner (const Study *study, int index)
{
  return index == LOWERING_MEASURED ? &study->measured : &study->setups[index];
}

bool
lowering_chart_is_heights (const LoweringChart *chart)
{
  return chart->quantity == QUANTITY_ROLL_CENTRE_HEIGHT;
}

double
lowering_chart_value (const LoweringChart *chart, const Station *station)
{
  if (station->status != POSE_OK)
    return (double) NAN;
  return quantity_edge_value (chart->quantity, station->measures.value[chart->quantity]);
}

static double
least_span (const LoweringChart *chart)
{
  return quantity_dimension (chart->quantity) == DIMENSION_ANGLE_PER_LENGTH ? 0.005 : 2.0;
}

static void
extend (double value, double *low, double *high)
{
  if (!isfinite (value))
    return;
  *low = fmin (*low, value);
  *high = fmax (*high, value);
}

static void
extend_by_corner (const LoweringChart *chart,
                  const StudyCorner *corner,
                  AxisRange lowering,
                  double *low,
                  double *high)
{
  for (int i = 0; i < N; i++) {
    const Station *station = &corner->stations[i];

    if (station->travel >= lowering.low && station->travel <= lowering.high)
      extend (lowering_chart_value (chart, station), low, high);
  }
}

void
lowering_chart_fit (LoweringChart *chart,
                    const Study *study,
                    AxisRange lowering,
                    int most_steps,
                    bool hold)
{
  const bool is_heights = lowering_chart_is_heights (chart);
  double low = INFINITY, high = -INFINITY;

  for (int i = LOWERING_MEASURED; i < (int) study->n_setups; i++)
    if (lowering_shows (study, i))
      extend_by_corner (chart, lowering_corner (study, i), lowering, &low, &high);
  extend (0.0, &low, &high);
  if (is_heights) {
    extend (study->cg_height - lowering.low, &low, &high);
    /* a roll centre that dives to the antipodes must not flatten all the rest */
    low = fmax (low, -study->cg_height);
    high = fmin (high, 2.0 * study->cg_height);
  }

  const double pad = PADDING * (high - low);
  const double middle = (high + low) / 2.0,
               reach = fmax ((high - low) / 2.0 + pad, least_span (chart) / 2.0);
  low = middle - reach;
  high = middle + reach;
  if (hold && chart->range.step > 0.0) {
    low = fmin (low, chart->range.low);
    high = fmax (high, chart->range.high);
  }
  chart->range =
      axis_range_round_in (quantity_unit_kind (chart->quantity), low, high, most_steps);
}

void
lowering_chart_place (LoweringChart *chart,
                      LoweringBox slot,
                      LoweringBox plot,
                      AxisRange lowering)
{
  chart->slot = slot;
  chart->plot = plot;
  chart->x = (Axis){ lowering.low, lowering.high, plot.x, plot.x + plot.width };
  chart->y = (Axis){ chart->range.low, chart->range.high, plot.y + plot.height, plot.y };
}

TextStyle
lowering_style (const Theme *theme, TextWeight weight, bool is_small)
{
  return (TextStyle){ theme->font, is_small ? theme->small_text : theme->text, weight };
}

double
lowering_title_height (const Theme *theme)
{
  return round (2.5 * theme->text);
}

double
lowering_chart_label_width (const LoweringChart *chart,
                            TextCache *texts,
                            const Theme *theme)
{
  int first, n = axis_range_ticks (chart->range, &first);
  double width = 0.0;
  char text[32];

  for (int i = first; i < first + n; i++) {
    axis_tick_text (chart->range, i, text, sizeof text);
    width =
        fmax (width,
              text_measure (texts, lowering_style (theme, TEXT_PLAIN, true), text).width);
  }
  return width;
}

static double
crisp (double value)
{
  return floor (value) + 0.5;
}

static void
draw_glow (const LoweringChart *chart, const LoweringPen *pen)
{
  const LoweringBox s = chart->slot;

  theme_use (pen->cr, pen->theme->glow);
  cairo_rectangle (pen->cr, s.x, s.y, s.width, s.height);
  cairo_fill (pen->cr);
}

static void
draw_grid (const LoweringChart *chart, const LoweringPen *pen)
{
  const LoweringBox plot = chart->plot;
  cairo_t *cr = pen->cr;
  int first, n = axis_range_ticks (chart->range, &first);

  theme_line (cr, LINE_FULL, pen->theme->thin);
  theme_use (cr, pen->theme->faint);
  for (int i = first; i < first + n; i++) {
    const double y = crisp (axis_to_pixel (chart->y, axis_tick (chart->range, i)));
    cairo_move_to (cr, plot.x, y);
    cairo_line_to (cr, plot.x + plot.width, y);
  }
  n = axis_range_ticks (pen->lowering, &first);
  for (int i = first; i < first + n; i++) {
    const double x = crisp (axis_to_pixel (chart->x, axis_tick (pen->lowering, i)));
    cairo_move_to (cr, x, plot.y);
    cairo_line_to (cr, x, plot.y + plot.height);
  }
  cairo_stroke (cr);
}

static void
draw_labels (const LoweringChart *chart, const LoweringPen *pen)
{
  const TextStyle style = lowering_style (pen->theme, TEXT_PLAIN, true);
  const double foot = chart->plot.y + chart->plot.height;
  int first, n = axis_range_ticks (chart->range, &first);
  char text[32];

  theme_use (pen->cr, pen->theme->soft_ink);
  for (int i = first; i < first + n; i++) {
    axis_tick_text (chart->range, i, text, sizeof text);
    text_draw (pen->texts, pen->cr, style, text, chart->plot.x - LABEL_GAP,
               axis_to_pixel (chart->y, axis_tick (chart->range, i)),
               (TextAnchor){ 1.0, 0.5 });
  }
  n = axis_range_ticks (pen->lowering, &first);
  for (int i = first; i < first + n; i++) {
    axis_tick_text (pen->lowering, i, text, sizeof text);
    text_draw (pen->texts, pen->cr, style, text,
               axis_to_pixel (chart->x, axis_tick (pen->lowering, i)),
               foot + round (1.55 * style.size), (TextAnchor){ 0.5, TEXT_BASELINE });
  }
}

/* Left side and foot, and the zero line: for heights that is the ground. */
static void
draw_axes (const LoweringChart *chart, const LoweringPen *pen)
{
  const LoweringBox plot = chart->plot;
  const double foot = crisp (plot.y + plot.height);
  cairo_t *cr = pen->cr;

  theme_use (cr, pen->theme->body);
  theme_line (cr, LINE_FULL, pen->theme->thin);
  cairo_move_to (cr, crisp (plot.x), plot.y);
  cairo_line_to (cr, crisp (plot.x), foot);
  cairo_line_to (cr, plot.x + plot.width, foot);
  cairo_stroke (cr);
  if (chart->range.low > 0.0 || chart->range.high < 0.0)
    return;

  const double zero = crisp (axis_to_pixel (chart->y, 0.0));
  if (lowering_chart_is_heights (chart)) {
    const double step = round (0.6 * pen->theme->text);

    cairo_save (cr);
    cairo_rectangle (cr, plot.x, zero, plot.width, step);
    cairo_clip (cr);
    for (double x = plot.x; x < plot.x + plot.width + step; x += step) {
      cairo_move_to (cr, x, zero);
      cairo_rel_line_to (cr, -step, step);
    }
    cairo_stroke (cr);
    cairo_restore (cr);
    theme_use (cr, pen->theme->ink);
  }
  cairo_move_to (cr, plot.x, zero);
  cairo_line_to (cr, plot.x + plot.width, zero);
  cairo_stroke (cr);
}

static double
title_baseline (const LoweringChart *chart, const Theme *theme)
{
  return chart->plot.y - round (1.15 * theme->text);
}

static double
unit_room (const LoweringPen *pen, const char *unit)
{
  return 0.5 * pen->theme->text +
         text_measure (pen->texts, lowering_style (pen->theme, TEXT_PLAIN, true), unit)
             .width;
}

/* Name and unit, where both fit; returns where they end. */
static double
draw_title (const LoweringChart *chart, const LoweringPen *pen)
{
  const QuantityInfo info = quantity_info (chart->quantity);
  const bool is_heights = lowering_chart_is_heights (chart);
  const char *unit = quantity_caption (chart->quantity);
  const double y = title_baseline (chart, pen->theme);
  const TextStyle bold = lowering_style (pen->theme, TEXT_BOLD, false);
  double x = chart->slot.x;
  const char *whole = is_heights ? _ ("Height above the ground") : info.name;
  const char *less = is_heights ? _ ("Height") : info.short_name;
  const bool is_whole =
      text_measure (pen->texts, bold, whole).width + unit_room (pen, unit) <=
      chart->slot.width;

  theme_use (pen->cr, pen->theme->ink);
  x += text_draw_within (pen->texts, pen->cr, bold, is_whole ? whole : less, x, y,
                         chart->slot.width)
           .width +
       0.5 * pen->theme->text;
  if (x - 0.5 * pen->theme->text + unit_room (pen, unit) >
      chart->slot.x + chart->slot.width)
    return x;
  theme_use (pen->cr, pen->theme->soft_ink);
  return x + text_draw (pen->texts, pen->cr,
                        lowering_style (pen->theme, TEXT_PLAIN, true), unit, x, y,
                        (TextAnchor){ 0.0, TEXT_BASELINE })
                 .width;
}

/* At the right end of the title line, where there is room beyond @from: what the setup in
 * hand has where it stands. The heights have their figures in the plot. */
static void
draw_value (const LoweringChart *chart, const LoweringPen *pen, double from)
{
  const TextStyle style = lowering_style (pen->theme, TEXT_BOLD, false);
  const Station *stands = &study_in_hand (pen->study)->at_height;
  const double right = chart->slot.x + chart->slot.width;
  char text[48];

  if (lowering_chart_is_heights (chart) || stands->status != POSE_OK)
    return;
  quantity_format (chart->quantity, stands->measures.value[chart->quantity], TRUE, text,
                   sizeof text);
  if (right - from < text_measure (pen->texts, style, text).width + pen->theme->text)
    return;
  theme_use (pen->cr, theme_hand_style (pen->theme, pen->study->in_hand).colour);
  text_draw (pen->texts, pen->cr, style, text, right, title_baseline (chart, pen->theme),
             (TextAnchor){ 1.0, TEXT_BASELINE });
}

void
lowering_chart_draw (const LoweringChart *chart, const LoweringPen *pen)
{
  if (pen->is_lit)
    draw_glow (chart, pen);
  draw_grid (chart, pen);
  draw_axes (chart, pen);
  draw_labels (chart, pen);
  draw_value (chart, pen, draw_title (chart, pen));
  lowering_curves_draw (chart, pen);
}
