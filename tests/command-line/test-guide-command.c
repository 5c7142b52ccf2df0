/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "program-run.h"

#include <glib/gstdio.h>
#include <string.h>

typedef struct {
  char *folder, *path, *car;
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  (void) data;
  f->folder = g_dir_make_tmp ("guide-XXXXXX", NULL);
  f->path = g_build_filename (f->folder, "guide.pdf", NULL);
  f->car = program_car ("good", "set-m");
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  g_remove (f->path);
  g_rmdir (f->folder);
  g_free (f->folder);
  g_free (f->path);
  g_free (f->car);
}

static void
check_written (Fixture *f, Outcome outcome)
{
  g_auto (Outcome) o = outcome;
  g_autofree char *bytes = NULL;

  g_assert_cmpstr (o.err, ==, "");
  g_assert_cmpstr (o.out, ==, "");
  g_assert_cmpint (o.status, ==, 0);
  g_assert_true (g_file_get_contents (f->path, &bytes, NULL, NULL));
  g_assert_true (g_str_has_prefix (bytes, "%PDF-"));
  g_assert_cmpint (g_remove (f->path), ==, 0);
}

static void
test_a_guide_is_written (Fixture *f, gconstpointer data)
{
  (void) data;
  check_written (f, RUN ("guide", f->car, "--output", f->path));
  check_written (f, RUN ("guide", "--paper", "letter", "--output", f->path, f->car));
}

static void
test_wrong_usage_is_told (Fixture *f, gconstpointer data)
{
  g_autofree char *picture = g_build_filename (f->folder, "guide.png", NULL);
  g_autofree char *sentence =
      g_strdup_printf ("strutwright: “%s” does not end in .pdf.\n", picture);

  (void) data;
  program_check_usage (RUN ("guide", f->car),
                       "strutwright: guide needs --output with the file to write.\n");
  program_check_usage (RUN ("guide", "--output", f->path),
                       "strutwright: guide needs exactly one car file; see strutwright "
                       "guide --help.\n");
  program_check_usage (RUN ("guide", f->car, "--output", f->path, "--paper", "foolscap"),
                       "strutwright: --paper is one of a4, letter, not “foolscap”.\n");
  program_check_usage (RUN ("guide", f->car, "--output", picture), sentence);
}

static void
test_what_is_refused (Fixture *f, gconstpointer data)
{
  g_autofree char *nowhere = g_build_filename (f->folder, "no", "guide.pdf", NULL);
  g_auto (Outcome) no_car = RUN ("guide", "/nowhere.swcar", "--output", f->path);
  g_auto (Outcome) no_place = RUN ("guide", f->car, "--output", nowhere);

  (void) data;
  g_assert_cmpint (no_car.status, ==, 1);
  g_assert_cmpint (no_place.status, ==, 1);
  g_assert_cmpuint (count_lines (no_place.err), ==, 1);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/guide-command/written", Fixture, NULL, set_up, test_a_guide_is_written,
              tear_down);
  g_test_add ("/guide-command/usage", Fixture, NULL, set_up, test_wrong_usage_is_told,
              tear_down);
  g_test_add ("/guide-command/refused", Fixture, NULL, set_up, test_what_is_refused,
              tear_down);
  return g_test_run ();
}
