/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The roll lever arm of the setup in hand: the band between roll centre and centre of
 * gravity, and its figures where the setup stands. */

#include "drawing/board/lowering-chart.h"
#include "drawing/board/lowering-words.h"

#include <glib/gi18n-lib.h>

#define N STUDY_STATIONS
#define BAND_ALPHA 0.13

typedef char Tag[96];

/* Closes the band over the stations @first … @last, which are assembled. */
static void
trace_stretch (const LoweringChart *chart, const LoweringPen *pen, int first, int last)
{
  const Station *stations = study_in_hand (pen->study)->stations;
  const double cg = pen->study->cg_height;
  const double least = chart->plot.y - 1000.0,
               most = chart->plot.y + chart->plot.height + 1000.0;

  cairo_new_sub_path (pen->cr);
  for (int i = first; i <= last; i++) {
    const double y = axis_to_pixel (chart->y, lowering_chart_value (chart, &stations[i]));
    cairo_line_to (pen->cr, axis_to_pixel (chart->x, stations[i].travel),
                   CLAMP (y, least, most));
  }
  for (int i = last; i >= first; i -= last - first)
    cairo_line_to (pen->cr, axis_to_pixel (chart->x, stations[i].travel),
                   axis_to_pixel (chart->y, cg - stations[i].travel));
  cairo_close_path (pen->cr);
}

void
lowering_band_draw (const LoweringChart *chart, const LoweringPen *pen)
{
  const StudyCorner *hand = study_in_hand (pen->study);
  const Colour colour = theme_hand_style (pen->theme, pen->study->in_hand).colour;
  int first = -1;

  cairo_new_path (pen->cr);
  for (int i = 0; i <= N; i++) {
    const bool is_there =
        i < N && isfinite (lowering_chart_value (chart, &hand->stations[i]));

    if (is_there && first < 0)
      first = i;
    if (!is_there && first >= 0 && i - 1 > first)
      trace_stretch (chart, pen, first, i - 1);
    if (!is_there)
      first = -1;
  }
  theme_use (pen->cr, colour_with_alpha (colour, BAND_ALPHA));
  cairo_fill (pen->cr);
}

/* "438 mm (+54)", the change to @reference where there is one to speak of. */
static void
format_change (const char *words, double value, double reference, Tag text)
{
  const double change = value - reference;
  char figure[24], difference[24];

  unit_format_whole (UNIT_LENGTH, value, 1, FALSE, figure, sizeof figure);
  g_snprintf (text, sizeof (Tag), "%s %s", words, figure);
  if (!(fabs (change) >= 0.05))
    return;

  const gsize length = strlen (text);
  unit_format (UNIT_LENGTH, change, 1, TRUE, difference, sizeof difference);
  g_snprintf (text + length, sizeof (Tag) - length, " (%s)", difference);
}

static void
draw_arrow (const LoweringPen *pen, double x, double y, double way, Colour colour)
{
  const double length = 0.75 * pen->theme->text, half = 0.23 * pen->theme->text;

  cairo_move_to (pen->cr, x, y);
  cairo_line_to (pen->cr, x - half, y - way * length);
  cairo_line_to (pen->cr, x + half, y - way * length);
  cairo_close_path (pen->cr);
  theme_use (pen->cr, colour);
  cairo_fill (pen->cr);
}

typedef struct {
  double x;     /* where the setup stands */
  double edge;  /* of the text nearest to it */
  double align; /* 0: the text lies to the right, 1: to the left */
} TagColumn;

static void
draw_tag (const LoweringPen *pen,
          TagColumn column,
          const char *text,
          double y,
          TextWeight weight,
          Colour colour)
{
  const TextStyle style = lowering_style (pen->theme, weight, weight == TEXT_PLAIN);
  const TextSize size = text_measure (pen->texts, style, text);
  const double left = column.edge - column.align * size.width, pad = 3.0;

  if (pen->theme->ground.alpha > 0.0) {
    theme_use (pen->cr, colour_with_alpha (pen->theme->ground, 0.8));
    cairo_rectangle (pen->cr, left - pad, y - size.height / 2.0, size.width + 2.0 * pad,
                     size.height);
    cairo_fill (pen->cr);
  }
  theme_use (pen->cr, colour);
  text_draw (pen->texts, pen->cr, style, text, left, y, (TextAnchor){ 0.0, 0.5 });
}

/* All tags on one side of where the setup stands, the right one if they have room there.
 */
static TagColumn
tag_column (const LoweringChart *chart, const LoweringPen *pen, double x, double width)
{
  const double gap = 0.9 * pen->theme->text, right = chart->plot.x + chart->plot.width;
  const bool is_right = x + gap + width <= right || right - x >= x - chart->plot.x;

  return (TagColumn){ x, is_right ? x + gap : x - gap, is_right ? 0.0 : 1.0 };
}

typedef struct {
  Tag lever, centre, gravity;
} LeverTags;

static LeverTags
format_tags (const Study *study)
{
  const StudyCorner *hand = study_in_hand (study), *other = study_reference (study);
  const Quantity quantity = QUANTITY_ROLL_CENTRE_HEIGHT;
  const bool compares =
      lowering_has_reference (study) && other->at_height.status == POSE_OK;
  const Station *reference = compares ? &other->at_height : &hand->at_height;
  LeverTags tags;

  format_change (_ ("roll lever arm"),
                 roll_lever_arm (study->cg_height, &hand->at_height),
                 roll_lever_arm (study->cg_height, reference), tags.lever);
  format_change (_ ("roll centre"), hand->at_height.measures.value[quantity],
                 reference->measures.value[quantity], tags.centre);
  format_change (_ ("centre of gravity"), study->cg_height - hand->lowering,
                 study->cg_height - (compares ? other->lowering : hand->lowering),
                 tags.gravity);
  return tags;
}

void
lowering_lever_draw (const LoweringChart *chart, const LoweringPen *pen)
{
  const StudyCorner *hand = study_in_hand (pen->study);
  const Theme *t = pen->theme;
  const Colour colour = theme_hand_style (t, pen->study->in_hand).colour;
  const double cg = axis_to_pixel (chart->y, pen->study->cg_height - hand->lowering);
  const double clear = 0.75 * t->text;
  double x, y;

  if (!lowering_chart_standing (chart, hand, &x, &y))
    return;
  theme_use (pen->cr, colour);
  theme_line (pen->cr, LINE_FULL, t->thin * 1.2);
  cairo_move_to (pen->cr, x, cg);
  cairo_line_to (pen->cr, x, y);
  cairo_stroke (pen->cr);
  draw_arrow (pen, x, cg + clear, -1.0, colour);
  draw_arrow (pen, x, y - clear, 1.0, colour);

  const LeverTags tags = format_tags (pen->study);
  const TextStyle bold = lowering_style (t, TEXT_BOLD, false);
  const TagColumn column =
      tag_column (chart, pen, x, text_measure (pen->texts, bold, tags.lever).width);
  /* to the right both lines fall away below the tags, to the left they stand above */
  const double beside = column.align > 0.0 ? 1.3 * t->text : -1.1 * t->text;

  draw_tag (pen, column, tags.lever, (y + cg) / 2.0, TEXT_BOLD, colour);
  draw_tag (pen, column, tags.centre, y + beside, TEXT_PLAIN, colour);
  draw_tag (pen, column, tags.gravity, cg + beside, TEXT_PLAIN, t->ink);
}
