/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/measure/measure-window-grid.h"
#include "window/entry/left-to-right.h"
#include "window/entry/typed-number.h"

#include "model/words/point-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define WIDTH_CHARS 7

static GtkWidget *
new_label (const char *text, float xalign)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), xalign);
  return label;
}

static GtkWidget *
new_unit (const char *text)
{
  GtkWidget *label = new_label (text, 0.0f);

  gtk_widget_add_css_class (label, "dim-label");
  return label;
}

static GtkEntry *
new_entry (const MeasureField *field, const char *placeholder)
{
  GtkWidget *entry = gtk_entry_new ();
  g_autofree char *name = measure_field_name (field);

  gtk_editable_set_width_chars (GTK_EDITABLE (entry), WIDTH_CHARS);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), WIDTH_CHARS);
  gtk_editable_set_alignment (GTK_EDITABLE (entry), 1.0f);
  keep_left_to_right (entry);
  gtk_entry_set_activates_default (GTK_ENTRY (entry), TRUE);
  gtk_entry_set_placeholder_text (GTK_ENTRY (entry), placeholder);
  gtk_widget_set_tooltip_text (entry, field->meaning);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  name, GTK_ACCESSIBLE_PROPERTY_REQUIRED,
                                  isnan (field->absent), -1);
  return GTK_ENTRY (entry);
}

static GtkGrid *
new_grid (void)
{
  GtkWidget *grid = gtk_grid_new ();

  gtk_grid_set_column_spacing (GTK_GRID (grid), 6);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  return GTK_GRID (grid);
}

static void
add_name (GtkGrid *grid, int row, const MeasureField *field)
{
  GtkWidget *name = new_label (field->name, 0.0f);

  gtk_widget_set_hexpand (name, TRUE);
  gtk_widget_set_tooltip_text (name, field->meaning);
  gtk_grid_attach (grid, name, 0, row, 1, 1);
}

static void
add_point (GtkGrid *grid, PointName point, CarSide side, GtkEntry **entries)
{
  const guint first = measure_point_field (point, side);

  for (guint axis = 0; axis < 3; axis++) {
    const MeasureField field = measure_field (first + axis);

    entries[first + axis] = new_entry (&field, NULL);
    gtk_grid_attach (grid, GTK_WIDGET (entries[first + axis]), (int) axis + 1,
                     (int) point + 1, 1, 1);
    if (axis == 0)
      add_name (grid, (int) point + 1, &field);
  }
}

GtkWidget *
measure_points_grid_new (CarSide side, GtkEntry **entries)
{
  GtkGrid *grid = new_grid ();

  gtk_grid_attach (grid, new_unit ("mm"), 0, 0, 1, 1);
  for (guint axis = 0; axis < 3; axis++) {
    GtkWidget *head = new_unit (point_axis_name (axis));

    gtk_label_set_xalign (GTK_LABEL (head), 1.0f);
    gtk_grid_attach (grid, head, (int) axis + 1, 0, 1, 1);
  }
  for (PointName point = 0; point < N_POINTS; point++)
    add_point (grid, point, side, entries);
  return GTK_WIDGET (grid);
}

GtkWidget *
measure_numbers_grid_new (MeasureGroup group, GtkEntry **entries)
{
  GtkGrid *grid = new_grid ();
  guint first, n;

  measure_group_span (group, &first, &n);
  for (guint i = 0; i < n; i++) {
    const MeasureField field = measure_field (first + i);
    g_autofree char *number =
        isnan (field.absent) ? NULL : typed_number_text (field.absent);
    GtkWidget *unit = new_unit (field.unit);

    entries[first + i] =
        new_entry (&field, field.when_empty != NULL ? field.when_empty : number);
    gtk_editable_set_width_chars (GTK_EDITABLE (entries[first + i]), 2 * WIDTH_CHARS);
    gtk_editable_set_max_width_chars (GTK_EDITABLE (entries[first + i]), 2 * WIDTH_CHARS);
    gtk_label_set_width_chars (GTK_LABEL (unit), 3);
    add_name (grid, (int) i, &field);
    gtk_grid_attach (grid, GTK_WIDGET (entries[first + i]), 1, (int) i, 1, 1);
    gtk_grid_attach (grid, unit, 2, (int) i, 1, 1);
  }
  return GTK_WIDGET (grid);
}
