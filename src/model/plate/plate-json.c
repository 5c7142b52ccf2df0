/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/plate/plate-json.h"
#include "model/file/file-replace.h"
#include "model/json/json-strict.h"
#include "model/plate/plate-json-check.h"

#include <glib/gi18n-lib.h>

Plate *
plate_load (GFile *file, GError **error)
{
  gsize length;
  g_autofree char *text = json_strict_read (file, &length, error);

  return text != NULL ? plate_from_json (text, length, error) : NULL;
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

  if (text == NULL) {
    g_prefix_error (error, "%s ",
                    _ ("The plate was not saved, as it could not be opened again:"));
    return FALSE;
  }
  return file_replace_at (file, text, length, error);
}
