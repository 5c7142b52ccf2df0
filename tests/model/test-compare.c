/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "car-fixture.h"
#include "comma-locale.h"

#include "model/json/json-strict.h"
#include "model/study/compare.h"
#include "model/study/quantity-info.h"
#include "model/words/terminal-text.h"

#include <math.h>
#include <string.h>

static char *
written (const Car *car, TableFormat format)
{
  g_autoptr (Study) study = study_new ();
  GString *text = g_string_new (NULL);

  study_solve (study, car, 0, 0.0);
  compare_write (study, format, text);
  return g_string_free (text, FALSE);
}

static Car *
lowered_car (void)
{
  Car *car = fixture_car ("set-m-lowered");

  car_setup (car, 2)->corrections.ball_joint_spacer_mm = 12.0;
  return car;
}

static void
test_it_is_what_the_kernel_says (void)
{
  g_autoptr (Car) car = lowered_car ();
  g_autoptr (Study) study = study_new ();
  const MeasuredCorner measured = car_measured_corner (car);
  guint n_rows;
  const Quantity *rows = compare_rows (&n_rows);
  double baseline[N_QUANTITIES] = { 0 };

  car->baseline = 1;
  study_solve (study, car, 0, 12.5);
  for (guint order = 0; order < 3; order++) {
    const guint setup = (order + car->baseline) % 3; /* the baseline first */
    const Adjustment adjustment = car_adjustment (car_setup (car, setup));
    Corner corner;
    Station station;

    corner_assemble (&measured, &adjustment, &corner);
    station_solve (&corner, adjustment.lowering, 0.0, &station);
    for (guint i = 0; i < n_rows; i++) {
      const double value = quantity_edge_value (rows[i], station.measures.value[rows[i]]);

      if (order == 0)
        baseline[rows[i]] = value;
      g_assert_cmpfloat (compare_value (study, setup, rows[i]), ==, value);
      g_assert_cmpfloat (compare_change (study, setup, rows[i]), ==,
                         value - baseline[rows[i]]);
    }
  }
}

/* Set M, computed apart from this program: raw constraints in a general-purpose root
 * finder. The mount 10 mm inboard, and the body down to where the wheel is 40 mm up. */
static void
test_it_agrees_with_set_m (void)
{
  static const struct {
    Quantity quantity;
    double measured, inboard, lowered, tolerance;
  } cases[] = {
    { QUANTITY_CAMBER, -0.5, -1.3630, -1.0255, 5.1e-5 },
    { QUANTITY_TOE_IN, 0.1, 0.4581, 0.1346, 5.1e-5 },
    { QUANTITY_CASTER, 3.5215, 3.5164, 3.8666, 5.1e-5 },
    { QUANTITY_SAI, 10.8855, 11.7202, 11.5220, 5.1e-5 },
    { QUANTITY_SCRUB_RADIUS, 7.043, 7.190, 6.683, 5.1e-4 },
    { QUANTITY_TRAIL, 16.379, 15.853, 18.070, 5.1e-4 },
    { QUANTITY_ROLL_CENTRE_HEIGHT, 76.66, 81.25, -36.51, 5.1e-3 },
  };
  g_autoptr (Car) car = lowered_car ();
  g_autoptr (Study) study = study_new ();

  car_setup (car, 1)->lowering_mm = 40.0;
  *car_setup (car, 2) =
      (CarSetup){ .name = car_setup (car, 2)->name, .mount = { .inboard = 10.0 } };
  study_solve (study, car, 0, 0.0);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    const Quantity q = cases[i].quantity;
    const double both = 2.0 * cases[i].tolerance;

    g_assert_cmpfloat_with_epsilon (compare_value (study, 0, q), cases[i].measured,
                                    cases[i].tolerance);
    g_assert_cmpfloat_with_epsilon (compare_value (study, 1, q), cases[i].lowered,
                                    cases[i].tolerance);
    g_assert_cmpfloat_with_epsilon (compare_value (study, 2, q), cases[i].inboard,
                                    cases[i].tolerance);
    g_assert_cmpfloat_with_epsilon (compare_change (study, 1, q),
                                    cases[i].lowered - cases[i].measured, both);
    g_assert_cmpfloat (compare_change (study, 0, q), ==, 0.0);
  }
}

/* Names that RFC 4180 wants quoted stand in quotes, with their own doubled. */
static void
test_csv_has_a_value_and_a_change_each (void)
{
  g_autoptr (Car) car = lowered_car ();
  g_autoptr (Study) study = study_new ();
  CarSetup *quoted = car_setup (car, 1);

  g_free (quoted->name);
  quoted->name = g_strdup ("\"low\", soft");
  g_autofree char *csv = written (car, TABLE_CSV);
  g_auto (GStrv) lines = g_strsplit (csv, "\r\n", -1);
  guint n_rows;
  const Quantity *rows = compare_rows (&n_rows);

  study_solve (study, car, 0, 0.0);
  g_assert_cmpstr (lines[0], ==,
                   "quantity,unit,As measured,As measured: change from As measured,"
                   "\"\"\"low\"\", soft\",\"\"\"low\"\", soft: change from As measured\","
                   "\"30 down, 10 in\",\"30 down, 10 in: change from As measured\"");
  g_assert_cmpuint (g_strv_length (lines), ==, n_rows + 4);
  g_assert_cmpstr (lines[1], ==, "lowering_mm,mm,0,0,30,30,30,30");
  g_assert_true (g_str_has_prefix (lines[2], "tie_rod_change_mm,mm,0,0,0,0,"));
  for (guint i = 0; i < n_rows; i++) {
    g_auto (GStrv) fields = g_strsplit (lines[i + 3], ",", -1);

    g_assert_cmpuint (g_strv_length (fields), ==, 2 + 2 * 3);
    g_assert_cmpstr (fields[0], ==, quantity_info (rows[i]).key);
    g_assert_cmpstr (fields[1], ==, quantity_info (rows[i]).unit);
    for (guint s = 0; s < 3; s++) {
      const double value = compare_value (study, s, rows[i]);
      const double change = compare_change (study, s, rows[i]);

      g_assert_cmpfloat_with_epsilon (g_ascii_strtod (fields[2 + 2 * s], NULL), value,
                                      1e-11 * fmax (1.0, fabs (value)));
      g_assert_cmpfloat_with_epsilon (g_ascii_strtod (fields[3 + 2 * s], NULL), change,
                                      1e-11 * fmax (1.0, fabs (change)));
    }
  }
}

static JsonObject *
member (JsonObject *object, const char *name)
{
  return json_object_get_object_member (object, name);
}

static void
test_json_has_the_same (void)
{
  g_autoptr (Car) car = lowered_car ();
  g_autoptr (Study) study = study_new ();
  g_autoptr (GError) error = NULL;

  car->baseline = 1;
  car_setup (car, 2)->is_hidden = TRUE;
  g_autofree char *json = written (car, TABLE_JSON);
  g_autoptr (JsonNode) root = json_strict_parse (json, strlen (json), &error);
  g_assert_no_error (error);
  JsonObject *top = json_node_get_object (root);
  JsonArray *setups = json_object_get_array_member (top, "setups");

  study_solve (study, car, 0, 0.0);
  g_assert_cmpstr (json_object_get_string_member (top, "baseline"), ==, "30 down");
  g_assert_cmpuint (json_array_get_length (setups), ==, 3);
  for (guint s = 0; s < 3; s++) {
    JsonObject *setup = json_array_get_object_element (setups, s);
    JsonObject *values = member (setup, "values"), *changes = member (setup, "changes");

    g_assert_cmpstr (json_object_get_string_member (setup, "name"), ==,
                     car_setup (car, s)->name);
    g_assert_cmpint (json_object_get_boolean_member (setup, "is_baseline"), ==, s == 1);
    g_assert_cmpfloat (json_object_get_double_member (values, "lowering_mm"), ==,
                       car_setup (car, s)->lowering_mm);
    g_assert_cmpfloat_with_epsilon (json_object_get_double_member (values, "roll_centre_"
                                                                           "height_mm"),
                                    compare_value (study, s, QUANTITY_ROLL_CENTRE_HEIGHT),
                                    1e-9);
    g_assert_cmpfloat_with_epsilon (json_object_get_double_member (changes, "camber_deg"),
                                    compare_change (study, s, QUANTITY_CAMBER), 1e-11);
  }
}

/* By what a terminal shows: ä is two bytes, a combining mark no column, 低 two. */
static void
test_text_is_aligned (void)
{
  g_autoptr (Car) car = lowered_car ();

  g_free (car_setup (car, 2)->name);
  car_setup (car, 2)->name = g_strdup ("niedriger für die Rennbahn e\xcc\x81\n低");
  g_autofree char *text = written (car, TABLE_TEXT);
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  const guint n_lines = g_strv_length (lines) - 1;
  guint n_rows;

  compare_rows (&n_rows);
  g_assert_cmpuint (text_columns ("e\xcc\x81低"), ==, 3);
  g_assert_cmpuint (n_lines, ==, n_rows + 4);
  for (guint i = 1; i < n_lines; i++)
    g_assert_cmpuint (text_columns (lines[i]), ==, text_columns (lines[0]));
  g_assert_true (g_str_has_suffix (lines[0], "Rennbahn e\xcc\x81 低"));
  g_assert_nonnull (strstr (lines[1], "baseline"));
}

static void
test_text_reads_as_on_the_bench (void)
{
  g_autoptr (Car) car = fixture_car ("set-m-lowered");
  g_autofree char *text = written (car, TABLE_TEXT);

  g_assert_nonnull (strstr (text,
                            "\nCamber, °                           −0.50    −0.93   "
                            "(−0.43)"));
  g_assert_nonnull (strstr (text,
                            "\nRoll-centre height, mm               76.7     −7.5   "
                            "(−84.2)"));
  g_assert_nonnull (strstr (text,
                            "\nLowering, mm                          0.0     30.0   "
                            "(+30.0)"));
}

static void
test_what_cannot_be_assembled_stays_empty (void)
{
  g_autoptr (Car) car = fixture_car ("impossible-setup");
  g_autofree char *csv = written (car, TABLE_CSV);
  g_autofree char *json = written (car, TABLE_JSON);
  g_autofree char *text = written (car, TABLE_TEXT);

  g_assert_nonnull (strstr (csv, "\r\ntie_rod_change_mm,mm,0,0,,,-0.7167"));
  g_assert_true (
      g_regex_match_simple ("\r\nsai_deg,°,[0-9.]+,0,,,[0-9.]+,[0-9.]+\r\n", csv, 0, 0));
  g_assert_nonnull (strstr (json, "\"sai_deg\": null"));
  g_assert_nonnull (strstr (text, "(–)"));
  g_assert_null (strstr (csv, "nan"));
  g_assert_null (strstr (text, "nan"));
}

static void
test_a_decimal_comma_changes_no_file (void)
{
  g_autoptr (Car) car = lowered_car ();
  g_autofree char *csv = written (car, TABLE_CSV);
  g_autofree char *json = written (car, TABLE_JSON);

  if (!comma_locale_enter ())
    return;
  g_autofree char *csv_there = written (car, TABLE_CSV);
  g_autofree char *json_there = written (car, TABLE_JSON);
  g_autofree char *text_there = written (car, TABLE_TEXT);
  comma_locale_leave ();
  g_assert_cmpstr (csv, ==, csv_there);
  g_assert_cmpstr (json, ==, json_there);
  g_assert_nonnull (strstr (text_there, "−0,93"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/compare/kernel", test_it_is_what_the_kernel_says);
  g_test_add_func ("/compare/set-m", test_it_agrees_with_set_m);
  g_test_add_func ("/compare/csv", test_csv_has_a_value_and_a_change_each);
  g_test_add_func ("/compare/json", test_json_has_the_same);
  g_test_add_func ("/compare/aligned", test_text_is_aligned);
  g_test_add_func ("/compare/text", test_text_reads_as_on_the_bench);
  g_test_add_func ("/compare/gaps", test_what_cannot_be_assembled_stays_empty);
  g_test_add_func ("/compare/decimal-comma", test_a_decimal_comma_changes_no_file);
  return g_test_run ();
}
