/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command-line/command-line.h"
#include "model/load/spring-table.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* A table to read has fewer rows. */
static TravelSteps
asked_steps (const TableOptions *options, TableFormat format)
{
  TravelSteps steps = options->steps;

  if (isnan (steps.step) && format == TABLE_TEXT)
    steps.step = SPRING_TABLE_TEXT_STEP;
  return steps;
}

static int
print_table (const Car *car, guint setup, TravelSteps steps, TableFormat format)
{
  g_autoptr (Study) study = study_new ();
  g_autoptr (SpringStudy) springs = spring_study_new ();
  g_autoptr (GString) text = g_string_new (NULL);

  study_solve (study, car, setup, 0.0);
  spring_study_solve (springs, study, car);
  if (springs->setups[setup].stands == STANDS_NOT_GIVEN)
    command_line_say (_ ("Warning: the car file gives no spring for the setup “%s”."),
                      car_setup (car, setup)->name);
  spring_table_write (springs, setup, steps, format, text);
  return command_line_print (text->str, text->len) ? EXIT_DONE : EXIT_REFUSED;
}

static int
run (const TableOptions *options, const char *file)
{
  TableFormat format;

  if (!command_line_choose_format (options->format, &format))
    return EXIT_USAGE;

  g_autoptr (Car) car = command_line_load (file);
  TravelSteps steps;
  guint setup;

  if (car == NULL)
    return EXIT_REFUSED;
  if (!command_line_choose_setup (car, options->setup, &setup) ||
      !command_line_choose_steps (car, asked_steps (options, format), &steps))
    return EXIT_USAGE;
  return print_table (car, setup, steps, format);
}

int
springs_command (int argc, char **argv)
{
  const TableOptionWords words = {
    N_ ("Between two rows, mm; 10 for text and 1 for csv and json if not given"),
    N_ ("text, csv or json; text if not given")
  };
  g_auto (TableOptions) options = { 0 };
  char *file;

  return command_line_parse_table ("springs", words, argc, argv, &options, &file)
             ? run (&options, file)
             : EXIT_USAGE;
}
