/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The setups in columns, each where it stands, with its change to the baseline. The
 * baseline stands first, and again where more columns than fit go on below or overleaf.
 * Setups that differ in springs alone share a column. */

#include "drawing/board/standing-words.h"
#include "drawing/card/fitting-card-facts.h"
#include "drawing/chart/title-block.h"
#include "drawing/report/report-parts.h"
#include "model/spring/spring-size.h"
#include "model/study/compare.h"
#include "model/study/quantity-info.h"
#include "model/study/setup-title.h"
#include "model/words/unit.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* Points. */
#define NAME_WIDTH 134.0
#define UNIT_WIDTH 30.0
#define LEAST_COLUMN 84.0
#define MOST_COLUMN 132.0
#define COLUMN_GAP 9.0
#define SAMPLE 26.0
#define ROW_AIR 3.0
#define VALUE_SHARE 0.55 /* of a column, up to the value's right edge */
#define MOST_NAME_LINES 4

#define LENGTH_DECIMALS 1 /* of the rows that are the setup's own, mm */

typedef struct {
  const char *name, *unit;
  int quantity; /* or -1: a length of the setup itself */
  double (*length) (const Study *study, guint setup);
} Row;

typedef struct {
  ReportFlow *flow;
  GArray *rows;                     /* of Row */
  const guint *others;              /* beside the baseline; the first of each column */
  guint n;                          /* columns, the baseline's among them */
  double name, unit, first, column; /* from the left edge; widths of the last */
} Table;

static double
lowering_of (const Study *study, guint setup)
{
  return study->setups[setup].lowering;
}

static GArray *
list_rows (void)
{
  const Row own[] = {
    { _ ("Lowering"), unit_symbol (UNIT_LENGTH), -1, lowering_of },
    { _ ("Tie rod longer by"), unit_symbol (UNIT_LENGTH), -1, compare_tie_rod_change },
  };
  GArray *rows = g_array_new (FALSE, FALSE, sizeof (Row));
  guint n;
  const Quantity *quantities = compare_rows (&n);

  g_array_append_vals (rows, own, G_N_ELEMENTS (own));
  for (guint i = 0; i < n; i++) {
    const QuantityInfo info = quantity_info (quantities[i]);
    const Row row = { info.name, quantity_caption (quantities[i]), (int) quantities[i],
                      NULL };

    g_array_append_val (rows, row);
  }
  return rows;
}

static guint
setup_of (const Table *t, guint column)
{
  return column == 0 ? t->flow->study->baseline : t->others[column - 1];
}

static double
row_value (const Study *study, const Row *row, guint setup)
{
  return row->quantity < 0 ? row->length (study, setup)
                           : study->setups[setup].at_height.measures.value[row->quantity];
}

/* To the bit, in every row. */
static bool
are_alike (const Study *study, const GArray *rows, guint a, guint b)
{
  for (guint i = 0; a != b && i < rows->len; i++) {
    const Row *row = &g_array_index (rows, Row, i);

    if (row_value (study, row, a) != row_value (study, row, b))
      return false;
  }
  return true;
}

static bool
is_in_column (const Table *t, guint column, guint setup)
{
  const Study *study = t->flow->study;

  return study->setups[setup].is_shown &&
         are_alike (study, t->rows, setup_of (t, column), setup);
}

/* Whether the setup in hand is one of the column's. */
static bool
has_hand (const Table *t, guint column)
{
  return is_in_column (t, column, t->flow->study->in_hand);
}

static double
column_left (const Table *t, guint column)
{
  return t->flow->x + t->first + column * t->column + COLUMN_GAP;
}

/* Of its text. */
static double
column_width (const Table *t)
{
  return t->column - COLUMN_GAP;
}

/* All of the name, or its first lines with "…": all of it stands in the list below. */
static char *
head_name (const Table *t, guint setup)
{
  const ReportFlow *flow = t->flow;
  const char *name = flow->study->setups[setup].title;
  const double high =
      (MOST_NAME_LINES + 0.5) *
      text_measure (flow->pen.texts, fitting_style (&flow->pen, FITTING_TEXT_BOLD), "W")
          .height;
  gsize n = report_flow_prefix (flow, FITTING_TEXT_BOLD, name, column_width (t), high);

  if (n == strlen (name))
    return g_strdup (name);
  /* room for the mark of what was left out */
  for (int i = 0; i < 2 && n > 1; i++)
    n = (gsize) (g_utf8_prev_char (name + n) - name);
  return g_strdup_printf ("%.*s…", (int) n, name);
}

/* Line sample and name at @y, where the pen has a context; returns where they end. */
static double
column_name (const Table *t, guint column, guint setup, double y)
{
  const FittingPen *pen = &t->flow->pen;
  const double x = column_left (t, column), sample = pen->theme.text;
  g_autofree char *name = head_name (t, setup);

  if (pen->cr != NULL)
    theme_draw_sample (pen->cr, &pen->theme, setup, setup == t->flow->study->in_hand, x,
                       y + sample / 2.0, SAMPLE);
  fitting_ink (pen, pen->theme.ink);
  y += sample;
  return y + fitting_paragraph (pen, FITTING_TEXT_BOLD, name, x, y, column_width (t));
}

static double
column_note (const Table *t, guint column, const char *note, double y)
{
  const FittingPen *pen = &t->flow->pen;

  fitting_ink (pen, pen->theme.soft_ink);
  return y + fitting_paragraph (pen, FITTING_SMALL, note, column_left (t, column), y,
                                column_width (t));
}

/* Draws from the top of the head where the pen has a context; returns the height. What
 * stands below the first name holds for it alone where that is the baseline. */
static double
column_head (const Table *t, guint column)
{
  const ReportFlow *flow = t->flow;
  const guint first = setup_of (t, column);
  const bool is_base = first == flow->study->baseline;
  char standing[80];
  guint n = 1;

  standing_words (flow->study, first, standing, sizeof standing);
  double y = column_name (t, column, first, flow->y);
  if (is_base)
    y = column_note (t, column, standing, y);
  for (guint i = 0; i < flow->study->n_setups; i++)
    if (i != first && is_in_column (t, column, i)) {
      y = column_name (t, column, i, y + ROW_AIR);
      n++;
    }
  if (!is_base)
    y = column_note (t, column, standing, y);
  if (n > 1)
    y = column_note (t, column, _ ("all of the same geometry"), y);
  return y - flow->y;
}

static double
head_height (const Table *t)
{
  Table measured = *t;
  ReportFlow flow = *t->flow;
  double height = 0.0;

  flow.pen.cr = NULL;
  measured.flow = &flow;
  for (guint i = 0; i < t->n; i++)
    height = fmax (height, column_head (&measured, i));
  return height + ROW_AIR;
}

static void
write_head (const Table *t)
{
  ReportFlow *flow = t->flow;
  const double height = head_height (t);

  for (guint i = 0; i < t->n; i++)
    column_head (t, i);
  fitting_ink (&flow->pen, flow->pen.theme.soft_ink);
  fitting_paragraph (&flow->pen, FITTING_SMALL,
                     _ ("Each where it stands; beside it the change from the baseline."),
                     flow->x, flow->y, t->name + t->unit - COLUMN_GAP);
  report_flow_skip (flow, height);
  fitting_ink (&flow->pen, flow->pen.theme.ink);
  fitting_rule (&flow->pen, flow->x, flow->y, t->first + t->n * t->column,
                flow->pen.theme.thin);
}

static double
row_height (const Table *t, const Row *row)
{
  const FittingPen *pen = &t->flow->pen;

  return text_measure_wrapped (pen->texts, fitting_style (pen, FITTING_TEXT), row->name,
                               t->name - COLUMN_GAP)
             .height +
         ROW_AIR;
}

static void
length_text (double value, bool with_sign, char *text, gsize size)
{
  unit_format (UNIT_LENGTH, value, LENGTH_DECIMALS, with_sign, text, size);
}

static void
row_text (const Row *row, double value, bool with_sign, char *text, gsize size)
{
  if (row->quantity < 0)
    length_text (value, with_sign, text, size);
  else
    quantity_format ((Quantity) row->quantity, value, with_sign, text, size);
}

static void
write_cell (const Table *t, const Row *row, guint column, double y)
{
  const FittingPen *pen = &t->flow->pen;
  const guint setup = setup_of (t, column);
  const Study *study = t->flow->study;
  const double value = row_value (study, row, setup);
  const double change = value - row_value (study, row, study->baseline);
  const double wide = column_width (t), split = VALUE_SHARE * wide;
  char text[40];

  row_text (row, value, false, text, sizeof text);
  fitting_ink (pen, pen->theme.ink);
  fitting_write (pen, has_hand (t, column) ? FITTING_TEXT_BOLD : FITTING_TEXT, text,
                 column_left (t, column), y, split, FITTING_RIGHT);
  if (column == 0 || !isfinite (change))
    return;
  row_text (row, change, true, text, sizeof text);
  fitting_ink (pen, pen->theme.soft_ink);
  fitting_write (pen, FITTING_SMALL, text, column_left (t, column) + split + 3.0, y,
                 wide - split - 3.0, FITTING_RIGHT);
}

static void
write_row (const Table *t, const Row *row)
{
  ReportFlow *flow = t->flow;
  const FittingPen *pen = &flow->pen;
  const double top = flow->y + ROW_AIR / 2.0;
  const double baseline =
      top +
      text_measure (pen->texts, fitting_style (pen, FITTING_TEXT), row->name).baseline;

  fitting_ink (pen, pen->theme.ink);
  fitting_paragraph (pen, FITTING_TEXT, row->name, flow->x, top, t->name - COLUMN_GAP);
  fitting_ink (pen, pen->theme.soft_ink);
  fitting_write (pen, FITTING_SMALL, row->unit, flow->x + t->name, baseline,
                 t->unit - 2.0, FITTING_LEFT);
  for (guint i = 0; i < t->n; i++)
    write_cell (t, row, i, baseline);
  report_flow_skip (flow, row_height (t, row));
  fitting_ink (pen, pen->theme.faint);
  fitting_rule (pen, flow->x, flow->y, t->first + t->n * t->column,
                0.7 * pen->theme.thin);
}

static double
table_height (const Table *t)
{
  double height = head_height (t);

  for (guint i = 0; i < t->rows->len; i++)
    height += row_height (t, &g_array_index (t->rows, Row, i));
  return height;
}

static void
write_table (const Table *t)
{
  ReportFlow *flow = t->flow;

  if (!report_flow_is_fresh (flow) && !report_flow_has_room (flow, table_height (t)))
    report_flow_continue (flow);
  write_head (t);
  for (guint i = 0; i < t->rows->len; i++) {
    const Row *row = &g_array_index (t->rows, Row, i);

    if (!report_flow_has_room (flow, row_height (t, row))) {
      report_flow_continue (flow);
      write_head (t);
    }
    write_row (t, row);
  }
  report_flow_skip (flow, 2.0 * REPORT_GAP);
}

/* Of guint: those shown, without the baseline. */
static GArray *
list_others (const Study *study)
{
  GArray *others = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; i < study->n_setups; i++)
    if (study->setups[i].is_shown && i != study->baseline)
      g_array_append_val (others, i);
  return others;
}

/* Those of @others that need a column of their own. */
static GArray *
list_columns (const Study *study, const GArray *rows, const GArray *others)
{
  GArray *columns = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; i < others->len; i++) {
    const guint setup = g_array_index (others, guint, i);
    bool has_column = are_alike (study, rows, study->baseline, setup);

    for (guint c = 0; c < columns->len && !has_column; c++)
      has_column = are_alike (study, rows, g_array_index (columns, guint, c), setup);
    if (!has_column)
      g_array_append_val (columns, setup);
  }
  return columns;
}

static void
write_tables (ReportFlow *flow, const GArray *shown)
{
  g_autoptr (GArray) rows = list_rows ();
  g_autoptr (GArray) others = list_columns (flow->study, rows, shown);
  const double room = flow->width - NAME_WIDTH - UNIT_WIDTH;
  const guint most = (guint) fmax (floor (room / LEAST_COLUMN), 2.0) - 1;
  /* as many in each of them as can be */
  const guint n_tables = MAX ((others->len + most - 1) / most, 1);
  const guint each = (others->len + n_tables - 1) / n_tables;

  for (guint at = 0; at == 0 || at < others->len; at += MAX (each, 1)) {
    const guint n = MIN (each, others->len - at) + 1;
    const Table table = { .flow = flow,
                          .rows = rows,
                          .others = (const guint *) (gconstpointer) others->data + at,
                          .n = n,
                          .name = NAME_WIDTH,
                          .unit = UNIT_WIDTH,
                          .first = NAME_WIDTH + UNIT_WIDTH,
                          .column = fmin (room / (each + 1), MOST_COLUMN) };

    write_table (&table);
  }
}

static char *
setting_words (const Car *car, guint index)
{
  const CarSetup *setup = car_setup (car, index);
  const char *springs = spring_kind_words (car_setup_springs (car, index));
  const TitleBlock left = title_block_for (car, setup, NULL);
  g_autofree char *adjustment = title_block_adjustment (&left);
  g_autofree char *corrections = fitting_corrections_words (setup);
  g_autoptr (GString) words = g_string_new (adjustment);

  if (setup->plate != NULL) {
    g_autofree char *plate = g_strdup_printf (_ ("Plate: %s"), setup->plate);

    g_string_append_printf (words, " · %s", plate);
  }
  if (setup->corrections.camber_bolt_deg != 0.0) {
    g_autofree char *bolt =
        fitting_bolt_angle_words (setup->corrections.camber_bolt_deg * G_PI / 180.0);

    g_string_append_printf (words, " · %s", bolt);
  }
  if (corrections[0] != '\0')
    g_string_append_printf (words, " · %s", corrections);
  if (springs != NULL)
    g_string_append_printf (words, " · %s", springs);
  return g_strdup (words->str);
}

static char *
right_words (const Car *car, const CarSetup *setup)
{
  TitleBlock right = title_block_for (car, setup, NULL);

  right.mount = setup->right.mount;
  g_autofree char *adjustment = title_block_adjustment (&right);
  g_autofree char *bolt =
      fitting_bolt_angle_words (setup->right.camber_bolt_deg * G_PI / 180.0);
  g_autofree char *words = g_strdup_printf ("%s · %s", adjustment, bolt);

  return g_strdup_printf (_ ("Right side: %s"), words);
}

static void
write_setting (ReportFlow *flow, guint index)
{
  const Car *car = flow->report->car;
  const CarSetup *setup = car_setup (car, index);
  const FittingPen *pen = &flow->pen;
  const double line = report_flow_line (flow, FITTING_TEXT), indent = SAMPLE + 8.0;
  g_autofree char *words = setting_words (car, index);

  if (!report_flow_has_room (flow, 2.5 * line))
    report_flow_continue (flow);
  if (pen->cr != NULL)
    theme_draw_sample (pen->cr, &pen->theme, index, index == flow->study->in_hand,
                       flow->x, flow->y + 0.5 * line, SAMPLE);
  report_flow_text (flow, FITTING_TEXT_BOLD, pen->theme.ink, indent, setup_title (setup));
  report_flow_text (flow, FITTING_TEXT, pen->theme.ink, indent, words);
  if (setup->right.is_own) {
    g_autofree char *right = right_words (car, setup);

    report_flow_text (flow, FITTING_TEXT, pen->theme.ink, indent, right);
  }
  report_flow_skip (flow, 0.6 * REPORT_GAP);
}

void
report_write_setups (ReportFlow *flow)
{
  g_autoptr (GArray) others = list_others (flow->study);

  report_flow_skip (flow, 0.5 * REPORT_GAP);
  write_tables (flow, others);
  report_flow_title (flow, _ ("How each is set"),
                     3.0 * report_flow_line (flow, FITTING_TEXT));
  write_setting (flow, flow->study->baseline);
  for (guint i = 0; i < others->len; i++)
    write_setting (flow, g_array_index (others, guint, i));
}
