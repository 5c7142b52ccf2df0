/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "comma-locale.h"

#include <glib/gstdio.h>
#include <locale.h>
#include <stdlib.h>

static char *folder;

static void
remove_folder (void)
{
  const char *argv[] = { "rm", "-r", "--", folder, NULL };

  g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, NULL, NULL,
                NULL, NULL);
}

const char *
comma_locale_folder (void)
{
  if (folder != NULL)
    return folder[0] != '\0' ? folder : NULL;

  g_autofree char *place = g_dir_make_tmp ("strutwright-locale-XXXXXX", NULL);
  g_autofree char *target = g_build_filename (place, COMMA_LOCALE, NULL);
  const char *argv[] = { "localedef", "-i", "de_DE", "-f", "UTF-8", target, NULL };
  const GSpawnFlags flags =
      G_SPAWN_SEARCH_PATH | G_SPAWN_STDOUT_TO_DEV_NULL | G_SPAWN_STDERR_TO_DEV_NULL;

  g_spawn_sync (NULL, (char **) argv, NULL, flags, NULL, NULL, NULL, NULL, NULL, NULL);
  if (!g_file_test (target, G_FILE_TEST_IS_DIR)) {
    g_rmdir (place);
    folder = g_strdup ("");
    return NULL;
  }
  folder = g_steal_pointer (&place);
  atexit (remove_folder);
  return folder;
}

gboolean
comma_locale_enter (void)
{
  const char *place = comma_locale_folder ();

  if (place != NULL)
    g_setenv ("LOCPATH", place, TRUE);
  if (place == NULL || setlocale (LC_ALL, COMMA_LOCALE) == NULL) {
    g_test_skip ("localedef cannot build a locale with a decimal comma here");
    return FALSE;
  }
  g_assert_cmpstr (localeconv ()->decimal_point, ==, ",");
  return TRUE;
}

void
comma_locale_leave (void)
{
  setlocale (LC_ALL, "C");
}
