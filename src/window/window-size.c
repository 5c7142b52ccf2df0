/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A new window is as large as the one that was closed last; its parts stand as they fit.
 */

#include "window/settings/kept-settings.h"
#include "window/window-private.h"

#define HANDLE 5 /* pixels, between the panes */

void
window_take_kept_size (SwWindow *self)
{
  GSettings *settings = kept_settings ();

  if (settings == NULL)
    return;
  gtk_window_set_default_size (GTK_WINDOW (self),
                               g_settings_get_int (settings, "window-width"),
                               g_settings_get_int (settings, "window-height"));
  if (g_settings_get_boolean (settings, "window-maximized"))
    gtk_window_maximize (GTK_WINDOW (self));
}

void
window_keep_size (SwWindow *self)
{
  GSettings *settings = kept_settings ();
  int width, height;

  if (settings == NULL)
    return;
  gtk_window_get_default_size (GTK_WINDOW (self), &width, &height);
  g_settings_set_int (settings, "window-width", width);
  g_settings_set_int (settings, "window-height", height);
  g_settings_set_boolean (settings, "window-maximized",
                          gtk_window_is_maximized (GTK_WINDOW (self)));
}

static int
least_width (GtkWidget *widget)
{
  int least = 0;

  if (gtk_widget_should_layout (widget))
    gtk_widget_measure (widget, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  return least;
}

/* With large text, or long words, the window scrolls down and not across. */
void
window_fit_panes (SwWindow *self, int width)
{
  GtkOrientable *panes = GTK_ORIENTABLE (self->panes);
  const int beside = least_width (self->panel_box) +
                     least_width (gtk_paned_get_start_child (self->panes)) + HANDLE +
                     least_width (gtk_paned_get_end_child (self->panes));
  const GtkOrientation fit =
      beside > width ? GTK_ORIENTATION_VERTICAL : GTK_ORIENTATION_HORIZONTAL;

  if (gtk_orientable_get_orientation (panes) == fit)
    return;
  gtk_orientable_set_orientation (panes, fit);
  g_object_set (panes, "position-set", FALSE, NULL);
}
