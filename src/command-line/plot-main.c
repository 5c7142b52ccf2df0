/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The commands that draw, started by strutwright with the command word first. */
#include "command-line/command-line.h"

#include <glib/gi18n-lib.h>

int
main (int argc, char **argv)
{
  const char *word = argc > 1 ? argv[1] : "";

  command_line_use_language ();
  if (g_str_equal (word, "plot"))
    return plot_command (argc - 1, argv + 1);
  if (g_str_equal (word, "report"))
    return report_command (argc - 1, argv + 1);
  if (g_str_equal (word, "guide"))
    return guide_command (argc - 1, argv + 1);
  if (g_str_equal (word, "choose"))
    return choose_card_command (argc - 1, argv + 1);
  command_line_say (_ ("This program draws for strutwright, which starts it."));
  return EXIT_USAGE;
}
