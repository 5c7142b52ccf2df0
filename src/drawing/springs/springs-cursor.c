/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/springs/springs-chart.h"

#include <math.h>

static double
value_of (const SpringCorner *corner, SpringsChart kind)
{
  if (corner == NULL || corner->stands == STANDS_NOT_GIVEN)
    return (double) NAN;
  return kind == SPRINGS_LOAD ? corner->now.load : corner->now.rate;
}

static void
draw_dot (const Chart *chart, const SpringsPen *pen, double value, Colour colour)
{
  cairo_t *cr = pen->chart.cr;

  if (!(value >= chart->y.low && value <= chart->y.high))
    return;
  cairo_new_path (cr);
  cairo_arc (cr, axis_to_pixel (chart->x, pen->chart.study->travel),
             axis_to_pixel (chart->y, value), 1.7 * pen->chart.theme->line, 0.0,
             2.0 * G_PI);
  theme_use (cr, colour);
  cairo_fill (cr);
}

static void
format_value (SpringsChart kind, double value, char *text, gsize size)
{
  unit_format (kind == SPRINGS_LOAD ? UNIT_FORCE : UNIT_RATE, value,
               kind == SPRINGS_LOAD ? 0 : 1, FALSE, text, size);
}

/* At the right end of the title line, from the right: the reference, the setup in hand;
 * as far as there is room. */
static void
draw_values (const Chart *chart,
             const SpringsPen *pen,
             SpringsChart kind,
             const SpringCorner *reference)
{
  const Theme *theme = pen->chart.theme;
  const TextStyle bold = chart_title_style (theme), small = chart_small_style (theme);
  const TextAnchor anchor = { 1.0, TEXT_BASELINE };
  const double gap = round (0.7 * theme->text), y = chart_title_baseline (chart, theme);
  double x = chart->plot.x + chart->plot.width;
  char value[32], other[32];

  format_value (kind, value_of (spring_study_in_hand (pen->springs), kind), value,
                sizeof value);
  format_value (kind, value_of (reference, kind), other, sizeof other);
  double room = chart->plot.width - chart_title_width (chart, &pen->chart) - gap -
                text_measure (pen->chart.texts, bold, value).width;
  const double beside = text_measure (pen->chart.texts, small, other).width + gap;

  if (reference != NULL && room >= beside) {
    theme_use (pen->chart.cr,
               theme_setup_style (theme, pen->chart.study->baseline).colour);
    text_draw (pen->chart.texts, pen->chart.cr, small, other, x, y, anchor);
    x -= beside;
  }
  if (room < 0.0)
    return;
  theme_use (pen->chart.cr, chart_curve_style (chart, &chart->hand, theme).colour);
  text_draw (pen->chart.texts, pen->chart.cr, bold, value, x, y, anchor);
}

void
spring_cursor_draw (const SpringCharts *charts, const SpringsPen *pen)
{
  const Theme *theme = pen->chart.theme;
  const SpringCorner *hand = spring_study_in_hand (pen->springs);
  const SpringCorner *reference = springs_reference (pen->springs);
  cairo_t *cr = pen->chart.cr;

  for (int c = 0; c < N_SPRINGS_CHARTS; c++) {
    const Chart *chart = &charts->charts[c];
    const Frame plot = chart->plot;
    const double x = floor (axis_to_pixel (chart->x, pen->chart.study->travel)) + 0.5;

    if (plot.width <= 0.0)
      continue;
    theme_use (cr, theme_quiet (theme, theme->ink, 0.45));
    theme_line (cr, LINE_FULL, theme->thin);
    cairo_move_to (cr, x, plot.y);
    cairo_line_to (cr, x, plot.y + plot.height);
    cairo_stroke (cr);
    draw_dot (chart, pen, value_of (reference, (SpringsChart) c),
              theme_setup_style (theme, pen->chart.study->baseline).colour);
    draw_dot (chart, pen, value_of (hand, (SpringsChart) c),
              chart_curve_style (chart, &chart->hand, theme).colour);
    draw_values (chart, pen, (SpringsChart) c, reference);
  }
}
