/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/springs/springs-panel-table.h"
#include "window/entry/typed-number.h"
#include "window/springs/springs-panel-number.h"

#include <glib/gi18n-lib.h>

#define WIDTH_CHARS 26

typedef struct {
  SpringsEdit *edit;
  const SpringsTableRow *row;
  GtkWidget *name, *unit, *entry;
} Table;

static const char *
example_of (const SpringsTableRow *row)
{
  return unit_choice ()->length == LENGTH_INCH ? row->inch_example : row->example;
}

char *
springs_table_text (const SpringsTableRow *row, const SpringTable *table)
{
  GString *text = g_string_new (NULL);

  for (gsize i = 0; i < table->n; i++) {
    g_autofree char *x = springs_number_text (row->x, table->x[i], FALSE);
    g_autofree char *y = springs_number_text (row->y, table->y[i], FALSE);

    g_string_append_printf (text, "%s%s %s", i > 0 ? "; " : "", x, y);
  }
  return g_string_free (text, FALSE);
}

static char *
refuse_order (const char *name, double before, double x)
{
  g_autofree char *first = typed_number_text (before), *second = typed_number_text (x);

  return g_strdup_printf (_ ("“%s” must rise from pair to pair: %s does not follow %s."),
                          name, second, first);
}

/* As it was stored where it is typed as that was shown. */
static double
stored_number (UnitKind kind, double typed, const double *before, gsize n)
{
  g_autofree char *text = typed_number_text (typed);

  for (gsize i = 0; i < n; i++) {
    g_autofree char *shown = springs_number_text (kind, before[i], FALSE);

    if (g_str_equal (shown, text))
      return before[i];
  }
  return unit_stored (kind, typed);
}

static char *
refuse_numbers (const SpringsTableRow *row, const GArray *numbers)
{
  const char *name = _ (row->name);

  if (numbers == NULL || numbers->len % 2 != 0)
    return g_strdup_printf (_ ("“%s” takes pairs of numbers, as in %s."), name,
                            example_of (row));
  if (numbers->len > 2 * SPRING_TABLE_MOST)
    return g_strdup_printf (_ ("“%s” takes at most %d pairs."), name, SPRING_TABLE_MOST);
  for (guint i = 2; i < numbers->len; i += 2) {
    const double last = g_array_index (numbers, double, i - 2);
    const double x = g_array_index (numbers, double, i);

    if (!(x > last))
      return refuse_order (name, last, x);
  }
  return NULL;
}

char *
springs_table_read (const SpringsTableRow *row,
                    const char *text,
                    const SpringTable *before,
                    SpringTable *table)
{
  g_autoptr (GArray) numbers = typed_numbers_read (text);
  char *refusal = refuse_numbers (row, numbers);

  *table = (SpringTable){ 0 };
  if (refusal != NULL)
    return refusal;
  table->n = numbers->len / 2;
  for (gsize i = 0; i < table->n; i++) {
    const double *pair = &g_array_index (numbers, double, 2 * i);

    table->x[i] = stored_number (row->x, pair[0], before->x, before->n);
    table->y[i] = stored_number (row->y, pair[1], before->y, before->n);
  }
  return NULL;
}

static SpringTable *
table_of (const Table *self, SpringSet *set)
{
  return (SpringTable *) (gpointer) ((char *) set + self->row->offset);
}

/* A coil without its law would be one of wire and coils. */
static char *
refuse_empty (const SpringsTableRow *row)
{
  return g_strdup_printf (_ ("“%s” needs at least two pairs, as in %s."), _ (row->name),
                          example_of (row));
}

static char *
take (const char *text, gpointer data)
{
  Table *self = data;
  const SpringsTableRow *row = self->row;
  SpringSet set = *springs_edit_now (self->edit);
  SpringTable table;
  char *refusal = springs_table_read (row, text, table_of (self, &set), &table);

  if (refusal != NULL)
    return refusal;
  if (table.n < 2 && !(table.n == 0 && row->may_be_empty))
    return refuse_empty (row);
  *table_of (self, &set) = table;
  return springs_edit_store (self->edit, &set, springs_change_label (row->group));
}

static void
show (gpointer part)
{
  Table *self = part;
  SpringSet set = *springs_edit_now (self->edit);
  const gboolean is_asked = self->row->is_asked (&set);
  g_autofree char *text = springs_table_text (self->row, table_of (self, &set));
  /* Translators: the units of pairs of numbers, “mm N; …”. */
  g_autofree char *unit = g_strdup_printf (_ ("%s %s; …"), unit_symbol (self->row->x),
                                           unit_symbol (self->row->y));

  gtk_widget_set_visible (self->name, is_asked);
  gtk_widget_set_visible (self->unit, is_asked);
  gtk_label_set_label (GTK_LABEL (self->unit), unit);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->entry), example_of (self->row));
  springs_entry_show (self->entry, text, is_asked);
}

int
springs_table_add (SpringsEdit *edit, SpringsTableName name, GtkGrid *grid, int at)
{
  const SpringsTableRow *row = &springs_tables[name];
  Table *self = g_new0 (Table, 1);

  self->edit = edit;
  self->row = row;
  self->name = springs_label_new (_ (row->name), NULL);
  self->unit = springs_label_new ("", "dim-label");
  self->entry = sw_committed_entry_new (_ (row->name), take, NULL, self);
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), WIDTH_CHARS);
  gtk_widget_set_tooltip_text (self->name, _ (row->meaning));
  sw_committed_entry_set_meaning (SW_COMMITTED_ENTRY (self->entry), _ (row->meaning));
  springs_edit_watch (edit, row->group, SW_COMMITTED_ENTRY (self->entry));
  gtk_grid_attach (grid, self->name, 0, at, 1, 1);
  gtk_grid_attach (grid, self->unit, 1, at, 2, 1);
  gtk_grid_attach (grid, self->entry, 0, at + 1, 3, 1);
  springs_edit_add_part (edit, show, self);
  return 2;
}
