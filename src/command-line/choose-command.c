/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command-line/choose-command.h"

#include "command-line/choose-aims.h"
#include "command-line/choose-plates.h"
#include "model/choice/choice-table.h"

#include <glib/gi18n-lib.h>

typedef struct {
  char **plates, **targets, **limits, **rest;
  char *setup, *spring, *format, *card, *date;
  gboolean no_bolt, no_swap;
} Options;

static void
options_clear (Options *options)
{
  g_strfreev (options->plates);
  g_strfreev (options->targets);
  g_strfreev (options->limits);
  g_strfreev (options->rest);
  g_free (options->setup);
  g_free (options->spring);
  g_free (options->format);
  g_free (options->card);
  g_free (options->date);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Options, options_clear)

static gboolean
parse (int argc, char **argv, Options *options)
{
  const GOptionEntry entries[] = {
    { "plates", 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &options->plates,
      N_ ("A plate file to choose from; more may follow it, and it may be repeated; all plates on the shelf if not given"),
      N_ ("PLATE…") },
    { "target", 0, 0, G_OPTION_ARG_STRING_ARRAY, &options->targets,
      N_ ("What to aim for: camber=-2.5 exactly, camber=-2.7:-2.3 between, caster=5: at least, scrub_change=0@0.2 with a weight; may be repeated; the car's own targets if not given"),
      N_ ("AIM=RANGE[@WEIGHT]") },
    { "setup", 0, 0, G_OPTION_ARG_FILENAME, &options->setup,
      N_ ("The setup whose height and corrections count; the first one if not given"),
      N_ ("NAME") },
    { "spring", 0, 0, G_OPTION_ARG_STRING, &options->spring,
      N_ ("coil or torsion: what carries the car, for the side force on the rod; as the car stands if not given"),
      N_ ("SPRING") },
    { "no-bolt", 0, 0, G_OPTION_ARG_NONE, &options->no_bolt,
      N_ ("Leave camber bolts out"), NULL },
    { "no-swap", 0, 0, G_OPTION_ARG_NONE, &options->no_swap,
      N_ ("Leave left and right plates on their own sides"), NULL },
    { "limit", 0, 0, G_OPTION_ARG_STRING_ARRAY, &options->limits,
      N_ ("Another limit than the car's, such as tyre_clearance=8; may be repeated"),
      N_ ("NAME=VALUE") },
    { "format", 0, 0, G_OPTION_ARG_STRING, &options->format,
      N_ ("text, csv or json; text if not given"), N_ ("FORMAT") },
    { "card", 0, 0, G_OPTION_ARG_FILENAME, &options->card,
      N_ ("Write the fitting card of the best answer: .pdf, .svg or .png"), N_ ("PATH") },
    { "date", 0, 0, G_OPTION_ARG_STRING, &options->date,
      N_ ("A date for the card; without it the same car gives the same bytes"),
      N_ ("TEXT") },
    { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &options->rest, NULL, NULL },
    { 0 },
  };

  return command_line_parse_options ("choose", entries, argc, argv);
}

/* The car file, and behind it plates if --plates is there at all. */
static gboolean
check_files (const Options *options)
{
  const guint n = options->rest != NULL ? g_strv_length (options->rest) : 0;

  if (n == 1 || (n > 1 && options->plates != NULL))
    return TRUE;
  command_line_say (n == 0 ? _ ("choose needs a car file; see strutwright choose --help.")
                           : _ ("choose needs one car file; plate files go behind "
                                "--plates."));
  return FALSE;
}

static gboolean
choose_spring (const char *name, SpringCarrier *carrier)
{
  *carrier = g_strcmp0 (name, "torsion") == 0 ? CARRIED_BY_TORSION_BAR : CARRIED_BY_COIL;
  if (name == NULL || g_str_equal (name, "torsion") || g_str_equal (name, "coil"))
    return TRUE;
  command_line_say (_ ("--spring is coil or torsion, not “%s”."), name);
  return FALSE;
}

static gboolean
load_plates (const Options *options, ChoosePlates *plates)
{
  if (options->plates == NULL)
    return choose_plates_add_library (plates, options->rest[0]);
  for (char **file = options->plates; *file != NULL; file++)
    if (!choose_plates_add (plates, *file))
      return FALSE;
  for (char **file = options->rest + 1; *file != NULL; file++)
    if (!choose_plates_add (plates, *file))
      return FALSE;
  return TRUE;
}

static int
write_card (const Options *options, const ChoiceTable *table, ChooseCardWriter writer)
{
  const ChoiceAnswer *best = &g_array_index (table->answers, ChoiceAnswer, 0);
  const ChooseCard card = { .car = table->car,
                            .question = &table->question,
                            .answer = best,
                            .path = options->card,
                            .date = options->date };

  if (!best->fits)
    command_line_say (_ ("Warning: no plate fits; the card says why the best one does "
                         "not."));
  return writer (&card);
}

static int
answer (const Options *options,
        ChoiceTable *table,
        TableFormat format,
        ChooseCardWriter writer)
{
  g_autoptr (GArray) answers = choice_solve (table->car, &table->question, table->plates,
                                             table->n_plates);
  g_autoptr (GString) text = g_string_new (NULL);

  table->answers = answers;
  choice_table_write (table, format, text);
  if (options->card != NULL) {
    const int status = write_card (options, table, writer);

    if (status != EXIT_DONE)
      return status;
  }
  return command_line_print (text->str, text->len) ? EXIT_DONE : EXIT_REFUSED;
}

static int
run (const Options *options, ChooseCardWriter writer)
{
  ChoiceTable table = { .question = { .try_bolt = !options->no_bolt,
                                      .try_swap = !options->no_swap } };
  TableFormat format;

  if (!check_files (options) || !command_line_choose_format (options->format, &format) ||
      !choose_spring (options->spring, &table.question.carrier))
    return EXIT_USAGE;

  g_autoptr (Car) car = command_line_load (options->rest[0]);
  g_autoptr (ChoosePlates) plates = choose_plates_new ();
  if (car == NULL)
    return EXIT_REFUSED;
  if (!command_line_choose_setup (car, options->setup, &table.question.setup) ||
      !choose_targets (car, options->targets) || !choose_limits (car, options->limits))
    return EXIT_USAGE;
  if (options->spring == NULL)
    table.question.carrier = choice_usual_carrier (car, table.question.setup);
  if (!load_plates (options, plates))
    return EXIT_REFUSED;
  table.car = car;
  table.plates = (const Plate *const *) plates->plates->pdata;
  table.files = (const char *const *) plates->files->pdata;
  table.n_plates = plates->plates->len;
  return answer (options, &table, format, writer);
}

int
choose_run (int argc, char **argv, ChooseCardWriter writer)
{
  /* as given: parsing takes options out */
  g_autofree char **given = g_memdup2 (argv, ((gsize) argc + 1) * sizeof (char *));
  g_auto (Options) options = { 0 };

  if (!parse (argc, argv, &options))
    return EXIT_USAGE;
  if (options.card != NULL && writer == NULL)
    return plot_launch (argc, given);
  return run (&options, writer);
}

int
choose_command (int argc, char **argv)
{
  return choose_run (argc, argv, NULL);
}
