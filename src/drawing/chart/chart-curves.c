/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The curves of a chart: lines, markers, where each setup stands, names at the ends. */

#include "drawing/chart/chart.h"

#include <math.h>

/* The one in hand to the others. */
#define STRONGER 1.3
#define QUIETER 0.8

/* From one marker of a curve to its next, in text sizes, and their size. */
#define MARKER_PITCH 11.0
#define MARKER_SIZE 0.52

/* With fewer curves than this, lines and names alone tell them apart. */
#define MARKED_CURVES 3

#define LABEL_GAP 7.0

SetupStyle
chart_curve_style (const Chart *chart, const ChartCurve *curve, const Theme *theme)
{
  if (curve->setup == CHART_MEASURED)
    return theme_measured_style (theme);
  return curve == &chart->hand ? theme_hand_style (theme, (unsigned) curve->setup)
                               : theme_setup_style (theme, (unsigned) curve->setup);
}

const char *
chart_curve_name (const ChartCurve *curve, const Study *study)
{
  return curve->setup == CHART_MEASURED ? study->measured.name
                                        : study->setups[curve->setup].name;
}

static double
pen_width (const Chart *chart, const ChartCurve *curve, const Theme *theme)
{
  if (curve == &chart->hand)
    return STRONGER * theme->line;
  return curve->setup == CHART_MEASURED ? theme->thin : QUIETER * theme->line;
}

static void
stroke_curve (const Chart *chart, const ChartPen *pen, const ChartCurve *curve)
{
  const SetupStyle style = chart_curve_style (chart, curve, pen->theme);
  const Frame plot = chart->plot;
  cairo_t *cr = pen->cr;

  cairo_save (cr);
  if (chart->is_clipped) {
    cairo_rectangle (cr, floor (plot.x), floor (plot.y), ceil (plot.width),
                     ceil (plot.height));
    cairo_clip (cr);
  }
  theme_use_style (cr, &style, pen_width (chart, curve, pen->theme));
  cairo_new_path (cr);
  chart_trace (chart, cr, curve->values);
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* The curve at a pixel across; NAN where it has a gap or leaves the plot. */
static double
curve_y (const Chart *chart, const ChartCurve *curve, double x)
{
  const double place = (x - chart->plot.x) / chart->plot.width * (STUDY_STATIONS - 1);
  const int i = CLAMP ((int) floor (place), 0, STUDY_STATIONS - 2);
  const double part = place - i;
  const double value = (1.0 - part) * curve->values[i] + part * curve->values[i + 1];

  return value >= chart->y.low && value <= chart->y.high ? axis_to_pixel (chart->y, value)
                                                         : (double) NAN;
}

/* Markers of one curve stand between those of the others. */
static void
draw_markers (const Chart *chart, const ChartPen *pen, const ChartCurve *curve)
{
  const SetupStyle style = chart_curve_style (chart, curve, pen->theme);
  const double text = pen->theme->text, n_curves = chart->n_others + 1.0;
  const double n = fmax (1.0, floor (chart->plot.width / (MARKER_PITCH * text)));
  const double pitch = chart->plot.width / n;
  const double size = MARKER_SIZE * text * (curve == &chart->hand ? STRONGER : 1.0);

  if (n_curves < MARKED_CURVES || curve->setup == CHART_MEASURED)
    return;
  theme_use (pen->cr, style.colour);
  for (double x = chart->plot.x + (curve->rank + 0.5) / n_curves * pitch;
       x < chart->plot.x + chart->plot.width; x += pitch) {
    const double y = curve_y (chart, curve, x);
    if (!isnan (y))
      theme_marker (pen->cr, style.marker, x, y, size);
  }
}

/* A short upright through the curve where the setup stands. */
static void
draw_standing (const Chart *chart, const ChartPen *pen, const ChartCurve *curve)
{
  const bool is_hand = curve == &chart->hand;
  const double half = (is_hand ? 0.6 : 0.45) * pen->theme->text;
  const double x = axis_to_pixel (chart->x, curve->standing);
  const double y = axis_to_pixel (chart->y, curve->at_standing);
  cairo_t *cr = pen->cr;

  if (curve->setup == CHART_MEASURED || !(y >= chart->plot.y) ||
      y > chart->plot.y + chart->plot.height || curve->standing < chart->x.low ||
      curve->standing > chart->x.high)
    return;
  cairo_move_to (cr, x, y - half);
  cairo_line_to (cr, x, y + half);
  theme_line (cr, LINE_FULL, pen->theme->line * (is_hand ? 2.4 : 2.0));
  theme_use (cr, pen->theme->ground);
  cairo_stroke_preserve (cr);
  theme_line (cr, LINE_FULL, pen->theme->line * (is_hand ? 1.2 : 0.9));
  theme_use (cr, chart_curve_style (chart, curve, pen->theme).colour);
  cairo_stroke (cr);
}

static void
draw_curve (const Chart *chart, const ChartPen *pen, const ChartCurve *curve)
{
  stroke_curve (chart, pen, curve);
  draw_markers (chart, pen, curve);
}

void
chart_draw_others (const Chart *chart, const ChartPen *pen)
{
  for (unsigned i = 0; i < chart->n_others; i++)
    draw_curve (chart, pen, &chart->others[i]);
  for (unsigned i = 0; i < chart->n_others; i++)
    draw_standing (chart, pen, &chart->others[i]);
}

void
chart_draw_hand (const Chart *chart, const ChartPen *pen)
{
  draw_curve (chart, pen, &chart->hand);
  draw_standing (chart, pen, &chart->hand);
}

static const ChartCurve *
labelled_curve (const Chart *chart, unsigned i)
{
  return i == 0 ? &chart->hand : &chart->others[i - 1];
}

/* Where the curve ends, held inside the plot. */
static double
end_of (const Chart *chart, const ChartCurve *curve)
{
  const Frame plot = chart->plot;

  for (int i = STUDY_STATIONS - 1; i >= 0; i--)
    if (!isnan (curve->values[i]))
      return CLAMP (axis_to_pixel (chart->y, curve->values[i]), plot.y,
                    plot.y + plot.height);
  return NAN;
}

unsigned
chart_place_labels (const Chart *chart,
                    const ChartPen *pen,
                    CurveLabel labels[CURVE_LABELS_MOST])
{
  const unsigned n = MIN (chart->n_others + 1, CURVE_LABELS_MOST);
  const double pitch = 1.25 * pen->theme->small_text;
  const Frame plot = chart->plot;

  for (unsigned i = 0; i < n; i++)
    labels[i] = (CurveLabel){ .wanted = end_of (chart, labelled_curve (chart, i)) };
  curve_labels_place (labels, n, 0, pitch, plot.y - pitch / 2.0,
                      plot.y + plot.height + pitch / 2.0);
  return n;
}

/* At the end of a curve that was pushed aside, from its end to its name. */
static void
draw_leader (const Chart *chart, const ChartPen *pen, const CurveLabel *label)
{
  const double right = chart->plot.x + chart->plot.width;

  if (fabs (label->place - label->wanted) < 2.0)
    return;
  theme_line (pen->cr, LINE_FULL, 0.7 * pen->theme->thin);
  cairo_move_to (pen->cr, right + 1.0, label->wanted);
  cairo_line_to (pen->cr, right + LABEL_GAP - 1.5, label->place);
  cairo_stroke (pen->cr);
}

static void
draw_name (const ChartPen *pen, const char *name, bool is_hand, double x, double y)
{
  const TextStyle style = { pen->theme->font, pen->theme->small_text,
                            is_hand ? TEXT_BOLD : TEXT_PLAIN };
  const TextSize size = text_measure (pen->texts, style, name);

  text_draw_within (pen->texts, pen->cr, style, name, x,
                    round (y - size.height / 2.0 + size.baseline),
                    pen->label_room - LABEL_GAP);
}

void
chart_draw_names (const Chart *chart, const ChartPen *pen)
{
  CurveLabel labels[CURVE_LABELS_MOST];

  if (pen->label_room <= 0.0 || chart->n_others == 0)
    return;

  const unsigned n = chart_place_labels (chart, pen, labels);
  for (unsigned i = 0; i < n; i++) {
    const ChartCurve *curve = labelled_curve (chart, i);
    if (!labels[i].is_kept)
      continue;
    theme_use (pen->cr, chart_curve_style (chart, curve, pen->theme).colour);
    draw_leader (chart, pen, &labels[i]);
    draw_name (pen, chart_curve_name (curve, pen->study), i == 0,
               chart->plot.x + chart->plot.width + LABEL_GAP, labels[i].place);
  }
}
