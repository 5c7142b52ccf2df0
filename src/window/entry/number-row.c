/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/entry/number-row.h"
#include "window/entry/unit-spin.h"

GtkSpinButton *
number_row_attach (GtkGrid *grid, int place, const NumberRow *row, GtkLabel **name)
{
  GtkWidget *label = gtk_label_new (row->name), *unit = gtk_label_new (NULL);
  GtkWidget *spin = gtk_spin_button_new_with_range (-row->most, row->most, row->step);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_mnemonic_widget (GTK_LABEL (label), spin);
  gtk_label_set_xalign (GTK_LABEL (unit), 0.0f);
  gtk_widget_add_css_class (unit, "dim-label");
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_set_tooltip_text (label, row->meaning);
  gtk_widget_set_tooltip_text (spin, row->meaning);
  unit_spin_begin (GTK_SPIN_BUTTON (spin), row->unit, row->digits, GTK_LABEL (unit));
  gtk_grid_attach (grid, label, 0, place, 1, 1);
  gtk_grid_attach (grid, spin, 1, place, 1, 1);
  gtk_grid_attach (grid, unit, 2, place, 1, 1);
  if (name != NULL)
    *name = GTK_LABEL (label);
  return GTK_SPIN_BUTTON (spin);
}
