/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/layout/scroll-to.h"

typedef struct {
  GtkWidget *from;
  guint n_ticks;
} Wanted;

static void
show (GtkWidget *widget, GtkWidget *from)
{
  GtkWidget *viewport = gtk_widget_get_ancestor (widget, GTK_TYPE_VIEWPORT);
  GtkWidget *content = viewport != NULL ? gtk_widget_get_first_child (viewport) : NULL;
  graphene_rect_t first, last;

  if (content == NULL || !gtk_widget_compute_bounds (from, content, &first) ||
      !gtk_widget_compute_bounds (widget, content, &last))
    return;
  gtk_adjustment_clamp_page (gtk_scrollable_get_vadjustment (GTK_SCROLLABLE (viewport)),
                             first.origin.y, last.origin.y + last.size.height);
}

/* The first one comes before the frame's layout. */
static gboolean
on_tick_cb (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  Wanted *wanted = data;

  (void) clock;
  if (wanted->n_ticks++ == 0)
    return G_SOURCE_CONTINUE;
  show (widget, wanted->from);
  return G_SOURCE_REMOVE;
}

static void
wanted_free (gpointer data)
{
  Wanted *wanted = data;

  g_object_unref (wanted->from);
  g_free (wanted);
}

void
scroll_to (GtkWidget *widget, GtkWidget *from)
{
  Wanted *wanted = g_new0 (Wanted, 1);

  wanted->from = g_object_ref (from);
  gtk_widget_add_tick_callback (widget, on_tick_cb, wanted, wanted_free);
}
