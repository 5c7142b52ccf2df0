/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/layout/below-button.h"
#include "window/layout/scroll-to.h"

#define LINE 12.0 /* pixels of the part that count as seen */

typedef struct {
  GtkButton *button;
  GtkScrolledWindow *scrolled;
  GtkWidget *part; /* inside @scrolled */
  guint idle_id;   /* 0 while nothing waits */
} Below;

static gboolean
is_below (const Below *self)
{
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (self->scrolled);
  GtkWidget *viewport = gtk_scrolled_window_get_child (self->scrolled);
  graphene_rect_t bounds;

  return gtk_widget_get_visible (self->part) &&
         gtk_widget_compute_bounds (self->part, viewport, &bounds) &&
         bounds.origin.y + LINE > gtk_adjustment_get_page_size (adjustment);
}

static gboolean
on_idle_cb (gpointer data)
{
  Below *self = data;

  self->idle_id = 0;
  gtk_widget_set_visible (GTK_WIDGET (self->button), is_below (self));
  return G_SOURCE_REMOVE;
}

/* Later: an adjustment changes in the midst of a layout, which must not begin another. */
static void
look_later (GtkWidget *button)
{
  Below *self = g_object_get_data (G_OBJECT (button), "below");

  if (self->idle_id == 0)
    self->idle_id = g_idle_add (on_idle_cb, self);
}

static void
on_clicked_cb (GtkWidget *button)
{
  Below *self = g_object_get_data (G_OBJECT (button), "below");

  scroll_to (self->part, self->part);
  if (gtk_widget_has_focus (button)) /* which is about to go */
    gtk_widget_child_focus (GTK_WIDGET (self->scrolled), GTK_DIR_TAB_BACKWARD);
}

static void
below_free (gpointer data)
{
  Below *self = data;

  if (self->idle_id != 0)
    g_source_remove (self->idle_id);
  g_free (self);
}

static void
look_after (GtkWidget *button, gpointer source, const char *signal)
{
  g_signal_connect_object (source, signal, G_CALLBACK (look_later), button,
                           G_CONNECT_SWAPPED);
}

GtkWidget *
below_button_new (GtkScrolledWindow *scrolled, GtkWidget *part)
{
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (scrolled);
  GtkWidget *button = gtk_button_new ();
  Below *self = g_new0 (Below, 1);

  *self = (Below){ .button = GTK_BUTTON (button), .scrolled = scrolled, .part = part };
  g_object_set_data_full (G_OBJECT (button), "below", self, below_free);
  gtk_widget_set_visible (button, FALSE);
  g_signal_connect (button, "clicked", G_CALLBACK (on_clicked_cb), NULL);
  look_after (button, adjustment, "value-changed");
  look_after (button, adjustment, "changed");
  look_after (button, part, "notify::visible");
  return button;
}
