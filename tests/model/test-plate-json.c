/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "car-fixture.h"
#include "comma-locale.h"
#include "hard-places.h"
#include "plate-fixture.h"

#include "model/plate/plate-json.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>
#include <sys/wait.h>

typedef struct {
  const char *file;
  FileRefusal code;
  const char *sentence;
} Refusal;

static const Refusal refusals[] = {
  { "across-falling", FILE_REFUSAL_NUMBER, "across_mm[0] must be below across_mm[1]." },
  { "across-far", FILE_REFUSAL_NUMBER,
    "across_mm[1] is 250, but must lie between -200 and 200." },
  { "across-missing", FILE_REFUSAL_MISSING, "across_mm is missing." },
  { "along-empty", FILE_REFUSAL_MISSING, "along_mm[0] is missing." },
  { "along-equal", FILE_REFUSAL_NUMBER, "along_mm[0] must be below along_mm[1]." },
  { "along-falling", FILE_REFUSAL_NUMBER, "along_mm[0] must be below along_mm[1]." },
  { "along-far", FILE_REFUSAL_NUMBER,
    "along_mm[1] is 2500, but must lie between -200 and 200." },
  { "along-far-below", FILE_REFUSAL_NUMBER,
    "along_mm[0] is -201, but must lie between -200 and 200." },
  { "along-is-number", FILE_REFUSAL_TYPE,
    "along_mm must be a list of two numbers: least and most." },
  { "along-long", FILE_REFUSAL_TYPE,
    "along_mm must be a list of two numbers: least and most." },
  { "along-missing", FILE_REFUSAL_MISSING, "along_mm is missing." },
  { "along-misspelt", FILE_REFUSAL_MISSING,
    "Unknown member “along”; did you mean “along_mm”?" },
  { "along-short", FILE_REFUSAL_MISSING, "along_mm[1] is missing." },
  { "along-text", FILE_REFUSAL_TYPE, "along_mm[1] must be a number." },
  { "comma-decimal", FILE_REFUSAL_SYNTAX,
    "Line 7, column 19: A member name in double quotes is expected." },
  { "crossed-with-turn-range", FILE_REFUSAL_TYPE,
    "turn_range_deg does not belong to a plate of kind crossed-slots." },
  { "cut-short", FILE_REFUSAL_SYNTAX,
    "Line 8, column 1: A member name in double quotes is expected." },
  { "diameter-negative", FILE_REFUSAL_NUMBER,
    "bearing_diameter_mm is -47, but must lie between 0 and 500." },
  { "diameter-null", FILE_REFUSAL_TYPE, "bearing_diameter_mm must be a number." },
  { "direction-far", FILE_REFUSAL_NUMBER,
    "direction_deg is 361, but must lie between -360 and 360." },
  { "direction-missing", FILE_REFUSAL_MISSING, "direction_deg is missing." },
  { "direction-misspelt", FILE_REFUSAL_MISSING,
    "Unknown member “diretion_deg”; did you mean “direction_deg”?" },
  { "direction-mistyped", FILE_REFUSAL_TYPE, "direction_deg must be a number." },
  { "duplicate-key", FILE_REFUSAL_SYNTAX, "inboard_mm appears twice." },
  { "duplicate-key-in-hole", FILE_REFUSAL_SYNTAX, "holes[1].inboard_mm appears twice." },
  { "eccentric-with-along", FILE_REFUSAL_TYPE,
    "along_mm does not belong to a plate of kind eccentric." },
  { "empty", FILE_REFUSAL_SYNTAX, "Line 1, column 1: A value is expected." },
  { "fixed-with-direction", FILE_REFUSAL_TYPE,
    "direction_deg does not belong to a plate of kind fixed." },
  { "fixed-with-holes", FILE_REFUSAL_TYPE,
    "holes does not belong to a plate of kind fixed." },
  { "fixed-with-radius", FILE_REFUSAL_TYPE,
    "radius_mm does not belong to a plate of kind fixed." },
  { "format-car", FILE_REFUSAL_VERSION,
    "This is no plate file: format is not \"strutwright-plate\"." },
  { "format-missing", FILE_REFUSAL_VERSION,
    "This is no plate file: format is not \"strutwright-plate\"." },
  { "format-mistyped", FILE_REFUSAL_VERSION,
    "This is no plate file: format is not \"strutwright-plate\"." },
  { "hole-inboard-far", FILE_REFUSAL_NUMBER,
    "holes[2].inboard_mm is 1400, but must lie between -200 and 200." },
  { "hole-inboard-missing", FILE_REFUSAL_MISSING, "holes[2].inboard_mm is missing." },
  { "hole-is-list", FILE_REFUSAL_TYPE, "holes[1] must be an object in braces." },
  { "hole-label-empty", FILE_REFUSAL_NAME, "holes[1].label must not be empty." },
  { "hole-label-missing", FILE_REFUSAL_MISSING, "holes[1].label is missing." },
  { "hole-label-misspelt", FILE_REFUSAL_MISSING,
    "Unknown member “holes[1].lable”; did you mean “label”?" },
  { "hole-label-number", FILE_REFUSAL_TYPE, "holes[1].label must be a text." },
  { "hole-label-twice", FILE_REFUSAL_NAME,
    "holes[2].label is the same as holes[0].label." },
  { "hole-rearward-far", FILE_REFUSAL_NUMBER,
    "holes[1].rearward_mm is -201, but must lie between -200 and 200." },
  { "hole-rearward-text", FILE_REFUSAL_TYPE, "holes[1].rearward_mm must be a number." },
  { "holes-empty", FILE_REFUSAL_NUMBER,
    "holes must have at least one entry and at most 360." },
  { "holes-missing", FILE_REFUSAL_MISSING, "holes is missing." },
  { "holes-mistyped", FILE_REFUSAL_TYPE, "holes must be a list in brackets." },
  { "holes-with-inboard", FILE_REFUSAL_TYPE,
    "inboard_mm does not belong to a plate of kind holes." },
  { "inboard-far", FILE_REFUSAL_NUMBER,
    "inboard_mm is 200.5, but must lie between -200 and 200." },
  { "inboard-missing", FILE_REFUSAL_MISSING, "inboard_mm is missing." },
  { "inboard-text", FILE_REFUSAL_TYPE, "inboard_mm must be a number." },
  { "infinity", FILE_REFUSAL_SYNTAX, "Line 7, column 17: A value is expected." },
  { "kind-missing", FILE_REFUSAL_MISSING, "kind is missing." },
  { "kind-mistyped", FILE_REFUSAL_TYPE, "kind must be a text." },
  { "kind-misspelt-member", FILE_REFUSAL_MISSING,
    "Unknown member “knid”; did you mean “kind”?" },
  { "kind-near", FILE_REFUSAL_TYPE, "Unknown kind “slto”; did you mean “slot”?" },
  { "kind-other", FILE_REFUSAL_TYPE, "Unknown kind “Slot”; did you mean “slot”?" },
  { "kind-unlike", FILE_REFUSAL_TYPE,
    "kind must be \"fixed\", \"slot\", \"crossed-slots\", \"eccentric\" or \"holes\"." },
  { "name-blank", FILE_REFUSAL_NAME, "name must not be empty." },
  { "name-empty", FILE_REFUSAL_NAME, "name must not be empty." },
  { "name-missing", FILE_REFUSAL_MISSING, "name is missing." },
  { "name-mistyped", FILE_REFUSAL_TYPE, "name must be a text." },
  { "notes-mistyped", FILE_REFUSAL_TYPE, "notes must be a text." },
  { "overflow", FILE_REFUSAL_NUMBER, "along_mm[1] is too large a number." },
  { "radius-missing", FILE_REFUSAL_MISSING, "radius_mm is missing." },
  { "radius-negative", FILE_REFUSAL_NUMBER,
    "radius_mm is -6, but must be above 0 and not above 200." },
  { "radius-zero", FILE_REFUSAL_NUMBER,
    "radius_mm is 0, but must be above 0 and not above 200." },
  { "raises-far", FILE_REFUSAL_NUMBER,
    "raises_mm is 201, but must lie between -200 and 200." },
  { "raises-text", FILE_REFUSAL_TYPE, "raises_mm must be a number." },
  { "rearward-far", FILE_REFUSAL_NUMBER,
    "rearward_mm is -600, but must lie between -200 and 200." },
  { "rearward-missing", FILE_REFUSAL_MISSING, "rearward_mm is missing." },
  { "root-is-list", FILE_REFUSAL_TYPE,
    "This is no plate file: it must be an object in braces." },
  { "slot-with-across", FILE_REFUSAL_TYPE,
    "across_mm does not belong to a plate of kind slot." },
  { "slot-with-radius", FILE_REFUSAL_TYPE,
    "radius_mm does not belong to a plate of kind slot." },
  { "slot-with-turns", FILE_REFUSAL_TYPE,
    "turns_deg does not belong to a plate of kind slot." },
  { "swap-turn-far", FILE_REFUSAL_NUMBER,
    "swap_turn_deg is 181, but must lie between -180 and 180." },
  { "swap-turn-mistyped", FILE_REFUSAL_TYPE, "swap_turn_deg must be a number." },
  { "thickness-far", FILE_REFUSAL_NUMBER,
    "thickness_mm is 101, but must lie between 0 and 100." },
  { "thickness-negative", FILE_REFUSAL_NUMBER,
    "thickness_mm is -1, but must lie between 0 and 100." },
  { "tilt-negative", FILE_REFUSAL_NUMBER,
    "bearing_tilt_deg is -0.5, but must lie between 0 and 45." },
  { "tilt-steep", FILE_REFUSAL_NUMBER,
    "bearing_tilt_deg is 46, but must lie between 0 and 45." },
  { "turn-far", FILE_REFUSAL_NUMBER,
    "turns_deg[0] is -361, but must lie between -360 and 360." },
  { "turn-range-falling", FILE_REFUSAL_NUMBER,
    "turn_range_deg[0] must be below turn_range_deg[1]." },
  { "turn-range-far", FILE_REFUSAL_NUMBER,
    "turn_range_deg[1] is 400, but must lie between -360 and 360." },
  { "turn-range-long", FILE_REFUSAL_NUMBER,
    "turn_range_deg[1] must not be more than 360 above turn_range_deg[0]." },
  { "turn-range-mistyped", FILE_REFUSAL_TYPE,
    "turn_range_deg must be a list of two numbers: least and most." },
  { "turn-text", FILE_REFUSAL_TYPE, "turns_deg[2] must be a number." },
  { "turns-and-range", FILE_REFUSAL_TYPE,
    "A plate has turns_deg or turn_range_deg, and not both." },
  { "turns-empty", FILE_REFUSAL_NUMBER,
    "turns_deg must have at least one entry and at most 360." },
  { "turns-equal", FILE_REFUSAL_NUMBER, "turns_deg[2] must be above turns_deg[1]." },
  { "turns-falling", FILE_REFUSAL_NUMBER, "turns_deg[2] must be above turns_deg[1]." },
  { "turns-many", FILE_REFUSAL_NUMBER,
    "turns_deg must have at least one entry and at most 360." },
  { "turns-missing", FILE_REFUSAL_MISSING, "turns_deg or turn_range_deg is missing." },
  { "turns-misspelt", FILE_REFUSAL_MISSING,
    "Unknown member “turn_deg”; did you mean “turns_deg”?" },
  { "turns-mistyped", FILE_REFUSAL_TYPE, "turns_deg must be a list in brackets." },
  { "turns-past-a-full-turn", FILE_REFUSAL_NUMBER,
    "turns_deg[3] must be less than 360 above turns_deg[0]." },
  { "version-missing", FILE_REFUSAL_MISSING, "version is missing." },
  { "version-newer", FILE_REFUSAL_VERSION,
    "The file is from a newer Strutwright: its version is 2, and this program reads up to version 1." },
  { "version-text", FILE_REFUSAL_TYPE, "version must be a number." },
  { "version-zero", FILE_REFUSAL_VERSION, "version is 0, which no plate file ever had." },
};

static char *
plate_path (const char *folder, const char *name)
{
  g_autofree char *base = g_strconcat (name, ".swplate", NULL);

  return fixture_path ("plates", folder, base, NULL);
}

static Plate *
load_good (const char *name)
{
  g_autofree char *path = plate_path ("good", name);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  Plate *plate = plate_load (file, &error);

  g_assert_no_error (error);
  return plate;
}

static void
test_bad_files_are_refused_in_words (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (refusals); i++) {
    g_autofree char *path = plate_path ("bad", refusals[i].file);
    g_autoptr (GFile) file = g_file_new_for_path (path);
    g_autoptr (GError) error = NULL;

    g_test_message ("%s", refusals[i].file);
    g_assert_null (plate_load (file, &error));
    g_assert_nonnull (error);
    g_assert_cmpstr (error->message, ==, refusals[i].sentence);
    g_assert_error (error, FILE_REFUSAL, (int) refusals[i].code);
  }
}

static void
test_every_bad_file_has_its_row (void)
{
  g_autofree char *folder = fixture_path ("plates", "bad", NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  gsize n = 0;

  while (g_dir_read_name (dir) != NULL)
    n++;
  g_assert_cmpuint (n, ==, G_N_ELEMENTS (refusals));
}

static void
check_round_trip (const Plate *plate)
{
  gsize length;
  g_autofree char *once = plate_to_json (plate, &length);
  g_autoptr (GError) error = NULL;
  g_autoptr (Plate) again = plate_from_json (once, length, &error);

  g_assert_no_error (error);
  g_assert_true (plate_equal (plate, again));
  g_autofree char *twice = plate_to_json (again, NULL);
  g_assert_cmpstr (once, ==, twice);
  g_assert_cmpuint (strlen (once), ==, length);
  g_assert_cmpint (once[length - 1], ==, '\n');
}

static void
test_every_good_file_loads_and_keeps_its_bytes (void)
{
  static const char *const names[] = {
    "fixed",           "slot",      "crossed-slots", "eccentric-turns",
    "eccentric-range", "holes",     "everything",    "swap-without-turn",
    "furthest",        "full-turn", "one-turn"
  };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++) {
    g_autofree char *path = plate_path ("good", names[i]);
    g_autofree char *bytes = NULL;
    g_autoptr (Plate) plate = load_good (names[i]);
    g_autofree char *written = plate_to_json (plate, NULL);

    g_test_message ("%s", names[i]);
    g_assert_true (g_file_get_contents (path, &bytes, NULL, NULL));
    g_assert_cmpstr (written, ==, bytes);
    check_round_trip (plate);
  }
}

static void
test_members_are_read_to_their_places (void)
{
  g_autoptr (Plate) plate = load_good ("everything");

  g_assert_cmpstr (plate->name, ==, "Test plate");
  g_assert_cmpint (plate->kind, ==, PLATE_SLOT);
  g_assert_cmpfloat (plate->inboard_mm, ==, 3.0);
  g_assert_cmpfloat (plate->rearward_mm, ==, -2.0);
  g_assert_cmpfloat (plate->direction_deg, ==, 35.0);
  g_assert_cmpfloat (plate->along.least, ==, -5.0);
  g_assert_cmpfloat (plate->along.most, ==, 25.0);
  g_assert_cmpfloat (plate->raises_mm, ==, -4.25);
  g_assert_cmpfloat (plate->thickness_mm, ==, 100.0);
  g_assert_cmpfloat (plate->bearing_diameter_mm, ==, 47.5);
  g_assert_cmpfloat (plate->bearing_tilt_deg, ==, 45.0);
  g_assert_true (plate->can_swap);
  g_assert_cmpfloat (plate->swap_turn_deg, ==, -90.0);
  g_assert_null (plate->unknown);
}

static void
test_lists_are_read_to_their_places (void)
{
  g_autoptr (Plate) crossed = load_good ("crossed-slots"), holes = load_good ("holes");
  g_autoptr (Plate) turns = load_good ("eccentric-turns");
  g_autoptr (Plate) range = load_good ("eccentric-range");
  const PlateHole *third = &g_array_index (holes->holes, PlateHole, 2);

  g_assert_cmpfloat (crossed->across.least, ==, -8.0);
  g_assert_cmpfloat (crossed->across.most, ==, 12.0);
  g_assert_cmpuint (holes->holes->len, ==, 3);
  g_assert_cmpstr (third->label, ==, "3");
  g_assert_cmpfloat (third->inboard_mm, ==, 14.0);
  g_assert_cmpfloat (third->rearward_mm, ==, 0.0);
  g_assert_cmpuint (turns->turns_deg->len, ==, 4);
  g_assert_cmpfloat (g_array_index (turns->turns_deg, double, 3), ==, 135.0);
  g_assert_cmpfloat (turns->radius_mm, ==, 6.0);
  g_assert_cmpuint (range->turns_deg->len, ==, 0);
  g_assert_cmpfloat (range->turn_least_deg, ==, -30.0);
  g_assert_cmpfloat (range->turn_most_deg, ==, 60.0);
}

static void
test_what_may_be_left_out_is_nothing (void)
{
  g_autoptr (Plate) plate = load_good ("minimal"), fresh = plate_new ();

  g_free (fresh->name);
  fresh->name = g_strdup ("Bare");
  g_assert_true (plate_equal (plate, fresh));
  check_round_trip (plate);
}

static void
test_unknown_members_are_written_back (void)
{
  g_autoptr (Plate) plate = load_good ("unknown-members");
  g_autoptr (Plate) copy = plate_copy (plate);
  g_autofree char *text = plate_to_json (copy, NULL);
  const PlateHole *second = &g_array_index (plate->holes, PlateHole, 1);

  g_assert_true (json_object_get_boolean_member (second->unknown, "stamped"));
  g_assert_nonnull (strstr (text, "\"thread\": [12, 1.75]"));
  g_assert_nonnull (strstr (text, "\"part_number\": \"invented 17\""));
  g_assert_nonnull (strstr (text, "\"coats\": [1, 2.5, null]"));
  check_round_trip (copy);
}

/* Without values that say nothing, and only with those of the kind. */
static void
test_a_file_holds_what_says_something (void)
{
  g_autoptr (Plate) plate = load_good ("fixed");

  plate->radius_mm = 6.0;
  plate->along = (PlateScale){ 3.0, 2.0 };
  plate->swap_turn_deg = 400.0;
  g_autofree char *text = plate_to_json (plate, NULL);
  g_assert_null (strstr (text, "radius_mm"));
  g_assert_null (strstr (text, "along_mm"));
  g_assert_null (strstr (text, "raises_mm"));
  g_assert_null (strstr (text, "swap_turn_deg"));
  check_round_trip (plate);

  plate->raises_mm = -0.0;
  plate->bearing_diameter_mm = -0.0;
  g_autofree char *signed_zero = plate_to_json (plate, NULL);
  g_assert_nonnull (strstr (signed_zero, "\"raises_mm\": -0.0"));
  check_round_trip (plate);
}

static double
maybe (GRand *rand, double most)
{
  return g_rand_int_range (rand, 0, 4) == 0 ? 0.0 : g_rand_double_range (rand, 0.0, most);
}

static void
check_random_plates (void)
{
  GRand *rand = g_rand_new_with_seed (2000);

  for (int i = 0; i < (g_test_thorough () ? 2000 : 500); i++) {
    g_autoptr (Plate) plate = fixture_random_plate (rand, i % N_PLATE_KINDS);

    plate->thickness_mm = maybe (rand, 100.0);
    plate->bearing_diameter_mm = maybe (rand, 60.0);
    plate->bearing_tilt_deg = maybe (rand, 45.0);
    if (i % 7 == 0)
      plate->raises_mm = -0.0;
    g_free (plate->notes);
    plate->notes = g_strdup_printf ("„Größe“ \\ \"%u\"\n\t%d", g_rand_int (rand), i);
    check_round_trip (plate);
  }
  g_rand_free (rand);
}

static void
test_every_bit_of_every_number_is_kept (void)
{
  check_random_plates ();
}

static void
test_a_decimal_comma_changes_nothing (void)
{
  g_autoptr (Plate) plate = load_good ("everything");
  g_autofree char *plain = plate_to_json (plate, NULL);

  if (!comma_locale_enter ())
    return;
  g_autofree char *text = plate_to_json (plate, NULL);
  check_random_plates ();
  comma_locale_leave ();
  g_assert_cmpstr (text, ==, plain);
}

static void
check_is_refused (const Plate *plate, const char *sentence)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (plate_check (plate, &error));
  g_assert_nonnull (error);
  g_assert_cmpstr (error->message, ==, sentence);
  g_assert_cmpint (error->domain, ==, FILE_REFUSAL);
}

static void
test_values_are_checked_before_they_are_written (void)
{
  g_autoptr (Plate) fresh = plate_new (), slot = load_good ("slot");
  g_autoptr (Plate) holes = load_good ("holes"), none = load_good ("holes");
  g_autoptr (Plate) odd = load_good ("fixed");
  double *across = &slot->across.least;

  check_is_refused (fresh, "name must not be empty.");
  *across = NAN; /* of no use to a slot */
  g_assert_true (plate_check (slot, NULL));
  slot->along.most = NAN;
  check_is_refused (slot, "along_mm[1] is nan, but must lie between -200 and 200.");
  slot->along.most = INFINITY;
  check_is_refused (slot, "along_mm[1] is inf, but must lie between -200 and 200.");
  fixture_add_hole (holes, "4", 0.0, NAN);
  check_is_refused (holes,
                    "holes[3].rearward_mm is nan, but must lie between -200 and 200.");
  g_array_set_size (none->holes, 0);
  check_is_refused (none, "holes must have at least one entry and at most 360.");
  odd->name[0] = (char) 0xff;
  check_is_refused (odd, "name must be a text.");
}

/* Every good file passes, and so does what was read of it. */
static void
test_what_can_be_read_passes_the_check (void)
{
  g_autofree char *folder = fixture_path ("plates", "good", NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (folder, name, NULL);
    g_autoptr (GFile) file = g_file_new_for_path (path);
    g_autoptr (GError) error = NULL;
    g_autoptr (Plate) plate = plate_load (file, &error);

    g_test_message ("%s", name);
    g_assert_no_error (error);
    g_assert_true (plate_check (plate, &error));
    g_assert_no_error (error);
  }
}

typedef struct {
  char *folder;
  GFile *file;
  Plate *old, *new;
} Saving;

static void
set_up (Saving *s, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  (void) data;

  s->folder = fixture_folder_new ();
  s->file = g_file_new_build_filename (s->folder, "plate.swplate", NULL);
  s->old = load_good ("slot");
  s->new = plate_copy (s->old);
  s->new->along.most = 31.25;
  g_assert_true (plate_save (s->old, s->file, &error));
  g_assert_no_error (error);
}

static void
tear_down (Saving *s, gconstpointer data)
{
  (void) data;
  plate_free (s->old);
  plate_free (s->new);
  g_object_unref (s->file);
  fixture_folder_remove (s->folder);
}

static void
check_holds (Saving *s, const Plate *plate)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Plate) there = plate_load (s->file, &error);

  g_assert_no_error (error);
  g_assert_true (plate_equal (there, plate));
}

static void
test_saving_replaces_the_file (Saving *s, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  (void) data;

  check_holds (s, s->old);
  g_assert_true (plate_save (s->new, s->file, &error));
  g_assert_no_error (error);
  check_holds (s, s->new);
}

static gboolean
is_refused (gpointer data)
{
  Saving *s = data;

  return !plate_save (s->new, s->file, NULL);
}

static void
test_a_full_disk_leaves_the_old_file (Saving *s, gconstpointer data)
{
  const int status = hard_place_little_room (is_refused, s, FALSE);
  (void) data;

  g_assert_true (WIFEXITED (status));
  g_assert_cmpint (WEXITSTATUS (status), ==, 0);
  check_holds (s, s->old);
}

static gboolean
is_denied (gpointer data)
{
  Saving *s = data;
  g_autoptr (GError) error = NULL;

  return !plate_save (s->new, s->file, &error) &&
         g_error_matches (error, G_IO_ERROR, G_IO_ERROR_PERMISSION_DENIED);
}

static void
test_what_may_not_be_written_is_said (Saving *s, gconstpointer data)
{
  g_autofree char *path = g_file_get_path (s->file);
  (void) data;

  g_assert_cmpint (g_chmod (s->folder, 0755), ==, 0);
  g_assert_true (hard_place_no_rights (s->folder, is_denied, s));
  g_assert_cmpint (g_chmod (s->folder, 0777), ==, 0);
  g_assert_true (hard_place_no_rights (path, is_denied, s));
  check_holds (s, s->old);
}

static void
test_odd_names (Saving *s, gconstpointer data)
{
  (void) data;

  for (guint i = 0; i < N_ODD_NAMES; i++) {
    g_autofree char *name = odd_name (i, ".swplate");
    g_autoptr (GError) error = NULL;

    g_object_unref (s->file);
    s->file = g_file_new_build_filename (s->folder, name, NULL);
    g_assert_true (plate_save (s->new, s->file, &error));
    g_assert_no_error (error);
    check_holds (s, s->new);
  }
}

static void
test_a_plate_that_could_not_be_opened_is_not_saved (Saving *s, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  (void) data;

  s->new->along.least = 400.0;
  g_assert_false (plate_save (s->new, s->file, &error));
  g_assert_error (error, FILE_REFUSAL, FILE_REFUSAL_NUMBER);
  g_assert_cmpstr (error->message, ==,
                   "The plate was not saved, as it could not be opened again: "
                   "along_mm[0] is 400, but must lie between -200 and 200.");
  check_holds (s, s->old);
}

static void
test_a_large_or_missing_file_is_said (Saving *s, gconstpointer data)
{
  g_autofree char *path = g_file_get_path (s->file);
  g_autofree char *large = g_strnfill (FILE_MOST_BYTES + 1, ' ');
  g_autoptr (GFile) missing = g_file_new_for_path ("/nowhere/at-all.swplate");
  g_autoptr (GError) error = NULL, other = NULL;
  (void) data;

  g_assert_true (g_file_set_contents (path, large, -1, NULL));
  g_assert_null (plate_load (s->file, &error));
  g_assert_error (error, FILE_REFUSAL, FILE_REFUSAL_TOO_LARGE);
  g_assert_null (plate_load (missing, &other));
  g_assert_error (other, G_IO_ERROR, G_IO_ERROR_NOT_FOUND);
}

#define ADD(path, test) g_test_add (path, Saving, NULL, set_up, test, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plate-json/bad-files", test_bad_files_are_refused_in_words);
  g_test_add_func ("/plate-json/bad-files-complete", test_every_bad_file_has_its_row);
  g_test_add_func ("/plate-json/good-files",
                   test_every_good_file_loads_and_keeps_its_bytes);
  g_test_add_func ("/plate-json/members", test_members_are_read_to_their_places);
  g_test_add_func ("/plate-json/lists", test_lists_are_read_to_their_places);
  g_test_add_func ("/plate-json/defaults", test_what_may_be_left_out_is_nothing);
  g_test_add_func ("/plate-json/unknown-members", test_unknown_members_are_written_back);
  g_test_add_func ("/plate-json/says-something", test_a_file_holds_what_says_something);
  g_test_add_func ("/plate-json/every-bit", test_every_bit_of_every_number_is_kept);
  g_test_add_func ("/plate-json/decimal-comma", test_a_decimal_comma_changes_nothing);
  g_test_add_func ("/plate-json/check", test_values_are_checked_before_they_are_written);
  g_test_add_func ("/plate-json/check-good", test_what_can_be_read_passes_the_check);
  ADD ("/plate-json/saving", test_saving_replaces_the_file);
  ADD ("/plate-json/full-disk", test_a_full_disk_leaves_the_old_file);
  ADD ("/plate-json/read-only", test_what_may_not_be_written_is_said);
  ADD ("/plate-json/odd-names", test_odd_names);
  ADD ("/plate-json/unsound", test_a_plate_that_could_not_be_opened_is_not_saved);
  ADD ("/plate-json/large-or-missing", test_a_large_or_missing_file_is_said);
  return g_test_run ();
}
