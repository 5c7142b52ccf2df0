/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command-line/command-line.h"

#include <glib/gi18n-lib.h>
#include <locale.h>

/* Where translations lie; another folder may be named while they are not installed. */
static void
bind_translations (void)
{
  const char *folder = g_getenv ("STRUTWRIGHT_LOCALEDIR");

  bindtextdomain (GETTEXT_PACKAGE, folder != NULL ? folder : LOCALEDIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  bind_translations ();
  return command_line_run (argc, argv);
}
