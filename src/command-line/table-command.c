/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command-line/command-line.h"
#include "model/travel-gap.h"
#include "model/travel-table.h"

#include <glib/gi18n-lib.h>
#include <math.h>

typedef struct {
  char *setup, *format;
  TravelSteps steps; /* NAN where not asked for */
} Options;

static gboolean
parse (int argc, char **argv, Options *options, char **file)
{
  const GOptionEntry entries[] = {
    /* A file name's argument type, as a setup's name is UTF-8 in every locale. */
    { "setup", 0, 0, G_OPTION_ARG_FILENAME, &options->setup,
      N_ ("The setup to solve; the first one if not given"), N_ ("NAME") },
    { "from", 0, 0, G_OPTION_ARG_DOUBLE, &options->steps.from,
      N_ ("First wheel travel, mm from the reference height; full droop if not given"),
      N_ ("MM") },
    { "to", 0, 0, G_OPTION_ARG_DOUBLE, &options->steps.to,
      N_ ("Last wheel travel, mm; full bump if not given"), N_ ("MM") },
    { "step", 0, 0, G_OPTION_ARG_DOUBLE, &options->steps.step,
      N_ ("Between two rows, mm; 1 if not given. Rows never go past the last travel"),
      N_ ("MM") },
    { "format", 0, 0, G_OPTION_ARG_STRING, &options->format,
      N_ ("csv or json; csv if not given"), N_ ("FORMAT") },
    { 0 },
  };

  return command_line_parse ("table", entries, argc, argv, file);
}

static gboolean
choose_format (const char *name, TravelTableFormat *format)
{
  *format = g_strcmp0 (name, "json") == 0 ? TRAVEL_TABLE_JSON : TRAVEL_TABLE_CSV;
  if (name == NULL || g_str_equal (name, "json") || g_str_equal (name, "csv"))
    return TRUE;
  command_line_say (_ ("--format is csv or json, not “%s”."), name);
  return FALSE;
}

static int
print_table (const Car *car, guint setup, TravelSteps steps, TravelTableFormat format)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (GArray) gaps = travel_gaps_new ();

  travel_table_write (car, setup, steps, format, text, gaps);
  for (guint i = 0; i < gaps->len; i++) {
    g_autofree char *sentence = travel_gap_sentence (&g_array_index (gaps, TravelGap, i));

    command_line_say (_ ("Warning: %s"), sentence);
  }
  return command_line_print (text->str, text->len) ? EXIT_DONE : EXIT_REFUSED;
}

int
table_command (int argc, char **argv)
{
  Options options = { .steps = { NAN, NAN, NAN } };
  TravelTableFormat format;
  TravelSteps steps;
  char *file;
  guint setup;
  int status = EXIT_USAGE;

  if (parse (argc, argv, &options, &file) && choose_format (options.format, &format)) {
    g_autoptr (Car) car = command_line_load (file);

    if (car == NULL)
      status = EXIT_REFUSED;
    else if (command_line_choose_setup (car, options.setup, &setup) &&
             command_line_choose_steps (car, options.steps, &steps))
      status = print_table (car, setup, steps, format);
  }
  g_free (options.setup);
  g_free (options.format);
  return status;
}
