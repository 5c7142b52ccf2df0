/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command-line/command-line.h"

#include <glib/gi18n-lib.h>
#include <math.h>

gboolean
command_line_parse_table (const char *name,
                          TableOptionWords words,
                          int argc,
                          char **argv,
                          TableOptions *options,
                          char **file)
{
  *options = (TableOptions){ .steps = { NAN, NAN, NAN } };

  const GOptionEntry entries[] = {
    /* A file name's argument type, as a setup's name is UTF-8 in every locale. */
    { "setup", 0, 0, G_OPTION_ARG_FILENAME, &options->setup,
      N_ ("The setup to solve; the first one if not given"), N_ ("NAME") },
    { "from", 0, 0, G_OPTION_ARG_DOUBLE, &options->steps.from,
      N_ ("First wheel travel, mm from the reference height; full droop if not given"),
      N_ ("MM") },
    { "to", 0, 0, G_OPTION_ARG_DOUBLE, &options->steps.to,
      N_ ("Last wheel travel, mm; full bump if not given"), N_ ("MM") },
    { "step", 0, 0, G_OPTION_ARG_DOUBLE, &options->steps.step, words.step, N_ ("MM") },
    { "format", 0, 0, G_OPTION_ARG_STRING, &options->format, words.format,
      N_ ("FORMAT") },
    { 0 },
  };

  return command_line_parse (name, entries, argc, argv, file);
}

void
table_options_clear (TableOptions *options)
{
  g_clear_pointer (&options->setup, g_free);
  g_clear_pointer (&options->format, g_free);
}

gboolean
command_line_choose_steps (const Car *car, TravelSteps asked, TravelSteps *steps)
{
  const TravelSteps whole = travel_steps_of_car (car);
  g_autoptr (GError) error = NULL;
  gsize n_rows;

  steps->from = isnan (asked.from) ? whole.from : asked.from;
  steps->to = isnan (asked.to) ? whole.to : asked.to;
  steps->step = isnan (asked.step) ? whole.step : asked.step;
  if (travel_steps_count (*steps, &n_rows, &error))
    return TRUE;
  command_line_say ("%s", error->message);
  return FALSE;
}
