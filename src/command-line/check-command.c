/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command-line/command-line.h"
#include "model/advice/misread-figure.h"
#include "model/advice/plausibility.h"
#include "model/car/car-unknown.h"
#include "model/load/spring-verdict.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define MOST_NAMED 5 /* of the members that are not read */

/* Setups that their springs do not carry. */
static guint
append_springs (const Car *car, GString *text)
{
  g_autoptr (Study) study = study_new ();
  g_autoptr (SpringStudy) springs = spring_study_new ();
  guint n = 0;

  study_solve (study, car, 0, 0.0);
  spring_study_solve (springs, study, car);
  for (guint i = 0; i < springs->n_setups; i++) {
    g_autoptr (GPtrArray) verdicts = spring_verdicts (springs, i);

    for (guint v = 0; v < verdicts->len; v++) {
      const SpringVerdict *verdict = verdicts->pdata[v];

      if (!g_str_equal (verdict->id, "standing"))
        continue;
      g_string_append_printf (text, "springs: “%s”: %s\n", car_setup (car, i)->name,
                              verdict->sentence);
      n++;
    }
  }
  return n;
}

/* @n_measured of @n warnings are of the corner as measured. */
static char *
summary (const char *file, guint n_measured, guint n)
{
  const guint n_setups = n - n_measured;

  if (n == 0)
    return g_strdup_printf (_ ("%s: the car is sound and nothing looks implausible."),
                            file);
  if (n_measured == 0)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                         "%s: the car is sound, with %u warning.",
                                         "%s: the car is sound, with %u warnings.", n),
                            file, n);

  g_autofree char *measured = g_strdup_printf (
      g_dngettext (
          GETTEXT_PACKAGE,
          "%s: the car can be solved, but as measured %u thing looks implausible.",
          "%s: the car can be solved, but as measured %u things look implausible.",
          n_measured),
      file, n_measured);
  if (n_setups == 0)
    return g_steal_pointer (&measured);

  g_autofree char *setups =
      g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Its setups have %u warning.",
                                    "Its setups have %u warnings.", n_setups),
                       n_setups);
  return g_strjoin (" ", measured, setups, NULL);
}

static void
append_warnings (GString *text, GPtrArray *warnings, guint from, guint to)
{
  for (guint i = from; i < to; i++) {
    const PlausibilityWarning *warning = g_ptr_array_index (warnings, i);

    g_string_append_printf (text, "%s: %s\n", warning->id, warning->sentence);
  }
}

static void
append_misread (GString *text, const Car *car)
{
  MisreadFigure found[MISREAD_MOST];
  const guint n = misread_figures (car, found);
  g_autofree char *sentence = misread_sentence (car, found, n);

  if (sentence != NULL)
    g_string_append_printf (text, "misread: %s\n", sentence);
}

/* What a file may hold for others, and what is misspelt. */
static void
append_unknown (GString *text, const Car *car)
{
  g_autoptr (GPtrArray) unknown = car_unknown_members (car);
  g_autoptr (GString) names = g_string_new (NULL);
  guint n_others = 0;

  for (guint i = 0; i < unknown->len; i++) {
    const CarUnknown *one = unknown->pdata[i];

    if (one->meant != NULL) {
      g_string_append (text, "unknown: ");
      /* Translators: members of the file, "tyre.section_width" and "section_width_mm". */
      g_string_append_printf (text, _ ("%s is not read; was %s meant?"), one->path,
                              one->meant);
      g_string_append_c (text, '\n');
    } else if (n_others++ < MOST_NAMED) {
      g_string_append_printf (names, "%s%s", names->len > 0 ? ", " : "", one->path);
    }
  }
  if (n_others == 0)
    return;
  g_string_append (text, "unknown: ");
  if (n_others <= MOST_NAMED)
    /* Translators: members of the file, divided by commas. */
    g_string_append_printf (text, _ ("Kept, but not read: %s."), names->str);
  else
    g_string_append_printf (text,
                            g_dngettext (GETTEXT_PACKAGE,
                                         "Kept, but not read: %s and %u more.",
                                         "Kept, but not read: %s and %u more.",
                                         n_others - MOST_NAMED),
                            names->str, n_others - MOST_NAMED);
  g_string_append_c (text, '\n');
}

static char *
report (const Car *car, const char *file)
{
  g_autoptr (GFile) car_file = g_file_new_for_commandline_arg (file);
  g_autoptr (PlateLibrary) library = plate_library_load (car_file);
  g_autoptr (GPtrArray) warnings = plausibility_check_fitted (car, library);
  const guint n_measured = plausibility_n_measured (warnings);
  g_autoptr (GString) text = g_string_new (NULL), of_springs = g_string_new (NULL);
  const guint n = warnings->len + append_springs (car, of_springs);
  g_autofree char *first = summary (file, n_measured, n);

  g_string_append_printf (text, "%s\n", first);
  append_warnings (text, warnings, 0, n_measured);
  append_misread (text, car);
  append_warnings (text, warnings, n_measured, warnings->len);
  g_string_append (text, of_springs->str);
  append_unknown (text, car);
  return g_strdup (text->str);
}

int
check_command (int argc, char **argv)
{
  const GOptionEntry none[] = { { 0 } };
  char *file;

  if (!command_line_parse ("check", none, argc, argv, &file))
    return EXIT_USAGE;

  g_autoptr (Car) car = command_line_load (file);
  if (car == NULL)
    return EXIT_REFUSED;

  g_autofree char *text = report (car, file);
  return command_line_print (text, strlen (text)) ? EXIT_DONE : EXIT_REFUSED;
}
