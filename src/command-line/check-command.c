/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command-line/command-line.h"
#include "model/plausibility.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static char *
report (const Car *car, const char *file)
{
  g_autoptr (GPtrArray) warnings = plausibility_check (car);
  g_autoptr (GString) text = g_string_new (NULL);

  g_string_append_printf (text,
                          warnings->len == 0
                              ? _ ("%s: the car is sound and nothing looks implausible.")
                              : g_dngettext (GETTEXT_PACKAGE,
                                             "%s: the car is sound, with %u warning.",
                                             "%s: the car is sound, with %u warnings.",
                                             warnings->len),
                          file, warnings->len);
  g_string_append_c (text, '\n');
  for (guint i = 0; i < warnings->len; i++) {
    const PlausibilityWarning *warning = g_ptr_array_index (warnings, i);

    g_string_append_printf (text, "%s: %s\n", warning->id, warning->sentence);
  }
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
