/* SPDX-License-Identifier: GPL-3.0-or-later */
/* On the loads: the corner's weight, where the springs meet it, and what happens on the
 * way, each with a label that lies on no other. */

#include "drawing/springs/springs-chart.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define MARK_SIZE 0.62 /* of the text */
#define AIR 0.55       /* of the text, from a mark to its label */
#define LINE_AIR 2.0   /* from the line of weight to its label */
#define MOST_ROWS 12   /* that a label may be lifted off its mark */
#define ROW 1.3        /* of the type's size */

/* What a label's place costs beside its distance in rows. */
#define COST_MIDDLE 0.3
#define COST_RIGHT 0.6
#define COST_BELOW 3.5
#define COST_OTHERS 2.5 /* lying on another setup's curve */
#define COST_HAND 6.0   /* lying on the load in hand */
#define COST_LEADER 4.0 /* lying on the leader of another name */

typedef struct {
  const char *text;
  TextWeight weight;
  Colour colour;
  double x, y; /* of what it is about */
} MarkLabel;

static const Chart *
loads_of (const SpringCharts *charts)
{
  return &charts->charts[SPRINGS_LOAD];
}

static PixelBox
pixel_box (Frame frame)
{
  return (PixelBox){ frame.x, frame.y, frame.width, frame.height };
}

static bool
is_inside_plot (const Chart *chart, Frame box)
{
  const Frame plot = chart->plot;

  return box.x >= plot.x + 1.0 && box.x + box.width <= plot.x + plot.width - 1.0 &&
         box.y >= plot.y && box.y + box.height <= plot.y + plot.height - 1.0;
}

static bool
is_free (const Chart *chart, const SpringsPen *pen, Frame box)
{
  const MapBox claim = map_box_upright (pixel_box (box));

  return is_inside_plot (chart, box) && map_is_free (pen->claims, &claim);
}

/* Of the lines that a label there would lie on. */
static double
cost_of_cover (const Chart *chart, const SpringsPen *pen, Frame box)
{
  const MapBox claim = map_box_upright (pixel_box (box));
  const double leaders = map_is_free (pen->leaders, &claim) ? 0.0 : COST_LEADER;

  if (chart_is_free (chart, box))
    return leaders;
  return leaders +
         (chart_runs_through (chart, &chart->hand, box) ? COST_HAND : COST_OTHERS);
}

static TextStyle
style_of (const SpringsPen *pen, TextWeight weight)
{
  return (TextStyle){ pen->chart.theme->font, pen->chart.theme->small_text, weight };
}

/* The line's own leading is wider than it takes. */
static Frame
frame_of (const SpringsPen *pen, const MarkLabel *label)
{
  const TextSize size =
      text_measure (pen->chart.texts, style_of (pen, label->weight), label->text);

  return (Frame){ 0.0, 0.0, size.width + 4.0, ROW * pen->chart.theme->small_text };
}

static void
write_label (const SpringsPen *pen, const MarkLabel *label, Frame box)
{
  const Theme *theme = pen->chart.theme;
  cairo_t *cr = pen->chart.cr;

  map_claim (pen->claims, map_box_upright (pixel_box (box)));
  theme_use (cr, colour_with_alpha (theme->ground, theme->ground.alpha > 0.0 ? 0.8 : 0));
  cairo_rectangle (cr, box.x, box.y, box.width, box.height);
  cairo_fill (cr);
  theme_use (cr, label->colour);
  text_draw (pen->chart.texts, cr, style_of (pen, label->weight), label->text,
             box.x + 2.0, box.y + box.height / 2.0, (TextAnchor){ 0.0, 0.5 });
}

typedef struct {
  Frame box;
  double cost;
} MarkPlace;

typedef enum {
  BESIDE_LEFT,
  BESIDE_MIDDLE,
  BESIDE_RIGHT,
  N_BESIDES
} Beside;

/* @row rows off the mark, above it or below; held inside the plot from left to right. */
static MarkPlace
place_at (const Chart *chart,
          const SpringsPen *pen,
          const MarkLabel *label,
          int row,
          bool is_below,
          Beside beside)
{
  static const double parts[] = { 1.0, 0.5, 0.0 };
  static const double costs[2][N_BESIDES] = { { 0.0, COST_MIDDLE, COST_RIGHT },
                                              { COST_RIGHT, COST_MIDDLE, 0.0 } };
  const double step = ROW * pen->chart.theme->small_text;
  const double air = AIR * pen->chart.theme->text, off = air + row * step;
  const double aside[] = { -air, 0.0, air };
  const Frame plot = chart->plot;
  Frame box = frame_of (pen, label);

  box.x = label->x + aside[beside] - parts[beside] * box.width;
  box.x = fmax (plot.x + 2.0, fmin (box.x, plot.x + plot.width - 2.0 - box.width));
  box.y = is_below ? label->y + off : label->y - off - box.height;
  return (MarkPlace){ box,
                      row + (is_below ? COST_BELOW : 0.0) + costs[is_below][beside] };
}

/* The point of the label that is nearest to its mark. */
static Pixel
leader_end (const MarkLabel *label, Frame box)
{
  return (Pixel){ fmax (box.x, fmin (label->x, box.x + box.width)),
                  box.y > label->y ? box.y + 2.0 : box.y + box.height - 2.0 };
}

/* Past the mark itself, which may be claimed. */
static bool
is_leader_free (const SpringsPen *pen, const MarkLabel *label, Frame box)
{
  const Pixel end = leader_end (label, box);
  const double part = 8.0 / fmax (hypot (end.x - label->x, end.y - label->y), 8.0);
  const Pixel start = { label->x + part * (end.x - label->x),
                        label->y + part * (end.y - label->y) };
  const MapBox line = map_box_about (start, end, 0.5);

  return part >= 1.0 || map_is_free (pen->claims, &line);
}

static bool
find_place (const Chart *chart,
            const SpringsPen *pen,
            const MarkLabel *label,
            Frame *found)
{
  double least = INFINITY;

  for (int row = 0; row <= MOST_ROWS; row++)
    for (int side = 0; side < 2 * N_BESIDES; side++) {
      const MarkPlace place = place_at (chart, pen, label, row, side >= N_BESIDES,
                                        (Beside) (side % N_BESIDES));

      if (place.cost >= least || !is_free (chart, pen, place.box) ||
          (row > 0 && !is_leader_free (pen, label, place.box)))
        continue;
      const double cost = place.cost + cost_of_cover (chart, pen, place.box);
      if (cost >= least)
        continue;
      least = cost;
      *found = place.box;
    }
  return isfinite (least);
}

static void
draw_leader (const SpringsPen *pen, const MarkLabel *label, Frame box)
{
  const Pixel end = leader_end (label, box);
  cairo_t *cr = pen->chart.cr;

  if (hypot (end.x - label->x, end.y - label->y) < 2.0 * AIR * pen->chart.theme->text)
    return;
  map_claim_line (pen->claims, (Pixel){ label->x, label->y }, end);
  theme_use (cr, theme_quiet (pen->chart.theme, label->colour, 0.6));
  theme_line (cr, LINE_FULL, 0.7 * pen->chart.theme->thin);
  cairo_move_to (cr, label->x, label->y);
  cairo_line_to (cr, end.x, end.y);
  cairo_stroke (cr);
}

/* Where there is no room at all the mark stands alone. */
static void
draw_label (const Chart *chart, const SpringsPen *pen, const MarkLabel *label)
{
  Frame box;

  if (!find_place (chart, pen, label, &box))
    return;
  draw_leader (pen, label, box);
  write_label (pen, label, box);
}

static void
claim_line (const SpringsPen *pen, Pixel a, Pixel b)
{
  map_claim (pen->claims, map_box_about (a, b, 1.0));
}

/* Above the line or below it, at its left or right end. */
static bool
draw_weight_label (const Chart *chart, const SpringsPen *pen, double y)
{
  const Theme *theme = pen->chart.theme;
  char number[48], text[96];
  unit_format_whole (UNIT_FORCE, pen->springs->corner_weight, 0, FALSE, number,
                     sizeof number);
  g_snprintf (text, sizeof text, _ ("corner weight %s"), number);
  const MarkLabel label = { text, TEXT_PLAIN, theme->ink, chart->plot.x, y };
  Frame box = frame_of (pen, &label);
  const double left = chart->plot.x + 2.0,
               right = chart->plot.x + chart->plot.width - 2.0 - box.width;
  const double above = y - LINE_AIR - box.height, below = y + LINE_AIR;
  const Pixel places[] = {
    { left, above }, { right, below }, { left, below }, { right, above }
  };

  double least = INFINITY;
  Frame found = box;

  for (gsize i = 0; i < G_N_ELEMENTS (places); i++) {
    box.x = places[i].x;
    box.y = places[i].y;
    if (!is_free (chart, pen, box) || cost_of_cover (chart, pen, box) >= least)
      continue;
    least = cost_of_cover (chart, pen, box);
    found = box;
  }
  if (isfinite (least))
    write_label (pen, &label, found);
  return isfinite (least);
}

static void
claim_about (const SpringsPen *pen, double x, double y, double size)
{
  map_claim (pen->claims,
             map_box_upright ((PixelBox){ x - size / 2.0, y - size / 2.0, size, size }));
}

/* Inside the plot, or at its edge where the load is past it. */
static bool
event_place (const Chart *chart, const SpringEvent *event, double *x, double *y)
{
  if (!event->is_reached ||
      !(event->travel >= chart->x.low && event->travel <= chart->x.high) ||
      !isfinite (event->load))
    return false;
  *x = axis_to_pixel (chart->x, event->travel);
  *y = CLAMP (axis_to_pixel (chart->y, event->load), chart->plot.y,
              chart->plot.y + chart->plot.height);
  return true;
}

/* What will be marked, before anything is written. */
static void
claim_marks (const SpringCharts *charts, const SpringsPen *pen)
{
  const SpringCorner *hand = spring_study_in_hand (pen->springs);
  const double size = MARK_SIZE * pen->chart.theme->text;
  double x, y;

  for (unsigned i = 0; i < pen->springs->n_setups; i++)
    if (spring_standing_place (charts, pen->springs, i, &x, &y))
      claim_about (pen, x, y, i == pen->chart.study->in_hand ? 1.5 * size : size);
  for (gsize i = 0; i < hand->n_events; i++)
    if (event_place (loads_of (charts), &hand->events[i], &x, &y))
      claim_about (pen, x, y, 1.1 * size);
}

void
spring_weight_draw (const SpringCharts *charts, const SpringsPen *pen, SpringNamed *named)
{
  const Chart *chart = loads_of (charts);
  const Theme *theme = pen->chart.theme;
  const Frame plot = chart->plot;
  const double right = plot.x + plot.width, foot = plot.y + plot.height;
  const double y = floor (axis_to_pixel (chart->y, pen->springs->corner_weight)) + 0.5;
  cairo_t *cr = pen->chart.cr;
  double x, at;

  theme_use (cr, theme->ink);
  theme_line (cr, LINE_CHAIN, theme->thin);
  cairo_move_to (cr, plot.x, y);
  cairo_line_to (cr, right, y);
  cairo_stroke (cr);
  claim_line (pen, (Pixel){ plot.x, y }, (Pixel){ right, y });
  if (spring_standing_place (charts, pen->springs, pen->chart.study->in_hand, &x, &at)) {
    theme_use (cr, chart_curve_style (chart, &chart->hand, theme).colour);
    theme_line (cr, LINE_DOTTED, theme->thin);
    cairo_move_to (cr, floor (x) + 0.5, y);
    cairo_line_to (cr, floor (x) + 0.5, foot);
    cairo_stroke (cr);
    claim_line (pen, (Pixel){ x, y }, (Pixel){ x, foot });
  }
  claim_marks (charts, pen);
  named->weight = draw_weight_label (chart, pen, y);
}

static void
put_marker (
    const SpringsPen *pen, Marker marker, Colour colour, double x, double y, double size)
{
  const Theme *theme = pen->chart.theme;

  if (theme->ground.alpha > 0.0) {
    theme_use (pen->chart.cr, theme->ground);
    theme_marker (pen->chart.cr, MARKER_DOT, x, y, 1.35 * size);
  }
  theme_use (pen->chart.cr, colour);
  theme_marker (pen->chart.cr, marker, x, y, size);
}

/* Hollow: no setup's marker is. */
static void
put_event (const SpringsPen *pen, double x, double y)
{
  const Theme *theme = pen->chart.theme;
  const double size = 1.1 * MARK_SIZE * theme->text;

  theme_use (pen->chart.cr, theme->ink);
  theme_marker (pen->chart.cr, MARKER_DIAMOND, x, y, size);
  theme_use (pen->chart.cr, colour_with_alpha (theme->ground, 1.0));
  theme_marker (pen->chart.cr, MARKER_DIAMOND, x, y, 0.55 * size);
}

static void
mark_others (const SpringCharts *charts, const SpringsPen *pen)
{
  const Chart *chart = loads_of (charts);
  const double size = MARK_SIZE * pen->chart.theme->text;
  double x, y;

  for (unsigned i = 0; i < chart->n_others; i++) {
    const SetupStyle style =
        chart_curve_style (chart, &chart->others[i], pen->chart.theme);

    if (spring_standing_place (charts, pen->springs, (unsigned) chart->others[i].setup,
                               &x, &y))
      put_marker (pen, style.marker, style.colour, x, y, size);
  }
}

static void
words_for_solid (const SpringEvent *solid, char *text, gsize size)
{
  char number[48];

  if (solid == NULL) {
    g_strlcpy (text, _ ("solid at every travel"), size);
    return;
  }
  unit_format_whole (UNIT_LENGTH, solid->travel, 1, TRUE, number, sizeof number);
  g_snprintf (text, size,
              solid->kind == SPRING_EVENT_COIL_BOUND
                  ? _ ("coil solid at %s: the weight is not carried")
                  : _ ("helper solid at %s: the weight is not carried"),
              number);
}

/* Why it stands nowhere. */
static const char *
words_for (StandsHow stands)
{
  switch (stands) {
  case STANDS_NOWHERE_TOO_SOFT:
    return _ ("too soft: sinks through all its travel");
  case STANDS_NOWHERE_TOO_STIFF:
    return _ ("too stiff: stays at full droop");
  case STANDS_NOT_GIVEN:
    return _ ("No spring is entered for this setup.");
  case STANDS_NOWHERE_BOUND:
  case STANDS_BY_SPRINGS:
    break;
  }
  return "";
}

/* At an end of the line of weight. */
static void
say_nowhere (const Chart *chart, const SpringsPen *pen, const SpringCorner *hand)
{
  const Theme *theme = pen->chart.theme;
  const StandsHow stands = hand->stands;
  const bool sinks = stands == STANDS_NOWHERE_TOO_SOFT || stands == STANDS_NOWHERE_BOUND;
  char solid[160];
  MarkLabel label = { words_for (stands), TEXT_BOLD,
                      stands == STANDS_NOT_GIVEN ? theme->ink : theme->warning,
                      chart->plot.x + (sinks ? chart->plot.width : 0.0),
                      axis_to_pixel (chart->y, pen->springs->corner_weight) };

  if (stands == STANDS_NOWHERE_BOUND) {
    words_for_solid (spring_corner_solid (hand), solid, sizeof solid);
    label.text = solid;
  }
  draw_label (chart, pen, &label);
}

static void
mark_standing (const SpringCharts *charts, const SpringsPen *pen)
{
  const Chart *chart = loads_of (charts);
  const Theme *theme = pen->chart.theme;
  const SpringCorner *hand = spring_study_in_hand (pen->springs);
  const SetupStyle style = chart_curve_style (chart, &chart->hand, theme);
  char number[48], text[128];
  MarkLabel label = { text, TEXT_BOLD, style.colour, 0.0, 0.0 };

  if (hand->stands != STANDS_BY_SPRINGS) {
    say_nowhere (chart, pen, hand);
    return;
  }
  if (!spring_standing_place (charts, pen->springs, pen->chart.study->in_hand, &label.x,
                              &label.y))
    return;
  unit_format_whole (UNIT_LENGTH, hand->standing, 1, TRUE, number, sizeof number);
  /* Translators: the wheel travel at which the car stands. */
  g_snprintf (text, sizeof text, _ ("stands at %s"), number);
  put_marker (pen, MARKER_RING, style.colour, label.x, label.y,
              1.5 * MARK_SIZE * theme->text);
  draw_label (chart, pen, &label);
}

static void
label_event (const Chart *chart, const SpringsPen *pen, const SpringEvent *event)
{
  char number[48], text[160];
  MarkLabel label = { text, TEXT_PLAIN, pen->chart.theme->ink, 0.0, 0.0 };

  if (!event_place (chart, event, &label.x, &label.y))
    return;
  unit_format_whole (UNIT_LENGTH, event->travel, 0, TRUE, number, sizeof number);
  /* Translators: what happens, and the wheel travel. */
  g_snprintf (text, sizeof text, C_ ("event", "%s %s"), spring_event_name (event->kind),
              number);
  draw_label (chart, pen, &label);
}

void
spring_marks_draw (const SpringCharts *charts, const SpringsPen *pen)
{
  const Chart *chart = loads_of (charts);
  const SpringCorner *hand = spring_study_in_hand (pen->springs);
  double x, y;

  mark_others (charts, pen);
  for (gsize i = 0; i < hand->n_events; i++)
    if (event_place (chart, &hand->events[i], &x, &y))
      put_event (pen, x, y);
  mark_standing (charts, pen);
  for (gsize i = 0; i < hand->n_events; i++)
    label_event (chart, pen, &hand->events[i]);
}
