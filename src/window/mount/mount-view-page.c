/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/mount/mount-view-page.h"
#include "window/mount/aims-panel.h"
#include "window/mount/mount-view.h"

#include <glib/gi18n-lib.h>

typedef struct {
  SwChooser *chooser;
  GtkWidget *left, *right;
} Sides;

static void
on_side_toggled_cb (GtkWidget *box)
{
  const Sides *self = g_object_get_data (G_OBJECT (box), "sides");

  sw_chooser_set_side (self->chooser,
                       gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->right))
                           ? SIDE_RIGHT
                           : SIDE_LEFT);
}

/* Seen only where the sides of the car differ. */
static void
show_side (GtkWidget *box)
{
  const Sides *self = g_object_get_data (G_OBJECT (box), "sides");
  const gboolean is_right = sw_chooser_get_side (self->chooser) == SIDE_RIGHT;

  gtk_widget_set_visible (box, sw_chooser_has_two_sides (self->chooser));
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (is_right ? self->right : self->left),
                                TRUE);
}

static GtkWidget *
sides_new (SwChooser *chooser)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  Sides *self = g_new (Sides, 1);

  self->chooser = chooser;
  self->left = gtk_toggle_button_new_with_label (C_ ("side", "Left"));
  self->right = gtk_toggle_button_new_with_label (C_ ("side", "Right"));
  g_object_set_data_full (G_OBJECT (box), "sides", self, g_free);
  gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (self->right),
                               GTK_TOGGLE_BUTTON (self->left));
  gtk_widget_add_css_class (box, "linked");
  gtk_widget_set_valign (box, GTK_ALIGN_CENTER);
  gtk_widget_set_tooltip_text (box, _ ("The side of the car that the map shows"));
  gtk_box_append (GTK_BOX (box), self->left);
  gtk_box_append (GTK_BOX (box), self->right);
  g_signal_connect_swapped (self->right, "toggled", G_CALLBACK (on_side_toggled_cb), box);
  g_signal_connect_object (chooser, "changed", G_CALLBACK (show_side), box,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (sw_chooser_get_bench (chooser), "solved",
                           G_CALLBACK (show_side), box, G_CONNECT_SWAPPED);
  show_side (box);
  return box;
}

/* Once for each time that the shelf was read. */
static void
tell_problems (GtkWidget *box, SwChooser *chooser)
{
  const PlateLibrary *library = sw_chooser_get_library (chooser);
  g_autofree char *sentences = NULL;

  if (g_object_get_data (G_OBJECT (box), "told") == library)
    return;
  g_object_set_data (G_OBJECT (box), "told", (gpointer) library);
  if (library->problems->len == 0)
    return;

  g_autoptr (GPtrArray) list = g_ptr_array_copy (library->problems, NULL, NULL);
  g_ptr_array_set_free_func (list, NULL);
  g_ptr_array_add (list, NULL);
  sentences = g_strjoinv ("\n", (char **) list->pdata);
  gtk_widget_activate_action (box, "win.tell", "s", sentences);
}

GtkWidget *
mount_page_new (SwBench *bench)
{
  SwChooser *chooser = sw_chooser_of (bench);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *bar = aims_bar_new (chooser);

  gtk_box_prepend (GTK_BOX (bar), sides_new (chooser));
  gtk_box_append (GTK_BOX (box), bar);
  gtk_box_append (GTK_BOX (box), sw_mount_view_new (chooser));
  g_signal_connect_object (box, "map", G_CALLBACK (sw_chooser_watch), chooser,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (box, "unmap", G_CALLBACK (sw_chooser_unwatch), chooser,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (chooser, "answered", G_CALLBACK (tell_problems), box,
                           G_CONNECT_SWAPPED);
  return box;
}
