/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car/car-json.h"
#include "model/file/file-replace.h"
#include "model/json/json-strict.h"

#include <glib/gi18n-lib.h>

Car *
car_load (GFile *file, GError **error)
{
  gsize length;
  g_autofree char *text = json_strict_read (file, &length, error);

  return text != NULL ? car_from_json (text, length, error) : NULL;
}

gboolean
car_check (const Car *car, GError **error)
{
  gsize length;
  g_autofree char *text = car_to_json (car, &length);
  g_autoptr (Car) again = car_from_json (text, length, error);

  return again != NULL;
}

static gboolean
can_be_loaded_again (const char *text, gsize length, GError **error)
{
  g_autoptr (Car) again = car_from_json (text, length, error);

  if (again == NULL)
    g_prefix_error (error, "%s ",
                    _ ("The car was not saved, as it could not be opened again:"));
  return again != NULL;
}

gboolean
car_save (const Car *car, GFile *file, GError **error)
{
  gsize length;
  g_autofree char *text = car_to_json (car, &length);

  if (!can_be_loaded_again (text, length, error))
    return FALSE;
  return file_replace_at (file, text, length, error);
}
