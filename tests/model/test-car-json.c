/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "car-fixture.h"
#include "comma-locale.h"

#include "model/car/car-json.h"
#include "model/json/json-write.h"

#include <math.h>
#include <string.h>

static char *
read_file (const char *path, gsize *length)
{
  g_autoptr (GError) error = NULL;
  char *text = NULL;

  g_file_get_contents (path, &text, length, &error);
  g_assert_no_error (error);
  return text;
}

static void
test_every_good_file_loads_and_keeps_its_bytes (void)
{
  g_autofree char *folder = fixture_path ("cars", "good", NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (folder, name, NULL);
    g_autoptr (GFile) file = g_file_new_for_path (path);
    g_autoptr (GError) error = NULL;
    g_autoptr (Car) car = car_load (file, &error);
    gsize length;

    g_test_message ("%s", name);
    g_assert_no_error (error);
    g_autofree char *once = car_to_json (car, &length);
    g_autoptr (Car) again = car_from_json (once, length, &error);
    g_assert_no_error (error);
    g_assert_true (car_equal (car, again));
    g_autofree char *twice = car_to_json (again, NULL);
    g_assert_cmpstr (once, ==, twice);
    g_assert_cmpint (once[length - 1], ==, '\n');
    g_assert_cmpuint (strlen (once), ==, length);
  }
}

/* tests/data/cars/written has what the program wrote of each good file before tower,
 * strut, targets and right side were known. */
static void
check_written_before (const char *folder, const char *base)
{
  g_autofree char *there = g_build_filename (folder, base, NULL);
  g_autofree char *good = fixture_path ("cars", "good", base, NULL);
  const char *const sources[] = { there, good };
  g_autofree char *bytes = read_file (there, NULL);

  g_test_message ("%s", base);
  for (gsize i = 0; i < G_N_ELEMENTS (sources); i++) {
    g_autoptr (GFile) file = g_file_new_for_path (sources[i]);
    g_autoptr (GError) error = NULL;

    if (!g_file_query_exists (file, NULL))
      continue; /* an earlier demo car */
    g_autoptr (Car) car = car_load (file, &error);
    g_assert_no_error (error);
    g_autofree char *written = car_to_json (car, NULL);
    g_assert_cmpstr (written, ==, bytes);
  }
}

static void
test_older_files_are_written_as_before (void)
{
  g_autofree char *folder = fixture_path ("cars", "written", NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  guint n = 0;

  for (; (name = g_dir_read_name (dir)) != NULL; n++)
    check_written_before (folder, name);
  g_assert_cmpuint (n, ==, 14);
}

static void
test_demo_cars_are_written_as_they_stand (void)
{
  static const char *const names[] = { "wren", "fieldfare", "lapwing", "dunnock" };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++) {
    g_autofree char *base = g_strconcat (names[i], ".swcar", NULL);
    g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "data", base, NULL);
    g_autofree char *bytes = read_file (path, NULL);
    g_autoptr (Car) car = fixture_demo (names[i]);
    g_autofree char *written = car_to_json (car, NULL);

    g_assert_cmpstr (written, ==, bytes);
  }
}

static void
test_missing_members_get_their_defaults (void)
{
  g_autoptr (Car) car = fixture_car ("minimal");

  g_assert_cmpstr (car->name, ==, "");
  g_assert_cmpfloat (car->section_width_mm, ==, CAR_DEFAULT_SECTION_WIDTH);
  g_assert_cmpfloat (car->bump_mm, ==, CAR_DEFAULT_TRAVEL);
  g_assert_cmpfloat (car->droop_mm, ==, CAR_DEFAULT_TRAVEL);
  g_assert_cmpfloat (car->body.wheelbase_mm, ==, CAR_DEFAULT_WHEELBASE);
  g_assert_cmpfloat (car->body.front_brake_share, ==, CAR_DEFAULT_BRAKE_SHARE);
  g_assert_cmpuint (car->setups->len, ==, 1);
  g_assert_cmpstr (car_setup (car, 0)->name, ==, "As measured");
}

static void
test_an_empty_list_of_setups_means_as_measured (void)
{
  g_autoptr (Car) car = fixture_car ("no-setups");

  g_assert_cmpuint (car->setups->len, ==, 1);
  g_assert_cmpstr (car_setup (car, 0)->name, ==, "As measured");
}

static void
test_members_are_read_to_their_places (void)
{
  g_autoptr (Car) car = fixture_car ("plain");
  const CarSetup *setup = car_setup (car, 2);

  g_assert_cmpfloat (car->points[POINT_BALL_JOINT].x, ==, 4.0);
  g_assert_cmpfloat (car->points[POINT_BALL_JOINT].y, ==, 652.0);
  g_assert_cmpfloat (car->points[POINT_BALL_JOINT].z, ==, 194.0);
  g_assert_cmpfloat (car->points[POINT_TIE_ROD_INNER].y, ==, 318.0);
  g_assert_cmpfloat (car->camber_deg, ==, -0.4);
  g_assert_cmpfloat (car->toe_in_deg, ==, 0.05);
  g_assert_cmpfloat (car->loaded_radius_mm, ==, 268.0);
  g_assert_cmpfloat (car->section_width_mm, ==, 165.0);
  g_assert_cmpfloat (car->body.wheelbase_mm, ==, 2320.0);
  g_assert_cmpfloat (car->body.cg_height_mm, ==, 520.0);
  g_assert_cmpfloat (car->body.unsprung_corner_kg, ==, 32.0);
  g_assert_cmpfloat (setup->mount.inboard, ==, 12.0);
  g_assert_cmpfloat (setup->mount.rearward, ==, 6.0);
  g_assert_cmpfloat (setup->lowering_mm, ==, 20.0);
  g_assert_cmpint (setup->toe, ==, TOE_RESET);
  g_assert_cmpint (car_setup (car, 1)->toe, ==, TOE_AS_MOVED);
}

static void
test_escapes_are_decoded (void)
{
  g_autoptr (Car) car = fixture_car ("escapes");

  g_assert_cmpstr (car->name, ==, "Wren \xF0\x9F\x90\xA6 / \b\f\n\r\t");
}

static void
test_a_setup_that_cannot_be_assembled_loads (void)
{
  g_autoptr (Car) car = fixture_car ("impossible-setup");

  g_assert_cmpfloat (car_setup (car, 1)->mount.inboard, ==, -400.0);
}

/* Every object of the file has members of a later version. They keep their kind, too: 1.0
 * is no integer, and an integer of 64 bits keeps them all. */
static void
test_unknown_members_are_written_back (void)
{
  static const char *const lines[] = {
    "\"camber_bolt\": [1, 2.5, -0.0]",
    "\"steering_arm\": { \"length_mm\": 128.0 }",
    "\"gauge\": \"string lines\"",
    "\"pressure_bar\": 1.0",
    "\"stop\": { \"bump_mm\": 74 }",
    "\"roof\": false",
    "\"colour\": \"orange\"",
    "\"holes\": [1, 2, 3]",
    "\"name\": \"A “quoted” \\\\ plate\"",
    "\"diameter_mm\": 21.0",
    "\"count\": 2",
    "\"serial\": 9223372036854775807",
    "\"least\": -9223372036854775808",
    "\"note\": null",
    "\"on\": true",
    "\"empty\": {}",
    "\"none\": []",
    "\"when\": 1e+22",
    "\"tiny\": 4.94065645841247e-324",
    "\"big\": 1.7976931348623157e+308",
  };
  g_autoptr (Car) car = fixture_car ("unknown-members");
  g_autoptr (Car) copy = car_copy (car);
  g_autofree char *text = car_to_json (copy, NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (lines); i++) {
    g_test_message ("%s", lines[i]);
    g_assert_nonnull (strstr (text, lines[i]));
  }
  /* behind the known ones of their object */
  g_assert_true (strstr (text, "\"springs\"") > strstr (text, "\"setups\""));
  g_assert_true (strstr (text, "\"camber_bolt\"") > strstr (text, "\"wheel_centre\""));
}

static void
test_corrections_are_read_to_their_places (void)
{
  g_autoptr (Car) car = fixture_car ("corrections");
  const CarCorrections *c = &car_setup (car, 1)->corrections;
  const CarCorrections *other = &car_setup (car, 3)->corrections;

  g_assert_cmpfloat (c->camber_bolt_deg, ==, -1.25);
  g_assert_cmpfloat (c->ball_joint_spacer_mm, ==, 20.0);
  g_assert_cmpfloat (c->tie_rod_end_spacer_mm, ==, 12.5);
  g_assert_cmpfloat (c->front_pivot_raise_mm, ==, 10.0);
  g_assert_cmpfloat (c->rear_pivot_raise_mm, ==, 8.0);
  g_assert_cmpfloat (c->pivot_outboard_mm, ==, -3.0);
  g_assert_cmpfloat (c->rack_raise_mm, ==, -4.5);
  g_assert_cmpfloat (c->tie_rod_length_mm, ==, 1.75);
  g_assert_cmpfloat (other->rack_raise_mm, ==, 5.0);
  g_assert_cmpfloat (other->ball_joint_spacer_mm, ==, 0.0);
  g_assert_true (car_setup (car, 2)->is_hidden);
  g_assert_false (car_setup (car, 1)->is_hidden);
}

/* Setups 1 and 3 share the name: the first of them is meant. */
static void
test_the_first_of_a_name_is_the_baseline (void)
{
  g_autoptr (Car) car = fixture_car ("corrections");

  g_assert_cmpstr (car_setup (car, 3)->name, ==, car_setup (car, 1)->name);
  g_assert_cmpuint (car->baseline, ==, 1);
}

static void
test_new_members_stand_where_they_say_something (void)
{
  g_autoptr (Car) car = fixture_car ("corrections");
  g_autofree char *text = car_to_json (car, NULL);

  g_assert_nonnull (strstr (text, "\"bush\": {"));
  g_assert_true (strstr (text, "\"hidden\"") < strstr (text, "\"colour\""));
  g_assert_true (strstr (text, "\"baseline\"") < strstr (text, "\"season\""));

  for (guint i = 0; i < car->setups->len; i++) {
    CarSetup *setup = car_setup (car, i);

    setup->corrections = (CarCorrections){ 0 };
    setup->is_hidden = FALSE;
    g_clear_pointer (&setup->unknown_corrections, json_object_unref);
  }
  car->baseline = 0;
  g_autofree char *bare = car_to_json (car, NULL);
  g_assert_null (strstr (bare, "corrections"));
  g_assert_null (strstr (bare, "hidden"));
  g_assert_null (strstr (bare, "baseline"));
}

static void
check_a_difference (void (*change) (Car *car))
{
  g_autoptr (Car) car = fixture_car ("corrections");
  g_autoptr (Car) copy = car_copy (car);

  g_assert_true (car_equal (car, copy));
  change (copy);
  g_assert_false (car_equal (car, copy));
}

static void
change_correction (Car *car)
{
  car_setup (car, 1)->corrections.tie_rod_length_mm += 1e-12;
}

static void
change_sign_of_zero (Car *car)
{
  car_setup (car, 0)->corrections.rack_raise_mm = -0.0;
}

static void
change_hidden (Car *car)
{
  car_setup (car, 2)->is_hidden = FALSE;
}

static void
change_baseline (Car *car)
{
  car->baseline = 0;
}

static void
change_unknown (Car *car)
{
  g_clear_pointer (&car_setup (car, 1)->unknown_corrections, json_object_unref);
}

static void
test_equal_minds_the_new_members (void)
{
  check_a_difference (change_correction);
  check_a_difference (change_sign_of_zero);
  check_a_difference (change_hidden);
  check_a_difference (change_baseline);
  check_a_difference (change_unknown);
}

static double
random_double (GRand *rand)
{
  union {
    guint64 bits;
    double value;
  } d;

  do
    d.bits = (guint64) g_rand_int (rand) << 32 | g_rand_int (rand);
  while (!isfinite (d.value));
  return d.value;
}

static void
check_random_doubles (void)
{
  GRand *rand = g_rand_new_with_seed (20260101);
  g_autoptr (JsonArray) array = json_array_new ();
  g_autoptr (Car) car = fixture_car ("plain");
  gsize length;

  for (int i = 0; i < 20000; i++)
    json_array_add_double_element (array, random_double (rand));
  car->unknown[CAR_SECTION_TYRE] = json_object_new ();
  json_object_set_array_member (car->unknown[CAR_SECTION_TYRE], "noise",
                                json_array_ref (array));

  g_autofree char *text = car_to_json (car, &length);
  g_autoptr (Car) again = car_from_json (text, length, NULL);
  g_assert_nonnull (again);
  JsonArray *back =
      json_object_get_array_member (again->unknown[CAR_SECTION_TYRE], "noise");
  for (guint i = 0; i < 20000; i++) {
    const double sent = json_array_get_double_element (array, i);
    const double got = json_array_get_double_element (back, i);

    g_assert_cmpmem (&sent, sizeof sent, &got, sizeof got);
  }
  g_rand_free (rand);
}

/* What a measuring program or a unit conversion would hand over: all 53 bits in use. */
static void
check_random_cars (void)
{
  GRand *rand = g_rand_new_with_seed (7);
  g_autoptr (Car) plain = fixture_car ("plain");

  for (int i = 0; i < 300; i++) {
    g_autoptr (Car) car = car_copy (plain);
    g_autoptr (GError) error = NULL;
    gsize length;

    for (PointName p = 0; p < N_POINTS; p++) {
      car->points[p].x += g_rand_double_range (rand, -9, 9);
      car->points[p].y += g_rand_double_range (rand, -9, 9) / 3.0;
      car->points[p].z += g_rand_double_range (rand, -9, 9) / 7.0;
    }
    car->camber_deg = g_rand_double_range (rand, -3, 3);
    car->toe_in_deg = i % 2 == 0 ? -0.0 : 1.0 / 3.0;
    car->body.front_brake_share = g_rand_double (rand);
    car_setup (car, 1)->mount.inboard = g_rand_double_range (rand, -30, 30);
    car_setup (car, 2)->lowering_mm = g_rand_double_range (rand, -30, 30);
    car_setup (car, 1)->corrections.camber_bolt_deg = g_rand_double_range (rand, -9, 9);
    car_setup (car, 2)->corrections.rack_raise_mm = i % 2 == 0 ? -0.0 : 0.1;
    car->baseline = (guint) i % 3;

    g_autofree char *text = car_to_json (car, &length);
    g_autoptr (Car) again = car_from_json (text, length, &error);
    g_assert_no_error (error);
    g_assert_true (car_equal (car, again));
  }
  g_rand_free (rand);
}

static void
test_every_bit_of_every_number_is_kept (void)
{
  check_random_doubles ();
  check_random_cars ();
}

static void
test_a_decimal_comma_changes_nothing (void)
{
  g_autoptr (Car) car = fixture_car ("unknown-members");
  g_autofree char *plain = car_to_json (car, NULL);

  if (!comma_locale_enter ())
    return;
  g_autofree char *text = car_to_json (car, NULL);
  check_random_doubles ();
  check_random_cars ();
  comma_locale_leave ();
  g_assert_cmpstr (text, ==, plain);
}

static void
test_a_file_over_4_mib_is_too_large (void)
{
  g_autofree char *folder = fixture_folder_new ();
  g_autofree char *path = g_build_filename (folder, "large.swcar", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (Car) plain = fixture_car ("plain");
  g_autofree char *text = car_to_json (plain, NULL);
  GString *large = g_string_new (text);
  g_autoptr (GError) error = NULL;

  while (large->len < FILE_MOST_BYTES)
    g_string_append_c (large, ' ');
  g_assert_true (g_file_set_contents (path, large->str, (gssize) large->len, NULL));
  g_autoptr (Car) just = car_load (file, &error);
  g_assert_no_error (error);

  g_string_append_c (large, ' ');
  g_assert_true (g_file_set_contents (path, large->str, (gssize) large->len, NULL));
  g_assert_null (car_load (file, &error));
  g_assert_error (error, FILE_REFUSAL, FILE_REFUSAL_TOO_LARGE);
  g_assert_cmpstr (error->message, ==, "The file is larger than 4 MiB.");
  g_string_free (large, TRUE);
  fixture_folder_remove (g_steal_pointer (&folder));
}

static void
test_a_hundred_thousand_brackets_are_refused (void)
{
  g_autofree char *text = g_strnfill (100000, '[');
  g_autoptr (GError) error = NULL;

  g_assert_null (car_from_json (text, 100000, &error));
  g_assert_error (error, FILE_REFUSAL, FILE_REFUSAL_TOO_LARGE);
}

static void
test_five_hundred_setups_and_no_more (void)
{
  g_autoptr (Car) car = fixture_car ("plain");
  g_autoptr (GError) error = NULL;

  while (car->setups->len < CAR_MOST_SETUPS) {
    const CarSetup copy = car_setup_copy (car_setup (car, 0));

    g_array_append_val (car->setups, copy);
  }
  g_assert_true (car_check (car, &error));
  g_assert_no_error (error);

  const CarSetup copy = car_setup_copy (car_setup (car, 0));
  g_array_append_val (car->setups, copy);
  g_assert_false (car_check (car, &error));
  g_assert_error (error, FILE_REFUSAL, FILE_REFUSAL_TOO_LARGE);
  g_assert_cmpstr (error->message, ==, "setups has more than 500 entries.");
}

static void
test_a_missing_file_is_named (void)
{
  g_autoptr (GFile) file = g_file_new_for_path ("/nowhere/at-all.swcar");
  g_autoptr (GError) error = NULL;

  g_assert_null (car_load (file, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND);
  g_assert_nonnull (strstr (error->message, "at-all.swcar"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/car-json/good-files",
                   test_every_good_file_loads_and_keeps_its_bytes);
  g_test_add_func ("/car-json/older-files", test_older_files_are_written_as_before);
  g_test_add_func ("/car-json/demo-cars", test_demo_cars_are_written_as_they_stand);
  g_test_add_func ("/car-json/defaults", test_missing_members_get_their_defaults);
  g_test_add_func ("/car-json/no-setups", test_an_empty_list_of_setups_means_as_measured);
  g_test_add_func ("/car-json/members", test_members_are_read_to_their_places);
  g_test_add_func ("/car-json/escapes", test_escapes_are_decoded);
  g_test_add_func ("/car-json/impossible-setup",
                   test_a_setup_that_cannot_be_assembled_loads);
  g_test_add_func ("/car-json/unknown-members", test_unknown_members_are_written_back);
  g_test_add_func ("/car-json/corrections", test_corrections_are_read_to_their_places);
  g_test_add_func ("/car-json/baseline", test_the_first_of_a_name_is_the_baseline);
  g_test_add_func ("/car-json/new-members",
                   test_new_members_stand_where_they_say_something);
  g_test_add_func ("/car-json/equal", test_equal_minds_the_new_members);
  g_test_add_func ("/car-json/every-bit", test_every_bit_of_every_number_is_kept);
  g_test_add_func ("/car-json/most-setups", test_five_hundred_setups_and_no_more);
  g_test_add_func ("/car-json/decimal-comma", test_a_decimal_comma_changes_nothing);
  g_test_add_func ("/car-json/too-large", test_a_file_over_4_mib_is_too_large);
  g_test_add_func ("/car-json/brackets", test_a_hundred_thousand_brackets_are_refused);
  g_test_add_func ("/car-json/missing-file", test_a_missing_file_is_named);
  return g_test_run ();
}
