/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command-line/choose-plates.h"

#include "command-line/command-line.h"
#include "model/plate/plate-json.h"
#include "model/plate/plate-library.h"

#include <glib/gi18n-lib.h>

ChoosePlates *
choose_plates_new (void)
{
  ChoosePlates *plates = g_new0 (ChoosePlates, 1);

  plates->plates = g_ptr_array_new_with_free_func ((GDestroyNotify) plate_free);
  plates->files = g_ptr_array_new_with_free_func (g_free);
  return plates;
}

void
choose_plates_free (ChoosePlates *plates)
{
  g_ptr_array_unref (plates->plates);
  g_ptr_array_unref (plates->files);
  g_free (plates);
}

static void
take (ChoosePlates *plates, Plate *plate, char *file)
{
  g_ptr_array_add (plates->plates, plate);
  g_ptr_array_add (plates->files, file);
}

gboolean
choose_plates_add (ChoosePlates *plates, const char *file)
{
  g_autoptr (GFile) source = g_file_new_for_commandline_arg (file);
  g_autoptr (GError) error = NULL;
  Plate *plate = plate_load (source, &error);

  if (plate != NULL) {
    take (plates, plate, g_filename_display_name (file));
    return TRUE;
  }
  /* GIO names the file itself. */
  if (error->domain == FILE_REFUSAL)
    command_line_say ("%s: %s", file, error->message);
  else
    command_line_say ("%s", error->message);
  return FALSE;
}

gboolean
choose_plates_add_library (ChoosePlates *plates, const char *car_file)
{
  g_autoptr (GFile) car = g_file_new_for_commandline_arg (car_file);
  g_autoptr (PlateLibrary) library = plate_library_load (car);

  for (guint i = 0; i < library->problems->len; i++)
    command_line_say (_ ("Warning: %s"), (char *) library->problems->pdata[i]);
  for (guint i = 0; i < library->plates->len; i++) {
    const ShelfPlate *shelf = g_ptr_array_index (library->plates, i);

    take (plates, plate_copy (shelf->plate), g_file_get_parse_name (shelf->file));
  }
  if (plates->plates->len > 0)
    return TRUE;
  command_line_say (
      _ ("There are no plates to choose from: name some behind --plates, or put plate "
         "files beside the car file."));
  return FALSE;
}
