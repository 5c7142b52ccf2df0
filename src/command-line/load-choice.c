/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command-line/command-line.h"

#include <glib/gi18n-lib.h>

gboolean
command_line_choose_spring (const char *name, SpringMode *mode)
{
  static const char *const names[] = {
    [SPRING_AS_SET] = "as-set", [SPRING_COIL_ONLY] = "coil", [SPRING_BAR_ONLY] = "torsion"
  };

  *mode = SPRING_AS_SET;
  if (name == NULL)
    return TRUE;
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    if (g_str_equal (name, names[i])) {
      *mode = (SpringMode) i;
      return TRUE;
    }
  command_line_say (_ ("--spring is coil, torsion or as-set, not “%s”."), name);
  return FALSE;
}

gboolean
command_line_choose_case (const Car *car, const char *name, CarLoadCase *found)
{
  CarLoadCase cases[LOAD_CASES_MOST];
  const gsize n = car_load_cases (car, cases);
  g_autoptr (GString) names = g_string_new (NULL);

  for (gsize i = 0; i < n; i++) {
    if (name == NULL || g_str_equal (name, cases[i].name)) {
      *found = cases[i];
      return TRUE;
    }
    g_string_append_printf (names, "%s“%s”", i > 0 ? ", " : "", cases[i].name);
  }
  command_line_say (_ ("There is no load case “%s”; the car has %s."), name, names->str);
  return FALSE;
}
