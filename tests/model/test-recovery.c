/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Nothing is lost: a process that is killed leaves its work, and a file that another
 * program has changed is noticed. */

#include "car-fixture.h"
#include "hard-places.h"

#include "model/car/car-json.h"
#include "model/document/document.h"
#include "model/document/recovery.h"

#include <fcntl.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

typedef struct {
  char *folder; /* of the user's file */
  GFile *file;
  SwDocument *document;
} Fixture;

static char *
recovery_path (const char *base)
{
  return g_build_filename (g_get_user_state_dir (), "strutwright", "recovery", base,
                           NULL);
}

static guint
count_files (void)
{
  g_autofree char *folder = recovery_path (NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint n = 0;

  while (dir != NULL && g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

static void
set_up (Fixture *f, gconstpointer data)
{
  g_autoptr (Car) car = fixture_car ("corrections");
  g_autoptr (GError) error = NULL;
  (void) data;

  f->folder = fixture_folder_new ();
  g_autofree char *path = g_build_filename (f->folder, "Wren & söhne 100%.swcar", NULL);
  f->file = g_file_new_for_path (path);
  g_assert_true (car_save (car, f->file, &error));
  f->document = sw_document_load (f->file, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (count_files (), ==, 0);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  g_assert_cmpuint (count_files (), ==, 0);
  g_object_unref (f->document);
  g_object_unref (f->file);
  fixture_folder_remove (f->folder);
}

static void
move_mount (SwDocument *document, double inboard)
{
  Adjustment adjustment = car_adjustment (car_setup (sw_document_get_car (document), 0));

  adjustment.mount.inboard = inboard;
  sw_document_set_setup (document, 0, &adjustment, "Move mount");
}

static double
inboard_of (SwDocument *document)
{
  return car_setup (sw_document_get_car (document), 0)->mount.inboard;
}

static void
wait_for_line (GDataInputStream *output, const char *expected)
{
  g_autofree char *line = NULL;

  do {
    g_free (line);
    line = g_data_input_stream_read_line (output, NULL, NULL, NULL);
    g_assert_nonnull (line);
  } while (!g_str_equal (line, expected));
}

/* Runs the victim until its copy is there, and kills it. */
static void
kill_at_work (const char *path)
{
  g_autoptr (GSubprocessLauncher) launcher =
                 g_subprocess_launcher_new (G_SUBPROCESS_FLAGS_STDOUT_PIPE);
  g_autoptr (GError) error = NULL;

  g_subprocess_launcher_setenv (launcher, "XDG_STATE_HOME", g_get_user_state_dir (),
                                TRUE);
  g_autoptr (GSubprocess) victim =
                 g_subprocess_launcher_spawn (launcher, &error,
                                              g_getenv ("RECOVERY_VICTIM"), path, NULL);
  g_assert_no_error (error);
  g_autoptr (GDataInputStream) output =
                 g_data_input_stream_new (g_subprocess_get_stdout_pipe (victim));
  wait_for_line (output, "kept");

  g_autoptr (GPtrArray) alive = recovery_find_left_over ();
  g_assert_cmpuint (alive->len, ==, 0);
  g_assert_cmpuint (count_files (), ==, 2);

  g_subprocess_send_signal (victim, SIGKILL);
  g_assert_true (g_subprocess_wait (victim, NULL, &error));
  g_assert_true (g_subprocess_get_if_signaled (victim));
  g_assert_cmpint (g_subprocess_get_term_sig (victim), ==, SIGKILL);
}

static void
test_a_killed_process_leaves_its_work (Fixture *f, gconstpointer data)
{
  g_autofree char *path = g_file_get_path (f->file);
  g_autoptr (GError) error = NULL;
  (void) data;

  kill_at_work (path);
  g_autoptr (GPtrArray) found = recovery_find_left_over ();
  g_assert_cmpuint (found->len, ==, 1);
  const LeftOver *left_over = g_ptr_array_index (found, 0);
  g_assert_cmpstr (left_over->file, ==, path);
  g_assert_cmpstr (left_over->name, ==, "Hardware of every kind");
  g_assert_cmpint (ABS (g_get_real_time () - left_over->written), <,
                   G_USEC_PER_SEC * 300);

  g_autoptr (SwDocument) document = recovery_open (left_over, &error);
  g_assert_no_error (error);
  g_assert_true (sw_document_is_modified (document));
  g_assert_cmpfloat (inboard_of (document), ==, 7.25);
  g_assert_true (g_file_equal (sw_document_get_file (document), f->file));
  g_assert_false (sw_document_file_was_changed (document));

  /* the user's own file is as it was */
  g_autoptr (Car) own = car_load (f->file, NULL);
  g_assert_true (car_equal (own, sw_document_get_car (f->document)));

  recovery_discard (left_over);
  g_assert_true (sw_document_save (document, f->file, &error));
  g_assert_false (sw_document_is_modified (document));
}

static void
test_work_that_was_never_saved_is_left_too (Fixture *f, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  (void) data;
  (void) f;

  kill_at_work (NULL);
  g_autoptr (GPtrArray) found = recovery_find_left_over ();
  g_assert_cmpuint (found->len, ==, 1);
  const LeftOver *left_over = g_ptr_array_index (found, 0);
  g_assert_null (left_over->file);
  g_autoptr (SwDocument) document = recovery_open (left_over, &error);
  g_assert_no_error (error);
  g_assert_null (sw_document_get_file (document));
  g_assert_true (sw_document_is_modified (document));
  g_assert_cmpfloat (inboard_of (document), ==, 7.25);
  recovery_discard (left_over);
}

static void
test_a_file_changed_after_the_crash_is_noticed (Fixture *f, gconstpointer data)
{
  g_autofree char *path = g_file_get_path (f->file);
  (void) data;

  kill_at_work (path);
  move_mount (f->document, 3.0);
  g_assert_true (sw_document_save (f->document, f->file, NULL));
  g_autoptr (GPtrArray) found = recovery_find_left_over ();
  g_assert_cmpuint (found->len, ==, 1);
  g_autoptr (SwDocument) document = recovery_open (g_ptr_array_index (found, 0), NULL);
  g_assert_true (sw_document_file_was_changed (document));
  recovery_discard (g_ptr_array_index (found, 0));
}

/* The process was killed between saving and removing its copy. */
static void
test_what_the_file_has_is_not_offered (Fixture *f, gconstpointer data)
{
  g_autofree char *path = g_file_get_path (f->file);
  (void) data;

  kill_at_work (path);
  g_autoptr (GPtrArray) found = recovery_find_left_over ();
  g_assert_cmpuint (found->len, ==, 1);
  move_mount (f->document, 7.25);
  g_assert_true (sw_document_save (f->document, f->file, NULL));
  g_autoptr (GPtrArray) again = recovery_find_left_over ();
  g_assert_cmpuint (again->len, ==, 0);
  recovery_discard (g_ptr_array_index (found, 0));
}

static void
test_a_copy_is_there_while_there_is_unsaved_work (Fixture *f, gconstpointer data)
{
  g_autoptr (Recovery) recovery = recovery_watch (f->document, 60);
  (void) data;

  recovery_keep_now (recovery);
  g_assert_cmpuint (count_files (), ==, 0);
  move_mount (f->document, 5.0);
  g_assert_cmpuint (count_files (), ==, 0);
  recovery_keep_now (recovery);
  g_assert_cmpuint (count_files (), ==, 2);
  sw_document_undo (f->document);
  g_assert_cmpuint (count_files (), ==, 0);
  sw_document_redo (f->document);
  recovery_keep_now (recovery);
  g_assert_true (sw_document_save (f->document, f->file, NULL));
  g_assert_cmpuint (count_files (), ==, 0);
  move_mount (f->document, 6.0);
  recovery_keep_now (recovery);
  g_assert_cmpuint (count_files (), ==, 2);

  g_autoptr (GPtrArray) own = recovery_find_left_over ();
  g_assert_cmpuint (own->len, ==, 0);
}

static gboolean
on_too_late_cb (gpointer data)
{
  *(gboolean *) data = TRUE;
  return G_SOURCE_REMOVE;
}

/* The first change sets the time; those that follow do not put it off. */
static void
test_the_copy_is_written_in_time (Fixture *f, gconstpointer data)
{
  g_autoptr (Recovery) recovery = recovery_watch (f->document, 1);
  gboolean is_too_late = FALSE;
  guint timer = g_timeout_add (3000, on_too_late_cb, &is_too_late);
  double inboard = 0.0;
  (void) data;

  while (count_files () < 2 && !is_too_late) {
    move_mount (f->document, inboard += 0.001);
    g_main_context_iteration (NULL, FALSE);
    g_usleep (5000);
  }
  g_assert_false (is_too_late);
  g_source_remove (timer);
}

static void
write_left_over (const char *base, const char *car, const char *key)
{
  g_autofree char *folder = recovery_path (NULL);
  g_autofree char *name = g_strconcat (base, ".swcar", NULL);
  g_autofree char *key_name = g_strconcat (base, ".key", NULL);
  g_autofree char *path = recovery_path (name);
  g_autofree char *key_path = recovery_path (key_name);

  g_assert_cmpint (g_mkdir_with_parents (folder, 0700), ==, 0);
  g_assert_true (g_file_set_contents (path, car, -1, NULL));
  if (key != NULL)
    g_assert_true (g_file_set_contents (key_path, key, -1, NULL));
}

static void
remove_left_over (const char *base)
{
  g_autofree char *name = g_strconcat (base, ".swcar", NULL);
  g_autofree char *path = recovery_path (name);
  const LeftOver left_over = { .copy = path };

  recovery_discard (&left_over);
}

static void
test_damaged_copies_are_passed_over (Fixture *f, gconstpointer data)
{
  static const char *const bases[] = { "cut", "empty", "no-key", "bad-key", "good" };
  static const char dead[] = "[Copy]\nProcess=1\nStarted=never\n";
  g_autofree char *text = car_to_json (sw_document_get_car (f->document), NULL);
  g_autofree char *half = g_strndup (text, strlen (text) / 2);
  (void) data;

  write_left_over ("cut", half, dead);
  write_left_over ("empty", "", dead);
  write_left_over ("no-key", text, NULL);
  write_left_over ("bad-key", text, "Process=1\n\xff[");
  write_left_over ("good", text, dead);
  g_autoptr (GPtrArray) found = recovery_find_left_over ();
  g_assert_cmpuint (found->len, ==, 1);
  const LeftOver *left_over = g_ptr_array_index (found, 0);
  g_assert_true (g_str_has_suffix (left_over->copy, "/good.swcar"));
  for (gsize i = 0; i < G_N_ELEMENTS (bases); i++)
    remove_left_over (bases[i]);
}

/* This process has the id, but it is not the one that wrote the copy. */
static void
test_a_process_id_used_again_is_another_process (Fixture *f, gconstpointer data)
{
  g_autofree char *text = car_to_json (sw_document_get_car (f->document), NULL);
  g_autofree char *key =
      g_strdup_printf ("[Copy]\nProcess=%d\nStarted=another 12345\n", (int) getpid ());
  (void) data;

  write_left_over ("again", text, key);
  g_autoptr (GPtrArray) found = recovery_find_left_over ();
  g_assert_cmpuint (found->len, ==, 1);
  remove_left_over ("again");
}

static void
test_the_newest_comes_first (Fixture *f, gconstpointer data)
{
  static const char *const bases[] = { "b", "c", "a" }; /* oldest first */
  static const char dead[] = "[Copy]\nProcess=1\nStarted=never\n";
  g_autofree char *text = car_to_json (sw_document_get_car (f->document), NULL);
  (void) data;

  for (gsize i = 0; i < G_N_ELEMENTS (bases); i++) {
    g_autofree char *name = g_strconcat (bases[i], ".swcar", NULL);
    g_autofree char *path = recovery_path (name);
    const time_t when = 1700000000 + (time_t) i;
    const struct timespec times[2] = { { .tv_sec = when }, { .tv_sec = when } };

    write_left_over (bases[i], text, dead);
    g_assert_cmpint (utimensat (AT_FDCWD, path, times, 0), ==, 0);
  }
  g_autoptr (GPtrArray) found = recovery_find_left_over ();
  g_assert_cmpuint (found->len, ==, 3);
  for (guint i = 0; i < 3; i++) {
    const LeftOver *left_over = g_ptr_array_index (found, 2 - i);
    g_autofree char *base = g_path_get_basename (left_over->copy);

    g_assert_cmpint (base[0], ==, bases[i][0]);
    remove_left_over (bases[i]);
  }
}

static void
test_a_folder_that_cannot_be_made_stops_nothing (Fixture *f, gconstpointer data)
{
  g_autofree char *folder = recovery_path (NULL);
  (void) data;

  g_assert_cmpint (g_mkdir_with_parents (folder, 0700), ==, 0);
  g_assert_cmpint (g_rmdir (folder), ==, 0);
  g_assert_true (g_file_set_contents (folder, "in the way", -1, NULL));
  g_autoptr (Recovery) recovery = recovery_watch (f->document, 60);
  move_mount (f->document, 5.0);
  g_test_expect_message (G_LOG_DOMAIN, G_LOG_LEVEL_MESSAGE, "*could not be saved*");
  recovery_keep_now (recovery);
  g_test_assert_expected_messages ();
  g_assert_cmpint (g_unlink (folder), ==, 0);
}

static void
test_the_user_alone_may_read_the_copies (Fixture *f, gconstpointer data)
{
  g_autofree char *folder = recovery_path (NULL);
  g_autoptr (Recovery) recovery = recovery_watch (f->document, 60);
  struct stat status;
  (void) data;

  move_mount (f->document, 5.0);
  recovery_keep_now (recovery);
  g_assert_cmpint (stat (folder, &status), ==, 0);
  g_assert_cmpint (status.st_mode & 0777, ==, 0700);
}

static void
test_a_file_changed_on_disk_is_noticed (Fixture *f, gconstpointer data)
{
  g_autofree char *path = g_file_get_path (f->file);
  const struct timespec long_ago[2] = { { .tv_sec = 1700000000 },
                                        { .tv_sec = 1700000000 } };
  g_autoptr (SwDocument) fresh = sw_document_new_for_car (fixture_car ("plain"));
  g_autoptr (GError) error = NULL;
  (void) data;

  g_assert_false (sw_document_file_was_changed (fresh));
  g_assert_false (sw_document_file_was_changed (f->document));
  move_mount (f->document, 4.0);
  g_assert_true (sw_document_save (f->document, f->file, &error));
  g_assert_false (sw_document_file_was_changed (f->document));

  /* another time, the same size */
  g_assert_cmpint (utimensat (AT_FDCWD, path, long_ago, 0), ==, 0);
  g_assert_true (sw_document_file_was_changed (f->document));
  g_assert_true (sw_document_save (f->document, f->file, &error));
  g_assert_false (sw_document_file_was_changed (f->document));

  /* the same time, another size */
  g_assert_cmpint (utimensat (AT_FDCWD, path, long_ago, 0), ==, 0);
  g_autoptr (SwDocument) second = sw_document_load (f->file, &error);
  g_assert_no_error (error);
  g_assert_cmpint (truncate (path, 100), ==, 0);
  g_assert_cmpint (utimensat (AT_FDCWD, path, long_ago, 0), ==, 0);
  g_assert_true (sw_document_file_was_changed (second));

  g_assert_cmpint (g_unlink (path), ==, 0);
  g_assert_true (sw_document_file_was_changed (f->document));
  g_assert_true (sw_document_save (f->document, f->file, &error));
  g_assert_false (sw_document_file_was_changed (f->document));
}

static void
test_work_on_odd_names_is_found (Fixture *f, gconstpointer data)
{
  const Car *car = sw_document_get_car (f->document);
  (void) data;

  for (guint i = 0; i < N_ODD_NAMES; i++) {
    g_autofree char *name = odd_name (i, ".swcar");
    g_autofree char *path = g_build_filename (f->folder, name, NULL);
    g_autoptr (GFile) file = g_file_new_for_path (path);

    g_assert_true (car_save (car, file, NULL));
    kill_at_work (path);
    g_autoptr (GPtrArray) found = recovery_find_left_over ();
    g_assert_cmpuint (found->len, ==, 1);
    const LeftOver *left_over = g_ptr_array_index (found, 0);
    g_assert_cmpstr (left_over->file, ==, path);
    g_autoptr (SwDocument) document = recovery_open (left_over, NULL);
    g_assert_cmpfloat (inboard_of (document), ==, 7.25);
    g_assert_true (g_file_equal (sw_document_get_file (document), file));
    recovery_discard (left_over);
  }
}

/* The work goes on, and no half of a copy is ever offered. */
static gboolean
goes_on_without_a_copy (gpointer data)
{
  SwDocument *document = data;
  g_autoptr (Recovery) recovery = recovery_watch (document, 0);

  move_mount (document, 3.0);
  recovery_keep_now (recovery);
  move_mount (document, 4.0);
  recovery_keep_now (recovery);
  return inboard_of (document) == 4.0 && sw_document_is_modified (document) &&
         count_files () == 0;
}

static void
test_a_full_disk_stops_nothing (Fixture *f, gconstpointer data)
{
  const int status = hard_place_little_room (goes_on_without_a_copy, f->document, FALSE);
  (void) data;

  g_assert_cmpint (status, ==, 0);
}

static void
test_a_read_only_folder_stops_nothing (Fixture *f, gconstpointer data)
{
  g_autofree char *folder = recovery_path (NULL);
  (void) data;

  g_assert_cmpint (g_mkdir_with_parents (folder, 0700), ==, 0);
  g_assert_true (hard_place_no_rights (folder, goes_on_without_a_copy, f->document));
}

#define ADD(path, test) g_test_add (path, Fixture, NULL, set_up, test, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  ADD ("/recovery/killed", test_a_killed_process_leaves_its_work);
  ADD ("/recovery/never-saved", test_work_that_was_never_saved_is_left_too);
  ADD ("/recovery/changed-since", test_a_file_changed_after_the_crash_is_noticed);
  ADD ("/recovery/saved-already", test_what_the_file_has_is_not_offered);
  ADD ("/recovery/unsaved", test_a_copy_is_there_while_there_is_unsaved_work);
  ADD ("/recovery/in-time", test_the_copy_is_written_in_time);
  ADD ("/recovery/damaged", test_damaged_copies_are_passed_over);
  ADD ("/recovery/process-id", test_a_process_id_used_again_is_another_process);
  ADD ("/recovery/newest-first", test_the_newest_comes_first);
  ADD ("/recovery/no-folder", test_a_folder_that_cannot_be_made_stops_nothing);
  ADD ("/recovery/odd-names", test_work_on_odd_names_is_found);
  ADD ("/recovery/full-disk", test_a_full_disk_stops_nothing);
  ADD ("/recovery/read-only-folder", test_a_read_only_folder_stops_nothing);
  ADD ("/recovery/private", test_the_user_alone_may_read_the_copies);
  ADD ("/recovery/changed-on-disk", test_a_file_changed_on_disk_is_noticed);
  return g_test_run ();
}
