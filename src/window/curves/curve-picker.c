/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/curves/curve-picker.h"

#include "model/study/quantity-info.h"

#include <glib/gi18n-lib.h>

static void
on_check_toggled_cb (GtkCheckButton *check, SwBench *bench)
{
  const Quantity q = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (check), "quantity"));
  const gboolean active = gtk_check_button_get_active (check);

  if (active != sw_bench_is_chosen (bench, q) && !sw_bench_choose (bench, q, active))
    gtk_check_button_set_active (check, !active);
}

static GtkWidget *
new_check (SwBench *bench, Quantity q)
{
  const QuantityInfo info = quantity_info (q);
  GtkWidget *check = gtk_check_button_new_with_label (info.name);

  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), sw_bench_is_chosen (bench, q));
  gtk_widget_set_tooltip_text (check, info.meaning);
  g_object_set_data (G_OBJECT (check), "quantity", GUINT_TO_POINTER (q));
  g_signal_connect_object (check, "toggled", G_CALLBACK (on_check_toggled_cb), bench, 0);
  return check;
}

/* Made when first opened: a window that nobody asks for curves starts without it. */
static void
create_popover (GtkMenuButton *button, gpointer data)
{
  SwBench *bench = SW_BENCH (data);
  GtkWidget *grid = gtk_grid_new (), *popover;
  const int n_rows = (N_QUANTITIES + 1) / 2;

  if (gtk_menu_button_get_popover (button) != NULL)
    return;
  gtk_grid_set_column_spacing (GTK_GRID (grid), 18);
  gtk_widget_add_css_class (grid, "curve-picker");
  for (Quantity q = 0; q < N_QUANTITIES; q++)
    gtk_grid_attach (GTK_GRID (grid), new_check (bench, q), (int) q / n_rows,
                     (int) q % n_rows, 1, 1);
  popover = gtk_popover_new ();
  gtk_popover_set_child (GTK_POPOVER (popover), grid);
  gtk_menu_button_set_popover (button, popover);
}

GtkWidget *
curve_picker_new (SwBench *bench)
{
  GtkWidget *button = gtk_menu_button_new ();

  gtk_menu_button_set_label (GTK_MENU_BUTTON (button), _ ("Curves"));
  gtk_widget_set_tooltip_text (button, _ ("Choose which quantities have a curve"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Curves"), -1);
  gtk_menu_button_set_create_popup_func (GTK_MENU_BUTTON (button), create_popover, bench,
                                         NULL);
  return button;
}
