/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/chart/plot-frame.h"

#include <math.h>

#define LABEL_GAP 6.0 /* pixels, between figures and plot */

PlotFrame
plot_frame (Frame plot, AxisRange x_range, AxisRange y_range)
{
  return (PlotFrame){ plot,
                      x_range,
                      y_range,
                      { x_range.low, x_range.high, plot.x, plot.x + plot.width },
                      { y_range.low, y_range.high, plot.y + plot.height, plot.y } };
}

double
plot_frame_left (AxisRange range, TextCache *texts, const Theme *theme)
{
  int first, n = axis_range_ticks (range, &first);
  double width = 0.0;
  char text[32];

  for (int i = first; i < first + n; i++) {
    axis_tick_text (range, i, text, sizeof text);
    width = fmax (width, text_measure (texts, chart_small_style (theme), text).width);
  }
  return width + LABEL_GAP;
}

double
plot_frame_foot (const Theme *theme)
{
  return round (2.0 * theme->small_text);
}

static double
crisp (double value)
{
  return floor (value) + 0.5;
}

static void
draw_grid (const PlotFrame *f, cairo_t *cr, const Theme *theme)
{
  int first, n = axis_range_ticks (f->y_range, &first);

  theme_line (cr, LINE_FULL, theme->thin);
  theme_use (cr, theme->faint);
  for (int i = first; i < first + n; i++) {
    const double y = crisp (axis_to_pixel (f->y, axis_tick (f->y_range, i)));

    cairo_move_to (cr, f->plot.x, y);
    cairo_line_to (cr, f->plot.x + f->plot.width, y);
  }
  n = axis_range_ticks (f->x_range, &first);
  for (int i = first; i < first + n; i++) {
    const double x = crisp (axis_to_pixel (f->x, axis_tick (f->x_range, i)));

    cairo_move_to (cr, x, f->plot.y);
    cairo_line_to (cr, x, f->plot.y + f->plot.height);
  }
  cairo_stroke (cr);
}

static bool
has_zero (AxisRange range)
{
  return range.low < 0.0 && range.high > 0.0;
}

static void
draw_axes (const PlotFrame *f, cairo_t *cr, const Theme *theme)
{
  const double foot = crisp (f->plot.y + f->plot.height), left = crisp (f->plot.x);

  theme_use (cr, theme->body);
  theme_line (cr, LINE_FULL, theme->thin);
  cairo_move_to (cr, left, f->plot.y);
  cairo_line_to (cr, left, foot);
  cairo_line_to (cr, f->plot.x + f->plot.width, foot);
  if (has_zero (f->y_range)) {
    const double y = crisp (axis_to_pixel (f->y, 0.0));

    cairo_move_to (cr, left, y);
    cairo_line_to (cr, f->plot.x + f->plot.width, y);
  }
  if (has_zero (f->x_range)) {
    const double x = crisp (axis_to_pixel (f->x, 0.0));

    cairo_move_to (cr, x, f->plot.y);
    cairo_line_to (cr, x, foot);
  }
  cairo_stroke (cr);
}

static void
draw_figures (const PlotFrame *f, cairo_t *cr, TextCache *texts, const Theme *theme)
{
  const TextStyle style = chart_small_style (theme);
  const double foot = f->plot.y + f->plot.height + round (1.5 * style.size);
  int first, n = axis_range_ticks (f->y_range, &first);
  char text[32];

  theme_use (cr, theme->soft_ink);
  for (int i = first; i < first + n; i++) {
    axis_tick_text (f->y_range, i, text, sizeof text);
    text_draw (texts, cr, style, text, f->plot.x - LABEL_GAP,
               axis_to_pixel (f->y, axis_tick (f->y_range, i)), (TextAnchor){ 1.0, 0.5 });
  }
  n = axis_range_ticks (f->x_range, &first);
  for (int i = first; i < first + n; i++) {
    axis_tick_text (f->x_range, i, text, sizeof text);
    text_draw (texts, cr, style, text, axis_to_pixel (f->x, axis_tick (f->x_range, i)),
               foot, (TextAnchor){ 0.5, TEXT_BASELINE });
  }
}

void
plot_frame_draw (const PlotFrame *frame,
                 cairo_t *cr,
                 TextCache *texts,
                 const Theme *theme)
{
  draw_grid (frame, cr, theme);
  draw_axes (frame, cr, theme);
  draw_figures (frame, cr, texts, theme);
}

void
plot_frame_title (const PlotFrame *frame,
                  cairo_t *cr,
                  TextCache *texts,
                  const Theme *theme,
                  const char *name,
                  const char *unit)
{
  const TextStyle bold = chart_title_style (theme), small = chart_small_style (theme);
  const double y = frame->plot.y - round (0.6 * theme->text);
  const double gap = 0.5 * theme->text;
  const double width = text_measure (texts, bold, name).width;

  theme_use (cr, theme->ink);
  text_draw_within (texts, cr, bold, name, frame->plot.x, y, frame->plot.width);
  if (width + gap + text_measure (texts, small, unit).width > frame->plot.width)
    return;
  theme_use (cr, theme->soft_ink);
  text_draw (texts, cr, small, unit, frame->plot.x + width + gap, y,
             (TextAnchor){ 0.0, TEXT_BASELINE });
}
