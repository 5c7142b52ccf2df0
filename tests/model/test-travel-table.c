/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "car-fixture.h"
#include "comma-locale.h"

#include "model/json/json-strict.h"
#include "model/study/travel-gap.h"
#include "model/study/travel-table.h"

#include <math.h>
#include <string.h>

/* As the car-file format's page has it. */
#define HEAD                                                                             \
  "wheel_travel_mm,camber_deg,toe_in_deg,caster_deg,sai_deg,scrub_radius_mm,trail_mm,"   \
  "roll_centre_height_mm,half_track_change_mm,wheelbase_change_mm,strut_length_mm,"      \
  "strut_ratio,arm_ratio_rad_per_mm,camber_gain_deg_per_mm,bump_steer_deg_per_mm,"       \
  "side_view_slope"
#define N_COLUMNS 16

static char *
write_table (const Car *car, guint setup, TravelSteps steps, TravelTableFormat format)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (GArray) gaps = travel_gaps_new ();

  travel_table_write (car, setup, steps, format, text, gaps);
  return g_strdup (text->str);
}

/* Of char **: the fields of each row, without the last, empty line. */
static GPtrArray *
split_table (const char *text, const char *line_end)
{
  g_auto (GStrv) lines = g_strsplit (text, line_end, -1);
  GPtrArray *rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);

  for (char **line = lines; *line != NULL; line++)
    if (**line != '\0')
      g_ptr_array_add (rows, g_strsplit (*line, ",", -1));
  return rows;
}

static const char *
field (GPtrArray *rows, guint row, const char *column)
{
  char **head = g_ptr_array_index (rows, 0);

  for (guint i = 0; head[i] != NULL; i++)
    if (g_str_equal (head[i], column))
      return ((char **) g_ptr_array_index (rows, row))[i];
  g_error ("no column %s", column);
}

static void
test_csv_is_as_rfc_4180_has_it (void)
{
  g_autoptr (Car) car = fixture_car ("set-m");
  g_autofree char *text =
      write_table (car, 0, travel_steps_of_car (car), TRAVEL_TABLE_CSV);
  g_autoptr (GPtrArray) rows = split_table (text, "\r\n");

  g_assert_true (g_str_has_prefix (text, HEAD "\r\n"));
  g_assert_true (g_str_has_suffix (text, "\r\n"));
  g_assert_cmpuint (rows->len, ==, 162);
  for (guint i = 0; i < rows->len; i++)
    g_assert_cmpuint (g_strv_length (g_ptr_array_index (rows, i)), ==, N_COLUMNS);
  for (const char *p = strchr (text, '\n'); p != NULL; p = strchr (p + 1, '\n'))
    g_assert_true (p[-1] == '\r');
}

/* tests/data/set-m-sweep.csv: computed apart from this program, twice (raw constraints in
 * a general-purpose root finder; closed form in 30-digit arithmetic); seven decimals. */
static void
test_it_agrees_with_set_m (void)
{
  static const char *const columns[][2] = {
    /* here, there */
    { "wheel_travel_mm", "wheel_travel_mm" },
    { "camber_deg", "camber_deg" },
    { "toe_in_deg", "toe_in_deg" },
    { "caster_deg", "caster_deg" },
    { "sai_deg", "sai_deg" },
    { "scrub_radius_mm", "scrub_radius_mm" },
    { "trail_mm", "caster_trail_mm" },
    { "roll_centre_height_mm", "roll_centre_height_mm" },
    { "half_track_change_mm", "half_track_change_mm" },
    { "wheelbase_change_mm", "wheelbase_change_mm" },
    { "strut_length_mm", "strut_length_SU_mm" },
    { "strut_ratio", "strut_ratio" },
    { "arm_ratio_rad_per_mm", "arm_ratio_rad_per_mm" },
    { "camber_gain_deg_per_mm", "camber_gain_deg_per_mm" },
    { "bump_steer_deg_per_mm", "bump_steer_deg_per_mm" },
    { "side_view_slope", "side_view_slope" },
  };
  g_autoptr (Car) car = fixture_car ("set-m");
  g_autofree char *path = fixture_path ("set-m-sweep.csv", NULL);
  g_autofree char *outside = NULL;
  g_autofree char *inside =
      write_table (car, 0, (TravelSteps){ -80, 80, 10 }, TRAVEL_TABLE_CSV);

  g_assert_true (g_file_get_contents (path, &outside, NULL, NULL));
  g_autoptr (GPtrArray) here = split_table (inside, "\r\n");
  g_autoptr (GPtrArray) there = split_table (g_strdelimit (outside, "\r", '\n'), "\n");
  g_assert_cmpuint (here->len, ==, 18);
  g_assert_cmpuint (there->len, ==, here->len);
  for (guint i = 1; i < here->len; i++)
    for (gsize c = 0; c < G_N_ELEMENTS (columns); c++) {
      const double a = g_ascii_strtod (field (here, i, columns[c][0]), NULL);
      const double b = g_ascii_strtod (field (there, i, columns[c][1]), NULL);

      /* half a unit of the last printed digit, and what rounding adds */
      g_assert_cmpfloat_with_epsilon (a, b, 0.6e-7);
    }
}

static void
test_numbers_have_nine_digits_or_more (void)
{
  g_autoptr (Car) car = fixture_car ("set-m");
  g_autofree char *text =
      write_table (car, 1, (TravelSteps){ 3.3, 3.3, 1 }, TRAVEL_TABLE_CSV);
  g_autoptr (GPtrArray) rows = split_table (text, "\r\n");
  char **row = g_ptr_array_index (rows, 1);

  g_assert_cmpuint (rows->len, ==, 2);
  g_assert_cmpstr (row[0], ==, "3.3");
  for (guint i = 1; i < N_COLUMNS; i++) {
    guint n_digits = 0;
    const char *p = row[i];

    while (*p == '-' || *p == '0' || *p == '.')
      p++;
    for (; g_ascii_isdigit (*p) || *p == '.'; p++)
      n_digits += *p != '.' ? 1 : 0;
    g_assert_cmpuint (n_digits, >=, 9);
  }
}

static void
test_rows_never_go_past_the_end (void)
{
  static const struct {
    TravelSteps steps;
    gsize n_rows;
    const char *last;
  } rows[] = {
    { { -80, 80, 1 }, 161, "80" },
    { { 0, 10, 3 }, 4, "9" },
    { { 0, 0, 1 }, 1, "0" },
    { { -80, 80, 0.1 }, 1601, "80" },
    { { -80, 79.95, 0.1 }, 1600, "79.9" },
    { { 0, 0.3, 0.1 }, 4, "0.3" },
    { { 5, 6, 100 }, 1, "5" },
    { { -1, 1, 0.7 }, 3, "0.4" },
  };
  g_autoptr (Car) car = fixture_car ("set-m");

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    gsize n_rows;

    g_assert_true (travel_steps_count (rows[i].steps, &n_rows, NULL));
    g_assert_cmpuint (n_rows, ==, rows[i].n_rows);
    g_autofree char *text = write_table (car, 0, rows[i].steps, TRAVEL_TABLE_CSV);
    g_autoptr (GPtrArray) table = split_table (text, "\r\n");
    g_assert_cmpuint (table->len, ==, n_rows + 1);
    g_assert_cmpstr (field (table, table->len - 1, "wheel_travel_mm"), ==, rows[i].last);
  }
}

static void
test_places_do_not_gather_rounding (void)
{
  g_autoptr (Car) car = fixture_car ("set-m");
  g_autofree char *text =
      write_table (car, 0, (TravelSteps){ -80, 80, 0.1 }, TRAVEL_TABLE_CSV);
  g_autoptr (GPtrArray) table = split_table (text, "\r\n");

  for (guint i = 1; i < table->len; i++)
    g_assert_cmpuint (strlen (field (table, i, "wheel_travel_mm")), <=, 5);
}

static void
test_unfit_ranges_are_refused (void)
{
  static const struct {
    TravelSteps steps;
    const char *sentence;
  } rows[] = {
    { { 10, -10, 1 }, "The range must not end below its start." },
    { { 0, 10, 0 }, "The step must be above zero." },
    { { 0, 10, -1 }, "The step must be above zero." },
    { { NAN, 10, 1 }, "The range and the step must be finite numbers." },
    { { 0, INFINITY, 1 }, "The range and the step must be finite numbers." },
    { { 0, 10, 1e-4 },
      "The table would have more than 100000 rows: take a larger step." },
    { { -1e308, 1e308, 1 },
      "The table would have more than 100000 rows: take a larger step." },
    { { 0, 1, 5e-324 },
      "The table would have more than 100000 rows: take a larger step." },
  };
  gsize n_rows;

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autoptr (GError) error = NULL;

    g_assert_false (travel_steps_count (rows[i].steps, &n_rows, &error));
    g_assert_error (error, G_OPTION_ERROR, G_OPTION_ERROR_BAD_VALUE);
    g_assert_cmpstr (error->message, ==, rows[i].sentence);
  }
  g_assert_true (travel_steps_count ((TravelSteps){ 0, 99999, 1 }, &n_rows, NULL));
  g_assert_cmpuint (n_rows, ==, TRAVEL_TABLE_MOST_ROWS);
}

static void
test_gaps_keep_their_rows (void)
{
  g_autoptr (Car) car = fixture_car ("set-m");
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (GArray) gaps = travel_gaps_new ();

  travel_table_write (car, 0, (TravelSteps){ -900, 900, 300 }, TRAVEL_TABLE_CSV, text,
                      gaps);
  g_autoptr (GPtrArray) table = split_table (text->str, "\r\n");
  g_assert_cmpuint (table->len, ==, 8);
  g_assert_nonnull (strstr (text->str, "\r\n-900,,,,,,,,,,,,,,,\r\n"));
  g_assert_nonnull (strstr (text->str, "\r\n900,,,,,,,,,,,,,,,\r\n"));
  g_assert_cmpstr (field (table, 4, "camber_deg"), ==, "-0.5");
  g_assert_cmpuint (gaps->len, ==, 2);

  const TravelGap *first = &g_array_index (gaps, TravelGap, 0);
  g_autofree char *sentence = travel_gap_sentence (first);
  g_assert_cmpfloat (first->from, ==, -900);
  g_assert_true (g_str_has_prefix (sentence, "From −900 to −"));
  g_assert_true (g_str_has_suffix (sentence, "."));
}

static void
test_json_says_the_same (void)
{
  g_autoptr (Car) car = fixture_car ("set-m");
  const TravelSteps steps = { -900, 900, 300 };
  g_autofree char *csv = write_table (car, 1, steps, TRAVEL_TABLE_CSV);
  g_autofree char *json = write_table (car, 1, steps, TRAVEL_TABLE_JSON);
  g_autoptr (GPtrArray) table = split_table (csv, "\r\n");
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) node = json_strict_parse (json, strlen (json), &error);
  char **head = g_ptr_array_index (table, 0);

  g_assert_no_error (error);
  JsonObject *root = json_node_get_object (node);
  g_assert_cmpstr (json_object_get_string_member (root, "car"), ==, "Set M");
  g_assert_cmpstr (json_object_get_string_member (root, "setup"), ==, "10 in");
  JsonArray *stations = json_object_get_array_member (root, "stations");
  g_assert_cmpuint (json_array_get_length (stations), ==, table->len - 1);
  for (guint i = 0; i + 1 < table->len; i++)
    for (guint c = 0; c < N_COLUMNS; c++) {
      JsonNode *value =
          json_object_get_member (json_array_get_object_element (stations, i), head[c]);
      const char *text = field (table, i + 1, head[c]);

      g_assert_nonnull (value);
      if (*text == '\0')
        g_assert_true (JSON_NODE_HOLDS_NULL (value));
      else
        g_assert_cmpfloat (json_node_get_double (value), ==, g_ascii_strtod (text, NULL));
    }
}

static void
test_a_flat_corner_has_clean_zeros (void)
{
  g_autoptr (Car) car = fixture_demo ("lapwing");
  g_autofree char *text =
      write_table (car, 0, (TravelSteps){ -80, 80, 20 }, TRAVEL_TABLE_CSV);
  g_autoptr (GPtrArray) table = split_table (text, "\r\n");

  for (guint i = 1; i < table->len; i++) {
    g_assert_cmpstr (field (table, i, "toe_in_deg"), ==, "0");
    g_assert_cmpstr (field (table, i, "caster_deg"), ==, "0");
    g_assert_cmpstr (field (table, i, "trail_mm"), ==, "0");
  }
  g_assert_cmpstr (field (table, 5, "camber_deg"), ==, "0");
  g_assert_cmpstr (field (table, 5, "half_track_change_mm"), ==, "0");
}

static void
test_a_decimal_comma_changes_nothing (void)
{
  g_autoptr (Car) car = fixture_car ("set-m");
  const TravelSteps steps = { -80, 80, 0.5 };
  g_autofree char *csv = write_table (car, 1, steps, TRAVEL_TABLE_CSV);
  g_autofree char *json = write_table (car, 1, steps, TRAVEL_TABLE_JSON);

  if (!comma_locale_enter ())
    return;
  g_autofree char *csv_there = write_table (car, 1, steps, TRAVEL_TABLE_CSV);
  g_autofree char *json_there = write_table (car, 1, steps, TRAVEL_TABLE_JSON);
  comma_locale_leave ();
  g_assert_cmpstr (csv, ==, csv_there);
  g_assert_cmpstr (json, ==, json_there);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/travel-table/csv", test_csv_is_as_rfc_4180_has_it);
  g_test_add_func ("/travel-table/set-m", test_it_agrees_with_set_m);
  g_test_add_func ("/travel-table/digits", test_numbers_have_nine_digits_or_more);
  g_test_add_func ("/travel-table/rows", test_rows_never_go_past_the_end);
  g_test_add_func ("/travel-table/places", test_places_do_not_gather_rounding);
  g_test_add_func ("/travel-table/unfit", test_unfit_ranges_are_refused);
  g_test_add_func ("/travel-table/gaps", test_gaps_keep_their_rows);
  g_test_add_func ("/travel-table/json", test_json_says_the_same);
  g_test_add_func ("/travel-table/zeros", test_a_flat_corner_has_clean_zeros);
  g_test_add_func ("/travel-table/decimal-comma", test_a_decimal_comma_changes_nothing);
  return g_test_run ();
}
