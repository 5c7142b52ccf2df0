/* SPDX-License-Identifier: GPL-3.0-or-later */
/* GTK 4.8 has its theme for high contrast in a dark form as well, but under a name of its
 * own: asked for a dark form of the theme it would show the ordinary dark one. */

#include "window/canvas/dark.h"

#include <gtk/gtk.h>

#define HIGH_CONTRAST "Default-hc"
#define HIGH_CONTRAST_DARK "Default-hc-dark"

/* As the desktop has it; "HighContrast" is how a desktop spells it. */
static gboolean
is_high_contrast (GtkSettings *settings)
{
  g_autofree char *name = NULL;

  gtk_settings_reset_property (settings, "gtk-theme-name");
  g_object_get (settings, "gtk-theme-name", &name, NULL);
  return name != NULL &&
         (g_str_equal (name, HIGH_CONTRAST) || g_str_equal (name, "HighContrast"));
}

void
dark_use (gboolean is_dark)
{
  GtkSettings *settings = gtk_settings_get_default ();
  const gboolean is_high = is_high_contrast (settings);

  if (is_high && is_dark)
    g_object_set (settings, "gtk-theme-name", HIGH_CONTRAST_DARK, NULL);
  g_object_set (settings, "gtk-application-prefer-dark-theme", is_dark && !is_high, NULL);
}
