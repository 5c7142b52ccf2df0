/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/curves/column-heads.h"
#include "window/entry/left-to-right.h"

static GtkWidget *
find_label (GtkWidget *widget)
{
  if (GTK_IS_LABEL (widget))
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child)) {
    GtkWidget *found = find_label (child);

    if (found != NULL)
      return found;
  }
  return NULL;
}

static void
align (GtkLabel *label)
{
  gtk_widget_set_hexpand (GTK_WIDGET (label), TRUE);
  gtk_label_set_xalign (label, 1.0f);
  gtk_label_set_justify (label, GTK_JUSTIFY_RIGHT);
  keep_left_to_right (GTK_WIDGET (label));
}

static void
name (GtkWidget *head, GtkLabel *label)
{
  g_autofree char *text = g_strdelimit (g_strdup (gtk_label_get_text (label)), "\n", ' ');

  gtk_accessible_update_property (GTK_ACCESSIBLE (head), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  g_strchomp (text), -1);
}

void
column_heads_arrange (GtkColumnView *table, guint n)
{
  GtkWidget *heads = gtk_widget_get_first_child (GTK_WIDGET (table));
  guint from_last = 0;

  for (GtkWidget *head = gtk_widget_get_last_child (heads); head != NULL;
       head = gtk_widget_get_prev_sibling (head), from_last++) {
    GtkWidget *label = find_label (head);

    if (label == NULL)
      return;
    name (head, GTK_LABEL (label));
    if (from_last < n)
      align (GTK_LABEL (label));
  }
}

typedef struct {
  GtkWidget *scrolled;
  GtkAdjustment *across;
  double from_first; /* how far the first column is out of sight */
  guint idle;
} Across;

static double
end_of (GtkAdjustment *across)
{
  return gtk_adjustment_get_upper (across) - gtk_adjustment_get_page_size (across);
}

static gboolean
on_idle_cb (gpointer data)
{
  Across *self = data;

  self->idle = 0;
  if (gtk_widget_get_direction (self->scrolled) == GTK_TEXT_DIR_RTL) {
    GtkScrolledWindow *scrolled = GTK_SCROLLED_WINDOW (self->scrolled);

    gtk_adjustment_set_value (self->across, end_of (self->across) - self->from_first);
    gtk_widget_queue_allocate (gtk_scrolled_window_get_child (scrolled));
  }
  return G_SOURCE_REMOVE;
}

/* The table is being laid out: it would not take another place now. */
static void
on_across_changed_cb (Across *self)
{
  if (self->idle == 0)
    self->idle = g_idle_add (on_idle_cb, self);
}

static void
on_across_moved_cb (Across *self)
{
  self->from_first = end_of (self->across) - gtk_adjustment_get_value (self->across);
}

static void
free_across (gpointer data)
{
  Across *self = data;

  g_clear_handle_id (&self->idle, g_source_remove);
  g_signal_handlers_disconnect_by_data (self->across, self);
  g_object_unref (self->across);
  g_free (self);
}

void
column_heads_begin_at_first (GtkScrolledWindow *scrolled)
{
  Across *self = g_new0 (Across, 1);

  self->scrolled = GTK_WIDGET (scrolled);
  self->across = g_object_ref (gtk_scrolled_window_get_hadjustment (scrolled));
  g_object_set_data_full (G_OBJECT (scrolled), "across", self, free_across);
  g_signal_connect_swapped (self->across, "changed", G_CALLBACK (on_across_changed_cb),
                            self);
  g_signal_connect_swapped (self->across, "value-changed",
                            G_CALLBACK (on_across_moved_cb), self);
}
