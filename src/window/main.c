/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/application.h"
#include "window/settings/kept-settings.h"

#include <glib/gi18n-lib.h>
#include <locale.h>

static gboolean
has_graphics_card (void)
{
  g_autoptr (GDir) cards = g_dir_open ("/dev/dri", 0, NULL);
  const char *name = NULL;

  while (cards != NULL && (name = g_dir_read_name (cards)) != NULL)
    if (g_str_has_prefix (name, "render"))
      return TRUE;
  return FALSE;
}

/* Without a graphics card GTK would emulate one in software, five times slower than
 * drawing in software outright. */
static void
choose_renderer (void)
{
  GSettings *settings = kept_settings ();
  g_autofree char *wish = settings != NULL ? g_settings_get_string (settings, "renderer")
                                           : g_strdup ("automatic");

  if (g_str_equal (wish, "toolkit") ||
      (g_str_equal (wish, "automatic") && has_graphics_card ()))
    return;
  g_setenv ("GSK_RENDERER", "cairo", FALSE);
  if (g_str_equal (g_getenv ("GSK_RENDERER"), "cairo"))
    g_setenv ("GDK_DEBUG", "gl-disable", FALSE);
}

static void
use_language (void)
{
  const char *folder = g_getenv ("STRUTWRIGHT_LOCALEDIR");

  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, folder != NULL ? folder : LOCALEDIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
}

int
main (int argc, char **argv)
{
  g_autoptr (GtkApplication) application = NULL;

  choose_renderer ();
  use_language ();
  g_set_application_name ("Strutwright");
  gtk_window_set_default_icon_name (SW_APPLICATION_ID);
  application = sw_application_new (G_APPLICATION_DEFAULT_FLAGS);
  return g_application_run (G_APPLICATION (application), argc, argv);
}
