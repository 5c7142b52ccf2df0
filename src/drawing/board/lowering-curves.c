/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a lowering chart shows of each setup: its curve, its marker, its name. */

#include "drawing/board/lowering-chart.h"
#include "drawing/chart/curve-labels.h"

#include <glib/gi18n-lib.h>

#define N STUDY_STATIONS

/* The curve in hand to the others. */
#define STRONGER 1.3
#define QUIETER 0.8
#define MARKER_SIZE 0.7 /* of the text */
#define NAME_GAP 7.0

static double
crisp (double value)
{
  return floor (value) + 0.5;
}

static void
trace (const LoweringChart *chart, cairo_t *cr, const StudyCorner *corner)
{
  const double most = chart->plot.y + chart->plot.height + 1000.0,
               least = chart->plot.y - 1000.0;
  bool is_drawing = false;

  cairo_new_path (cr);
  for (int i = 0; i < N; i++) {
    const Station *station = &corner->stations[i];
    const double value = lowering_chart_value (chart, station);

    /* the neighbours of the axis's ends are drawn, to be clipped there */
    if ((i + 1 < N && station[1].travel < chart->x.low) ||
        (i > 0 && station[-1].travel > chart->x.high))
      continue;
    if (!isfinite (value)) {
      is_drawing = false;
      continue;
    }
    /* cairo counts in 24.8 fixed point: what lies far outside is brought nearer */
    const double y = CLAMP (axis_to_pixel (chart->y, value), least, most);
    const double x = axis_to_pixel (chart->x, station->travel);
    if (is_drawing)
      cairo_line_to (cr, x, y);
    else
      cairo_move_to (cr, x, y);
    is_drawing = true;
  }
}

static bool
is_in_hand (const LoweringPen *pen, int index)
{
  return index == (int) pen->study->in_hand;
}

static SetupStyle
style_of (const LoweringPen *pen, int index)
{
  if (index == LOWERING_MEASURED)
    return theme_measured_style (pen->theme);
  return is_in_hand (pen, index) ? theme_hand_style (pen->theme, (unsigned) index)
                                 : theme_setup_style (pen->theme, (unsigned) index);
}

static void
draw_curve (const LoweringChart *chart, const LoweringPen *pen, int index)
{
  const SetupStyle style = style_of (pen, index);
  const double width = is_in_hand (pen, index)      ? STRONGER * pen->theme->line
                       : index == LOWERING_MEASURED ? pen->theme->thin
                                                    : QUIETER * pen->theme->line;

  trace (chart, pen->cr, lowering_corner (pen->study, index));
  theme_use_style (pen->cr, &style, width);
  cairo_stroke (pen->cr);
}

bool
lowering_chart_standing (const LoweringChart *chart,
                         const StudyCorner *corner,
                         double *x,
                         double *y)
{
  const double value = lowering_chart_value (chart, &corner->at_height);

  if (!(value >= chart->y.low && value <= chart->y.high) ||
      corner->lowering < chart->x.low || corner->lowering > chart->x.high)
    return false;
  *x = axis_to_pixel (chart->x, corner->lowering);
  *y = axis_to_pixel (chart->y, value);
  return true;
}

/* On the ground's own colour, so that it stands clear of the lines. */
static void
draw_marker (const LoweringPen *pen, int index, double x, double y)
{
  const SetupStyle style = style_of (pen, index);
  const double size =
      MARKER_SIZE * pen->theme->text * (is_in_hand (pen, index) ? STRONGER : 1.0);

  if (pen->theme->ground.alpha > 0.0) {
    theme_use (pen->cr, pen->theme->ground);
    theme_marker (pen->cr, MARKER_DOT, x, y, 1.5 * size);
  }
  theme_use (pen->cr, style.colour);
  theme_marker (pen->cr, style.marker, x, y, size);
}

static void
draw_standing (const LoweringChart *chart, const LoweringPen *pen, int index)
{
  const StudyCorner *corner = lowering_corner (pen->study, index);
  const SetupStyle style = style_of (pen, index);
  const double cg = axis_to_pixel (chart->y, pen->study->cg_height - corner->lowering);
  double x, y;

  if (!lowering_chart_standing (chart, corner, &x, &y))
    return;
  if (lowering_chart_is_heights (chart)) {
    if (!is_in_hand (pen, index)) {
      theme_use_style (pen->cr, &style, pen->theme->thin);
      cairo_move_to (pen->cr, x, y);
      cairo_line_to (pen->cr, x, cg);
      cairo_stroke (pen->cr);
    }
    draw_marker (pen, index, x, cg);
  }
  draw_marker (pen, index, x, y);
}

/* What every setup has in common. */
static void
draw_centre_of_gravity (const LoweringChart *chart, const LoweringPen *pen)
{
  const double from = chart->x.low, to = chart->x.high, cg = pen->study->cg_height;

  cairo_move_to (pen->cr, axis_to_pixel (chart->x, from),
                 axis_to_pixel (chart->y, cg - from));
  cairo_line_to (pen->cr, axis_to_pixel (chart->x, to),
                 axis_to_pixel (chart->y, cg - to));
  theme_use (pen->cr, pen->theme->ink);
  theme_line (pen->cr, LINE_CHAIN, pen->theme->thin);
  cairo_stroke (pen->cr);
}

/* The last value of a curve on the axis; NAN where there is none in the plot. */
static double
end_of (const LoweringChart *chart, const StudyCorner *corner, double *x)
{
  for (int i = N - 1; i >= 0; i--) {
    const Station *station = &corner->stations[i];
    const double value = lowering_chart_value (chart, station);

    if (station->travel > chart->x.high + 1e-9 || !isfinite (value))
      continue;
    *x = axis_to_pixel (chart->x, station->travel);
    return value >= chart->y.low && value <= chart->y.high && *x >= chart->plot.x
               ? axis_to_pixel (chart->y, value)
               : (double) NAN;
  }
  return (double) NAN;
}

typedef struct {
  const char *text;
  Colour colour;
  bool is_bold;
  double from_x; /* the curve's end */
} Name;

/* Fills @names and @labels with what stands at the ends of curves; returns how many. The
 * first is the setup in hand. */
static unsigned
gather_names (const LoweringChart *chart,
              const LoweringPen *pen,
              Name names[CURVE_LABELS_MOST],
              CurveLabel labels[CURVE_LABELS_MOST])
{
  const Study *study = pen->study;
  unsigned n = 0;

  for (int k = LOWERING_MEASURED - 1; k < (int) study->n_setups; k++) {
    const int index = k < LOWERING_MEASURED ? (int) study->in_hand : k;

    if ((n > 0 && is_in_hand (pen, index)) || !lowering_shows (study, index) ||
        n >= CURVE_LABELS_MOST - 1)
      continue;
    names[n] = (Name){ lowering_corner (study, index)->name, style_of (pen, index).colour,
                       n == 0, 0.0 };
    labels[n].wanted = end_of (chart, lowering_corner (study, index), &names[n].from_x);
    n++;
  }
  if (n == 1)
    names[0].text = _ ("roll centre");
  names[n] = (Name){ _ ("centre of gravity"), pen->theme->ink, false,
                     chart->plot.x + chart->plot.width };
  labels[n].wanted = axis_to_pixel (chart->y, study->cg_height - chart->x.high);
  return n + 1;
}

static TextStyle
name_style (const Theme *theme, const Name *name)
{
  return lowering_style (theme, name->is_bold ? TEXT_BOLD : TEXT_PLAIN, true);
}

double
lowering_name_width (const LoweringChart *chart,
                     TextCache *texts,
                     const Theme *theme,
                     const Study *study)
{
  const LoweringPen pen = { .texts = texts, .theme = theme, .study = study };
  Name names[CURVE_LABELS_MOST];
  CurveLabel labels[CURVE_LABELS_MOST];
  double width = 0.0;

  if (!lowering_chart_is_heights (chart))
    return 0.0;
  const unsigned n = gather_names (chart, &pen, names, labels);
  for (unsigned i = 0; i < n; i++)
    width =
        fmax (width,
              text_measure (texts, name_style (theme, &names[i]), names[i].text).width);
  return width;
}

/* Those of the heights stand for all charts: line, marker and colour are the same. */
static void
draw_names (const LoweringChart *chart, const LoweringPen *pen)
{
  const LoweringBox plot = chart->plot;
  const double right = plot.x + plot.width, gap = NAME_GAP;
  const double room = chart->slot.x + chart->slot.width - right - gap;
  const double size = pen->theme->small_text;
  Name names[CURVE_LABELS_MOST];
  CurveLabel labels[CURVE_LABELS_MOST];
  const unsigned n = gather_names (chart, pen, names, labels);

  curve_labels_place (labels, n, 0, 1.25 * size, plot.y - 0.6 * size,
                      plot.y + plot.height + 0.6 * size);
  for (unsigned i = 0; i < n; i++) {
    if (!labels[i].is_kept || room < 2.0 * size)
      continue;
    /* the centre of gravity has its name in the plot as well */
    if (i == n - 1 &&
        text_measure (pen->texts, name_style (pen->theme, &names[i]), names[i].text)
                .width > room)
      continue;
    theme_use (pen->cr, names[i].colour);
    theme_line (pen->cr, LINE_FULL, 0.8 * pen->theme->thin);
    cairo_move_to (pen->cr, names[i].from_x, labels[i].wanted);
    cairo_line_to (pen->cr, right + gap - 2.0, labels[i].place);
    cairo_stroke (pen->cr);
    text_draw_within (pen->texts, pen->cr, name_style (pen->theme, &names[i]),
                      names[i].text, right + gap, labels[i].place + 0.35 * size, room);
  }
}

static void
draw_cursor (const LoweringChart *chart, const LoweringPen *pen)
{
  const double travel = pen->study->travel, x = axis_to_pixel (chart->x, travel);
  const double value = lowering_chart_value (chart, &study_in_hand (pen->study)->now);

  if (travel < chart->x.low || travel > chart->x.high)
    return;
  theme_use (pen->cr, theme_quiet (pen->theme, pen->theme->ink, 0.45));
  theme_line (pen->cr, LINE_FULL, pen->theme->thin);
  cairo_move_to (pen->cr, crisp (x), chart->plot.y);
  cairo_line_to (pen->cr, crisp (x), chart->plot.y + chart->plot.height);
  cairo_stroke (pen->cr);
  if (!(value >= chart->y.low && value <= chart->y.high))
    return;
  theme_use (pen->cr, style_of (pen, (int) pen->study->in_hand).colour);
  cairo_arc (pen->cr, x, axis_to_pixel (chart->y, value), 1.7 * pen->theme->line, 0.0,
             2.0 * G_PI);
  cairo_fill (pen->cr);
}

static void
draw_plot (const LoweringChart *chart, const LoweringPen *pen)
{
  const int n = (int) pen->study->n_setups, hand = (int) pen->study->in_hand;
  const LoweringBox plot = chart->plot;

  cairo_save (pen->cr);
  cairo_rectangle (pen->cr, plot.x, plot.y, plot.width, plot.height);
  cairo_clip (pen->cr);
  if (lowering_chart_is_heights (chart)) {
    lowering_band_draw (chart, pen);
    draw_centre_of_gravity (chart, pen);
  }
  for (int i = LOWERING_MEASURED; i < n; i++)
    if (i != hand && lowering_shows (pen->study, i))
      draw_curve (chart, pen, i);
  draw_curve (chart, pen, hand);
  cairo_restore (pen->cr);
}

void
lowering_curves_draw (const LoweringChart *chart, const LoweringPen *pen)
{
  const int n = (int) pen->study->n_setups, hand = (int) pen->study->in_hand;

  draw_plot (chart, pen);
  if (pen->show_cursor)
    draw_cursor (chart, pen);
  for (int i = LOWERING_MEASURED; i < n; i++)
    if (i != hand && lowering_shows (pen->study, i))
      draw_standing (chart, pen, i);
  if (lowering_chart_is_heights (chart)) {
    draw_names (chart, pen);
    lowering_lever_draw (chart, pen);
  }
  draw_standing (chart, pen, hand);
}
