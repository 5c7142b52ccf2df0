/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command-line/command-line.h"

#include <glib/gi18n-lib.h>
#include <string.h>
#include <unistd.h>

/* Where the other programs are installed: an installation that was moved says so. */
static const char *
installed_folder (void)
{
  const char *folder = g_getenv ("STRUTWRIGHT_LIBEXECDIR");

  return folder != NULL ? folder : LIBEXECDIR;
}

/* Beside this program as in a package of its own, in the build's neighbour folder, or
 * where it was installed. Of NULL-terminated paths. */
static char **
list_places (const char *program)
{
  g_autofree char *self = g_file_read_link ("/proc/self/exe", NULL);
  g_autofree char *folder = self != NULL ? g_path_get_dirname (self) : g_strdup (".");
  GStrvBuilder *builder = g_strv_builder_new ();

  g_autofree char *beside = g_build_filename (folder, program, NULL);
  g_autofree char *built = g_build_filename (folder, "..", "window", program, NULL);
  g_autofree char *installed = g_build_filename (installed_folder (), program, NULL);
  g_strv_builder_add_many (builder, beside, built, installed, NULL);
  char **places = g_strv_builder_end (builder);
  g_strv_builder_unref (builder);
  return places;
}

int
program_launch (const char *program, char **argv)
{
  g_auto (GStrv) places = list_places (program);

  for (char **place = places; *place != NULL; place++) {
    if (!g_file_test (*place, G_FILE_TEST_IS_EXECUTABLE))
      continue;
    argv[0] = *place;
    execv (*place, argv);
    command_line_say (_ ("The program %s could not be started."), *place);
    return EXIT_REFUSED;
  }
  command_line_say (_ ("The program %s was found neither beside this program nor in %s."),
                    program, installed_folder ());
  return EXIT_REFUSED;
}

int
plot_launch (int argc, char **argv)
{
  /* a place for the program's name before the command word */
  g_autofree char **words = g_new0 (char *, (gsize) argc + 2);

  memcpy (words + 1, argv, (gsize) argc * sizeof (char *));
  return program_launch ("strutwright-plot", words);
}
