/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car/car-json.h"
#include "model/document/document-private.h"
#include "model/document/recovery-private.h"
#include "model/file/process-mark.h"

static void
left_over_free (gpointer data)
{
  LeftOver *self = data;

  g_free (self->copy);
  g_free (self->file);
  g_free (self->name);
  g_free (self->stamp);
  g_free (self);
}

static int
newest_first (gconstpointer a, gconstpointer b)
{
  const LeftOver *const *first = a, *const *second = b;

  return (*first)->written < (*second)->written   ? 1
         : (*first)->written > (*second)->written ? -1
                                                  : 0;
}

static gboolean
is_of_living_process (GKeyFile *key)
{
  g_autofree char *started =
      g_key_file_get_string (key, RECOVERY_GROUP, RECOVERY_STARTED, NULL);
  const ProcessMark mark = {
    g_key_file_get_int64 (key, RECOVERY_GROUP, RECOVERY_PROCESS, NULL),
    started != NULL ? started : (char *) "",
  };

  return process_mark_is_alive (&mark);
}

static char *
path_of_file (GKeyFile *key)
{
  g_autofree char *uri = g_key_file_get_string (key, RECOVERY_GROUP, RECOVERY_FILE, NULL);

  if (uri == NULL)
    return NULL;
  g_autoptr (GFile) file = g_file_new_for_uri (uri);
  return g_file_get_path (file);
}

static gint64
time_of_change (GFile *file)
{
  g_autoptr (GFileInfo) info = g_file_query_info (file,
                                                  G_FILE_ATTRIBUTE_TIME_MODIFIED
                                                  "," G_FILE_ATTRIBUTE_TIME_MODIFIED_USEC,
                                                  G_FILE_QUERY_INFO_NONE, NULL, NULL);
  g_autoptr (GDateTime) time =
                 info != NULL ? g_file_info_get_modification_date_time (info) : NULL;

  return time != NULL ? g_date_time_to_unix (time) * G_USEC_PER_SEC +
                            g_date_time_get_microsecond (time)
                      : 0;
}

/* As when the process ended between saving and removing its copy. */
static gboolean
is_saved (const Car *car, const char *path)
{
  g_autoptr (GFile) file = path != NULL ? g_file_new_for_path (path) : NULL;
  g_autoptr (Car) saved = file != NULL ? car_load (file, NULL) : NULL;

  return saved != NULL && car_equal (car, saved);
}

/* NULL for a copy that is in use, damaged, or of what the user's file has already. */
static LeftOver *
read_left_over (const char *copy)
{
  g_autofree char *key_path = recovery_key_path (copy);
  g_autoptr (GKeyFile) key = g_key_file_new ();
  g_autoptr (GFile) file = g_file_new_for_path (copy);

  if (!g_key_file_load_from_file (key, key_path, G_KEY_FILE_NONE, NULL) ||
      !g_key_file_has_key (key, RECOVERY_GROUP, RECOVERY_PROCESS, NULL) ||
      is_of_living_process (key))
    return NULL;

  g_autoptr (Car) car = car_load (file, NULL);
  g_autofree char *path = path_of_file (key);
  if (car == NULL || is_saved (car, path))
    return NULL;

  LeftOver *self = g_new0 (LeftOver, 1);
  self->copy = g_strdup (copy);
  self->file = g_steal_pointer (&path);
  self->name = g_strdup (car->name);
  self->stamp = g_key_file_get_string (key, RECOVERY_GROUP, RECOVERY_STAMP, NULL);
  self->written = time_of_change (file);
  return self;
}

GPtrArray *
recovery_find_left_over (void)
{
  GPtrArray *found = g_ptr_array_new_with_free_func (left_over_free);
  g_autofree char *folder = recovery_folder ();
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *copy = g_build_filename (folder, name, NULL);
    LeftOver *left_over =
        g_str_has_suffix (name, RECOVERY_SUFFIX) ? read_left_over (copy) : NULL;

    if (left_over != NULL)
      g_ptr_array_add (found, left_over);
  }
  g_ptr_array_sort (found, newest_first);
  return found;
}

SwDocument *
recovery_open (const LeftOver *left_over, GError **error)
{
  g_autoptr (GFile) copy = g_file_new_for_path (left_over->copy);
  g_autoptr (GFile) file =
                 left_over->file != NULL ? g_file_new_for_path (left_over->file) : NULL;
  Car *car = car_load (copy, error);

  return car != NULL ? document_new_unsaved (car, file, left_over->stamp) : NULL;
}
