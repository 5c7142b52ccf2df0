/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/chart/number-table-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* All in units of the text size. */
#define ROW 1.75
#define TALL_HEAD 1.75 /* rows */
#define HEAD_LINE 0.68 /* rows, from the first line of a head to its second */
#define MARGIN NUMBER_TABLE_MARGIN
#define LEAST_BLOCK 27.0
#define FIGURES 5.2 /* width of one column of figures, at least and at most */
#define MOST_FIGURES 9.0
#define NAME 13.5
#define NAME_SPARE 2.0 /* of it, what a head may take */
#define UNIT 3.8
#define WORDS 13.0 /* sign words, where there is room */

/* Where things stand in a block, from its left edge. */
typedef struct {
  double name, measured, now, change, unit, words; /* figures by their right edge */
  double figures;
  bool has_words;
} Columns;

NumberTable *
number_table_new (void)
{
  NumberTable *table = g_new0 (NumberTable, 1);

  table->texts = text_cache_new ();
  return table;
}

void
number_table_free (NumberTable *table)
{
  text_cache_free (table->texts);
  g_free (table);
}

static Columns
columns_of (const Theme *theme, double width)
{
  const double em = theme->text, inner = width - MARGIN * em;
  const bool has_words = inner > (LEAST_BLOCK + WORDS) * em;
  const double words = has_words ? inner - WORDS * em : inner;
  const double unit = words - UNIT * em;
  const double figures =
      CLAMP ((unit - NAME * em) / 3.0, FIGURES * em, MOST_FIGURES * em);

  return (Columns){ .name = 0.0,
                    .measured = unit - 2.0 * figures - 0.8 * em,
                    .now = unit - figures - 0.6 * em,
                    .change = unit - 0.5 * em,
                    .unit = unit,
                    .words = words,
                    .figures = figures,
                    .has_words = has_words };
}

/* For a name over a column of figures. */
static double
head_room (const Theme *theme, const Columns *c)
{
  return c->figures - 0.3 * theme->text;
}

/* Whether a name that may head a column takes two lines at this width. */
static bool
has_tall_head (TextCache *texts, const NumberTableView *view, double width)
{
  const Study *study = view->study;
  const TextStyle bold = { view->theme.font, view->theme.small_text, TEXT_BOLD };
  const Columns c = columns_of (&view->theme, width);

  for (guint i = 0; i < study->n_setups; i++)
    if (study->setups[i].is_shown &&
        text_measure (texts, bold, study->setups[i].name).width >
            head_room (&view->theme, &c))
      return true;
  return text_measure (texts, bold, study_reference (study)->name).width >
         head_room (&view->theme, &c);
}

static TableLayout
lay_out (TextCache *texts, const NumberTableView *view, double width)
{
  const double em = view->theme.text;
  const double least = view->side_by_side ? side_by_side_least (view) : LEAST_BLOCK;
  const unsigned n = view->n_quantities;
  const unsigned fit = (unsigned) fmax (1.0, floor (width / (least * em)));
  const unsigned n_blocks = MIN (MIN (fit, 3u), MAX (n, 1u));

  const double block = (width - MARGIN * em) / n_blocks;
  const bool is_tall = view->side_by_side || has_tall_head (texts, view, block);

  return (TableLayout){ .n_blocks = n_blocks,
                        .n_rows = (n + n_blocks - 1) / n_blocks,
                        .left = MARGIN * em,
                        .width = block,
                        .head = (is_tall ? TALL_HEAD : 1.0) * ROW * em,
                        .row = ROW * em };
}

double
number_table_height (const NumberTableView *view, double width)
{
  g_autoptr (TextCache) texts = text_cache_new ();
  const TableLayout l = lay_out (texts, view, width);

  return l.head + l.row * l.n_rows + 0.5 * view->theme.text;
}

unsigned
number_table_setups (const NumberTableView *view, double width, unsigned *setups)
{
  g_autoptr (TextCache) texts = text_cache_new ();

  return side_by_side_setups (view, lay_out (texts, view, width).width, setups);
}

void
number_table_put (NumberTable *table,
                  cairo_t *cr,
                  TextStyle style,
                  Colour colour,
                  const char *text,
                  double x,
                  double y,
                  double anchor)
{
  theme_use (cr, colour);
  text_draw (table->texts, cr, style, text, x, y, (TextAnchor){ anchor, 0.5 });
}

#define put number_table_put

static void
put_name_line (NumberTable *table,
               cairo_t *cr,
               TextStyle style,
               const char *name,
               double right,
               double y,
               double room)
{
  const TextSize size = text_measure (table->texts, style, name);

  text_draw_within (table->texts, cr, style, name, right - fmin (size.width, room),
                    y - size.height / 2.0 + size.baseline, room);
}

/* As many of the name's first words as one line holds, in bytes; at least one word. */
static gsize
first_line (NumberTable *table, TextStyle style, const char *name, double room)
{
  const char *last = strchr (name, ' ');

  for (const char *at = last; at != NULL; at = strchr (at + 1, ' ')) {
    g_autofree char *part = g_strndup (name, (gsize) (at - name));
    if (text_measure (table->texts, style, part).width > room)
      break;
    last = at;
  }
  return last == NULL ? strlen (name) : (gsize) (last - name);
}

/* A name that ends at @right, in two lines where one is not enough; they end in "…" when
 * two are not either. */
static void
put_name (NumberTable *table,
          cairo_t *cr,
          TextStyle style,
          Colour colour,
          const char *name,
          double right,
          double y,
          double room)
{
  const double step = HEAD_LINE * table->layout.row;
  const bool is_tall = table->layout.head > table->layout.row;

  theme_use (cr, colour);
  if (!is_tall || text_measure (table->texts, style, name).width <= room) {
    put_name_line (table, cr, style, name, right, y, room);
    return;
  }
  const gsize n = first_line (table, style, name, room);
  g_autofree char *first = g_strndup (name, n);
  put_name_line (table, cr, style, first, right, y, room);
  if (name[n] != '\0')
    put_name_line (table, cr, style, name + n + 1, right, y + step, room);
}

static Colour
hand_colour (const NumberTableView *view)
{
  return theme_hand_style (&view->theme, view->study->in_hand).colour;
}

static Colour
reference_colour (const NumberTableView *view)
{
  const Study *study = view->study;

  return study->baseline == study->in_hand
             ? theme_measured_style (&view->theme).colour
             : theme_setup_style (&view->theme, study->baseline).colour;
}

static void
travel_text (const Study *study, char *text, size_t size)
{
  char travel[48];

  unit_format_whole (UNIT_LENGTH, study->travel, 1, TRUE, travel, sizeof travel);
  /* Translators: the wheel travel at which the numbers hold, as "+12.3 mm". */
  g_snprintf (text, size, _ ("At %s"), travel);
}

static TextStyle
travel_style (const Theme *theme)
{
  return (TextStyle){ theme->font, theme->small_text, TEXT_BOLD };
}

static void
draw_travel (NumberTable *table, cairo_t *cr, const NumberTableView *view)
{
  char text[96];

  travel_text (view->study, text, sizeof text);
  put (table, cr, travel_style (&view->theme), view->theme.ink, text, table->layout.left,
       table->layout.row * 0.55, 0.0);
}

/* Where the head of a block may begin, from its left edge: the travel stands over the
 * first block's names. */
static double
head_left (NumberTable *table, const NumberTableView *view, double x)
{
  char text[96];

  if (x > table->layout.left)
    return 0.0;
  travel_text (view->study, text, sizeof text);
  return text_measure (table->texts, travel_style (&view->theme), text).width +
         0.6 * view->theme.text;
}

static void
draw_head (NumberTable *table,
           cairo_t *cr,
           const NumberTableView *view,
           double x,
           const Columns *c)
{
  const Theme *t = &view->theme;
  const TextStyle small = { t->font, t->small_text, TEXT_PLAIN };
  const TextStyle bold = { t->font, t->small_text, TEXT_BOLD };
  const double y = table->layout.row * 0.55, room = head_room (t, c);

  put_name (table, cr, small, reference_colour (view),
            study_reference (view->study)->name, x + c->measured, y,
            fmin (room + NAME_SPARE * t->text, c->measured - head_left (table, view, x)));
  put_name (table, cr, bold, hand_colour (view), study_in_hand (view->study)->name,
            x + c->now, y, room);
  put (table, cr, small, t->soft_ink, _ ("change"), x + c->change, y, 1.0);
}

void
number_table_put_name (NumberTable *table,
                       cairo_t *cr,
                       const Theme *theme,
                       const QuantityInfo *info,
                       double x,
                       double y,
                       double room)
{
  const TextStyle style = { theme->font, theme->text, TEXT_PLAIN };
  const TextSize whole = text_measure (table->texts, style, info->name);

  theme_use (cr, theme->ink);
  text_draw_within (table->texts, cr, style,
                    whole.width < room ? info->name : info->short_name, x,
                    y - whole.height / 2.0 + whole.baseline, room);
}

/* What the sign means, where there is room for the whole of it. */
static void
draw_words (NumberTable *table,
            cairo_t *cr,
            const Theme *t,
            const char *words,
            double x,
            double middle,
            const Columns *c)
{
  const TextStyle small = { t->font, t->small_text, TEXT_PLAIN };

  if (c->has_words && text_measure (table->texts, small, words).width <= WORDS * t->text)
    put (table, cr, small, t->soft_ink, words, x, middle, 0.0);
}

static void
draw_row (NumberTable *table,
          cairo_t *cr,
          const NumberTableView *view,
          Quantity q,
          double x,
          double y,
          const Columns *c)
{
  const Theme *t = &view->theme;
  const TextStyle plain = { t->font, t->text, TEXT_PLAIN };
  const TextStyle bold = { t->font, t->text, TEXT_BOLD };
  const TextStyle small = { t->font, t->small_text, TEXT_PLAIN };
  const double was = study_reference (view->study)->now.measures.value[q];
  const double is = study_in_hand (view->study)->now.measures.value[q];
  const QuantityInfo info = quantity_info (q);
  const double middle = y + table->layout.row / 2.0;
  char text[32];

  number_table_put_name (table, cr, t, &info, x + c->name, middle,
                         c->measured - c->figures + 0.6 * t->text - c->name);
  quantity_format (q, was, FALSE, text, sizeof text);
  put (table, cr, plain, reference_colour (view), text, x + c->measured, middle, 1.0);
  quantity_format (q, is, FALSE, text, sizeof text);
  put (table, cr, bold, hand_colour (view), text, x + c->now, middle, 1.0);
  quantity_format_change (q, is, was, text, sizeof text);
  put (table, cr, plain, t->ink, text, x + c->change, middle, 1.0);
  put (table, cr, small, t->soft_ink, quantity_caption (q), x + c->unit, middle, 0.0);
  draw_words (table, cr, t, quantity_sign_words (q, is), x + c->words, middle, c);
}

static void
draw_behind_row (cairo_t *cr,
                 const NumberTableView *view,
                 Quantity q,
                 double x,
                 double y,
                 double width,
                 double row)
{
  const Theme *t = &view->theme;
  const double margin = MARGIN * t->text;

  if ((int) q == view->lit) {
    theme_use (cr, t->glow);
    cairo_rectangle (cr, x - margin / 2.0, y, width, row);
    cairo_fill (cr);
  }
  theme_use (cr, t->faint);
  cairo_rectangle (cr, x, floor (y), width - margin, 1.0);
  cairo_fill (cr);
}

void
number_table_draw (NumberTable *table,
                   cairo_t *cr,
                   const NumberTableView *view,
                   double width,
                   double height)
{
  const Theme *t = &view->theme;
  const TableLayout l = lay_out (table->texts, view, width);
  const Columns c = columns_of (t, l.width);

  (void) height;
  g_return_if_fail (view->n_quantities <= NUMBER_TABLE_MOST_ROWS);

  table->layout = l;
  table->n_rows = view->n_quantities;
  theme_use (cr, t->ground);
  cairo_paint (cr);
  for (unsigned i = 0; i < view->n_quantities; i++) {
    const Quantity q = view->quantities[i];
    const double x = l.left + l.width * (i / l.n_rows);
    const double y = l.head + l.row * (i % l.n_rows);

    table->rows[i] = q;
    draw_behind_row (cr, view, q, x, y, l.width, l.row);
    if (!view->side_by_side)
      draw_row (table, cr, view, q, x, y, &c);
    if (!view->side_by_side && i % l.n_rows == 0)
      draw_head (table, cr, view, x, &c);
  }
  if (view->side_by_side)
    side_by_side_draw (table, cr, view);
  else
    draw_travel (table, cr, view);
}

int
number_table_hit (const NumberTable *table, double x, double y)
{
  const TableLayout l = table->layout;

  if (l.row <= 0.0 || x < 0.0 || y < l.head)
    return -1;

  const unsigned block = (unsigned) (fmax (0.0, x - l.left / 2.0) / l.width);
  const unsigned row = (unsigned) ((y - l.head) / l.row);
  const unsigned i = block * l.n_rows + row;

  return row < l.n_rows && block < l.n_blocks && i < table->n_rows ? (int) table->rows[i]
                                                                   : -1;
}
