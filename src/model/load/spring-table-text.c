/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/load/spring-table-text.h"
#include "model/load/spring-verdict.h"
#include "model/spring/spring-caution.h"
#include "model/spring/spring-figure.h"
#include "model/words/number-text.h"
#include "model/words/terminal-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define WIDTH 100 /* columns that sentences are wrapped to */
#define MOST_COLUMNS (3 + N_SPRING_ELEMENTS)

static char *
rounded (double value, int decimals)
{
  return isfinite (value) ? number_text (value, decimals) : g_strdup ("–");
}

static gboolean
is_in_it (const SpringCorner *corner, SpringElement element)
{
  for (gsize i = 0; i < STUDY_STATIONS; i++) {
    const double load = corner->stations[i].element_load[element];

    if (isfinite (load) && load != 0.0)
      return TRUE;
  }
  return FALSE;
}

/* What stands in the columns behind travel, load and rate; returns how many. */
static guint
list_elements (const SpringCorner *corner, SpringElement *elements)
{
  guint n = 0;

  for (SpringElement i = 0; i < N_SPRING_ELEMENTS; i++)
    if (is_in_it (corner, i))
      elements[n++] = i;
  return n;
}

static char **
head_cells (const SpringElement *elements, guint n)
{
  char **cells = g_new0 (char *, MOST_COLUMNS + 1);

  cells[0] = g_strdup (_ ("Travel, mm"));
  cells[1] = g_strdup (_ ("Wheel load, N"));
  cells[2] = g_strdup (_ ("Rate, N/mm"));
  for (guint i = 0; i < n; i++)
    cells[3 + i] = g_strdup (spring_element_name (elements[i]));
  return cells;
}

static char **
row_cells (double travel,
           const SpringStation *station,
           const SpringElement *elements,
           guint n)
{
  char **cells = g_new0 (char *, MOST_COLUMNS + 1);

  cells[0] = rounded (travel, 1);
  cells[1] = rounded (station->load, 0);
  cells[2] = rounded (station->rate, 2);
  for (guint i = 0; i < n; i++)
    cells[3 + i] = rounded (station->element_load[elements[i]], 0);
  return cells;
}

static void
write_row (char **cells, const guint *widths, GString *text)
{
  for (guint c = 0; cells[c] != NULL; c++) {
    if (c > 0)
      g_string_append (text, "  ");
    terminal_pad (text, cells[c], widths[c], TERMINAL_RIGHT);
  }
  g_string_append_c (text, '\n');
}

static void
write_rows (
    const SpringStudy *study, guint setup, TravelSteps steps, gsize n_rows, GString *text)
{
  g_autoptr (GPtrArray) rows =
                 g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);
  SpringElement elements[N_SPRING_ELEMENTS];
  const guint n = list_elements (&study->setups[setup], elements);
  guint widths[MOST_COLUMNS] = { 0 };

  g_ptr_array_add (rows, head_cells (elements, n));
  for (gsize i = 0; i < n_rows; i++) {
    const double travel = travel_steps_at (steps, i);
    SpringStation station;

    spring_table_row (study, setup, travel, &station);
    g_ptr_array_add (rows, row_cells (travel, &station, elements, n));
  }
  for (guint i = 0; i < rows->len; i++)
    for (guint c = 0; c < 3 + n; c++)
      widths[c] = MAX (widths[c], text_columns (((char **) rows->pdata[i])[c]));
  for (guint i = 0; i < rows->len; i++)
    write_row (rows->pdata[i], widths, text);
}

static void
write_figures (const SpringCorner *corner, GString *text)
{
  guint width = 0;

  for (guint i = 0; i < spring_figures_count (); i++)
    width = MAX (width, text_columns (spring_figure (corner, i).name));
  for (guint i = 0; i < spring_figures_count (); i++) {
    const SpringFigure figure = spring_figure (corner, i);
    g_autofree char *value = rounded (figure.value, figure.decimals);

    terminal_pad (text, figure.name, width, TERMINAL_LEFT);
    g_string_append_printf (text, "  %s%s%s\n", value, figure.unit[0] != '\0' ? " " : "",
                            figure.unit);
  }
}

static void
write_events (const SpringCorner *corner, GString *text)
{
  for (gsize i = 0; i < corner->n_events; i++) {
    const SpringEvent *event = &corner->events[i];
    g_autofree char *travel = rounded (event->travel, 1);
    g_autofree char *load = rounded (event->load, 0);

    if (!event->is_reached)
      continue;
    g_string_append_printf (text, _ ("at %s mm, %s N: %s\n"), travel, load,
                            spring_event_name (event->kind));
  }
}

static void
write_verdicts (const SpringStudy *study, guint setup, GString *text)
{
  g_autoptr (GPtrArray) verdicts = spring_verdicts (study, setup);

  for (guint i = 0; i < verdicts->len; i++) {
    const SpringVerdict *verdict = verdicts->pdata[i];

    terminal_paragraph (text, verdict->marked, 0, WIDTH);
    terminal_paragraph (text, verdict->rule, 2, WIDTH);
  }
}

void
spring_table_write_text (
    const SpringStudy *study, guint setup, TravelSteps steps, gsize n_rows, GString *text)
{
  g_autofree char *name = terminal_line (car_setup (study->car, setup)->name);
  g_autofree char *weight = rounded (study->corner_weight, 0);

  g_string_append_printf (text, _ ("%s; corner weight %s N\n\n"), name, weight);
  write_figures (&study->setups[setup], text);
  g_string_append_c (text, '\n');
  write_events (&study->setups[setup], text);
  g_string_append_c (text, '\n');
  write_rows (study, setup, steps, n_rows, text);
  g_string_append_c (text, '\n');
  write_verdicts (study, setup, text);
  terminal_paragraph (text, spring_caution (), 0, WIDTH);
}
