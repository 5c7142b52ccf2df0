/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which plates are offered, each time in folders of the test's own. */
#include "car-fixture.h"
#include "plate-fixture.h"

#include "model/file/data-path.h"
#include "model/plate/plate-json.h"
#include "model/plate/plate-library.h"

#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* GLib looks for the user's data folder once, so there is one for all tests; the other
 * two folders are new for each. */
static char *user_root;

typedef struct {
  char *program_root, *program, *user, *car_folder;
  GFile *car_file;
} Shelves;

static void
set_up (Shelves *s, gconstpointer data)
{
  g_autoptr (GFile) user = plate_library_user_folder ();
  (void) data;

  s->program_root = fixture_folder_new ();
  s->program = g_build_filename (s->program_root, "plates", NULL);
  s->user = g_file_get_path (user);
  s->car_folder = fixture_folder_new ();
  s->car_file = g_file_new_build_filename (s->car_folder, "car.swcar", NULL);
  g_assert_cmpint (g_mkdir (s->program, 0700), ==, 0);
  g_setenv ("STRUTWRIGHT_DATADIR", s->program_root, TRUE);
}

static void
empty_folder (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (folder, name, NULL);

    g_assert_cmpint (g_remove (path), ==, 0);
  }
}

static void
tear_down (Shelves *s, gconstpointer data)
{
  (void) data;
  empty_folder (s->user);
  g_free (s->user);
  fixture_folder_remove (s->program);
  g_assert_cmpint (g_rmdir (s->program_root), ==, 0);
  g_free (s->program_root);
  g_object_unref (s->car_file);
  empty_folder (s->car_folder);
  fixture_folder_remove (s->car_folder);
}

/* A fixed plate that is known by its place. */
static void
put (const char *folder, const char *base, const char *name, double inboard)
{
  g_autoptr (GFile) file = g_file_new_build_filename (folder, base, NULL);
  g_autoptr (Plate) plate = plate_new ();
  g_autoptr (GError) error = NULL;

  g_free (plate->name);
  plate->name = g_strdup (name);
  plate->inboard_mm = inboard;
  g_assert_true (plate_save (plate, file, &error));
  g_assert_no_error (error);
}

static void
put_text (const char *folder, const char *base, const char *text)
{
  g_autofree char *path = g_build_filename (folder, base, NULL);

  g_assert_true (g_file_set_contents (path, text, -1, NULL));
}

static void
check_shelf (const PlateLibrary *library,
             guint index,
             const char *name,
             PlateOrigin origin,
             double inboard)
{
  g_assert_cmpuint (index, <, library->plates->len);
  const ShelfPlate *shelf = g_ptr_array_index (library->plates, index);

  g_assert_cmpstr (shelf->plate->name, ==, name);
  g_assert_cmpint (shelf->origin, ==, origin);
  g_assert_cmpfloat (shelf->plate->inboard_mm, ==, inboard);
  g_assert_true (plate_library_find (library, name) == shelf);
}

static void
test_the_nearest_origin_comes_first (Shelves *s, gconstpointer data)
{
  (void) data;
  put (s->program, "1.swplate", "Beech", 1.0);
  put (s->program, "2.swplate", "Ash", 2.0);
  put (s->user, "1.swplate", "Elm", 3.0);
  put (s->user, "2.swplate", "Cedar", 4.0);
  put (s->car_folder, "1.swplate", "Yew", 5.0);
  put (s->car_folder, "2.swplate", "Oak", 6.0);

  g_autoptr (PlateLibrary) library = plate_library_load (s->car_file);
  g_assert_cmpuint (library->problems->len, ==, 0);
  g_assert_cmpuint (library->plates->len, ==, 6);
  check_shelf (library, 0, "Oak", PLATE_FROM_CAR_FOLDER, 6.0);
  check_shelf (library, 1, "Yew", PLATE_FROM_CAR_FOLDER, 5.0);
  check_shelf (library, 2, "Cedar", PLATE_FROM_USER, 4.0);
  check_shelf (library, 3, "Elm", PLATE_FROM_USER, 3.0);
  check_shelf (library, 4, "Ash", PLATE_FROM_PROGRAM, 2.0);
  check_shelf (library, 5, "Beech", PLATE_FROM_PROGRAM, 1.0);
  g_assert_null (plate_library_find (library, "Lime"));

  const ShelfPlate *oak = plate_library_find (library, "Oak");
  g_autoptr (GFile) file = g_file_new_build_filename (s->car_folder, "2.swplate", NULL);
  g_assert_true (g_file_equal (oak->file, file));
}

static void
test_the_nearer_origin_replaces_a_name (Shelves *s, gconstpointer data)
{
  (void) data;
  put (s->program, "1.swplate", "Ash", 1.0);
  put (s->program, "2.swplate", "Beech", 1.0);
  put (s->program, "3.swplate", "Cedar", 1.0);
  put (s->user, "1.swplate", "Beech", 2.0);
  put (s->user, "2.swplate", "Cedar", 2.0);
  put (s->car_folder, "1.swplate", "Cedar", 3.0);

  g_autoptr (PlateLibrary) library = plate_library_load (s->car_file);
  g_assert_cmpuint (library->problems->len, ==, 0);
  g_assert_cmpuint (library->plates->len, ==, 3);
  check_shelf (library, 0, "Cedar", PLATE_FROM_CAR_FOLDER, 3.0);
  check_shelf (library, 1, "Beech", PLATE_FROM_USER, 2.0);
  check_shelf (library, 2, "Ash", PLATE_FROM_PROGRAM, 1.0);

  g_autoptr (PlateLibrary) without = plate_library_load (NULL);
  g_assert_cmpuint (without->plates->len, ==, 3);
  check_shelf (without, 1, "Cedar", PLATE_FROM_USER, 2.0);
}

static void
test_a_refused_file_is_a_sentence_and_no_end (Shelves *s, gconstpointer data)
{
  (void) data;
  put (s->car_folder, "good.swplate", "Ash", 1.0);
  put_text (s->car_folder, "bad.swplate", "[]");
  put_text (s->user, "empty.swplate", "");

  g_autoptr (PlateLibrary) library = plate_library_load (s->car_file);
  g_assert_cmpuint (library->plates->len, ==, 1);
  g_assert_cmpuint (library->problems->len, ==, 2);
  g_assert_cmpstr (g_ptr_array_index (library->problems, 0), ==,
                   "The plate file bad.swplate is left out: This is no plate file: it "
                   "must be an object in braces.");
  g_assert_cmpstr (g_ptr_array_index (library->problems, 1), ==,
                   "The plate file empty.swplate is left out: Line 1, column 1: A value "
                   "is expected.");
}

/* A refused file near at hand does not hide the sound one further away. */
static void
test_a_refused_file_hides_nothing (Shelves *s, gconstpointer data)
{
  (void) data;
  put (s->program, "1.swplate", "Ash", 1.0);
  put_text (s->car_folder, "1.swplate",
            "{ \"format\": \"strutwright-plate\", \"version\": 1, \"name\": \"Ash\" }");

  g_autoptr (PlateLibrary) library = plate_library_load (s->car_file);
  g_assert_cmpuint (library->problems->len, ==, 1);
  check_shelf (library, 0, "Ash", PLATE_FROM_PROGRAM, 1.0);
}

static void
test_a_copy_with_the_same_name_is_said (Shelves *s, gconstpointer data)
{
  (void) data;
  put (s->user, "ash.swplate", "Ash", 1.0);
  put (s->user, "ash (copy).swplate", "Ash", 2.0);

  g_autoptr (PlateLibrary) library = plate_library_load (NULL);
  g_assert_cmpuint (library->plates->len, ==, 1);
  check_shelf (library, 0, "Ash", PLATE_FROM_USER, 2.0);
  g_assert_cmpuint (library->problems->len, ==, 1);
  g_assert_cmpstr (g_ptr_array_index (library->problems, 0), ==,
                   "The plate file ash.swplate is left out: Its plate has the same name "
                   "as that of ash (copy).swplate.");
}

/* Others' files, hidden ones, folders, pipes that nobody writes to, and what lies deeper.
 */
static void
test_only_plate_files_are_read (Shelves *s, gconstpointer data)
{
  g_autofree char *deeper = g_build_filename (s->car_folder, "deeper.swplate", NULL);
  g_autofree char *inside = g_build_filename (deeper, "1.swplate", NULL);
  g_autofree char *pipe = g_build_filename (s->car_folder, "pipe.swplate", NULL);
  g_autofree char *dangling = g_build_filename (s->car_folder, "gone.swplate", NULL);
  (void) data;

  put (s->car_folder, "1.SWPLATE", "Ash", 1.0);
  put_text (s->car_folder, "car.swcar", "{}");
  put_text (s->car_folder, "notes.txt", "{}");
  put_text (s->car_folder, ".hidden.swplate", "{}");
  put_text (s->car_folder, ".swplate", "{}");
  put_text (s->car_folder, "1.swplate.bak", "{}");
  g_assert_cmpint (g_mkdir (deeper, 0700), ==, 0);
  put (deeper, "1.swplate", "Deeper", 1.0);
  g_assert_cmpint (mkfifo (pipe, 0600), ==, 0);
  g_assert_cmpint (symlink ("nothing-there", dangling), ==, 0);

  g_autoptr (PlateLibrary) library = plate_library_load (s->car_file);
  g_assert_cmpuint (library->problems->len, ==, 0);
  g_assert_cmpuint (library->plates->len, ==, 1);
  check_shelf (library, 0, "Ash", PLATE_FROM_CAR_FOLDER, 1.0);
  g_assert_cmpint (g_remove (inside), ==, 0);
}

static void
test_a_car_among_the_plates_reads_them_once (Shelves *s, gconstpointer data)
{
  g_autoptr (GFile) car = g_file_new_build_filename (s->user, "car.swcar", NULL);
  (void) data;

  put (s->user, "1.swplate", "Ash", 1.0);
  put_text (s->user, "2.swplate", "[]");
  g_autoptr (PlateLibrary) library = plate_library_load (car);
  g_assert_cmpuint (library->plates->len, ==, 1);
  check_shelf (library, 0, "Ash", PLATE_FROM_USER, 1.0);
  g_assert_cmpuint (library->problems->len, ==, 1);
}

static void
test_folders_that_are_not_there_hold_none (Shelves *s, gconstpointer data)
{
  g_autoptr (GFile) car = g_file_new_for_path ("/nowhere/at-all/car.swcar");
  (void) data;

  g_assert_cmpint (g_rmdir (s->program), ==, 0);
  g_assert_cmpint (g_rmdir (s->user), ==, 0);
  g_autoptr (PlateLibrary) library = plate_library_load (car);
  g_assert_cmpuint (library->plates->len, ==, 0);
  g_assert_cmpuint (library->problems->len, ==, 0);
  g_assert_cmpint (g_mkdir (s->program, 0700), ==, 0);
  g_assert_cmpint (g_mkdir (s->user, 0700), ==, 0);
}

static void
test_a_folder_that_is_a_file_is_said (Shelves *s, gconstpointer data)
{
  (void) data;
  g_assert_cmpint (g_rmdir (s->program), ==, 0);
  put_text (s->program_root, "plates", "");
  g_autoptr (PlateLibrary) library = plate_library_load (NULL);
  g_assert_cmpuint (library->problems->len, ==, 1);
  const char *problem = g_ptr_array_index (library->problems, 0);
  g_autofree char *expected =
      g_strdup_printf ("Plates in %s could not be looked for: ", s->program);
  g_assert_true (g_str_has_prefix (problem, expected));
  g_assert_cmpint (g_unlink (s->program), ==, 0);
  g_assert_cmpint (g_mkdir (s->program, 0700), ==, 0);
}

static void
check_new_file (const char *name, const char *expected)
{
  g_autoptr (GFile) file = plate_library_new_file (name);
  g_autofree char *base = g_file_get_basename (file);

  g_assert_cmpstr (base, ==, expected);
}

static void
test_new_files_are_named_by_their_plate (Shelves *s, gconstpointer data)
{
  g_autofree char *long_name = g_strnfill (400, 'x');
  g_autoptr (GFile) long_file = plate_library_new_file (long_name);
  g_autofree char *long_base = g_file_get_basename (long_file);
  (void) data;

  check_new_file ("Offset bush, 6 mm inboard", "offset-bush-6-mm-inboard.swplate");
  check_new_file ("../../etc/passwd", "etc-passwd.swplate");
  check_new_file ("Schräge Nut (35°)", "schräge-nut-35.swplate");
  check_new_file (".", "plate.swplate");
  check_new_file ("", "plate.swplate");
  g_assert_cmpuint (strlen (long_base), ==, 60 + strlen (".swplate"));

  put (s->user, "ash.swplate", "Ash", 1.0);
  put (s->user, "ash-2.swplate", "Ash tree", 1.0);
  check_new_file ("Ash", "ash-3.swplate");
}

static void
test_the_user_s_folder_is_made (Shelves *s, gconstpointer data)
{
  g_autofree char *expected = g_build_filename (user_root, "strutwright", "plates", NULL);
  (void) data;

  g_assert_cmpstr (s->user, ==, expected);
  g_assert_cmpint (g_rmdir (s->user), ==, 0);
  g_autoptr (GFile) folder = plate_library_user_folder ();
  g_assert_true (g_file_query_exists (folder, NULL));
}

/* Those that come with the program, by name, and as their files stand. */
static void
test_the_program_s_plates_load (Shelves *s, gconstpointer data)
{
  static const struct {
    const char *name;
    PlateKind kind;
  } plates[] = { { "Camber and caster plate", PLATE_CROSSED_SLOTS },
                 { "Diagonal slot plate", PLATE_SLOT },
                 { "Five-hole caster plate", PLATE_HOLES },
                 { "Offset bush, 6 mm inboard", PLATE_FIXED },
                 { "Offset bush, turned in place", PLATE_ECCENTRIC },
                 { "Sliding camber plate", PLATE_SLOT },
                 { "Stock mount", PLATE_FIXED },
                 { "Three-hole camber plate", PLATE_HOLES } };
  g_autofree char *data_folder = g_test_build_filename (G_TEST_DIST, "..", "data", NULL);
  (void) s;
  (void) data;

  g_setenv ("STRUTWRIGHT_DATADIR", data_folder, TRUE);
  g_autoptr (PlateLibrary) library = plate_library_load (NULL);
  g_assert_cmpuint (library->problems->len, ==, 0);
  g_assert_cmpuint (library->plates->len, ==, G_N_ELEMENTS (plates));
  for (guint i = 0; i < library->plates->len; i++) {
    const ShelfPlate *shelf = g_ptr_array_index (library->plates, i);
    g_autofree char *written = plate_to_json (shelf->plate, NULL);
    g_autofree char *bytes = NULL;

    g_assert_cmpstr (shelf->plate->name, ==, plates[i].name);
    g_assert_cmpint (shelf->plate->kind, ==, plates[i].kind);
    g_assert_cmpint (shelf->origin, ==, PLATE_FROM_PROGRAM);
    g_assert_true (g_str_has_suffix (shelf->plate->notes, "."));
    g_assert_true (g_file_load_contents (shelf->file, NULL, &bytes, NULL, NULL, NULL));
    g_assert_cmpstr (written, ==, bytes);
  }
}

/* The diagonal slot: 35° as marked, so more camber than caster; swapped a quarter turn it
 * runs 55°, and caster takes the larger share: 20·cos 35° = 16.383040885779835, 20·sin
 * 35° = 11.471528727020921. */
static void
test_the_diagonal_slot_has_two_uses (Shelves *s, gconstpointer data)
{
  g_autofree char *data_folder = g_test_build_filename (G_TEST_DIST, "..", "data", NULL);
  PlateSetting setting = { .along = 20.0 };
  (void) s;
  (void) data;

  g_setenv ("STRUTWRIGHT_DATADIR", data_folder, TRUE);
  g_autoptr (PlateLibrary) library = plate_library_load (NULL);
  const Plate *plate = plate_library_find (library, "Diagonal slot plate")->plate;
  const MountOffset marked = plate_place (plate, setting);
  setting.is_swapped = TRUE;
  const MountOffset swapped = plate_place (plate, setting);

  g_assert_true (plate->can_swap);
  g_assert_cmpfloat_with_epsilon (marked.inboard, 16.383040885779835, 1e-12);
  g_assert_cmpfloat_with_epsilon (marked.rearward, 11.471528727020921, 1e-12);
  g_assert_cmpfloat_with_epsilon (swapped.inboard, 11.471528727020921, 1e-12);
  g_assert_cmpfloat_with_epsilon (swapped.rearward, 16.383040885779835, 1e-12);
}

static void
test_the_installed_folder_is_the_default (Shelves *s, gconstpointer data)
{
  (void) data;
  g_autofree char *here = data_path ("plates");
  g_assert_cmpstr (here, ==, s->program);
  g_unsetenv ("STRUTWRIGHT_DATADIR");
  g_autofree char *installed = data_path ("plates");
  g_assert_true (g_path_is_absolute (installed));
  g_assert_true (g_str_has_suffix (installed, "/strutwright/plates"));
}

static void
remove_user_root (void)
{
  g_autofree char *program = g_build_filename (user_root, "strutwright", NULL);
  g_autofree char *plates = g_build_filename (program, "plates", NULL);

  g_assert_cmpint (g_rmdir (plates), ==, 0);
  g_assert_cmpint (g_rmdir (program), ==, 0);
  fixture_folder_remove (user_root);
}

#define ADD(path, test) g_test_add (path, Shelves, NULL, set_up, test, tear_down)

int
main (int argc, char **argv)
{
  int status;

  g_test_init (&argc, &argv, NULL);
  user_root = fixture_folder_new ();
  g_setenv ("XDG_DATA_HOME", user_root, TRUE);
  ADD ("/plate-library/order", test_the_nearest_origin_comes_first);
  ADD ("/plate-library/nearer-origin", test_the_nearer_origin_replaces_a_name);
  ADD ("/plate-library/refused", test_a_refused_file_is_a_sentence_and_no_end);
  ADD ("/plate-library/refused-hides-nothing", test_a_refused_file_hides_nothing);
  ADD ("/plate-library/same-name", test_a_copy_with_the_same_name_is_said);
  ADD ("/plate-library/only-plates", test_only_plate_files_are_read);
  ADD ("/plate-library/once", test_a_car_among_the_plates_reads_them_once);
  ADD ("/plate-library/no-folders", test_folders_that_are_not_there_hold_none);
  ADD ("/plate-library/no-folder-but-a-file", test_a_folder_that_is_a_file_is_said);
  ADD ("/plate-library/new-file", test_new_files_are_named_by_their_plate);
  ADD ("/plate-library/user-folder", test_the_user_s_folder_is_made);
  ADD ("/plate-library/program", test_the_program_s_plates_load);
  ADD ("/plate-library/diagonal", test_the_diagonal_slot_has_two_uses);
  ADD ("/plate-library/installed", test_the_installed_folder_is_the_default);
  status = g_test_run ();
  remove_user_root ();
  return status;
}
