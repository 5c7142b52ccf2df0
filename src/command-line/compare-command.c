/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command-line/command-line.h"
#include "model/study/compare.h"

#include <glib/gi18n-lib.h>

typedef struct {
  char **setups;
  char *format;
} Options;

static gboolean
parse (int argc, char **argv, Options *options, char **file)
{
  const GOptionEntry entries[] = {
    { "setup", 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &options->setups,
      N_ ("A setup to compare with the baseline; may be repeated; all if not given"),
      N_ ("NAME") },
    { "format", 0, 0, G_OPTION_ARG_STRING, &options->format,
      N_ ("text, csv or json; text if not given. csv has a value and a change for each setup, a row for each quantity"),
      N_ ("FORMAT") },
    { 0 },
  };

  return command_line_parse ("compare", entries, argc, argv, file);
}

/* Takes every setup out of @car that is neither named nor the baseline. */
static gboolean
keep_setups (Car *car, char *const *names)
{
  g_autofree gboolean *is_kept = g_new0 (gboolean, car->setups->len);

  if (names == NULL)
    return TRUE;
  car->baseline = MIN (car->baseline, car->setups->len - 1);
  is_kept[car->baseline] = TRUE;
  for (; *names != NULL; names++) {
    guint setup;

    if (!command_line_choose_setup (car, *names, &setup))
      return FALSE;
    is_kept[setup] = TRUE;
  }
  for (guint i = car->setups->len; i-- > 0;)
    if (!is_kept[i]) {
      g_array_remove_index (car->setups, i);
      car->baseline -= i < car->baseline ? 1 : 0;
    }
  return TRUE;
}

static void
say_gaps (const Study *study)
{
  for (guint i = 0; i < study->n_setups; i++) {
    const StudyCorner *setup = &study->setups[i];

    if (setup->at_height.status != POSE_OK)
      command_line_say (
          _ ("Warning: the setup “%s” cannot be assembled where it stands. %s"),
          setup->name, pose_status_sentence (setup->at_height.status));
  }
}

static int
run (const Options *options, TableFormat format, const char *file)
{
  g_autoptr (Car) car = command_line_load (file);
  g_autoptr (Study) study = study_new ();
  g_autoptr (GString) text = g_string_new (NULL);

  if (car == NULL)
    return EXIT_REFUSED;
  if (!keep_setups (car, options->setups))
    return EXIT_USAGE;
  study_solve (study, car, car->baseline, 0.0);
  compare_write (study, format, text);
  say_gaps (study);
  return command_line_print (text->str, text->len) ? EXIT_DONE : EXIT_REFUSED;
}

int
compare_command (int argc, char **argv)
{
  Options options = { 0 };
  TableFormat format;
  char *file;
  const int status = parse (argc, argv, &options, &file) &&
                             command_line_choose_format (options.format, &format)
                         ? run (&options, format, file)
                         : EXIT_USAGE;

  g_strfreev (options.setups);
  g_free (options.format);
  return status;
}
