/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command-line/command-line.h"
#include "model/study/travel-gap.h"
#include "model/study/travel-table.h"

#include <glib/gi18n-lib.h>

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

static int
run (const TableOptions *options, const char *file)
{
  TravelTableFormat format;

  if (!choose_format (options->format, &format))
    return EXIT_USAGE;

  g_autoptr (Car) car = command_line_load (file);
  TravelSteps steps;
  guint setup;

  if (car == NULL)
    return EXIT_REFUSED;
  if (!command_line_choose_setup (car, options->setup, &setup) ||
      !command_line_choose_steps (car, options->steps, &steps))
    return EXIT_USAGE;
  return print_table (car, setup, steps, format);
}

int
table_command (int argc, char **argv)
{
  const TableOptionWords words = {
    N_ ("Between two rows, mm; 1 if not given. Rows never go past the last travel"),
    N_ ("csv or json; csv if not given")
  };
  g_auto (TableOptions) options = { 0 };
  char *file;

  return command_line_parse_table ("table", words, argc, argv, &options, &file)
             ? run (&options, file)
             : EXIT_USAGE;
}
