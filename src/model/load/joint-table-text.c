/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/load/joint-table-text.h"
#include "model/spring/spring-caution.h"
#include "model/words/number-text.h"
#include "model/words/terminal-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define FORCE_DECIMALS 1
#define WIDTH 100   /* columns that sentences are wrapped to */
#define N_COLUMNS 6 /* name, size, x, y, z, meaning */

typedef struct {
  char *cell[N_COLUMNS];
} Line;

static char *
figure_text (double value, int decimals)
{
  return isfinite (value) ? number_text (value, decimals) : g_strdup ("–");
}

/* Forces and moments to a tenth, what is finer as fine as it means something. */
static int
decimals_of (const JointRow *row)
{
  return MAX (row->decimals, FORCE_DECIMALS);
}

static Line
head_line (void)
{
  return (Line){ { g_strdup (""), g_strdup (_ ("size")), g_strdup ("x"), g_strdup ("y"),
                   g_strdup ("z"), g_strdup ("") } };
}

/* As screens do: beside rates in N·m per degree. */
static JointRow
in_newton_metres (const JointRow *row)
{
  JointRow out = *row;

  if (!g_str_equal (row->unit, "N·mm"))
    return out;
  out.unit = "N·m";
  out.value = row->value / 1000.0;
  out.parts = vec3_scale (row->parts, 0.001);
  return out;
}

static Line
line_of_row (const JointRow *given)
{
  const JointRow in_metres = in_newton_metres (given), *row = &in_metres;

  return (Line){
    { g_strdup_printf ("%s, %s", row->name, row->unit),
      figure_text (row->value, decimals_of (row)),
      row->is_vector ? figure_text (row->parts.x, FORCE_DECIMALS) : g_strdup (""),
      row->is_vector ? figure_text (row->parts.y, FORCE_DECIMALS) : g_strdup (""),
      row->is_vector ? figure_text (row->parts.z, FORCE_DECIMALS) : g_strdup (""),
      g_strdup (row->meaning) }
  };
}

static void
write_line (const Line *line, const guint *widths, GString *text)
{
  for (guint c = 0; c + 1 < N_COLUMNS; c++) {
    terminal_pad (text, line->cell[c], widths[c],
                  c == 0 ? TERMINAL_LEFT : TERMINAL_RIGHT);
    g_string_append (text, "  ");
  }
  g_string_append (text, line->cell[N_COLUMNS - 1]);
  while (text->len > 0 && text->str[text->len - 1] == ' ')
    g_string_truncate (text, text->len - 1);
  g_string_append_c (text, '\n');
}

static void
write_lines (const JointTable *table, GString *text)
{
  const guint n_rows = joint_table_rows (table);
  g_autofree Line *lines = g_new (Line, n_rows + 1);
  guint widths[N_COLUMNS] = { 0 }, n = 1;

  lines[0] = head_line ();
  for (guint i = 0; i < n_rows; i++) {
    const JointRow row = joint_table_row (table, i);

    if (!joint_row_is_idle (&row))
      lines[n++] = line_of_row (&row);
  }
  for (guint i = 0; i < n; i++)
    for (guint c = 0; c < N_COLUMNS; c++)
      widths[c] = MAX (widths[c], text_columns (lines[i].cell[c]));
  for (guint i = 0; i < n; i++) {
    write_line (&lines[i], widths, text);
    for (guint c = 0; c < N_COLUMNS; c++)
      g_free (lines[i].cell[c]);
  }
}

static const char *
mode_name (SpringMode mode)
{
  return mode == SPRING_COIL_ONLY  ? _ ("a coil on the strut carries all")
         : mode == SPRING_BAR_ONLY ? _ ("the torsion bar carries all")
                                   : _ ("springs as set");
}

static void
write_head (const JointTable *table, GString *text)
{
  g_autofree char *setup =
      terminal_line (car_setup (table->study->car, table->setup)->name);
  g_autofree char *travel = figure_text (table->loads->travel, FORCE_DECIMALS);
  g_autofree char *load =
      table->load_case != NULL
          ? terminal_line (car_load_case_title (table->load_case->name))
          : g_strdup (_ ("a force by itself"));

  g_string_append_printf (text, _ ("%s: %s; %s; wheel travel %s mm\n"), setup, load,
                          mode_name (table->mode), travel);
  if (table->loads->is_lifted)
    terminal_paragraph (
        text, _ ("The wheel would leave the road: it is taken to carry nothing."), 0,
        WIDTH);
  else if (table->loads->load.contact.z < 0.0)
    terminal_paragraph (text,
                        _ ("The wheel load is negative: the road would have to pull the "
                           "wheel down, and it would lift instead."),
                        0, WIDTH);
  g_string_append_c (text, '\n');
}

void
joint_table_write_text (const JointTable *table, GString *text)
{
  g_autofree char *sentence =
      joint_loads_sentence (table->study, table->setup, table->load_case);

  write_head (table, text);
  write_lines (table, text);
  g_string_append_c (text, '\n');
  if (sentence != NULL)
    terminal_paragraph (text, sentence, 0, WIDTH);
  terminal_paragraph (text, spring_caution (), 0, WIDTH);
}
