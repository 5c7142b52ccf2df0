/* SPDX-License-Identifier: GPL-3.0-or-later */
/* An item of the list is a whole row as text, its cells divided by tabs. */

#include "window/curves/curve-window.h"
#include "window/curves/column-heads.h"
#include "window/dialog/escape-key.h"
#include "window/entry/left-to-right.h"
#include "window/settings/units.h"

#include "model/study/quantity-info.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define WIDTH 760
#define HEIGHT 560
#define SPRING_CURVES 2

typedef struct {
  SwBench *bench;
  gboolean is_of_springs;
  GtkWindow *window;
  GtkWidget *table;
  GtkStringList *rows;
  GtkSingleSelection *selection;
} Curves;

static guint
n_curves (const Curves *self)
{
  const BoardChoice choice = sw_bench_get_choice (self->bench);

  return self->is_of_springs ? SPRING_CURVES : (guint) (choice.n_large + choice.n_small);
}

static Quantity
curve_at (const Curves *self, guint i)
{
  const BoardChoice choice = sw_bench_get_choice (self->bench);

  return i < choice.n_large ? choice.large[i] : choice.small[i - choice.n_large];
}

/* Column 0 is the travel. */
static char *
head_text (const Curves *self, guint column)
{
  if (column == 0)
    return g_strdup_printf ("%s\n%s", _ ("Wheel travel"), unit_caption (UNIT_LENGTH));
  if (self->is_of_springs)
    return column == 1
               ? g_strdup_printf ("%s\n%s", _ ("Wheel load"), unit_caption (UNIT_FORCE))
               : g_strdup_printf ("%s\n%s", _ ("Wheel rate"), unit_caption (UNIT_RATE));
  const Quantity q = curve_at (self, column - 1);
  return g_strdup_printf ("%s\n%s", quantity_info (q).short_name, quantity_caption (q));
}

static void
format_curve (const Curves *self, guint curve, guint station, char *text, gsize size)
{
  const Study *study = sw_bench_get_study (self->bench);

  if (!self->is_of_springs) {
    const Quantity q = curve_at (self, curve);
    quantity_format (q, study_in_hand (study)->stations[station].measures.value[q], FALSE,
                     text, size);
    return;
  }
  const SpringCorner *corner = spring_study_in_hand (sw_bench_get_springs (self->bench));
  const SpringStation *at = &corner->stations[station];
  const gboolean is_given = corner->stands != STANDS_NOT_GIVEN;

  if (curve == 0)
    unit_format (UNIT_FORCE, is_given ? at->load : NAN, 0, FALSE, text, size);
  else
    unit_format (UNIT_RATE, is_given ? at->rate : NAN, 2, FALSE, text, size);
}

static char *
row_text (const Curves *self, guint station)
{
  const Study *study = sw_bench_get_study (self->bench);
  GString *text = g_string_new (NULL);
  char cell[32];

  unit_format (UNIT_LENGTH, sweep_place (study->range, station), 1, FALSE, cell,
               sizeof cell);
  g_string_append (text, cell);
  for (guint i = 0; i < n_curves (self); i++) {
    format_curve (self, i, station, cell, sizeof cell);
    g_string_append_printf (text, "\t%s", cell);
  }
  return g_string_free (text, FALSE);
}

static void
fill_rows (Curves *self)
{
  g_auto (GStrv) rows = g_new0 (char *, STUDY_STATIONS + 1);
  const guint selected = gtk_single_selection_get_selected (self->selection);

  for (guint i = 0; i < STUDY_STATIONS; i++)
    rows[i] = row_text (self, i);
  gtk_string_list_splice (self->rows, 0,
                          g_list_model_get_n_items (G_LIST_MODEL (self->rows)),
                          (const char *const *) rows);
  gtk_single_selection_set_selected (self->selection, selected);
}

static void
on_cell_setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *label = gtk_label_new ("");

  (void) factory;
  gtk_label_set_xalign (GTK_LABEL (label), 1.0f);
  gtk_widget_add_css_class (label, "numeric");
  keep_left_to_right (label);
  gtk_list_item_set_child (item, label);
}

/* GTK 4.8 calls rows and cells by the names of its classes. */
static void
name_cell (GtkWidget *label, const char *text, const char *travel)
{
  GtkWidget *cell = gtk_widget_get_parent (label);
  GtkWidget *line = cell != NULL ? gtk_widget_get_parent (cell) : NULL;

  if (line == NULL)
    return;
  gtk_accessible_update_property (GTK_ACCESSIBLE (cell), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  text, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (line), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  travel, -1);
}

static void
on_cell_bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer column)
{
  GtkWidget *label = gtk_list_item_get_child (item);
  g_auto (GStrv) cells =
              g_strsplit (gtk_string_object_get_string (gtk_list_item_get_item (item)),
                          "\t", -1);

  (void) factory;
  gtk_label_set_label (GTK_LABEL (label), cells[GPOINTER_TO_UINT (column)]);
  name_cell (label, cells[GPOINTER_TO_UINT (column)], cells[0]);
}

static void
add_column (Curves *self, guint column)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_autofree char *title = head_text (self, column);
  g_autoptr (GtkColumnViewColumn) added = gtk_column_view_column_new (title, factory);

  g_signal_connect (factory, "setup", G_CALLBACK (on_cell_setup_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (on_cell_bind_cb),
                    GUINT_TO_POINTER (column));
  gtk_column_view_column_set_expand (added, TRUE);
  gtk_column_view_append_column (GTK_COLUMN_VIEW (self->table), added);
}

/* Other curves were chosen, or other units. */
static void
build_anew (Curves *self)
{
  GtkColumnView *table = GTK_COLUMN_VIEW (self->table);
  GListModel *columns = gtk_column_view_get_columns (table);

  gtk_string_list_splice (self->rows, 0,
                          g_list_model_get_n_items (G_LIST_MODEL (self->rows)), NULL);
  while (g_list_model_get_n_items (columns) > 0) {
    g_autoptr (GtkColumnViewColumn) first = g_list_model_get_item (columns, 0);
    gtk_column_view_remove_column (table, first);
  }
  for (guint i = 0; i <= n_curves (self); i++)
    add_column (self, i);
  column_heads_arrange (table, n_curves (self) + 1);
  fill_rows (self);
}

static void
on_solved_cb (Curves *self)
{
  const Study *study = sw_bench_get_study (self->bench);
  g_autofree char *title =
      g_strdup_printf (_ ("Curves of %s"), study_in_hand (study)->title);

  if (sw_bench_is_dragging (self->bench))
    return;
  gtk_window_set_title (self->window, title);
  fill_rows (self);
}

static void
on_row_activated_cb (Curves *self, guint row)
{
  sw_bench_set_travel (self->bench,
                       sweep_place (sw_bench_get_study (self->bench)->range, row));
}

/* Once the rows have their places. */
static gboolean
show_travel_in_hand (GtkWidget *table, GdkFrameClock *clock, gpointer data)
{
  Curves *self = data;
  const Study *study = sw_bench_get_study (self->bench);
  const double part =
      (study->travel - study->range.from) / (study->range.to - study->range.from);
  const guint row = (guint) round (CLAMP (part, 0.0, 1.0) * (STUDY_STATIONS - 1));

  (void) clock;
  gtk_single_selection_set_selected (self->selection, row);
  gtk_widget_activate_action (gtk_widget_get_last_child (table), "list.scroll-to-item",
                              "u", row);
  return G_SOURCE_REMOVE;
}

static void
free_curves (gpointer data)
{
  Curves *self = data;

  g_signal_handlers_disconnect_by_data (self->bench, self);
  g_signal_handlers_disconnect_by_data (sw_units_get (), self);
  g_object_unref (self->bench);
  g_free (self);
}

static GtkWidget *
new_table (Curves *self)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  self->rows = gtk_string_list_new (NULL);
  self->selection = gtk_single_selection_new (G_LIST_MODEL (self->rows));
  self->table = gtk_column_view_new (GTK_SELECTION_MODEL (self->selection));
  gtk_widget_add_css_class (self->table, "data-table");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->table),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Curves as a Table"),
                                  -1);
  g_signal_connect_swapped (self->table, "activate", G_CALLBACK (on_row_activated_cb),
                            self);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->table);
  column_heads_begin_at_first (GTK_SCROLLED_WINDOW (scrolled));
  return scrolled;
}

void
curve_window_present (GtkWindow *parent, SwBench *bench, gboolean is_of_springs)
{
  Curves *self = g_new0 (Curves, 1);
  GtkWidget *scrolled = new_table (self);

  self->bench = g_object_ref (bench);
  self->is_of_springs = is_of_springs;
  self->window =
      g_object_new (GTK_TYPE_WINDOW, "transient-for", parent, "destroy-with-parent", TRUE,
                    "default-width", WIDTH, "default-height", HEIGHT, NULL);
  g_object_set_data_full (G_OBJECT (self->window), "curves", self, free_curves);
  gtk_window_set_child (self->window, scrolled);
  build_anew (self);
  on_solved_cb (self);
  g_signal_connect_swapped (bench, "solved", G_CALLBACK (on_solved_cb), self);
  g_signal_connect_swapped (bench, "chosen", G_CALLBACK (build_anew), self);
  g_signal_connect_swapped (sw_units_get (), "changed", G_CALLBACK (build_anew), self);
  escape_key_closes (GTK_WIDGET (self->window));
  gtk_window_present (self->window);
  gtk_widget_add_tick_callback (self->table, show_travel_in_hand, self, NULL);
}
