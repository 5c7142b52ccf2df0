/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A new window is as large as the one that was closed last. */

#include "window/kept-settings.h"
#include "window/window-private.h"

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
