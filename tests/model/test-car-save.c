/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A save that is interrupted loses nothing. */
#include "car-fixture.h"
#include "hard-places.h"

#include "model/car/car-json.h"
#include "model/file/file-replace.h"

#include <glib/gstdio.h>
#include <math.h>
#include <signal.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

typedef struct {
  char *folder, *path;
  GFile *file;
  Car *old, *new;
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  (void) data;

  f->folder = fixture_folder_new ();
  g_assert_cmpint (g_chmod (f->folder, 0755), ==, 0); /* for hard_place_no_rights () */
  f->path = g_build_filename (f->folder, "car.swcar", NULL);
  f->file = g_file_new_for_path (f->path);
  f->old = fixture_car ("plain");
  f->new = car_copy (f->old);
  car_setup (f->new, 1)->mount.inboard = 13.25;
  g_assert_true (car_save (f->old, f->file, &error));
  g_assert_no_error (error);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  car_free (f->old);
  car_free (f->new);
  g_object_unref (f->file);
  g_free (f->path);
  fixture_folder_remove (f->folder);
}

static void
check_holds (Fixture *f, const Car *car)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Car) there = car_load (f->file, &error);

  g_assert_no_error (error);
  g_assert_true (car_equal (there, car));
}

static guint
count_files (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint n = 0;

  while (g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

static void
test_saving_replaces_the_file (Fixture *f, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  (void) data;

  g_assert_true (car_save (f->new, f->file, &error));
  g_assert_no_error (error);
  check_holds (f, f->new);
  g_assert_cmpuint (count_files (f->folder), ==, 1);
}

static gboolean
is_refused (gpointer data)
{
  Fixture *f = data;

  return !car_save (f->new, f->file, NULL);
}

static void
test_a_full_disk_leaves_the_old_file (Fixture *f, gconstpointer data)
{
  const int status = hard_place_little_room (is_refused, f, FALSE);
  (void) data;

  g_assert_true (WIFEXITED (status));
  g_assert_cmpint (WEXITSTATUS (status), ==, 0);
  check_holds (f, f->old);
  g_assert_cmpuint (count_files (f->folder), ==, 1);
}

static void
test_death_in_the_middle_leaves_the_old_file (Fixture *f, gconstpointer data)
{
  const int status = hard_place_little_room (is_refused, f, TRUE);
  (void) data;

  g_assert_true (WIFSIGNALED (status));
  g_assert_cmpint (WTERMSIG (status), ==, SIGXFSZ);
  check_holds (f, f->old);
  /* half a file lies beside it, so death did come in the middle */
  g_assert_cmpuint (count_files (f->folder), ==, 2);
}

static gboolean
is_saved (gpointer data)
{
  Fixture *f = data;

  return car_save (f->new, f->file, NULL);
}

static void
check_is_whole (Fixture *f, const char *before, const char *after, gboolean is_new)
{
  g_autofree char *there = NULL;

  g_assert_true (g_file_get_contents (f->path, &there, NULL, NULL));
  g_assert_cmpstr (there, ==, is_new || g_str_equal (there, after) ? after : before);
}

/* Wherever memory gives out, the file is the old one or the new one to the last byte, and
 * the new one where the save went through. */
static void
test_no_memory_leaves_a_whole_file (Fixture *f, gconstpointer data)
{
  g_autofree char *before = NULL, *after = car_to_json (f->new, NULL);
  guint n_deaths = 0;
  int status = 1;
  (void) data;

  if (!hard_place_has_memory_to_count ()) {
    g_test_skip ("The allocator is a sanitizer's, or another library's");
    return;
  }
  g_assert_true (g_file_get_contents (f->path, &before, NULL, NULL));
  for (guint pieces = 0; status != 0; pieces += 1 + pieces / 50) {
    status = hard_place_little_memory (is_saved, f, pieces);
    g_assert_true (status == 0 || WIFSIGNALED (status));
    check_is_whole (f, before, after, status == 0);
    n_deaths += status != 0;
  }
  g_test_message ("%u deaths", n_deaths);
  g_assert_cmpuint (n_deaths, >, 50);
}

static gboolean
is_denied (gpointer data)
{
  Fixture *f = data;
  g_autofree char *sentence =
      g_strdup_printf ("%s could not be saved: Permission denied.", f->path);
  g_autoptr (GError) error = NULL;

  return !car_save (f->new, f->file, &error) &&
         g_error_matches (error, G_IO_ERROR, G_IO_ERROR_PERMISSION_DENIED) &&
         g_str_equal (error->message, sentence);
}

static void
test_what_may_not_be_written_is_said (Fixture *f, gconstpointer data)
{
  (void) data;

  g_assert_true (hard_place_no_rights (f->folder, is_denied, f));
  check_holds (f, f->old);
  g_assert_cmpuint (count_files (f->folder), ==, 1);
}

/* In a folder that anyone may write to, where a rename would take it away. */
static void
test_a_read_only_file_stays (Fixture *f, gconstpointer data)
{
  (void) data;

  g_assert_cmpint (g_chmod (f->folder, 0777), ==, 0);
  g_assert_true (hard_place_no_rights (f->path, is_denied, f));
  check_holds (f, f->old);
  g_assert_cmpuint (count_files (f->folder), ==, 1);
}

static gboolean
cannot_be_read (gpointer data)
{
  Fixture *f = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (Car) car = car_load (f->file, &error);

  return car == NULL && g_error_matches (error, G_IO_ERROR, G_IO_ERROR_PERMISSION_DENIED);
}

static void
test_what_may_not_be_read_is_said (Fixture *f, gconstpointer data)
{
  g_autofree char *secret = g_build_filename (f->folder, "secret", NULL);
  (void) data;

  g_assert_cmpint (g_mkdir (secret, 0), ==, 0);
  g_object_unref (f->file);
  f->file = g_file_new_build_filename (secret, "car.swcar", NULL);
  g_assert_true (hard_place_no_rights (f->folder, cannot_be_read, f));
  g_assert_cmpint (g_rmdir (secret), ==, 0);
}

static void
test_odd_names (Fixture *f, gconstpointer data)
{
  (void) data;

  for (guint i = 0; i < N_ODD_NAMES; i++) {
    g_autofree char *name = odd_name (i, ".swcar");
    g_autoptr (GError) error = NULL;

    g_object_unref (f->file);
    f->file = g_file_new_build_filename (f->folder, name, NULL);
    g_assert_true (car_save (f->old, f->file, &error));
    g_assert_no_error (error);
    g_assert_true (car_save (f->new, f->file, &error));
    g_assert_no_error (error);
    check_holds (f, f->new);
  }
  g_assert_cmpuint (count_files (f->folder), ==, 1 + N_ODD_NAMES);
}

/* One byte more than a name may have, and a folder in place of a file. */
static void
test_impossible_names_are_said (Fixture *f, gconstpointer data)
{
  g_autofree char *name = odd_name (0, "n.swcar");
  g_autofree char *longer = g_strconcat ("n", name, NULL);
  g_autoptr (GFile) too_long = g_file_new_build_filename (f->folder, longer, NULL);
  g_autoptr (GFile) folder = g_file_new_for_path (f->folder);
  g_autoptr (GError) first = NULL, second = NULL, third = NULL;
  (void) data;

  g_assert_false (car_save (f->new, too_long, &first));
  g_assert_error (first, G_IO_ERROR, G_IO_ERROR_FILENAME_TOO_LONG);
  g_assert_false (car_save (f->new, folder, &second));
  g_assert_error (second, G_IO_ERROR, G_IO_ERROR_IS_DIRECTORY);
  g_assert_null (car_load (folder, &third));
  g_assert_error (third, G_IO_ERROR, G_IO_ERROR_IS_DIRECTORY);
  g_assert_cmpuint (count_files (f->folder), ==, 1);
}

static void
test_a_folder_that_is_not_there_is_said (Fixture *f, gconstpointer data)
{
  g_autofree char *path = g_build_filename (f->folder, "none", "car.swcar", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autofree char *sentence =
      g_strdup_printf ("%s could not be saved: No such file or directory.", path);
  g_autoptr (GError) error = NULL;
  (void) data;

  g_assert_false (car_save (f->new, file, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND);
  g_assert_cmpstr (error->message, ==, sentence);
}

static void
test_permissions_stay (Fixture *f, gconstpointer data)
{
  struct stat now;
  (void) data;

  g_assert_cmpint (g_chmod (f->path, 0640), ==, 0);
  g_assert_true (car_save (f->new, f->file, NULL));
  g_assert_cmpint (stat (f->path, &now), ==, 0);
  g_assert_cmpint (now.st_mode & 07777, ==, 0640);
}

static void
test_a_new_file_heeds_the_mask (Fixture *f, gconstpointer data)
{
  g_autofree char *path = g_build_filename (f->folder, "new.swcar", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  const mode_t mask = umask (027);
  struct stat now;
  (void) data;

  g_assert_true (car_save (f->new, file, NULL));
  umask (mask);
  g_assert_cmpint (stat (path, &now), ==, 0);
  g_assert_cmpint (now.st_mode & 07777, ==, 0640);
}

/* Two links in a row, the second of them relative. */
static void
test_a_link_keeps_pointing (Fixture *f, gconstpointer data)
{
  g_autofree char *first = g_build_filename (f->folder, "first.swcar", NULL);
  g_autofree char *second = g_build_filename (f->folder, "second.swcar", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (first);
  (void) data;

  g_assert_cmpint (symlink (second, first), ==, 0);
  g_assert_cmpint (symlink ("car.swcar", second), ==, 0);
  g_assert_true (car_save (f->new, file, NULL));
  g_assert_true (g_file_test (first, G_FILE_TEST_IS_SYMLINK));
  g_assert_true (g_file_test (second, G_FILE_TEST_IS_SYMLINK));
  g_assert_false (g_file_test (f->path, G_FILE_TEST_IS_SYMLINK));
  check_holds (f, f->new);
}

static void
test_a_link_to_nothing_makes_its_file (Fixture *f, gconstpointer data)
{
  g_autofree char *link = g_build_filename (f->folder, "link.swcar", NULL);
  g_autofree char *made = g_build_filename (f->folder, "made.swcar", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (link);
  (void) data;

  g_assert_cmpint (symlink ("made.swcar", link), ==, 0);
  g_assert_true (car_save (f->new, file, NULL));
  g_assert_true (g_file_test (link, G_FILE_TEST_IS_SYMLINK));
  g_assert_true (g_file_test (made, G_FILE_TEST_IS_REGULAR));
}

static void
test_a_car_that_could_not_be_opened_is_not_saved (Fixture *f, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  (void) data;

  f->new->loaded_radius_mm = NAN;
  g_assert_false (car_save (f->new, f->file, &error));
  g_assert_error (error, FILE_REFUSAL, FILE_REFUSAL_TYPE);
  g_assert_cmpstr (error->message, ==,
                   "The car was not saved, as it could not be opened again: "
                   "tyre.loaded_radius_mm must be a number.");
  check_holds (f, f->old);
}

#define ADD(path, test) g_test_add (path, Fixture, NULL, set_up, test, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("/car-save/replaces", test_saving_replaces_the_file);
  ADD ("/car-save/full-disk", test_a_full_disk_leaves_the_old_file);
  ADD ("/car-save/death", test_death_in_the_middle_leaves_the_old_file);
  ADD ("/car-save/no-memory", test_no_memory_leaves_a_whole_file);
  ADD ("/car-save/read-only-folder", test_what_may_not_be_written_is_said);
  ADD ("/car-save/read-only-file", test_a_read_only_file_stays);
  ADD ("/car-save/unreadable", test_what_may_not_be_read_is_said);
  ADD ("/car-save/odd-names", test_odd_names);
  ADD ("/car-save/impossible-names", test_impossible_names_are_said);
  ADD ("/car-save/no-folder", test_a_folder_that_is_not_there_is_said);
  ADD ("/car-save/permissions", test_permissions_stay);
  ADD ("/car-save/mask", test_a_new_file_heeds_the_mask);
  ADD ("/car-save/links", test_a_link_keeps_pointing);
  ADD ("/car-save/dangling-link", test_a_link_to_nothing_makes_its_file);
  ADD ("/car-save/unsound", test_a_car_that_could_not_be_opened_is_not_saved);
  return g_test_run ();
}
