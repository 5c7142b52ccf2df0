/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/springs/springs-panel-sections.h"
#include "window/springs/springs-panel-number.h"

#include <glib/gi18n-lib.h>

#define WIDTH_CHARS 6
#define N_SIZES 3 /* outer, bore, length */

/* Rows are made once: their entries keep what is typed in them while others change. */
typedef struct Sections Sections;
typedef struct {
  Sections *list;
  guint index;
  gsize size; /* of those of a section */
} Cell;

struct Sections {
  SpringsEdit *edit;
  GtkWidget *box, *add, *heads[N_SIZES];
  Cell cells[BAR_SECTIONS_MOST][N_SIZES];
  GtkWidget *entries[BAR_SECTIONS_MOST][N_SIZES], *removes[BAR_SECTIONS_MOST];
};

static const struct {
  const char *head, *name, *meaning; /* to be translated; %s is the unit of lengths */
  double step;
} sizes[N_SIZES] = {
  { N_ ("Outer, %s"), N_ ("Section %u, outer"), N_ ("Outside diameter of this length"),
    0.5 },
  { N_ ("Bore, %s"), N_ ("Section %u, bore"), N_ ("Inside diameter of a hollow length"),
    0.5 },
  { N_ ("Length, %s"), N_ ("Section %u, length"), N_ ("Of this size, as it twists"),
    5.0 },
};

static double *
number_at (CarTorsionBar *bar, guint index, gsize size)
{
  double *const numbers[] = { &bar->sections[index].outer_mm,
                              &bar->sections[index].inner_mm,
                              &bar->sections[index].length_mm };

  return numbers[size];
}

static gboolean
is_bore (const Cell *cell)
{
  return cell->size == 1;
}

static char *
store (const Cell *cell, double value)
{
  SpringSet set = *springs_edit_now (cell->list->edit);

  *number_at (&set.springs.bar, cell->index, cell->size) = value + 0.0;
  return springs_edit_store (cell->list->edit, &set, springs_change_label (SPRINGS_BAR));
}

static char *
take (const char *text, gpointer data)
{
  const Cell *cell = data;
  g_autofree char *name = g_strdup_printf (_ (sizes[cell->size].name), cell->index + 1);
  double value;
  char *refusal = springs_read_number (text, name, UNIT_LENGTH, is_bore (cell), &value);

  return refusal != NULL ? refusal : store (cell, value);
}

static void
step (int steps, gpointer data)
{
  const Cell *cell = data;
  SpringSet set = *springs_edit_now (cell->list->edit);
  const double now = *number_at (&set.springs.bar, cell->index, cell->size);
  const double by = unit_round_step (UNIT_LENGTH, sizes[cell->size].step);
  const double wanted = MAX (now + steps * by, 0.0);
  g_autofree char *refusal = store (cell, wanted);

  springs_edit_refuse (cell->list->edit, cell->list->entries[cell->index][cell->size],
                       refusal);
}

static void
show_heads (Sections *self)
{
  for (gsize size = 0; size < N_SIZES; size++) {
    g_autofree char *head =
        g_strdup_printf (_ (sizes[size].head), unit_symbol (UNIT_LENGTH));

    gtk_label_set_label (GTK_LABEL (self->heads[size]), head);
  }
}

static void
show (gpointer part)
{
  Sections *self = part;
  SpringSet set = *springs_edit_now (self->edit);
  CarTorsionBar *bar = &set.springs.bar;

  gtk_widget_set_visible (self->box, springs_ask_bar_sizes (&set));
  show_heads (self);
  for (guint i = 0; i < BAR_SECTIONS_MOST; i++) {
    const gboolean is_there = i < bar->n_sections;

    for (gsize size = 0; size < N_SIZES; size++) {
      const double value = is_there ? *number_at (bar, i, size) : 0.0;
      g_autofree char *text =
          springs_number_text (UNIT_LENGTH, value, !is_there || size == 1);

      springs_entry_show (self->entries[i][size], text, is_there);
    }
    gtk_widget_set_visible (self->removes[i], is_there);
    gtk_widget_set_sensitive (self->removes[i], bar->n_sections > 1);
  }
  gtk_widget_set_sensitive (self->add, bar->n_sections < BAR_SECTIONS_MOST);
}

/* Another of the last one's size; Undo and the entries do the rest. */
static void
on_add_clicked_cb (Sections *self)
{
  SpringSet set = *springs_edit_now (self->edit);
  CarTorsionBar *bar = &set.springs.bar;
  const gsize n = bar->n_sections;

  g_return_if_fail (n > 0 && n < BAR_SECTIONS_MOST);
  bar->sections[n] = bar->sections[n - 1];
  bar->n_sections++;
  springs_edit_choose (self->edit, self->add, &set,
                       _ ("Add a length to the torsion bar"));
  gtk_widget_grab_focus (self->entries[n][0]);
}

static void
on_remove_clicked_cb (Sections *self, GtkWidget *button)
{
  SpringSet set = *springs_edit_now (self->edit);
  CarTorsionBar *bar = &set.springs.bar;
  gsize at = 0;

  while (at < bar->n_sections && self->removes[at] != button)
    at++;
  g_return_if_fail (at < bar->n_sections && bar->n_sections > 1);
  for (gsize i = at; i + 1 < bar->n_sections; i++)
    bar->sections[i] = bar->sections[i + 1];
  bar->n_sections--;
  bar->sections[bar->n_sections] = (typeof (bar->sections[0])){ 0 };
  gtk_widget_grab_focus (self->add); /* the button may go */
  springs_edit_choose (self->edit, self->add, &set,
                       _ ("Remove a length of the torsion bar"));
}

static void
add_row (Sections *self, GtkGrid *grid, guint index)
{
  g_autofree char *remove_name = g_strdup_printf (_ ("Remove section %u"), index + 1);
  GtkWidget *remove = gtk_button_new_from_icon_name ("list-remove-symbolic");

  for (gsize size = 0; size < N_SIZES; size++) {
    g_autofree char *name = g_strdup_printf (_ (sizes[size].name), index + 1);
    Cell *cell = &self->cells[index][size];

    *cell = (Cell){ self, index, size };
    GtkWidget *entry = sw_committed_entry_new (name, take, step, cell);
    gtk_editable_set_width_chars (GTK_EDITABLE (entry), WIDTH_CHARS);
    gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), WIDTH_CHARS);
    gtk_entry_set_alignment (GTK_ENTRY (entry), 1.0f);
    if (is_bore (cell))
      gtk_entry_set_placeholder_text (GTK_ENTRY (entry), _ ("solid"));
    sw_committed_entry_set_meaning (SW_COMMITTED_ENTRY (entry), _ (sizes[size].meaning));
    springs_edit_watch (self->edit, SPRINGS_BAR, SW_COMMITTED_ENTRY (entry));
    gtk_grid_attach (grid, entry, (int) size, (int) index + 1, 1, 1);
    self->entries[index][size] = entry;
  }
  gtk_widget_set_tooltip_text (remove, _ ("Remove this length"));
  gtk_widget_add_css_class (remove, "flat");
  gtk_accessible_update_property (GTK_ACCESSIBLE (remove), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  remove_name, -1);
  g_signal_connect_swapped (remove, "clicked", G_CALLBACK (on_remove_clicked_cb), self);
  gtk_grid_attach (grid, remove, N_SIZES, (int) index + 1, 1, 1);
  self->removes[index] = remove;
}

GtkWidget *
springs_sections_new (SpringsEdit *edit)
{
  Sections *self = g_new0 (Sections, 1);
  GtkWidget *grid = gtk_grid_new ();

  self->edit = edit;
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  self->add = gtk_button_new_with_label (_ ("Add Length"));
  gtk_grid_set_column_spacing (GTK_GRID (grid), 4);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 4);
  for (int size = 0; size < N_SIZES; size++) {
    self->heads[size] = springs_label_new ("", "dim-label");
    gtk_widget_add_css_class (self->heads[size], "caption");
    gtk_grid_attach (GTK_GRID (grid), self->heads[size], size, 0, 1, 1);
  }
  for (guint i = 0; i < BAR_SECTIONS_MOST; i++)
    add_row (self, GTK_GRID (grid), i);
  gtk_widget_set_halign (self->add, GTK_ALIGN_START);
  gtk_widget_set_tooltip_text (self->add,
                               _ ("A bar of several sizes is a row of lengths"));
  g_signal_connect_swapped (self->add, "clicked", G_CALLBACK (on_add_clicked_cb), self);
  gtk_box_append (GTK_BOX (self->box), grid);
  gtk_box_append (GTK_BOX (self->box), self->add);
  springs_edit_add_part (edit, show, self);
  return self->box;
}
