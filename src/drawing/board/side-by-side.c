/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The table with a column for each setup. */

#include "drawing/board/standing-words.h"
#include "drawing/chart/number-table-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* All in units of the text size. */
#define NAME_LEAST 8.3
#define NAME_MOST 16.0
#define NAME_SPLIT 11.5 /* where a second block may stand beside the first */
#define UNIT 3.6
#define COLUMN_LEAST 10.0 /* a value and its change */
#define COLUMN_MOST 13.0
#define COLUMN_WIDEST 20.0 /* where there is more than enough */
/* of a column, at its right */
#define CHANGE_LEAST 4.4
#define CHANGE_MOST 5.6
#define VALUE_LEAST 5.2
#define SAMPLE 2.1
#define COLUMN_GAP 0.9

typedef struct {
  unsigned setups[NUMBER_TABLE_MOST_SETUPS];
  unsigned n;
  double unit, first, column; /* from the block's left edge, pixels */
} Sides;

static unsigned
shown_setups (const Study *study, unsigned *setups)
{
  unsigned n = 0;

  for (guint i = 0; i < study->n_setups && n < NUMBER_TABLE_MOST_SETUPS; i++)
    if (study->setups[i].is_shown)
      setups[n++] = i;
  return n;
}

double
side_by_side_least (const NumberTableView *view)
{
  unsigned setups[NUMBER_TABLE_MOST_SETUPS];

  return NAME_SPLIT + UNIT + NUMBER_TABLE_MARGIN +
         shown_setups (view->study, setups) * (COLUMN_LEAST + 0.4);
}

/* From the end, what is neither in hand nor the baseline. */
static unsigned
drop_one (const Study *study, unsigned *setups, unsigned n)
{
  for (unsigned i = n; i-- > 0;)
    if (setups[i] != study->in_hand && setups[i] != study->baseline) {
      memmove (setups + i, setups + i + 1, (n - i - 1) * sizeof *setups);
      return n - 1;
    }
  return n;
}

unsigned
side_by_side_setups (const NumberTableView *view, double width, unsigned *setups)
{
  const double em = view->theme.text;
  const double room = width / em - NAME_LEAST - UNIT - NUMBER_TABLE_MARGIN;
  unsigned n = shown_setups (view->study, setups), had = 0;

  while (n * COLUMN_LEAST > room && n != had) {
    had = n;
    n = drop_one (view->study, setups, n);
  }
  return n;
}

static Sides
sides_of (const NumberTableView *view, double width)
{
  const double em = view->theme.text;
  const double inner = width / em - NUMBER_TABLE_MARGIN;
  Sides s = { .n = 0 };

  s.n = side_by_side_setups (view, width, s.setups);

  /* a wide block is shared out evenly: each column as wide as the names, and the rest of
   * it stays free at the right */
  const double even = (inner - NAME_MOST - UNIT) / s.n;
  const double each = fmax (fmin (even, COLUMN_WIDEST),
                            fmin ((inner - NAME_LEAST - UNIT) / s.n, COLUMN_MOST));
  const double name = fmin (inner - UNIT - s.n * each, NAME_MOST);
  s.unit = name * em;
  s.first = (name + UNIT) * em;
  s.column = each * em;
  return s;
}

static bool
is_baseline (const Study *study, unsigned setup)
{
  return setup == study->baseline;
}

void
standing_words (const Study *study, unsigned setup, char *text, size_t size)
{
  const double lowering = study->setups[setup].lowering;
  const bool is_base = is_baseline (study, setup);
  char figure[24], height[48];

  unit_format_whole (UNIT_LENGTH, fabs (lowering), 1, FALSE, figure, sizeof figure);
  g_snprintf (height, sizeof height, lowering > 0.0 ? _ ("%s lower") : _ ("%s higher"),
              figure);
  if (fabs (lowering) < 0.05)
    g_strlcpy (text, is_base ? _ ("baseline") : _ ("not lowered"), size);
  else
    g_snprintf (text, size, is_base ? _ ("baseline, %s") : "%s", height);
}

static SetupStyle
style_of (const NumberTableView *view, unsigned setup)
{
  return setup == view->study->in_hand ? theme_hand_style (&view->theme, setup)
                                       : theme_setup_style (&view->theme, setup);
}

/* Line sample and name; below them the height at which its numbers are read. */
static void
draw_head (NumberTable *table,
           cairo_t *cr,
           const NumberTableView *view,
           unsigned setup,
           double x,
           double width)
{
  const Theme *t = &view->theme;
  const bool is_hand = setup == view->study->in_hand;
  const TextStyle small = { t->font, t->small_text, TEXT_PLAIN };
  const TextStyle style = { t->font, t->small_text, is_hand ? TEXT_BOLD : TEXT_PLAIN };
  const char *name = view->study->setups[setup].name;
  const double row = table->layout.row, y = 0.55 * row, em = t->text;
  const TextSize size = text_measure (table->texts, style, name);
  const double left = x + (SAMPLE + 0.5) * em;
  char text[80];

  theme_draw_sample (cr, t, setup, is_hand, x, y, SAMPLE * em);
  theme_use (cr, style_of (view, setup).colour);
  text_draw_within (table->texts, cr, style, name, left,
                    y - size.height / 2.0 + size.baseline, x + width - left);
  standing_words (view->study, setup, text, sizeof text);
  theme_use (cr, t->soft_ink);
  text_draw_within (table->texts, cr, small, text, x,
                    1.3 * row - size.height / 2.0 + size.baseline, width);
}

/* What the change takes of a column, pixels. */
static double
change_room (const NumberTableView *view, double width)
{
  const double em = view->theme.text;

  return CLAMP (width - VALUE_LEAST * em, CHANGE_LEAST * em, CHANGE_MOST * em);
}

static double
standing_value (const Study *study, unsigned setup, Quantity q)
{
  const Station *station = &study->setups[setup].at_height;

  return station->status == POSE_OK ? station->measures.value[q] : (double) NAN;
}

static void
draw_cell (NumberTable *table,
           cairo_t *cr,
           const NumberTableView *view,
           Quantity q,
           unsigned setup,
           double x,
           double width,
           double middle)
{
  const Theme *t = &view->theme;
  const Study *study = view->study;
  const bool is_hand = setup == study->in_hand;
  const TextStyle small = { t->font, t->small_text, TEXT_PLAIN };
  const TextStyle style = { t->font, t->text, is_hand ? TEXT_BOLD : TEXT_PLAIN };
  const double value = standing_value (study, setup, q);
  const double change = value - standing_value (study, study->baseline, q);
  char text[32];

  /* figures by their right edge, so that they can be read down the column */
  quantity_format (q, value, FALSE, text, sizeof text);
  number_table_put (table, cr, style, t->ink, text, x + width - change_room (view, width),
                    middle, 1.0);
  if (is_baseline (study, setup) || !isfinite (change))
    return;
  quantity_format_change (q, value, standing_value (study, study->baseline, q), text,
                          sizeof text);
  number_table_put (table, cr, small, t->soft_ink, text, x + width, middle, 1.0);
}

static void
draw_row (NumberTable *table,
          cairo_t *cr,
          const NumberTableView *view,
          const Sides *s,
          Quantity q,
          double x,
          double y)
{
  const Theme *t = &view->theme;
  const TextStyle small = { t->font, t->small_text, TEXT_PLAIN };
  const QuantityInfo info = quantity_info (q);
  const double middle = y + table->layout.row / 2.0;

  number_table_put_name (table, cr, t, &info, x, middle, s->unit - 0.5 * t->text);
  number_table_put (table, cr, small, t->soft_ink, quantity_caption (q), x + s->unit,
                    middle, 0.0);
  for (unsigned i = 0; i < s->n; i++)
    draw_cell (table, cr, view, q, s->setups[i], x + s->first + i * s->column,
               s->column - COLUMN_GAP * t->text, middle);
}

static void
draw_corner (NumberTable *table, cairo_t *cr, const NumberTableView *view, double room)
{
  const Theme *t = &view->theme;
  const TextStyle bold = { t->font, t->small_text, TEXT_BOLD };
  const char *words = _ ("Each where it stands");
  const TextSize size = text_measure (table->texts, bold, words);

  theme_use (cr, t->ink);
  text_draw_within (table->texts, cr, bold, words, table->layout.left,
                    0.55 * table->layout.row - size.height / 2.0 + size.baseline, room);
}

void
side_by_side_draw (NumberTable *table, cairo_t *cr, const NumberTableView *view)
{
  const TableLayout l = table->layout;
  const Sides s = sides_of (view, l.width);

  for (unsigned i = 0; i < view->n_quantities; i++) {
    const double x = l.left + l.width * (i / l.n_rows);
    draw_row (table, cr, view, &s, view->quantities[i], x,
              l.head + l.row * (i % l.n_rows));
    for (unsigned j = 0; j < s.n && i % l.n_rows == 0; j++)
      draw_head (table, cr, view, s.setups[j], x + s.first + j * s.column,
                 s.column - COLUMN_GAP * view->theme.text);
  }
  draw_corner (table, cr, view, s.first - 0.5 * view->theme.text);
}
