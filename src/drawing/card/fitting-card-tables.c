/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/card/fitting-card-tables.h"

#include "model/study/quantity-info.h"
#include "model/study/setup-title.h"
#include "model/words/number-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define DEGREES (180.0 / G_PI)
#define GAP 8.0          /* points between two columns */
#define NUMBER_WIDTH 4.8 /* of the type's size: "−12.34°" */

typedef struct {
  const FittingPen *pen;
  const FittingFacts *facts;
  double x, y, width; /* y: the top of the next row */
} Table;

static double
small_line (const Table *t)
{
  return fitting_line_height (t->pen, FITTING_SMALL);
}

static double
text_line (const Table *t)
{
  return fitting_line_height (t->pen, FITTING_TEXT);
}

static void
draw_title (Table *t, const char *title)
{
  const double line = fitting_line_height (t->pen, FITTING_HEADING);

  fitting_ink (t->pen, t->pen->theme.ink);
  fitting_write (t->pen, FITTING_HEADING, title, t->x, t->y + 0.8 * line, t->width,
                 FITTING_LEFT);
  t->y += line;
}

static void
end_row (Table *t)
{
  fitting_ink (t->pen, t->pen->theme.faint);
  fitting_rule (t->pen, t->x, t->y, t->width, t->pen->theme.thin);
}

/* Alignment: a column of names, then one for each side. */

static double
name_width (const Table *t)
{
  return 0.23 * t->width;
}

static double
side_width (const Table *t)
{
  return (t->width - name_width (t)) / 2.0 - GAP;
}

static double
side_left (const Table *t, CarSide side)
{
  return t->x + name_width (t) + GAP +
         (side == FITTING_FIRST ? 0.0 : side_width (t) + GAP);
}

/* Of a side's column: the numbers; the rest is to write in. */
static double
numbers_width (const Table *t)
{
  return 0.64 * side_width (t);
}

static void
draw_alignment_head (Table *t)
{
  const FittingPen *pen = t->pen;
  const double line = text_line (t), blank = side_width (t) - numbers_width (t);

  for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++) {
    const double x = side_left (t, side);

    fitting_ink (pen, pen->theme.ink);
    fitting_write (pen, FITTING_TEXT_BOLD, fitting_side_name (side), x,
                   t->y + 0.75 * line, side_width (t), FITTING_LEFT);
    fitting_ink (pen, pen->theme.soft_ink);
    fitting_write (pen, FITTING_SMALL, _ ("as measured → now"), x,
                   t->y + line + 0.75 * small_line (t), numbers_width (t) - GAP,
                   FITTING_LEFT);
    fitting_write (pen, FITTING_SMALL, _ ("measured after"), x + numbers_width (t),
                   t->y + line + 0.75 * small_line (t), blank, FITTING_LEFT);
  }
  t->y += line + small_line (t) + 1.0;
  end_row (t);
}

static double
row_height (const Table *t)
{
  return text_line (t) + small_line (t) + 1.0;
}

static double
first_baseline (const Table *t)
{
  return t->y + 0.8 * text_line (t);
}

static double
second_baseline (const Table *t)
{
  return t->y + text_line (t) + 0.7 * small_line (t);
}

/* The row's name, and what is aimed for below it. */
static void
draw_name (const Table *t, const char *name, const char *below)
{
  fitting_ink (t->pen, t->pen->theme.ink);
  fitting_write (t->pen, FITTING_TEXT, name, t->x, first_baseline (t), name_width (t),
                 FITTING_LEFT);
  fitting_ink (t->pen, t->pen->theme.soft_ink);
  if (below != NULL)
    fitting_write (t->pen, FITTING_SMALL, below, t->x, second_baseline (t),
                   name_width (t), FITTING_LEFT);
}

/* "−0.40° → −2.50°", and words below. */
static void
draw_change (
    const Table *t, CarSide side, const char *before, const char *now, const char *words)
{
  const FittingPen *pen = t->pen;
  const double x = side_left (t, side), width = numbers_width (t) - GAP;
  const double arrow = 1.6 * pen->theme.text;
  const double number = fmin ((width - arrow) / 2.0, NUMBER_WIDTH * pen->theme.text);
  const double y = first_baseline (t);

  fitting_ink (pen, pen->theme.soft_ink);
  fitting_write (pen, FITTING_TEXT, before, x, y, number, FITTING_LEFT);
  fitting_write (pen, FITTING_TEXT, "→", x + number, y, arrow, FITTING_CENTRE);
  fitting_ink (pen, pen->theme.ink);
  fitting_write (pen, FITTING_TEXT_BOLD, now, x + number + arrow, y, number,
                 FITTING_LEFT);
  fitting_ink (pen, pen->theme.soft_ink);
  fitting_write (pen, FITTING_SMALL, words, x, second_baseline (t), width, FITTING_LEFT);
}

static void
draw_to_write_in (const Table *t, CarSide side)
{
  const double x = side_left (t, side) + numbers_width (t), y = first_baseline (t) + 4.0;
  const double width = side_width (t) - numbers_width (t);
  const double box = fitting_tick_size (t->pen);

  fitting_blank (t->pen, x, y, width - box - 5.0);
  fitting_tick_box (t->pen, x + width - box, y);
}

/* Below what is written in there. */
static void
draw_what_comes_first (const Table *t, CarSide side)
{
  const double x = side_left (t, side) + numbers_width (t);
  const double below = second_baseline (t) + 3.0; /* the line that is written on */

  if (!fitting_toe_waits (t->facts, side))
    return;
  fitting_ink (t->pen, t->pen->theme.warning);
  /* Translators: toe is to be measured when the tie rod has been turned. */
  fitting_write (t->pen, FITTING_SMALL, _ ("tie rod first"), x, below,
                 side_width (t) - numbers_width (t), FITTING_LEFT);
}

/* Toe stands here for each wheel, whatever is chosen. */
static char *
alignment_text (const ChoicePlace *place, ChoiceNumber number)
{
  return number == CHOICE_TOE_IN
             ? unit_text (UNIT_ANGLE, choice_number (place, number), 2)
             : fitting_number (place, number);
}

static void
draw_quantity_row (Table *t, Quantity quantity, ChoiceNumber number, const char *name)
{
  g_autofree char *aim = fitting_aim (t->facts->card->car, number);

  draw_name (t, name, aim);
  for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++) {
    const ChoicePlace *now = fitting_now (t->facts, side);
    g_autofree char *before = alignment_text (&t->facts->measured[side], number);
    g_autofree char *after = alignment_text (now, number);

    draw_change (t, side, before, after,
                 quantity_sign_words (quantity, now->value[quantity]));
    draw_to_write_in (t, side);
    if (quantity == QUANTITY_TOE_IN)
      draw_what_comes_first (t, side);
  }
  t->y += row_height (t);
  end_row (t);
}

/* In the unit of toe, which may be one of both wheels anyway. */
static char *
total_toe_text (double radians)
{
  return unit_choice ()->toe == TOE_PER_WHEEL
             ? unit_text (UNIT_ANGLE, radians * DEGREES, 2)
             : unit_text (UNIT_TOE, radians * DEGREES / 2.0, 2);
}

/* Of both wheels together. */
static void
draw_total_toe (Table *t)
{
  const ChoicePlace *before = t->facts->measured;
  const double total = fitting_now (t->facts, SIDE_LEFT)->value[QUANTITY_TOE_IN] +
                       fitting_now (t->facts, SIDE_RIGHT)->value[QUANTITY_TOE_IN];
  const double was = before[SIDE_LEFT].value[QUANTITY_TOE_IN] +
                     before[SIDE_RIGHT].value[QUANTITY_TOE_IN];
  g_autofree char *was_text = total_toe_text (was);
  g_autofree char *text = total_toe_text (total);

  draw_name (t, _ ("Toe-in, both wheels"), NULL);
  draw_change (t, FITTING_FIRST, was_text, text,
               quantity_sign_words (QUANTITY_TOE_IN, total));
  draw_to_write_in (t, FITTING_FIRST);
  draw_what_comes_first (t, FITTING_FIRST);
}

/* Beside the total: how far the sides are apart. */
static void
draw_cross (
    const Table *t, double baseline, const char *format, double difference, double limit)
{
  const FittingPen *pen = t->pen;
  const gboolean is_past = fabs (difference) * DEGREES > limit;
  g_autofree char *number = unit_text (UNIT_ANGLE, difference * DEGREES, 2);
  g_autofree char *most = unit_text (UNIT_ANGLE, limit, 2);
  g_autofree char *text = g_strdup_printf (format, number, most);
  g_autofree char *marked = g_strconcat (text, is_past ? " !" : "", NULL);

  fitting_ink (pen, is_past ? pen->theme.warning : pen->theme.ink);
  fitting_write (pen, FITTING_SMALL, marked, side_left (t, FITTING_SECOND), baseline,
                 side_width (t), FITTING_LEFT);
}

static void
draw_totals (Table *t)
{
  const ChoiceAnswer *answer = t->facts->card->answer;
  const CarLimits *limits = &t->facts->card->car->limits;

  draw_total_toe (t);
  draw_cross (t, first_baseline (t), _ ("Left less right: camber %s (at most %s)"),
              answer->cross_camber, limits->cross_camber_deg);
  draw_cross (t, second_baseline (t), _ ("Left less right: caster %s (at most %s)"),
              answer->cross_caster, limits->cross_caster_deg);
  t->y += row_height (t);
  end_row (t);
}

static void
draw_tie_rods (Table *t)
{
  g_autofree char *pitch = plain_number_text (t->facts->card->car->thread_pitch_mm);
  g_autofree char *thread = g_strdup_printf (_ ("%s mm pitch"), pitch);
  const FittingPen *pen = t->pen;

  draw_name (t, _ ("Tie rod"), thread);
  for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++) {
    g_autofree char *words = fitting_tie_rod_words (t->facts, side);
    g_autofree char *remark = fitting_tie_rod_remark (t->facts, side);

    fitting_ink (pen, pen->theme.ink);
    fitting_write (pen, FITTING_TEXT_BOLD, words, side_left (t, side), first_baseline (t),
                   side_width (t), FITTING_LEFT);
    fitting_ink (pen, pen->theme.soft_ink);
    fitting_write (pen, FITTING_SMALL, remark, side_left (t, side), second_baseline (t),
                   side_width (t), FITTING_LEFT);
  }
  t->y += row_height (t);
  end_row (t);
}

double
fitting_alignment_table (
    const FittingPen *pen, const FittingFacts *facts, double x, double y, double width)
{
  static const struct {
    Quantity quantity;
    ChoiceNumber number;
  } rows[] = { { QUANTITY_CAMBER, CHOICE_CAMBER },
               { QUANTITY_CASTER, CHOICE_CASTER },
               { QUANTITY_SAI, CHOICE_SAI } };
  Table t = { pen, facts, x, y, width };

  draw_title (&t, _ ("Alignment to set afterwards"));
  draw_alignment_head (&t);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    draw_quantity_row (&t, rows[i].quantity, rows[i].number,
                       quantity_info (rows[i].quantity).short_name);
  draw_quantity_row (&t, QUANTITY_TOE_IN, CHOICE_TOE_IN, _ ("Toe-in, each wheel"));
  draw_totals (&t);
  draw_tie_rods (&t);
  return t.y - y;
}

/* Costs: name, as measured, the two sides, limit. */

typedef enum {
  COST_NAME,
  COST_BEFORE,
  COST_FIRST,
  COST_SECOND,
  COST_LIMIT,
  N_COST_COLUMNS
} CostColumn;

static const double cost_shares[N_COST_COLUMNS] = { 0.26, 0.17, 0.14, 0.14, 0.29 };

static double
cost_left (const Table *t, CostColumn column)
{
  double x = t->x;

  for (CostColumn i = 0; i < column; i++)
    x += cost_shares[i] * t->width;
  return x;
}

static void
write_cost (const Table *t, CostColumn column, FittingStyle style, const char *text)
{
  fitting_write (t->pen, style, text, cost_left (t, column), t->y + 0.78 * text_line (t),
                 cost_shares[column] * t->width - GAP, FITTING_LEFT);
}

/* The one cell that may need two lines. Returns the height of the row. */
static double
write_limit (const Table *t, const char *text)
{
  const double above = 0.12 * text_line (t);

  return fmax (text_line (t),
               above + fitting_paragraph (t->pen, FITTING_SMALL, text,
                                          cost_left (t, COST_LIMIT), t->y + above,
                                          cost_shares[COST_LIMIT] * t->width));
}

static void
draw_cost_head (Table *t)
{
  fitting_ink (t->pen, t->pen->theme.soft_ink);
  write_cost (t, COST_BEFORE, FITTING_SMALL, measured_car_title ());
  write_cost (t, COST_FIRST, FITTING_SMALL, fitting_side_name (FITTING_FIRST));
  write_cost (t, COST_SECOND, FITTING_SMALL, fitting_side_name (FITTING_SECOND));
  write_cost (t, COST_LIMIT, FITTING_SMALL, _ ("limit or aim"));
  t->y += text_line (t);
  end_row (t);
}

/* "18.3 mm", or "18.3 / 17.0 mm" where the sides differ, in the order of the columns. */
static char *
both_measured (const FittingFacts *facts, ChoiceNumber number)
{
  const ChoicePlace *measured = facts->measured;
  g_autofree char *first = choice_number_text (&measured[FITTING_FIRST], number);
  g_autofree char *second = choice_number_text (&measured[FITTING_SECOND], number);
  g_autofree char *full = fitting_number (&measured[FITTING_SECOND], number);

  return g_str_equal (first, second) ? g_steal_pointer (&full)
                                     : g_strdup_printf ("%s / %s", first, full);
}

static void
draw_cost_row (Table *t, ChoiceNumber number, const char *name)
{
  const FittingPen *pen = t->pen;
  g_autofree char *before = both_measured (t->facts, number);
  g_autofree char *limit = fitting_limit (t->facts, number);

  fitting_ink (pen, pen->theme.ink);
  write_cost (t, COST_NAME, FITTING_TEXT, name);
  fitting_ink (pen, pen->theme.soft_ink);
  write_cost (t, COST_BEFORE, FITTING_TEXT, before);
  const double height = write_limit (t, limit);
  for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++) {
    const ChoicePlace *now = fitting_now (t->facts, side);
    const gboolean is_past = choice_number_is_past_limit (now, number);
    g_autofree char *value = fitting_number (now, number);
    g_autofree char *marked = g_strconcat (value, is_past ? " !" : "", NULL);

    fitting_ink (pen, is_past ? pen->theme.warning : pen->theme.ink);
    write_cost (t, side == FITTING_FIRST ? COST_FIRST : COST_SECOND,
                is_past ? FITTING_TEXT_BOLD : FITTING_TEXT, marked);
  }
  t->y += ceil (height);
  end_row (t);
}

double
fitting_cost_table (
    const FittingPen *pen, const FittingFacts *facts, double x, double y, double width)
{
  static const struct {
    ChoiceNumber number;
    const char *name;
  } rows[] = { { CHOICE_SCRUB_RADIUS, N_ ("Scrub radius") },
               { CHOICE_TRAIL, N_ ("Caster trail") },
               { CHOICE_ROLL_CENTRE_HEIGHT, N_ ("Roll-centre height") },
               { CHOICE_BUMP_STEER, N_ ("Bump steer, at most") },
               { CHOICE_TYRE_CLEARANCE, N_ ("Room to the tyre") },
               { CHOICE_ROD_SIDE_FORCE, N_ ("Side force on the rod") },
               { CHOICE_BEARING_TILT, N_ ("Tilt of the bearing") },
               { CHOICE_EDGE_MARGIN, N_ ("Room to the tower") } };
  g_autofree char *travel =
      unit_plain_text (UNIT_LENGTH, facts->card->car->limits.travel_used_mm, 1);
  g_autofree char *title =
      g_strdup_printf (_ ("What it costs, over %s of wheel travel either way"), travel);
  Table t = { pen, facts, x, y, width };

  draw_title (&t, title);
  draw_cost_head (&t);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    draw_cost_row (&t, rows[i].number, _ (rows[i].name));
  return t.y - y;
}
