/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/study/compare-text.h"
#include "model/study/compare.h"
#include "model/study/quantity-info.h"
#include "model/words/number-text.h"
#include "model/words/terminal-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define NUMBER_SIZE 40
#define LENGTH_DECIMALS 1 /* of the rows that are the setup's own, mm */
#define N_HEAD_LINES 2    /* names; which is the baseline */

/* One line of the table: its first column, then for each setup a value and a change. */
typedef struct {
  char *label;
  char **values, **changes; /* n_setups of each */
} Line;

typedef struct {
  guint label;
  guint *values, *changes;
} Widths;

/* Of a setup's own rows. */
static char *
length_text (double value, gboolean is_change)
{
  g_autofree char *number = number_text (value, LENGTH_DECIMALS);

  if (!isfinite (value))
    return g_strdup ("–");
  return g_strconcat (is_change && value >= 0.05 ? "+" : "", number, NULL);
}

static char *
in_parentheses (const char *text)
{
  return g_strdup_printf ("(%s)", text);
}

static Line
new_line (const Study *study, char *label)
{
  return (Line){ label, g_new0 (char *, study->n_setups + 1),
                 g_new0 (char *, study->n_setups + 1) };
}

static Line
length_line (const Study *study,
             char *label,
             double (*length) (const Study *study, guint setup))
{
  Line line = new_line (study, label);

  for (guint s = 0; s < study->n_setups; s++) {
    const double value = length (study, s);
    g_autofree char *change = length_text (value - length (study, study->baseline), TRUE);

    line.values[s] = length_text (value, FALSE);
    line.changes[s] = s == study->baseline ? g_strdup ("") : in_parentheses (change);
  }
  return line;
}

static double
lowering_of (const Study *study, guint setup)
{
  return study->setups[setup].lowering;
}

/* "Camber, °" */
static char *
row_label (Quantity quantity)
{
  const char *name = quantity_info (quantity).name;
  const char *unit = quantity_caption (quantity);

  return unit[0] != '\0' ? g_strdup_printf ("%s, %s", name, unit) : g_strdup (name);
}

static double
kernel_value (const Study *study, guint setup, Quantity quantity)
{
  return study->setups[setup].at_height.measures.value[quantity];
}

static Line
quantity_line (const Study *study, Quantity quantity)
{
  Line line = new_line (study, row_label (quantity));

  for (guint s = 0; s < study->n_setups; s++) {
    const double value = kernel_value (study, s, quantity);
    char number[NUMBER_SIZE], change[NUMBER_SIZE];

    quantity_format (quantity, value, FALSE, number, sizeof number);
    quantity_format_change (quantity, value,
                            kernel_value (study, study->baseline, quantity), change,
                            sizeof change);
    line.values[s] = g_strdup (number);
    line.changes[s] = s == study->baseline ? g_strdup ("") : in_parentheses (change);
  }
  return line;
}

/* Of Line. */
static GArray *
list_lines (const Study *study)
{
  GArray *lines = g_array_new (FALSE, FALSE, sizeof (Line));
  guint n_rows;
  const Quantity *quantities = compare_rows (&n_rows);
  Line line = length_line (study, g_strdup (_ ("Lowering, mm")), lowering_of);

  g_array_append_val (lines, line);
  line =
      length_line (study, g_strdup (_ ("Tie rod longer by, mm")), compare_tie_rod_change);
  g_array_append_val (lines, line);
  for (guint i = 0; i < n_rows; i++) {
    line = quantity_line (study, quantities[i]);
    g_array_append_val (lines, line);
  }
  return lines;
}

static void
free_lines (GArray *lines)
{
  for (guint i = 0; i < lines->len; i++) {
    Line *line = &g_array_index (lines, Line, i);

    g_free (line->label);
    g_strfreev (line->values);
    g_strfreev (line->changes);
  }
  g_array_unref (lines);
}

/* Indexed by line of the head and setup. */
static char **
head_line (const Study *study, int line)
{
  char **head = g_new0 (char *, study->n_setups + 1);

  for (guint s = 0; s < study->n_setups; s++)
    head[s] = line == 0              ? terminal_line (study->setups[s].title)
              : s == study->baseline ? g_strdup (_ ("baseline"))
                                     : g_strdup (_ ("(change)"));
  return head;
}

static void
widen (guint *width, const char *text)
{
  *width = MAX (*width, text_columns (text));
}

/* The column of values grows where a setup's name is wider than its numbers. */
static Widths
measure_columns (const Study *study, const GArray *lines, char **head[N_HEAD_LINES])
{
  Widths widths = { 0, g_new0 (guint, study->n_setups), g_new0 (guint, study->n_setups) };

  for (guint i = 0; i < lines->len; i++)
    widen (&widths.label, g_array_index (lines, Line, i).label);
  for (guint s = 0; s < study->n_setups; s++) {
    guint title = 0;

    for (guint i = 0; i < lines->len; i++) {
      widen (&widths.values[s], g_array_index (lines, Line, i).values[s]);
      widen (&widths.changes[s], g_array_index (lines, Line, i).changes[s]);
    }
    for (int i = 0; i < N_HEAD_LINES; i++)
      widen (&title, head[i][s]);
    const guint numbers =
        widths.values[s] + (widths.changes[s] > 0 ? 1 + widths.changes[s] : 0);
    if (title > numbers)
      widths.values[s] += title - numbers;
  }
  return widths;
}

static void
write_head (const Study *study, char **head, const Widths *widths, GString *text)
{
  g_string_append_printf (text, "%*s", (int) widths->label, "");
  for (guint s = 0; s < study->n_setups; s++) {
    const guint changes = widths->changes[s] > 0 ? 1 + widths->changes[s] : 0;

    g_string_append (text, "  ");
    terminal_pad (text, head[s], widths->values[s] + changes, TERMINAL_RIGHT);
  }
  g_string_append_c (text, '\n');
}

static void
write_line (const Study *study, const Line *line, const Widths *widths, GString *text)
{
  terminal_pad (text, line->label, widths->label, TERMINAL_LEFT);
  for (guint s = 0; s < study->n_setups; s++) {
    g_string_append (text, "  ");
    terminal_pad (text, line->values[s], widths->values[s], TERMINAL_RIGHT);
    if (widths->changes[s] > 0) {
      g_string_append_c (text, ' ');
      terminal_pad (text, line->changes[s], widths->changes[s], TERMINAL_RIGHT);
    }
  }
  g_string_append_c (text, '\n');
}

void
compare_write_text (const Study *study, GString *text)
{
  GArray *lines = list_lines (study);
  char **head[N_HEAD_LINES] = { head_line (study, 0), head_line (study, 1) };
  const Widths widths = measure_columns (study, lines, head);

  for (int i = 0; i < N_HEAD_LINES; i++) {
    write_head (study, head[i], &widths, text);
    g_strfreev (head[i]);
  }
  for (guint i = 0; i < lines->len; i++)
    write_line (study, &g_array_index (lines, Line, i), &widths, text);
  g_free (widths.values);
  g_free (widths.changes);
  free_lines (lines);
}
