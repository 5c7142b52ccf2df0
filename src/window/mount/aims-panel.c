/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/mount/aims-panel.h"
#include "window/mount/aims-panel-limits.h"
#include "window/mount/aims-panel-row.h"

#include <glib/gi18n-lib.h>

#define FIRST_AIM 1 /* row of the grid, below the heads */

static void
on_bench_solved_cb (GtkWidget *grid)
{
  AimRow **all = g_object_get_data (G_OBJECT (grid), "aim-rows");

  for (Aim aim = 0; aim < N_AIMS; aim++)
    aim_row_show (all[aim]);
}

static void
add_head (GtkGrid *grid, int column, const char *text)
{
  GtkWidget *head = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (head), 0.0f);
  gtk_widget_add_css_class (head, "dim-label");
  gtk_grid_attach (grid, head, column, 0, 1, 1);
}

static GtkWidget *
new_aims (SwChooser *chooser)
{
  GtkWidget *grid = gtk_grid_new ();
  AimRow **all = g_new0 (AimRow *, N_AIMS);

  gtk_grid_set_column_spacing (GTK_GRID (grid), 8);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  add_head (GTK_GRID (grid), 1, _ ("at least"));
  add_head (GTK_GRID (grid), 2, _ ("at most"));
  add_head (GTK_GRID (grid), 4, _ ("counts"));
  for (Aim aim = 0; aim < N_AIMS; aim++)
    all[aim] = aim_row_new (chooser, aim, GTK_GRID (grid), FIRST_AIM + (int) aim);
  g_object_set_data_full (G_OBJECT (grid), "aim-rows", all, g_free);
  g_signal_connect_object (sw_chooser_get_bench (chooser), "solved",
                           G_CALLBACK (on_bench_solved_cb), grid, G_CONNECT_SWAPPED);
  on_bench_solved_cb (grid);
  return grid;
}

GtkWidget *
aims_panel_new (SwChooser *chooser)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *pages = gtk_stack_new (), *switcher = gtk_stack_switcher_new ();

  gtk_stack_add_titled (GTK_STACK (pages), new_aims (chooser), "aims", _ ("Aims"));
  gtk_stack_add_titled (GTK_STACK (pages), limits_panel_new (chooser), "limits",
                        _ ("Limits and Parts"));
  gtk_stack_switcher_set_stack (GTK_STACK_SWITCHER (switcher), GTK_STACK (pages));
  gtk_widget_set_halign (switcher, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (box, "panel");
  gtk_box_append (GTK_BOX (box), switcher);
  gtk_box_append (GTK_BOX (box), pages);
  return box;
}
