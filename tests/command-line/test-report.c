/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `strutwright report`, started as a user or a script would. Its PDF is read by programs
 * from outside the project. */
#include "car-fixture.h"
#include "program-run.h"

#include <glib/gstdio.h>
#include <string.h>

typedef struct {
  char *folder, *path, *wren;
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  (void) data;
  f->folder = g_dir_make_tmp ("report-XXXXXX", NULL);
  f->path = g_build_filename (f->folder, "report.pdf", NULL);
  f->wren = g_test_build_filename (G_TEST_DIST, "..", "data", "wren.swcar", NULL);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  g_remove (f->path);
  g_assert_no_errno (g_rmdir (f->folder));
  g_free (f->folder);
  g_free (f->path);
  g_free (f->wren);
}

static void
check_done (Outcome o)
{
  g_assert_cmpstr (o.err, ==, "");
  g_assert_cmpstr (o.out, ==, "");
  g_assert_cmpint (o.status, ==, 0);
  outcome_clear (&o);
}

static char *
output_of (const char *const *argv)
{
  g_auto (Outcome) o = program_run (argv);

  g_assert_cmpint (o.status, ==, 0);
  return g_steal_pointer (&o.out);
}

/* Of each page, NULL-terminated. */
static char **
page_texts (const char *path)
{
  g_autofree char *text = output_of ((const char *const[]){
      "/usr/bin/env", "pdftotext", "-enc", "UTF-8", "-layout", path, "-", NULL });
  const gsize length = strlen (text);

  if (length > 0 && text[length - 1] == '\f')
    text[length - 1] = '\0';
  return g_strsplit (text, "\f", -1);
}

static void
assert_says (const char *page, const char *words)
{
  if (strstr (page, words) == NULL)
    g_error ("no “%s” on the page", words);
}

static void
test_every_page_can_be_read (Fixture *f, gconstpointer data)
{
  static const char *const words[] = { "None of its numbers were taken from",
                                       "Roll-centre height",
                                       "Half-track change",
                                       "Scale 1 : 10",
                                       "lowering of the body",
                                       "Ride frequency",
                                       "Sizes of springs and rods",
                                       "on the tower" };

  (void) data;
  check_done (RUN ("report", f->wren, "--output", f->path));
  g_auto (GStrv) pages = page_texts (f->path);
  g_assert_cmpuint (g_strv_length (pages), ==, G_N_ELEMENTS (words));
  for (guint i = 0; i < G_N_ELEMENTS (words); i++) {
    assert_says (pages[i], words[i]);
    assert_says (pages[i], "Wren 1.3 hill-climb hatch");
    assert_says (pages[i], "licensed practice come first");
  }
}

/* Letters and lines, no picture of them; every font is in the file. */
static void
test_nothing_is_a_picture (Fixture *f, gconstpointer data)
{
  (void) data;
  check_done (RUN ("report", f->wren, "--output", f->path));
  g_autofree char *images = output_of (
      (const char *const[]){ "/usr/bin/env", "pdfimages", "-list", f->path, NULL });
  g_autofree char *fonts =
      output_of ((const char *const[]){ "/usr/bin/env", "pdffonts", f->path, NULL });

  g_assert_cmpuint (count_lines (images), ==, 2); /* its head alone */
  g_assert_cmpuint (count_lines (fonts), >=, 4);
  g_assert_null (strstr (fonts, "Type 3"));
  g_assert_null (strstr (fonts, "no  no"));
}

static void
test_only_what_was_asked_for (Fixture *f, gconstpointer data)
{
  (void) data;
  check_done (RUN ("report", f->wren, "--output", f->path, "--page", "curves", "--page",
                   "setups", "--curve", "bump_steer", "--setup", "12 in, 6 back",
                   "--paper", "letter", "--date", "5 March 2026"));
  g_auto (GStrv) pages = page_texts (f->path);

  g_assert_cmpuint (g_strv_length (pages), ==, 2);
  assert_says (pages[0], "Setups side by side");
  assert_says (pages[0], "12 in, 6 back");
  g_assert_null (strstr (pages[0], "Plate, 20 lower"));
  assert_says (pages[1], "Bump steer");
  g_assert_null (strstr (pages[1], "Camber"));
  assert_says (pages[1], "5 March 2026");
  g_autofree char *info =
      output_of ((const char *const[]){ "/usr/bin/env", "pdfinfo", f->path, NULL });
  assert_says (info, "612 x 792 pts (letter)");
  assert_says (info, "Wren 1.3 hill-climb hatch");
}

static void
test_repeats_to_the_byte (Fixture *f, gconstpointer data)
{
  g_autofree char *first = NULL, *second = NULL;
  gsize n_first, n_second;

  (void) data;
  check_done (RUN ("report", f->wren, "--output", f->path));
  g_assert_true (g_file_get_contents (f->path, &first, &n_first, NULL));
  check_done (RUN ("report", f->wren, "--output", f->path));
  g_assert_true (g_file_get_contents (f->path, &second, &n_second, NULL));
  g_assert_cmpmem (first, n_first, second, n_second);
}

static void
test_wrong_usage_is_2 (Fixture *f, gconstpointer data)
{
  (void) data;
  program_check_usage (RUN ("report", f->wren),
                       "strutwright: report needs --output with the file to write.\n");
  program_check_usage (RUN ("report", f->wren, "--output", f->path, "--paper", "a5"),
                       "strutwright: --paper is one of a4, letter, not “a5”.\n");
  program_check_usage (
      RUN ("report", f->wren, "--output", f->path, "--page", "cover"),
      "strutwright: --page is one of car, setups, curves, sheet, height, "
      "springs, loads, not “cover”.\n");
  program_check_usage (RUN ("report", f->wren, "--output", "report.png"),
                       "strutwright: “report.png” does not end in .pdf.\n");
  program_check_usage (
      RUN ("report", f->wren, "--output", f->path, "--setup", "None"),
      "strutwright: There is no setup “None”; the car has “As measured”, "
      "“12 in, 6 back”, “Plate, 20 lower, toe reset”.\n");
}

static void
test_what_is_not_given_is_left_out_or_refused (Fixture *f, gconstpointer data)
{
  g_autofree char *car = program_car ("good", "set-m");
  g_auto (Outcome) o = RUN ("report", car, "--output", f->path, "--page", "sheet",
                            "--page", "springs");

  (void) data;
  g_assert_cmpint (o.status, ==, 1);
  g_assert_cmpstr (
      o.err, ==,
      "strutwright: No setup in the report has a spring, which the page “springs” "
      "would be about.\n");
  g_assert_false (g_file_test (f->path, G_FILE_TEST_EXISTS));
  check_done (RUN ("report", car, "--output", f->path));
  g_auto (GStrv) pages = page_texts (f->path);
  g_assert_cmpuint (g_strv_length (pages), ==, 5);
}

#define ADD(name, test) g_test_add (name, Fixture, NULL, set_up, test, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("/report/read", test_every_page_can_be_read);
  ADD ("/report/vectors", test_nothing_is_a_picture);
  ADD ("/report/asked-for", test_only_what_was_asked_for);
  ADD ("/report/repeats", test_repeats_to_the_byte);
  ADD ("/report/usage", test_wrong_usage_is_2);
  ADD ("/report/not-given", test_what_is_not_given_is_left_out_or_refused);
  return g_test_run ();
}
