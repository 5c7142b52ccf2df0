/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command-line/command-line.h"

int
main (int argc, char **argv)
{
  command_line_use_language ();
  return plot_command (argc, argv);
}
