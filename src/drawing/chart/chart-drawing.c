/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/chart/chart.h"

#include <math.h>

/* The middle of the pixel that holds @value: a thin line there is one pixel wide. */
static double
crisp (double value)
{
  return floor (value) + 0.5;
}

static void
draw_glow (const Chart *chart, const ChartPen *pen)
{
  const Frame s = chart->slot;
  const double r = 4.0;
  cairo_t *cr = pen->cr;

  cairo_new_path (cr);
  cairo_arc (cr, s.x + r, s.y + r, r, G_PI, 1.5 * G_PI);
  cairo_arc (cr, s.x + s.width - r, s.y + r, r, -0.5 * G_PI, 0.0);
  cairo_arc (cr, s.x + s.width - r, s.y + s.height - r, r, 0.0, 0.5 * G_PI);
  cairo_arc (cr, s.x + r, s.y + s.height - r, r, 0.5 * G_PI, G_PI);
  theme_use (cr, pen->theme->glow);
  cairo_fill (cr);
}

static void
add_line_across (const Chart *chart, cairo_t *cr, double y)
{
  cairo_move_to (cr, chart->plot.x, crisp (y));
  cairo_line_to (cr, chart->plot.x + chart->plot.width, crisp (y));
}

static void
draw_grid (const Chart *chart, const ChartPen *pen)
{
  const Frame plot = chart->plot;
  cairo_t *cr = pen->cr;
  int first, n = axis_range_ticks (chart->range, &first);

  theme_line (cr, LINE_FULL, pen->theme->thin);
  theme_use (cr, pen->theme->faint);
  for (int i = first; i < first + n; i++)
    add_line_across (chart, cr, axis_to_pixel (chart->y, axis_tick (chart->range, i)));

  n = axis_range_ticks (pen->travel, &first);
  for (int i = first; i < first + n; i++) {
    const double x = crisp (axis_to_pixel (chart->x, axis_tick (pen->travel, i)));
    cairo_move_to (cr, x, plot.y);
    cairo_line_to (cr, x, plot.y + plot.height);
  }
  cairo_stroke (cr);
}

/* The axes: left side, foot, and the zero lines where they are in range. */
static void
draw_axes (const Chart *chart, const ChartPen *pen)
{
  const Frame plot = chart->plot;
  cairo_t *cr = pen->cr;

  theme_use (cr, pen->theme->body);
  theme_line (cr, LINE_FULL, pen->theme->thin);
  cairo_move_to (cr, crisp (plot.x), plot.y);
  cairo_line_to (cr, crisp (plot.x), crisp (plot.y + plot.height));
  cairo_line_to (cr, plot.x + plot.width, crisp (plot.y + plot.height));
  if (chart->range.low < 0.0 && chart->range.high > 0.0)
    add_line_across (chart, cr, axis_to_pixel (chart->y, 0.0));
  cairo_stroke (cr);
}

static void
draw_labels (const Chart *chart, const ChartPen *pen)
{
  const TextStyle style = chart_small_style (pen->theme);
  int first, n = axis_range_ticks (chart->range, &first);
  char text[32];

  theme_use (pen->cr, pen->theme->soft_ink);
  for (int i = first; i < first + n; i++) {
    axis_tick_text (chart->range, i, text, sizeof text);
    text_draw (pen->texts, pen->cr, style, text, chart->plot.x - 5.0,
               axis_to_pixel (chart->y, axis_tick (chart->range, i)),
               (TextAnchor){ 1.0, 0.5 });
  }
}

static void
draw_words (const Chart *chart, const ChartPen *pen, bool above)
{
  const WordsPlace place = above ? chart->words_above : chart->words_below;
  const Frame plot = chart->plot;
  const double is_right = place == WORDS_RIGHT ? 1.0 : 0.0;
  char text[128];

  if (place == WORDS_NOWHERE)
    return;
  g_snprintf (text, sizeof text, above ? "+ %s" : "− %s",
              above ? chart->info.positive : chart->info.negative);
  theme_use (pen->cr, pen->theme->soft_ink);
  text_draw (pen->texts, pen->cr, chart_small_style (pen->theme), text,
             place == WORDS_RIGHT ? plot.x + plot.width - 4.0 : plot.x + 5.0,
             above ? plot.y + 2.0 : plot.y + plot.height - 2.0,
             (TextAnchor){ is_right, above ? 0.0 : 1.0 });
}

double
chart_title_baseline (const Chart *chart, const Theme *theme)
{
  return chart->plot.y - round (0.6 * theme->text);
}

/* The unit stands behind the name where both fit. */
static double
unit_width (const Chart *chart, const ChartPen *pen)
{
  const TextStyle small = chart_small_style (pen->theme);

  const char *unit = chart->info.unit;

  return unit[0] == '\0'
             ? 0.0
             : 0.5 * pen->theme->text + text_measure (pen->texts, small, unit).width;
}

/* The short name where the whole one leaves no room for unit and value. */
static const char *
title_name (const Chart *chart, const ChartPen *pen)
{
  const TextStyle bold = chart_title_style (pen->theme);
  /* whatever the value is now: the title keeps still */
  const double value =
      pen->show_cursor
          ? text_measure (pen->texts, bold, "−00.00").width + 0.7 * pen->theme->text
          : 0.0;
  const double whole = text_measure (pen->texts, bold, chart->info.name).width;

  return whole + unit_width (chart, pen) + value <= chart->plot.width
             ? chart->info.name
             : chart->info.short_name;
}

double
chart_title_width (const Chart *chart, const ChartPen *pen)
{
  const TextStyle bold = chart_title_style (pen->theme);

  return text_measure (pen->texts, bold, title_name (chart, pen)).width +
         unit_width (chart, pen);
}

static void
draw_title (const Chart *chart, const ChartPen *pen)
{
  const Theme *theme = pen->theme;
  const Frame plot = chart->plot;
  const double y = chart_title_baseline (chart, theme);

  theme_use (pen->cr, theme->ink);
  text_draw_within (pen->texts, pen->cr, chart_title_style (theme),
                    title_name (chart, pen), plot.x, y, plot.width);
  if (chart_title_width (chart, pen) > plot.width)
    return;
  theme_use (pen->cr, theme->soft_ink);
  text_draw (pen->texts, pen->cr, chart_small_style (theme), chart->info.unit,
             plot.x + chart_title_width (chart, pen), y,
             (TextAnchor){ 1.0, TEXT_BASELINE });
}

void
chart_draw_still (const Chart *chart, const ChartPen *pen)
{
  if (pen->is_lit)
    draw_glow (chart, pen);
  draw_grid (chart, pen);
  draw_axes (chart, pen);
  draw_labels (chart, pen);
  draw_words (chart, pen, true);
  draw_words (chart, pen, false);
  draw_title (chart, pen);
  chart_draw_others (chart, pen);
}

/* The stretch of travel that is lost, half a step beyond the last stations that fail. */
static Frame
gap_frame (const Chart *chart, ChartGap gap)
{
  const double step = chart->plot.width / (STUDY_STATIONS - 1);
  const double from = fmax (0.0, (gap.first - 0.5) * step);
  const double to = fmin (chart->plot.width, (gap.last + 0.5) * step);

  return (Frame){ chart->plot.x + from, chart->plot.y, to - from, chart->plot.height };
}

static void
draw_hatch (const ChartPen *pen, Frame f)
{
  const double pitch = 8.0;
  cairo_t *cr = pen->cr;

  cairo_save (cr);
  cairo_rectangle (cr, f.x, f.y, f.width, f.height);
  theme_use (cr, colour_with_alpha (pen->theme->warning, 0.06));
  cairo_fill_preserve (cr);
  cairo_clip (cr);
  theme_use (cr, colour_with_alpha (pen->theme->warning, 0.25));
  theme_line (cr, LINE_FULL, 0.7 * pen->theme->thin);
  /* the pattern is tied to the drawing, so that it stands while the gap grows */
  for (double c = pitch * floor ((f.x + f.y) / pitch); c < f.x + f.width + f.y + f.height;
       c += pitch) {
    cairo_move_to (cr, c - f.y, f.y);
    cairo_line_to (cr, c - f.y - f.height, f.y + f.height);
  }
  cairo_stroke (cr);
  cairo_restore (cr);
}

static Frame
box_in_gap (const Chart *chart, TextSize size, Frame gap, double across, double down)
{
  const Frame plot = chart->plot;
  const double width = size.width + 8.0, height = size.height + 6.0;
  const double x = gap.x + across * (gap.width - width);

  return (Frame){ CLAMP (x, plot.x + 2.0, plot.x + plot.width - 2.0 - width),
                  plot.y + down * (plot.height - height), width, height };
}

/* The reasons that are told on a chart. */
typedef struct {
  Frame boxes[CHART_MOST_GAPS];
  int n;
} Reasons;

static bool
is_off_reasons (const Reasons *told, Frame box)
{
  for (int i = 0; i < told->n; i++) {
    const Frame other = told->boxes[i];

    if (box.x < other.x + other.width && other.x < box.x + box.width &&
        box.y < other.y + other.height && other.y < box.y + box.height)
      return false;
  }
  return true;
}

/* A box of that size that covers no curve, as near as may be to the middle of the gap, or
 * that middle; false where another reason stands there. */
static bool
place_reason (
    const Chart *chart, TextSize size, Frame gap, const Reasons *told, Frame *box)
{
  static const double places[] = { 0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95 };

  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    for (guint j = 0; j < G_N_ELEMENTS (places); j++) {
      *box = box_in_gap (chart, size, gap, places[i], places[j]);
      if (chart_is_free (chart, *box) && is_off_reasons (told, *box))
        return true;
    }
  *box = box_in_gap (chart, size, gap, 0.5, 0.5);
  return is_off_reasons (told, *box);
}

static void
draw_reason (
    const Chart *chart, const ChartPen *pen, ChartGap gap, Frame frame, Reasons *told)
{
  const TextStyle style = chart_small_style (pen->theme);
  const char *sentence = pose_status_sentence (gap.status);
  const double wanted = CLAMP (frame.width - 12.0, 10.5 * style.size, 20.0 * style.size);
  const double width = fmin (chart->plot.width - 12.0, wanted);
  const TextSize size = text_measure_wrapped (pen->texts, style, sentence, width);
  const Colour ground = pen->theme->ground;
  Frame box;

  if (!place_reason (chart, size, frame, told, &box) || box.height > frame.height)
    return;
  told->boxes[told->n++] = box;
  theme_use (pen->cr, colour_with_alpha (ground, 0.85));
  cairo_rectangle (pen->cr, box.x, box.y, box.width, box.height);
  cairo_fill (pen->cr);
  theme_use (pen->cr, pen->theme->ink);
  text_draw_wrapped (pen->texts, pen->cr, style, sentence, box.x + 4.0, box.y + 3.0,
                     width);
}

void
chart_draw_gaps (const Chart *chart, const ChartPen *pen)
{
  ChartGap gaps[CHART_MOST_GAPS];
  const int n = chart_find_gaps (study_in_hand (pen->study), gaps);
  Reasons told = { .n = 0 };

  for (int i = 0; i < n; i++)
    draw_hatch (pen, gap_frame (chart, gaps[i]));
  for (int i = 0; i < n && pen->names_gaps; i++)
    draw_reason (chart, pen, gaps[i], gap_frame (chart, gaps[i]), &told);
}

static void
draw_dot (const Chart *chart, const ChartPen *pen, const Station *station, Colour colour)
{
  const double value =
      quantity_edge_value (chart->quantity, station->measures.value[chart->quantity]);
  cairo_t *cr = pen->cr;

  if (station->status != POSE_OK || !(value >= chart->y.low && value <= chart->y.high))
    return;
  cairo_arc (cr, axis_to_pixel (chart->x, pen->study->travel),
             axis_to_pixel (chart->y, value), 1.7 * pen->theme->line, 0.0, 2.0 * G_PI);
  theme_use (cr, colour);
  cairo_fill (cr);
}

static SetupStyle
reference_style (const ChartPen *pen)
{
  const Study *study = pen->study;

  return study->baseline == study->in_hand
             ? theme_measured_style (pen->theme)
             : theme_setup_style (pen->theme, study->baseline);
}

static void
draw_cursor (const Chart *chart, const ChartPen *pen)
{
  const double x = crisp (axis_to_pixel (chart->x, pen->study->travel));
  cairo_t *cr = pen->cr;

  theme_use (cr, theme_quiet (pen->theme, pen->theme->ink, 0.45));
  theme_line (cr, LINE_FULL, pen->theme->thin);
  cairo_move_to (cr, x, chart->plot.y);
  cairo_line_to (cr, x, chart->plot.y + chart->plot.height);
  cairo_stroke (cr);
  if (pen->has_reference)
    draw_dot (chart, pen, &study_reference (pen->study)->now,
              reference_style (pen).colour);
  draw_dot (chart, pen, &study_in_hand (pen->study)->now,
            chart_curve_style (chart, &chart->hand, pen->theme).colour);
}

static double
value_at (const Station *station, Quantity quantity)
{
  return station->status == POSE_OK ? station->measures.value[quantity] : (double) NAN;
}

/* A number, with its sign where the sign has words, and with its unit where that is a
 * mark and no word. */
static void
format_value (const Chart *chart, double value, char *text, gsize size)
{
  const char *unit = quantity_symbol (chart->quantity);
  const gboolean is_mark = g_str_equal (unit, "°") || g_str_equal (unit, "%");

  quantity_format (chart->quantity, value, chart->info.positive[0] != '\0', text, size);
  if (is_mark && isfinite (value))
    g_strlcat (text, unit, size);
}

/* At the right end of the title line, from the right: as measured, sign words, value.
 * What does not fit is left out, the sign words first, as the plot has them too. */
static void
draw_values (const Chart *chart, const ChartPen *pen)
{
  const Theme *theme = pen->theme;
  const TextStyle bold = chart_title_style (theme), small = chart_small_style (theme);
  const TextAnchor anchor = { 1.0, TEXT_BASELINE };
  const double gap = round (0.7 * theme->text), y = chart_title_baseline (chart, theme);
  const double now = value_at (&study_in_hand (pen->study)->now, chart->quantity);
  const char *words = isfinite (now) ? quantity_sign_words (chart->quantity, now) : "";
  char value[48], measured[48];

  format_value (chart, now, value, sizeof value);
  format_value (chart, value_at (&study_reference (pen->study)->now, chart->quantity),
                measured, sizeof measured);
  double x = chart->plot.x + chart->plot.width;
  double room = chart->plot.width - chart_title_width (chart, pen) - gap -
                text_measure (pen->texts, bold, value).width;

  if (pen->has_reference) {
    const double width = text_measure (pen->texts, small, measured).width + gap;
    if (room >= width) {
      theme_use (pen->cr, reference_style (pen).colour);
      text_draw (pen->texts, pen->cr, small, measured, x, y, anchor);
      x -= width;
      room -= width;
    }
  }

  theme_use (pen->cr, chart_curve_style (chart, &chart->hand, theme).colour);
  if (words[0] != '\0') {
    const double width = text_measure (pen->texts, small, words).width + gap / 1.5;
    if (room >= width) {
      text_draw (pen->texts, pen->cr, small, words, x, y, anchor);
      x -= width;
    }
  }
  if (room >= 0.0)
    text_draw (pen->texts, pen->cr, bold, value, x, y, anchor);
}

void
chart_draw_moving (const Chart *chart, const ChartPen *pen)
{
  if (study_in_hand (pen->study)->n_assembled < STUDY_STATIONS)
    chart_draw_gaps (chart, pen);
  chart_draw_hand (chart, pen);
  chart_draw_names (chart, pen);
  if (pen->show_cursor) {
    draw_cursor (chart, pen);
    draw_values (chart, pen);
  }
}
