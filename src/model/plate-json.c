/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/plate-json.h"
#include "model/file-replace.h"
#include "model/plate-json-check.h"

#include <glib/gi18n-lib.h>

/* One byte more than is allowed is enough to see that a file is too large. */
Plate *
plate_load (GFile *file, GError **error)
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
  return plate_from_json (text, length, error);
}

/* The values first: numbers that are not finite cannot be written. */
static char *
write_checked (const Plate *plate, gsize *length, GError **error)
{
  g_autofree char *text = NULL;
  g_autoptr (Plate) again = NULL;

  if (!plate_check_values (plate, error))
    return NULL;
  text = plate_to_json (plate, length);
  again = plate_from_json (text, *length, error);
  return again != NULL ? g_steal_pointer (&text) : NULL;
}

gboolean
plate_check (const Plate *plate, GError **error)
{
  gsize length;
  g_autofree char *text = write_checked (plate, &length, error);

  return text != NULL;
}

gboolean
plate_save (const Plate *plate, GFile *file, GError **error)
{
  gsize length;
  g_autofree char *text = write_checked (plate, &length, error);
  g_autofree char *path = g_file_get_path (file);

  if (text == NULL) {
    g_prefix_error (error, "%s ",
                    _ ("The plate was not saved, as it could not be opened again:"));
    return FALSE;
  }
  if (path != NULL)
    return file_replace (path, text, length, error);
  return g_file_replace_contents (file, text, length, NULL, FALSE, G_FILE_CREATE_NONE,
                                  NULL, NULL, error);
}
