/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/loads/loads-board-private.h"

#include <glib/gi18n-lib.h>

#define STRONGER 1.3
#define QUIETER 0.8
#define PADDING 0.05     /* of the span, above and below */
#define LEAST_HEIGHT 7.0 /* of a plot, in texts */
#define LEAST_WIDTH 13.0 /* likewise */

typedef struct {
  const char *name;
  UnitKind unit;
  double least_span;
} ChartInfo;

static ChartInfo
chart_info (RodChart chart)
{
  static const ChartInfo infos[N_ROD_CHARTS] = {
    [ROD_CHART_CAMBER] = { N_ ("Camber by bending"), UNIT_ANGLE, 0.02 },
    [ROD_CHART_TOE] = { N_ ("Toe-in by bending"), UNIT_ANGLE, 0.02 },
    [ROD_CHART_SIDE_FORCE] = { N_ ("Side force on the rod"), UNIT_FORCE, 100.0 },
    [ROD_CHART_STRESS] = { N_ ("Bending stress"), UNIT_STRESS, 20.0 },
  };

  return infos[chart];
}

static double
value_of (const RodStation *station, RodChart chart)
{
  switch (chart) {
  case ROD_CHART_CAMBER:
    return station->camber_cost * 180.0 / G_PI;
  case ROD_CHART_TOE:
    return station->toe_cost * 180.0 / G_PI;
  case ROD_CHART_SIDE_FORCE:
    return station->side_force;
  case ROD_CHART_STRESS:
    return station->bending.stress;
  default:
    return NAN;
  }
}

static bool
has_curve (const LoadsView *view, unsigned setup)
{
  return loads_shows (view, setup) && view->loads->rods->setups[setup].is_given;
}

bool
rod_charts_has_rods (const LoadsView *view)
{
  for (unsigned i = 0; i < view->loads->rods->n_setups; i++)
    if (has_curve (view, i))
      return true;
  return false;
}

static void
fit (RodCharts *charts, const LoadsView *view, RodChart chart, int most_steps, bool hold)
{
  AxisRange *range = &charts->range[chart];
  double low = 0.0, high = 0.0;

  for (unsigned s = 0; s < view->loads->rods->n_setups; s++)
    for (unsigned i = 0; has_curve (view, s) && i < ROD_STATIONS; i++) {
      const double value = value_of (&view->loads->rods->setups[s].stations[i], chart);

      low = isfinite (value) ? fmin (low, value) : low;
      high = isfinite (value) ? fmax (high, value) : high;
    }
  const double pad = PADDING * (high - low);
  low = low < 0.0 ? low - pad : low;
  high = fmax (high + pad, low + chart_info (chart).least_span);
  if (hold && range->step > 0.0) {
    low = fmin (low, range->low);
    high = fmax (high, range->high);
  }
  *range = axis_range_round_in (chart_info (chart).unit, low, high, most_steps);
}

void
rod_charts_fit (RodCharts *charts, const LoadsView *view, bool hold)
{
  for (RodChart i = 0; i < N_ROD_CHARTS; i++)
    fit (charts, view, i, 4, hold);
}

static double
title_height (const Theme *theme)
{
  return round (2.0 * theme->text);
}

static unsigned
charts_across (const Theme *theme, double width)
{
  return width >= 2.0 * (LEAST_WIDTH + 4.0) * theme->text ? 2 : 1;
}

static double
row_height (const Theme *theme)
{
  return title_height (theme) + plot_frame_foot (theme) + LEAST_HEIGHT * theme->text;
}

double
rod_charts_height (const LoadsPen *pen, double width)
{
  return N_ROD_CHARTS / charts_across (pen->theme, width) * row_height (pen->theme);
}

bool
rod_charts_place (RodCharts *charts, const LoadsPen *pen, Frame frame)
{
  const Theme *theme = pen->theme;
  const double gap = round (1.2 * theme->text);
  const double foot = plot_frame_foot (theme), head = title_height (theme);
  const AxisRange x_range = axis_range_exact (-ROD_MOST_G, ROD_MOST_G, 6);
  const unsigned n_across = charts_across (theme, frame.width);
  const unsigned n_rows = (unsigned) CLAMP (frame.height / row_height (theme), 0.0,
                                            (double) N_ROD_CHARTS / n_across);
  double left = 0.0;

  for (RodChart i = 0; i < N_ROD_CHARTS; i++)
    left = fmax (left, plot_frame_left (charts->range[i], pen->texts, theme));
  const double width = (frame.width - (n_across - 1) * gap) / n_across - left;
  for (RodChart i = 0; i < N_ROD_CHARTS; i++) {
    const unsigned column = i % n_across, line = i / n_across;
    const double height = frame.height / fmax (n_rows, 1.0);
    const Frame plot = { frame.x + left + column * (width + left + gap),
                         frame.y + line * height + head, width, height - head - foot };

    charts->is_drawn[i] = line < n_rows && width > LEAST_WIDTH * theme->text / 2.0;
    if (charts->is_drawn[i])
      charts->frame[i] = plot_frame (plot, x_range, charts->range[i]);
  }
  return charts->is_drawn[0];
}

static void
draw_curve (const RodCharts *charts, const LoadsPen *pen, RodChart chart, unsigned setup)
{
  const PlotFrame *f = &charts->frame[chart];
  const SetupStyle style = loads_style (pen->view, setup);
  const bool is_in_hand = setup == pen->view->loads->springs->study->in_hand;
  bool is_drawing = false;

  cairo_save (pen->cr);
  cairo_rectangle (pen->cr, f->plot.x, f->plot.y, f->plot.width, f->plot.height);
  cairo_clip (pen->cr);
  cairo_new_path (pen->cr);
  for (unsigned i = 0; i < ROD_STATIONS; i++) {
    const double value =
        value_of (&pen->view->loads->rods->setups[setup].stations[i], chart);
    const double x = axis_to_pixel (f->x, rod_station_g (i));
    const double y = axis_to_pixel (f->y, value);

    if (!isfinite (value))
      is_drawing = false;
    else if (is_drawing)
      cairo_line_to (pen->cr, x, y);
    else
      cairo_move_to (pen->cr, x, y);
    is_drawing = isfinite (value);
  }
  theme_use_style (pen->cr, &style, (is_in_hand ? STRONGER : QUIETER) * pen->theme->line);
  cairo_stroke (pen->cr);
  cairo_restore (pen->cr);
}

static void
draw_chart (const RodCharts *charts, const LoadsPen *pen, RodChart chart)
{
  const PlotFrame *f = &charts->frame[chart];
  const ChartInfo info = chart_info (chart);
  const unsigned in_hand = pen->view->loads->springs->study->in_hand;

  plot_frame_draw (f, pen->cr, pen->texts, pen->theme);
  plot_frame_title (f, pen->cr, pen->texts, pen->theme, _ (info.name),
                    unit_caption (info.unit));
  for (unsigned i = 0; i < pen->view->loads->rods->n_setups; i++)
    if (i != in_hand && has_curve (pen->view, i))
      draw_curve (charts, pen, chart, i);
  if (has_curve (pen->view, in_hand))
    draw_curve (charts, pen, chart, in_hand);
}

void
rod_charts_draw (const RodCharts *charts, const LoadsPen *pen)
{
  for (RodChart i = 0; i < N_ROD_CHARTS; i++)
    if (charts->is_drawn[i])
      draw_chart (charts, pen, i);
}
