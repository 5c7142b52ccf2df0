/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command-line/command-line.h"

#include <glib/gi18n-lib.h>

static char *
list_setups (const Car *car)
{
  g_autoptr (GString) names = g_string_new (NULL);

  for (guint i = 0; i < car->setups->len; i++)
    g_string_append_printf (names, "%s“%s”", i > 0 ? ", " : "", car_setup (car, i)->name);
  return g_strdup (names->str);
}

gboolean
command_line_choose_setup (const Car *car, const char *name, guint *setup)
{
  *setup = 0;
  if (name == NULL || car_find_setup (car, name, setup))
    return TRUE;

  g_autofree char *names = list_setups (car);
  command_line_say (_ ("There is no setup “%s”; the car has %s."), name, names);
  return FALSE;
}
