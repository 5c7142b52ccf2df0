/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command-line/plot-choice.h"
#include "drawing/report/report.h"

#include <glib/gi18n-lib.h>

typedef struct {
  char *output, *paper, *date, *load_case, *spring;
  char **pages, **curves, **setups;
} Options;

static gboolean
parse (int argc, char **argv, Options *options, char **file)
{
  const GOptionEntry entries[] = {
    { "output", 0, 0, G_OPTION_ARG_FILENAME, &options->output,
      N_ ("The file to write: .pdf"), N_ ("PATH") },
    { "paper", 0, 0, G_OPTION_ARG_STRING, &options->paper,
      N_ ("a4 or letter; a4 if not given"), N_ ("PAPER") },
    { "page", 0, 0, G_OPTION_ARG_STRING_ARRAY, &options->pages,
      N_ ("car, setups, curves, sheet, height, springs or loads; may be repeated; all "
          "that the car gives if not given"),
      N_ ("PAGE") },
    { "curve", 0, 0, G_OPTION_ARG_STRING_ARRAY, &options->curves,
      N_ ("A quantity to draw, such as camber_deg; may be repeated"), N_ ("NAME") },
    { "setup", 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &options->setups,
      N_ ("A setup to report on; may be repeated; those not hidden if not given; the "
          "last one is in hand"),
      N_ ("NAME") },
    { "case", 0, 0, G_OPTION_ARG_FILENAME, &options->load_case,
      N_ ("A load case of the car, for loads; standing if not given"), N_ ("NAME") },
    { "spring", 0, 0, G_OPTION_ARG_STRING, &options->spring,
      N_ ("coil, torsion or as-set: what carries that load; as-set if not given"),
      N_ ("SPRING") },
    { "date", 0, 0, G_OPTION_ARG_STRING, &options->date,
      N_ ("A date for the head of the pages; without it the same car gives the same "
          "bytes"),
      N_ ("TEXT") },
    { 0 },
  };

  if (!command_line_parse ("report", entries, argc, argv, file))
    return FALSE;
  if (options->output != NULL)
    return TRUE;
  command_line_say (_ ("report needs --output with the file to write."));
  return FALSE;
}

static gboolean
choose_pages (char **names, bool has[N_REPORT_PARTS])
{
  const char *keys[N_REPORT_PARTS + 1] = { NULL };

  for (ReportPart part = 0; part < N_REPORT_PARTS; part++) {
    keys[part] = report_part_key (part);
    has[part] = names == NULL;
  }
  for (; names != NULL && *names != NULL; names++) {
    const int part = plot_choose_word ("page", *names, keys);

    if (part < 0)
      return FALSE;
    has[part] = true;
  }
  return TRUE;
}

/* Without names those that are not hidden, the last of them in hand. */
static gboolean
choose_setups (Car *car, char **names, guint *in_hand)
{
  if (names != NULL)
    return plot_choose_setups (car, names, in_hand);
  *in_hand = car->baseline;
  for (guint i = 0; i < car->setups->len; i++)
    if (!car_setup (car, i)->is_hidden)
      *in_hand = i;
  return TRUE;
}

/* A page that was asked for by name. */
static gboolean
check_given (const Report *report, const Options *options)
{
  for (ReportPart part = 0; options->pages != NULL && part < N_REPORT_PARTS; part++)
    if (report->has[part] && !report_part_is_given (report, part)) {
      command_line_say (
          _ ("No setup in the report has a spring, which the page “%s” would be about."),
          report_part_key (part));
      return FALSE;
    }
  return TRUE;
}

static int
run (const Options *options, const char *file)
{
  Report report = { .date = options->date };
  g_autoptr (GError) error = NULL;

  if (!plot_choose_paper (options->paper, &report.paper) ||
      !choose_pages (options->pages, report.has) ||
      !plot_choose_curves (options->curves, &report.choice))
    return EXIT_USAGE;

  g_autoptr (Car) car = command_line_load (file);
  if (car == NULL)
    return EXIT_REFUSED;
  report.car = car;
  if (!choose_setups (car, options->setups, &report.in_hand) ||
      !command_line_choose_case (car, options->load_case, &report.load_case) ||
      !command_line_choose_spring (options->spring, &report.mode))
    return EXIT_USAGE;
  if (!check_given (&report, options))
    return EXIT_REFUSED;
  return report_write (&report, options->output, &error) ? EXIT_DONE
                                                         : plot_say_error (error);
}

int
report_command (int argc, char **argv)
{
  Options options = { 0 };
  char *file;
  const int status =
      parse (argc, argv, &options, &file) ? run (&options, file) : EXIT_USAGE;

  g_free (options.output);
  g_free (options.paper);
  g_free (options.date);
  g_free (options.load_case);
  g_free (options.spring);
  g_strfreev (options.pages);
  g_strfreev (options.curves);
  g_strfreev (options.setups);
  return status;
}
