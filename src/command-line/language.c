/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command-line/command-line.h"

#include <glib/gi18n-lib.h>
#include <locale.h>

void
command_line_use_language (void)
{
  const char *folder = g_getenv ("STRUTWRIGHT_LOCALEDIR");

  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, folder != NULL ? folder : LOCALEDIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
}
