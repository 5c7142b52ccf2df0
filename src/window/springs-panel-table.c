/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/springs-panel-table.h"
#include "window/springs-panel-number.h"
#include "window/typed-number.h"

#include <glib/gi18n-lib.h>

#define WIDTH_CHARS 26

typedef struct {
  SpringsEdit *edit;
  const SpringsTableRow *row;
  GtkWidget *name, *unit, *entry;
} Table;

char *
springs_table_text (const SpringTable *table)
{
  GString *text = g_string_new (NULL);

  for (gsize i = 0; i < table->n; i++) {
    g_autofree char *x = typed_number_text (table->x[i]);
    g_autofree char *y = typed_number_text (table->y[i]);

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

char *
springs_table_read (const char *text,
                    const char *name,
                    const char *example,
                    SpringTable *table)
{
  g_autoptr (GArray) numbers = typed_numbers_read (text);

  *table = (SpringTable){ 0 };
  if (numbers == NULL || numbers->len % 2 != 0)
    return g_strdup_printf (_ ("“%s” takes pairs of numbers, as in %s."), name, example);
  if (numbers->len > 2 * SPRING_TABLE_MOST)
    return g_strdup_printf (_ ("“%s” takes at most %d pairs."), name, SPRING_TABLE_MOST);
  for (gsize i = 0; i < numbers->len / 2; i++) {
    table->x[i] = g_array_index (numbers, double, 2 * i);
    table->y[i] = g_array_index (numbers, double, 2 * i + 1);
    if (i > 0 && !(table->x[i] > table->x[i - 1]))
      return refuse_order (name, table->x[i - 1], table->x[i]);
  }
  table->n = numbers->len / 2;
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
                          row->example);
}

static char *
take (const char *text, gpointer data)
{
  Table *self = data;
  const SpringsTableRow *row = self->row;
  SpringSet set = *springs_edit_now (self->edit);
  SpringTable table;
  char *refusal = springs_table_read (text, _ (row->name), row->example, &table);

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
  g_autofree char *text = springs_table_text (table_of (self, &set));

  gtk_widget_set_visible (self->name, is_asked);
  gtk_widget_set_visible (self->unit, is_asked);
  gtk_widget_set_visible (self->entry, is_asked);
  sw_committed_entry_show (SW_COMMITTED_ENTRY (self->entry), text);
}

int
springs_table_add (SpringsEdit *edit, SpringsTableName name, GtkGrid *grid, int at)
{
  const SpringsTableRow *row = &springs_tables[name];
  Table *self = g_new0 (Table, 1);

  self->edit = edit;
  self->row = row;
  self->name = springs_label_new (_ (row->name), NULL);
  self->unit = springs_label_new (_ (row->unit), "dim-label");
  self->entry = sw_committed_entry_new (_ (row->name), take, NULL, self);
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), WIDTH_CHARS);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->entry), row->example);
  gtk_widget_set_tooltip_text (self->name, _ (row->meaning));
  sw_committed_entry_set_meaning (SW_COMMITTED_ENTRY (self->entry), _ (row->meaning));
  springs_edit_watch (edit, row->group, SW_COMMITTED_ENTRY (self->entry));
  gtk_grid_attach (grid, self->name, 0, at, 1, 1);
  gtk_grid_attach (grid, self->unit, 1, at, 2, 1);
  gtk_grid_attach (grid, self->entry, 0, at + 1, 3, 1);
  springs_edit_add_part (edit, show, self);
  return 2;
}
