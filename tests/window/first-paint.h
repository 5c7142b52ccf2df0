/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Ends the process when a window's first frame is painted. Not at the frame clock's first
 * "after-paint": it ticks before the window is mapped, with nothing to paint. Nothing is
 * taken apart, for that is not what is measured. */

#pragma once

#include <gtk/gtk.h>
#include <unistd.h>

static gboolean is_painted;

static gboolean
on_render_cb (GSignalInvocationHint *hint, guint n, const GValue *values, gpointer data)
{
  (void) hint;
  (void) n;
  (void) values;
  (void) data;
  is_painted = TRUE;
  return FALSE;
}

static void
on_after_paint_cb (void)
{
  if (is_painted)
    _exit (0);
}

static void
on_realize_cb (GtkWidget *window)
{
  g_signal_add_emission_hook (g_signal_lookup ("render", GDK_TYPE_SURFACE), 0,
                              on_render_cb, NULL, NULL);
  g_signal_connect (gtk_widget_get_frame_clock (window), "after-paint",
                    G_CALLBACK (on_after_paint_cb), NULL);
}
