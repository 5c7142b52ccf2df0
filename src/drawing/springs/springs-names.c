/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The names at the right edge of the springs' charts. */

#include "drawing/chart/curve-labels.h"
#include "drawing/springs/springs-chart.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define N STUDY_STATIONS
#define GAP 7.0

typedef struct {
  const char *text;
  Colour colour;
  TextWeight weight;
  double from_x; /* where its curve or area ends */
} EdgeName;

typedef struct {
  EdgeName names[CURVE_LABELS_MOST];
  CurveLabel labels[CURVE_LABELS_MOST];
  unsigned n; /* the first is the setup in hand, and stays where room is scarce */
} EdgeNames;

static void
add (EdgeNames *all, EdgeName name, double wanted)
{
  if (all->n == CURVE_LABELS_MOST)
    return;
  all->names[all->n] = name;
  all->labels[all->n++] = (CurveLabel){ .wanted = wanted };
}

/* The height at which a curve leaves the plot: its last value, held inside. */
static double
end_of (const Chart *chart, const double values[N], double *x)
{
  const Frame plot = chart->plot;

  for (int i = N - 1; i >= 0; i--)
    if (!isnan (values[i])) {
      *x = plot.x + plot.width * i / (N - 1);
      return CLAMP (axis_to_pixel (chart->y, values[i]), plot.y, plot.y + plot.height);
    }
  return (double) NAN;
}

/* The middle of the last of an area that is to be seen. */
static double
end_of_area (const Chart *chart, const SpringStack *stack, int element, double *x)
{
  const Frame plot = chart->plot;

  for (int i = N - 1; i >= 0; i--) {
    const double top = fmax (axis_to_pixel (chart->y, stack->high[element][i]), plot.y);
    const double bottom =
        fmin (axis_to_pixel (chart->y, stack->low[element][i]), plot.y + plot.height);

    if (bottom - top < 1.0 || !isfinite (stack->high[element][i]))
      continue;
    *x = plot.x + plot.width * i / (N - 1);
    return (top + bottom) / 2.0;
  }
  return (double) NAN;
}

static const char *
hand_name (const Chart *chart, const Study *study)
{
  return chart->n_others > 0 ? study_in_hand (study)->name : _ ("all together");
}

static void
gather_curves (EdgeNames *all, const Chart *chart, const SpringsPen *pen)
{
  const Study *study = pen->chart.study;
  const Theme *theme = pen->chart.theme;
  EdgeName name = { hand_name (chart, study),
                    chart_curve_style (chart, &chart->hand, theme).colour, TEXT_BOLD, 0 };
  const double wanted = end_of (chart, chart->hand.values, &name.from_x);

  add (all, name, wanted);
  for (unsigned i = 0; i < chart->n_others; i++) {
    const ChartCurve *curve = &chart->others[i];
    EdgeName other = { chart_curve_name (curve, study),
                       chart_curve_style (chart, curve, theme).colour, TEXT_PLAIN, 0 };
    const double at = end_of (chart, curve->values, &other.from_x);

    add (all, other, at);
  }
}

static TextStyle
style_of (const EdgeName *name, const Theme *theme)
{
  return (TextStyle){ theme->font, theme->small_text, name->weight };
}

static void
draw_leader (const Chart *chart, const SpringsPen *pen, double from_x, CurveLabel label)
{
  const double right = chart->plot.x + chart->plot.width;
  cairo_t *cr = pen->chart.cr;

  if (from_x > right - 1.0 && fabs (label.place - label.wanted) < 2.0)
    return;
  /* inside the plot it shall not look like a curve */
  theme_line (cr, from_x > right - 1.0 ? LINE_FULL : LINE_DOTTED,
              0.7 * pen->chart.theme->thin);
  cairo_move_to (cr, fmin (from_x, right) + 1.0, label.wanted);
  cairo_line_to (cr, right + GAP - 1.5, label.place);
  cairo_stroke (cr);
  map_claim_line (pen->leaders, (Pixel){ fmin (from_x, right), label.wanted },
                  (Pixel){ right + GAP, label.place });
}

static void
draw_all (EdgeNames *all, const Chart *chart, const SpringsPen *pen)
{
  const Theme *theme = pen->chart.theme;
  const Frame plot = chart->plot;
  const double pitch = 1.3 * theme->small_text;

  curve_labels_place (all->labels, all->n, 0, pitch, plot.y - pitch / 2.0,
                      plot.y + plot.height + pitch / 2.0);
  for (unsigned i = 0; i < all->n; i++) {
    const TextStyle style = style_of (&all->names[i], theme);
    const CurveLabel label = all->labels[i];

    if (!label.is_kept)
      continue;
    const TextSize size = text_measure (pen->chart.texts, style, all->names[i].text);
    theme_use (pen->chart.cr, all->names[i].colour);
    draw_leader (chart, pen, all->names[i].from_x, label);
    text_draw_within (pen->chart.texts, pen->chart.cr, style, all->names[i].text,
                      plot.x + plot.width + GAP,
                      round (label.place - size.height / 2.0 + size.baseline),
                      pen->chart.label_room - GAP);
  }
}

static void
name_loads (const SpringCharts *charts, const SpringsPen *pen, const SpringNamed *named)
{
  const Chart *chart = &charts->charts[SPRINGS_LOAD];
  EdgeNames all = { .n = 0 };

  gather_curves (&all, chart, pen);
  for (int e = 0; e < N_SPRING_ELEMENTS; e++)
    if (charts->stack.is_there[e] && !named->elements[e]) {
      EdgeName name = { spring_element_name ((SpringElement) e),
                        pen->chart.theme->soft_ink,
                        e == pen->lit ? TEXT_BOLD : TEXT_PLAIN, 0.0 };
      const double wanted = end_of_area (chart, &charts->stack, e, &name.from_x);

      add (&all, name, wanted);
    }
  if (!named->weight)
    add (&all,
         (EdgeName){ _ ("corner weight"), pen->chart.theme->ink, TEXT_PLAIN,
                     chart->plot.x + chart->plot.width },
         axis_to_pixel (chart->y, pen->springs->corner_weight));
  draw_all (&all, chart, pen);
}

static const char *
geometric_name (void)
{
  return _ ("geometric part");
}

/* The curves have their names beside the loads: what the thin line is, and what the
 * strong one. */
static void
name_rates (const SpringCharts *charts, const SpringsPen *pen)
{
  const Chart *chart = &charts->charts[SPRINGS_RATE];
  const Theme *theme = pen->chart.theme;
  EdgeNames all = { .n = 0 };
  EdgeName whole = { _ ("whole rate"),
                     chart_curve_style (chart, &chart->hand, theme).colour, TEXT_BOLD,
                     0 };
  EdgeName part = { geometric_name (), theme->soft_ink, TEXT_PLAIN, 0.0 };
  const double at_whole = end_of (chart, chart->hand.values, &whole.from_x);
  const double at_part = end_of (chart, charts->geometric, &part.from_x);

  add (&all, whole, at_whole);
  add (&all, part, at_part);
  draw_all (&all, chart, pen);
}

void
spring_edge_names_draw (const SpringCharts *charts,
                        const SpringsPen *pen,
                        const SpringNamed *named)
{
  if (pen->chart.label_room <= 0.0)
    return;
  name_loads (charts, pen, named);
  if (charts->charts[SPRINGS_RATE].plot.width > 0.0)
    name_rates (charts, pen);
}

double
spring_edge_names_width (const SpringCharts *charts,
                         TextCache *texts,
                         const Theme *theme,
                         const Study *study)
{
  const Chart *chart = &charts->charts[SPRINGS_LOAD];
  const TextStyle bold = { theme->font, theme->small_text, TEXT_BOLD },
                  plain = { theme->font, theme->small_text, TEXT_PLAIN };
  double width = text_measure (texts, plain, geometric_name ()).width;

  width = fmax (width, text_measure (texts, bold, hand_name (chart, study)).width);
  for (unsigned i = 0; i < chart->n_others; i++)
    width = fmax (width,
                  text_measure (texts, bold, chart_curve_name (&chart->others[i], study))
                      .width);
  for (int e = 0; e < N_SPRING_ELEMENTS; e++)
    if (charts->stack.is_there[e])
      width =
          fmax (width, text_measure (texts, bold, spring_element_name ((SpringElement) e))
                           .width);
  return width + GAP;
}
