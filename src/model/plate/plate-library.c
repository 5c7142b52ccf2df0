/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/plate/plate-library.h"
#include "model/file/data-path.h"
#include "model/plate/plate-json.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>

#define SUFFIX ".swplate"
#define LONGEST_STEM 60 /* characters of a plate's name that its file is named by */

static void
free_shelf_plate (gpointer data)
{
  ShelfPlate *shelf = data;

  plate_free (shelf->plate);
  g_object_unref (shelf->file);
  g_free (shelf);
}

void
plate_library_free (PlateLibrary *library)
{
  if (library == NULL)
    return;
  g_ptr_array_unref (library->plates);
  g_ptr_array_unref (library->problems);
  g_free (library);
}

const ShelfPlate *
plate_library_find (const PlateLibrary *library, const char *name)
{
  for (guint i = 0; i < library->plates->len; i++) {
    const ShelfPlate *shelf = g_ptr_array_index (library->plates, i);

    if (g_strcmp0 (shelf->plate->name, name) == 0)
      return shelf;
  }
  return NULL;
}

static char *
shown_name (GFile *file)
{
  g_autofree char *base = g_file_get_basename (file);

  return g_filename_display_name (base);
}

gboolean
plate_library_takes_name (const char *name)
{
  const gsize length = strlen (name), end = strlen (SUFFIX);

  return length > end && g_ascii_strcasecmp (name + length - end, SUFFIX) == 0;
}

/* What lies hidden is no plate: leftovers of other systems end in the same suffix. */
static gboolean
is_plate_file (GFileInfo *info)
{
  const char *name = g_file_info_get_name (info);

  return g_file_info_get_file_type (info) == G_FILE_TYPE_REGULAR && name[0] != '.' &&
         plate_library_takes_name (name);
}

static int
compare_file_names (gconstpointer a, gconstpointer b)
{
  g_autofree char *first = g_file_get_basename (*(GFile *const *) a);
  g_autofree char *second = g_file_get_basename (*(GFile *const *) b);

  return strcmp (first, second);
}

static void
collect_files (GFileEnumerator *entries, GPtrArray *files, GError **error)
{
  GFileInfo *info;
  GFile *file;

  while (g_file_enumerator_iterate (entries, &info, &file, NULL, error) && info != NULL)
    if (is_plate_file (info))
      g_ptr_array_add (files, g_object_ref (file));
}

/* The plate files in @folder, in the order of their names. A folder that is not there
 * holds none. */
static GPtrArray *
list_folder (PlateLibrary *library, GFile *folder)
{
  GPtrArray *files = g_ptr_array_new_with_free_func (g_object_unref);
  g_autoptr (GError) error = NULL;
  g_autoptr (GFileEnumerator) entries =
                 g_file_enumerate_children (folder,
                                            G_FILE_ATTRIBUTE_STANDARD_NAME
                                            "," G_FILE_ATTRIBUTE_STANDARD_TYPE,
                                            G_FILE_QUERY_INFO_NONE, NULL, &error);

  if (entries != NULL)
    collect_files (entries, files, &error);
  if (error != NULL && !g_error_matches (error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND)) {
    g_autofree char *name = g_file_get_parse_name (folder);

    /* Translators: a folder and the system's reason. */
    g_ptr_array_add (library->problems,
                     g_strdup_printf (_ ("Plates in %s could not be looked for: %s"),
                                      name, error->message));
  }
  g_ptr_array_sort (files, compare_file_names);
  return files;
}

static void
add_problem (PlateLibrary *library, GFile *file, const char *reason)
{
  g_autofree char *name = shown_name (file);

  /* Translators: a file name and a whole sentence on what is wrong with it. */
  g_ptr_array_add (library->problems,
                   g_strdup_printf (_ ("The plate file %s is left out: %s"), name,
                                    reason));
}

/* Two files of one folder with the same name inside: a copy that was not renamed. */
static void
add_name_problem (PlateLibrary *library, GFile *file, const ShelfPlate *other)
{
  g_autofree char *taken = shown_name (other->file);
  g_autofree char *reason =
      g_strdup_printf (_ ("Its plate has the same name as that of %s."), taken);

  add_problem (library, file, reason);
}

static void
add_file (PlateLibrary *library, GFile *file, PlateOrigin origin)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Plate) plate = plate_load (file, &error);

  if (plate == NULL) {
    add_problem (library, file, error->message);
    return;
  }

  const ShelfPlate *other = plate_library_find (library, plate->name);
  if (other != NULL) {
    if (other->origin == origin)
      add_name_problem (library, file, other);
    return;
  }
  ShelfPlate *shelf = g_new (ShelfPlate, 1);
  *shelf = (ShelfPlate){ .plate = g_steal_pointer (&plate),
                         .file = g_object_ref (file),
                         .origin = origin };
  g_ptr_array_add (library->plates, shelf);
}

static void
add_folder (PlateLibrary *library, GFile *folder, PlateOrigin origin)
{
  g_autoptr (GPtrArray) files = list_folder (library, folder);

  for (guint i = 0; i < files->len; i++)
    add_file (library, g_ptr_array_index (files, i), origin);
}

static GFile *
program_folder (void)
{
  g_autofree char *path = data_path ("plates");

  return g_file_new_for_path (path);
}

static GFile *
user_folder (void)
{
  g_autofree char *path =
      g_build_filename (g_get_user_data_dir (), "strutwright", "plates", NULL);

  return g_file_new_for_path (path);
}

static int
compare_shelf_plates (gconstpointer a, gconstpointer b)
{
  const ShelfPlate *first = *(const ShelfPlate *const *) a;
  const ShelfPlate *second = *(const ShelfPlate *const *) b;

  if (first->origin != second->origin)
    return first->origin > second->origin ? -1 : 1;
  return g_utf8_collate (first->plate->name, second->plate->name);
}

PlateLibrary *
plate_library_load (GFile *car_file)
{
  g_autoptr (GFile) beside = car_file != NULL ? g_file_get_parent (car_file) : NULL;
  g_autoptr (GFile) own = user_folder ();
  g_autoptr (GFile) program = program_folder ();
  PlateLibrary *library = g_new (PlateLibrary, 1);

  library->plates = g_ptr_array_new_with_free_func (free_shelf_plate);
  library->problems = g_ptr_array_new_with_free_func (g_free);
  /* A car may lie among the plates themselves: they are read once. */
  if (beside != NULL && !g_file_equal (beside, own) && !g_file_equal (beside, program))
    add_folder (library, beside, PLATE_FROM_CAR_FOLDER);
  add_folder (library, own, PLATE_FROM_USER);
  add_folder (library, program, PLATE_FROM_PROGRAM);
  g_ptr_array_sort (library->plates, compare_shelf_plates);
  return library;
}

GFile *
plate_library_user_folder (void)
{
  GFile *folder = user_folder ();
  g_autofree char *path = g_file_get_path (folder);

  /* Where it cannot be made, saving into it says why. */
  if (g_mkdir_with_parents (path, 0700) != 0)
    g_debug ("folder %s not made", path);
  return folder;
}

/* Letters and digits of any script in lower case, with a dash for all that lies between:
 * "Offset bush, 6 in" is offset-bush-6-in. */
static char *
file_stem (const char *name)
{
  g_autofree char *lower = g_utf8_strdown (name, -1);
  GString *stem = g_string_new (NULL);
  int n = 0;

  for (const char *p = lower; *p != '\0' && n < LONGEST_STEM; p = g_utf8_next_char (p)) {
    const gunichar c = g_utf8_get_char (p);

    if (g_unichar_isalnum (c)) {
      g_string_append_unichar (stem, c);
      n++;
    } else if (stem->len > 0 && stem->str[stem->len - 1] != '-') {
      g_string_append_c (stem, '-');
      n++;
    }
  }
  if (stem->len > 0 && stem->str[stem->len - 1] == '-')
    g_string_truncate (stem, stem->len - 1);
  if (stem->len == 0)
    g_string_append (stem, "plate");
  return g_string_free (stem, FALSE);
}

static gboolean
is_taken (GFile *file)
{
  g_autofree char *path = g_file_get_path (file);
  GStatBuf status;

  return g_lstat (path, &status) == 0;
}

GFile *
plate_library_new_file (const char *name)
{
  g_autoptr (GFile) folder = plate_library_user_folder ();
  g_autofree char *stem = file_stem (name);
  g_autofree char *base = g_strconcat (stem, SUFFIX, NULL);
  GFile *file = g_file_get_child (folder, base);

  for (int i = 2; is_taken (file); i++) {
    g_autofree char *next = g_strdup_printf ("%s-%d%s", stem, i, SUFFIX);

    g_object_unref (file);
    file = g_file_get_child (folder, next);
  }
  return file;
}
