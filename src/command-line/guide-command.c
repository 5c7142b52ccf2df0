/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command-line/plot-choice.h"
#include "drawing/guide/guide.h"

#include <glib/gi18n-lib.h>

typedef struct {
  char *output, *paper;
} Options;

static gboolean
parse (int argc, char **argv, Options *options, char **file)
{
  const GOptionEntry entries[] = {
    { "output", 0, 0, G_OPTION_ARG_FILENAME, &options->output,
      N_ ("The file to write: .pdf"), N_ ("PATH") },
    { "paper", 0, 0, G_OPTION_ARG_STRING, &options->paper,
      N_ ("a4 or letter; a4 if not given"), N_ ("PAPER") },
    { 0 },
  };

  if (!command_line_parse ("guide", entries, argc, argv, file))
    return FALSE;
  if (options->output != NULL)
    return TRUE;
  command_line_say (_ ("guide needs --output with the file to write."));
  return FALSE;
}

static int
run (const Options *options, const char *file)
{
  PaperSize paper;

  if (!plot_choose_paper (options->paper, &paper))
    return EXIT_USAGE;
  g_autoptr (Car) car = command_line_load (file);
  if (car == NULL)
    return EXIT_REFUSED;
  g_autoptr (MeasuringGuide) guide = measuring_guide_new (car);
  g_autoptr (GError) error = NULL;
  if (measuring_guide_write (guide, paper, options->output, &error))
    return EXIT_DONE;
  return plot_say_error (error);
}

int
guide_command (int argc, char **argv)
{
  Options options = { 0 };
  char *file;
  const int status =
      parse (argc, argv, &options, &file) ? run (&options, file) : EXIT_USAGE;

  g_free (options.output);
  g_free (options.paper);
  return status;
}
