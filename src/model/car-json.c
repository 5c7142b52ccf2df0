/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car-json.h"
#include "model/file-replace.h"

#include <glib/gi18n-lib.h>

G_DEFINE_QUARK (car - error - quark, car_error)

/* One byte more than is allowed is enough to see that a file is too large. */
Car *
car_load (GFile *file, GError **error)
{
  g_autoptr (GFileInputStream) stream = g_file_read (file, NULL, error);
  g_autofree char *text = NULL;
  gsize length;

  if (stream == NULL)
    return NULL;
  text = g_malloc (CAR_FILE_MOST_BYTES + 1);
  if (!g_input_stream_read_all (G_INPUT_STREAM (stream), text, CAR_FILE_MOST_BYTES + 1,
                                &length, NULL, error))
    return NULL;
  return car_from_json (text, length, error);
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
  g_autofree char *path = g_file_get_path (file);

  if (!can_be_loaded_again (text, length, error))
    return FALSE;
  if (path != NULL)
    return file_replace (path, text, length, error);
  return g_file_replace_contents (file, text, length, NULL, FALSE, G_FILE_CREATE_NONE,
                                  NULL, NULL, error);
}
