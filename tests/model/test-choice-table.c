/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "car-fixture.h"
#include "comma-locale.h"
#include "plate-fixture.h"

#include "model/choice/choice-table.h"
#include "model/json/json-strict.h"
#include "model/plate/plate-json.h"
#include "model/words/terminal-text.h"

#include <math.h>
#include <string.h>

#define N_PLATES 4
#define SAME 1e-11 /* of a number, or of one: twelve digits are written */

typedef struct {
  Car *car;
  Plate *plates[N_PLATES];
  GArray *answers;
  ChoiceTable table;
} Fixture;

static const char *const files[N_PLATES] = { "one.swplate", "a, b\".swplate",
                                             "three.swplate", "four.swplate" };

static Plate *
load_plate (const char *name)
{
  g_autofree char *base = g_strconcat (name, ".swplate", NULL);
  g_autofree char *path =
      g_test_build_filename (G_TEST_DIST, "..", "data", "plates", base, NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  Plate *plate = plate_load (file, &error);

  g_assert_no_error (error);
  return plate;
}

/* A right side of its own, a name that CSV must quote, and one plate that the tower is
 * too small for. */
static void
set_up (Fixture *f, gconstpointer data)
{
  (void) data;
  f->car = fixture_demo ("wren");
  f->car->right.has_alignment = TRUE;
  f->car->right.camber_deg = -0.25;
  f->car->right.toe_in_deg = 0.1;
  f->plates[0] = load_plate ("sliding-camber-plate");
  f->plates[1] = load_plate ("three-hole-camber-plate");
  f->plates[2] = load_plate ("diagonal-slot-plate");
  f->plates[3] = load_plate ("stock-mount");
  g_free (f->plates[1]->name);
  f->plates[1]->name = g_strdup ("Three \"holes\", in a row\nof steel");
  f->plates[2]->bearing_diameter_mm = 80.0;
  f->table.question = (ChoiceQuestion){ .carrier = CARRIED_BY_TORSION_BAR,
                                        .try_bolt = TRUE,
                                        .try_swap = TRUE };
  f->table.car = f->car;
  f->table.plates = (const Plate *const *) f->plates;
  f->table.files = files;
  f->table.n_plates = N_PLATES;
  f->answers = choice_solve (f->car, &f->table.question, f->table.plates, N_PLATES);
  f->table.answers = f->answers;
  g_assert_cmpuint (f->answers->len, >=, N_PLATES);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  g_array_unref (f->answers);
  for (int i = 0; i < N_PLATES; i++)
    plate_free (f->plates[i]);
  car_free (f->car);
}

static char *
write_table (Fixture *f, TableFormat format)
{
  GString *text = g_string_new (NULL);

  choice_table_write (&f->table, format, text);
  return g_string_free (text, FALSE);
}

static const ChoiceAnswer *
answer_at (Fixture *f, guint rank)
{
  return &g_array_index (f->answers, ChoiceAnswer, rank);
}

static const char *
file_of (Fixture *f, const Plate *plate)
{
  for (int i = 0; i < N_PLATES; i++)
    if (f->plates[i] == plate)
      return files[i];
  g_assert_not_reached ();
}

static void
assert_same (double written, double value)
{
  if (isnan (value))
    g_assert_true (isnan (written));
  else
    g_assert_cmpfloat_with_epsilon (written, value, SAME * fmax (1.0, fabs (value)));
}

/* What a search leaves of zero is written as 0. */
static void
assert_found (double written, double value)
{
  assert_same (written, written == 0.0 && fabs (value) < CHOICE_FOUND_TO ? 0.0 : value);
}

/* RFC 4180: fields between commas, in quotes where they hold one; lines end in CR LF. */
static GPtrArray *
read_csv (const char *text)
{
  GPtrArray *rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_ptr_array_unref);

  while (*text != '\0') {
    GPtrArray *row = g_ptr_array_new_with_free_func (g_free);
    gboolean is_last = FALSE;

    while (!is_last) {
      GString *field = g_string_new (NULL);

      if (*text == '"') {
        for (text++; text[0] != '"' || text[1] == '"'; text++) {
          g_assert_cmpint (*text, !=, '\0');
          text += *text == '"' ? 1 : 0;
          g_string_append_c (field, *text);
        }
        text++;
      } else {
        for (; *text != ',' && *text != '\r'; text++) {
          g_assert_cmpint (*text, !=, '\0');
          g_assert_cmpint (*text, !=, '"');
          g_string_append_c (field, *text);
        }
      }
      g_ptr_array_add (row, g_string_free (field, FALSE));
      is_last = *text == '\r';
      g_assert_true (is_last ? text[1] == '\n' : *text == ',');
      text += is_last ? 2 : 1;
    }
    g_ptr_array_add (rows, row);
  }
  return rows;
}

static const char *
field_of (const GPtrArray *rows, guint row, const char *name)
{
  const GPtrArray *head = rows->pdata[0], *fields = rows->pdata[row];

  for (guint i = 0; i < head->len; i++)
    if (g_str_equal (head->pdata[i], name))
      return fields->pdata[i];
  g_error ("no column “%s”", name);
}

static double
number_of (const GPtrArray *rows, guint row, const char *name)
{
  const char *field = field_of (rows, row, name);
  char *end;
  const double value = g_ascii_strtod (field, &end);

  g_assert_cmpint (*end, ==, '\0');
  return field[0] == '\0' ? (double) NAN : value;
}

static void
check_csv_row (Fixture *f, const GPtrArray *rows, guint rank, CarSide side)
{
  const guint row = 1 + 2 * rank + side;
  const ChoiceAnswer *answer = answer_at (f, rank);
  g_autofree char *verdict = choice_sentence (f->car, answer);

  g_assert_cmpfloat (number_of (rows, row, "rank"), ==, rank + 1);
  g_assert_cmpstr (field_of (rows, row, "plate"), ==, answer->plate->name);
  g_assert_cmpstr (field_of (rows, row, "file"), ==, file_of (f, answer->plate));
  g_assert_cmpstr (field_of (rows, row, "swapped"), ==,
                   answer->is_swapped ? "true" : "false");
  g_assert_cmpstr (field_of (rows, row, "side"), ==,
                   side == SIDE_LEFT ? "left" : "right");
  g_assert_cmpstr (field_of (rows, row, "fits"), ==, answer->fits ? "true" : "false");
  g_assert_cmpstr (field_of (rows, row, "meets"), ==, answer->meets ? "true" : "false");
  g_assert_cmpstr (field_of (rows, row, "verdict"), ==, verdict);
  for (ChoiceNumber i = 0; i < N_CHOICE_NUMBERS; i++)
    assert_found (number_of (rows, row, choice_number_info (i).key),
                  choice_number (&answer->side[side], i));
  assert_found (number_of (rows, row, "cross_camber_deg"),
                answer->cross_camber * 180.0 / G_PI);
  assert_found (number_of (rows, row, "cross_caster_deg"),
                answer->cross_caster * 180.0 / G_PI);
}

static void
test_csv_reads_back (Fixture *f, gconstpointer data)
{
  (void) data;
  g_autofree char *csv = write_table (f, TABLE_CSV);
  g_autoptr (GPtrArray) rows = read_csv (csv);

  g_assert_cmpuint (rows->len, ==, 1 + 2 * f->answers->len);
  for (guint rank = 0; rank < f->answers->len; rank++) {
    check_csv_row (f, rows, rank, SIDE_LEFT);
    check_csv_row (f, rows, rank, SIDE_RIGHT);
  }
}

static const char csv_head[] =
    "rank,plate,file,swapped,side,setting,camber_bolt_deg,inboard_mm,rearward_mm,up_mm,"
    "camber_deg,caster_deg,sai_deg,scrub_radius_mm,trail_mm,roll_centre_height_mm,"
    "toe_in_deg,toe_before_reset_deg,tie_rod_change_mm,tie_rod_turns,bump_steer_deg,"
    "tyre_clearance_mm,rod_side_force_n,bearing_tilt_deg,edge_margin_mm,cost,faults,"
    "cross_camber_deg,cross_caster_deg,within_cross,fits,meets,verdict\r\n";

static void
test_csv_keeps_its_columns (Fixture *f, gconstpointer data)
{
  (void) data;
  g_autofree char *csv = write_table (f, TABLE_CSV);

  g_assert_true (g_str_has_prefix (csv, csv_head));
}

static double
member_number (JsonObject *object, const char *name)
{
  JsonNode *node = json_object_get_member (object, name);

  g_assert_nonnull (node);
  return JSON_NODE_HOLDS_NULL (node) ? (double) NAN : json_node_get_double (node);
}

static gboolean
lists (JsonArray *names, const char *name)
{
  for (guint i = 0; i < json_array_get_length (names); i++)
    if (g_str_equal (json_array_get_string_element (names, i), name))
      return TRUE;
  return FALSE;
}

static void
check_json_side (JsonObject *object, const ChoiceAnswer *answer, CarSide side)
{
  const ChoicePlace *place = &answer->side[side];
  JsonArray *faults = json_object_get_array_member (object, "faults");

  g_assert_cmpstr (json_object_get_string_member (object, "side"), ==,
                   side == SIDE_LEFT ? "left" : "right");
  for (ChoiceNumber i = 0; i < N_CHOICE_NUMBERS; i++)
    assert_found (member_number (object, choice_number_info (i).key),
                  choice_number (place, i));
  g_assert_cmpint (lists (faults, "edge-too-near"), ==,
                   (place->faults & CHOICE_EDGE_TOO_NEAR) != 0);
  g_assert_cmpint (lists (faults, "misses-aim"), ==,
                   (place->faults & CHOICE_MISSES_AIM) != 0);
}

static void
check_json_answer (Fixture *f, JsonObject *object, guint rank)
{
  const ChoiceAnswer *answer = answer_at (f, rank);
  JsonArray *sides = json_object_get_array_member (object, "sides");
  g_autofree char *verdict = choice_sentence (f->car, answer);

  g_assert_cmpint (json_object_get_int_member (object, "rank"), ==, rank + 1);
  g_assert_cmpstr (json_object_get_string_member (object, "plate"), ==,
                   answer->plate->name);
  g_assert_cmpstr (json_object_get_string_member (object, "file"), ==,
                   file_of (f, answer->plate));
  g_assert_cmpstr (json_object_get_string_member (object, "verdict"), ==, verdict);
  g_assert_cmpint (json_object_get_boolean_member (object, "swapped"), ==,
                   answer->is_swapped);
  g_assert_cmpint (json_object_get_boolean_member (object, "fits"), ==, answer->fits);
  g_assert_cmpint (json_object_get_boolean_member (object, "meets"), ==, answer->meets);
  assert_found (member_number (object, "cross_camber_deg"),
                answer->cross_camber * 180.0 / G_PI);
  g_assert_cmpuint (json_array_get_length (sides), ==, 2);
  for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++)
    check_json_side (json_array_get_object_element (sides, side), answer, side);
}

static JsonNode *
parse (const char *text)
{
  g_autoptr (GError) error = NULL;
  JsonNode *root = json_strict_parse (text, strlen (text), &error);

  g_assert_no_error (error);
  return root;
}

static void
test_json_reads_back (Fixture *f, gconstpointer data)
{
  (void) data;
  g_autofree char *json = write_table (f, TABLE_JSON);
  g_autoptr (JsonNode) root = parse (json);
  JsonObject *object = json_node_get_object (root);
  JsonArray *answers = json_object_get_array_member (object, "answers");
  JsonArray *targets = json_object_get_array_member (object, "targets");

  g_assert_cmpstr (json_object_get_string_member (object, "car"), ==, f->car->name);
  g_assert_cmpstr (json_object_get_string_member (object, "spring"), ==, "torsion");
  g_assert_cmpuint (json_array_get_length (targets), ==, f->car->targets->len);
  JsonObject *caster = json_array_get_object_element (targets, 1);
  g_assert_cmpstr (json_object_get_string_member (caster, "aim"), ==, "caster");
  g_assert_cmpfloat (member_number (caster, "least_deg"), ==, 5.0);
  g_assert_true (isnan (member_number (caster, "most_deg")));
  g_assert_cmpuint (json_array_get_length (answers), ==, f->answers->len);
  for (guint rank = 0; rank < f->answers->len; rank++)
    check_json_answer (f, json_array_get_object_element (answers, rank), rank);
}

/* As measured the caster is 0, and a search comes to it but for a remainder. */
static void
test_what_a_search_leaves_is_zero (void)
{
  static const struct {
    const char *plate;
    double caster, written;
  } cases[] = { { "sliding-camber-plate", -5e-9, 0.0 },
                { "sliding-camber-plate", -2e-6, -2e-6 },
                { "stock-mount", -5e-9, -5e-9 } };
  g_autoptr (Car) car = fixture_demo ("wren");

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autoptr (Plate) plate = load_plate (cases[i].plate);
    g_autoptr (GArray) answers = g_array_new (FALSE, TRUE, sizeof (ChoiceAnswer));
    ChoiceAnswer answer = { .plate = plate };

    answer.cross_caster = answer.side[SIDE_LEFT].value[QUANTITY_CASTER] =
        cases[i].caster * G_PI / 180.0;
    g_array_append_val (answers, answer);
    Fixture f = { .car = car, .answers = answers, .table = { .car = car } };
    f.table.answers = answers;
    g_autofree char *csv = write_table (&f, TABLE_CSV);
    g_autofree char *json = write_table (&f, TABLE_JSON);
    g_autoptr (GPtrArray) rows = read_csv (csv);
    g_autoptr (JsonNode) root = parse (json);
    JsonObject *first = json_array_get_object_element (
        json_object_get_array_member (json_node_get_object (root), "answers"), 0);
    JsonObject *left =
        json_array_get_object_element (json_object_get_array_member (first, "sides"), 0);

    g_assert_cmpfloat_with_epsilon (number_of (rows, 1, "caster_deg"), cases[i].written,
                                    1e-15);
    g_assert_cmpfloat_with_epsilon (number_of (rows, 1, "cross_caster_deg"),
                                    cases[i].written, 1e-15);
    g_assert_cmpfloat_with_epsilon (member_number (left, "caster_deg"), cases[i].written,
                                    1e-15);
    g_assert_cmpfloat_with_epsilon (member_number (first, "cross_caster_deg"),
                                    cases[i].written, 1e-15);
  }
}

static void
test_json_without_answers (Fixture *f, gconstpointer data)
{
  (void) data;
  g_array_set_size (f->answers, 0);
  g_array_set_size (f->car->targets, 0);
  g_autofree char *json = write_table (f, TABLE_JSON);
  g_autoptr (JsonNode) root = parse (json);

  g_assert_true (json_object_has_member (json_node_get_object (root), "answers"));
}

/* The strut's sizes are what the room to the tyre comes from. */
static void
test_what_is_not_given_is_empty (Fixture *f, gconstpointer data)
{
  (void) data;
  for (guint rank = 0; rank < f->answers->len; rank++)
    for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++)
      g_array_index (f->answers, ChoiceAnswer, rank).side[side].clearance.least =
          INFINITY;
  g_autofree char *csv = write_table (f, TABLE_CSV);
  g_autofree char *json = write_table (f, TABLE_JSON);
  g_autofree char *text = write_table (f, TABLE_TEXT);
  g_autoptr (GPtrArray) rows = read_csv (csv);

  g_assert_cmpstr (field_of (rows, 1, "tyre_clearance_mm"), ==, "");
  g_assert_nonnull (strstr (json, "\"tyre_clearance_mm\": null"));
  g_assert_null (strstr (csv, "inf"));
  g_assert_null (strstr (json, "inf"));
  g_assert_null (strstr (text, "inf"));
  g_assert_nonnull (strstr (text, "  –"));
}

/* Words follow the locale, numbers do not. */
static void
test_numbers_keep_the_point (Fixture *f, gconstpointer data)
{
  (void) data;
  if (!comma_locale_enter ())
    return;
  g_autofree char *csv = write_table (f, TABLE_CSV);
  g_autofree char *json = write_table (f, TABLE_JSON);
  g_autofree char *text = write_table (f, TABLE_TEXT);
  g_autoptr (GPtrArray) rows = read_csv (csv);
  g_autoptr (JsonNode) root = parse (json);

  check_csv_row (f, rows, 0, SIDE_LEFT);
  check_json_answer (f,
                     json_array_get_object_element (
                         json_object_get_array_member (json_node_get_object (root),
                                                       "answers"),
                         0),
                     0);
  g_assert_nonnull (strstr (text, "−2,20 to −1,80°"));
  comma_locale_leave ();
}

/* Of the line that begins with @start, below the one that begins with @after, the figures
 * behind the side, without their marks. */
static char **
find_row (char **lines, const char *after, const char *start)
{
  gboolean is_below = FALSE;

  for (; *lines != NULL; lines++) {
    is_below = is_below || g_str_has_prefix (*lines, after);
    if (is_below && g_str_has_prefix (*lines, start))
      return g_regex_split_simple ("[ *!]+", strstr (*lines, " left ") + 6, 0, 0);
  }
  g_error ("no line “%s” below “%s”", start, after);
}

/* The figure in column @i of the row for the left side of the first answer. */
static void
check_cell (char **cells, guint i, const ChoicePlace *place, ChoiceNumber number)
{
  g_autofree char *figure = choice_number_text (place, number);

  g_assert_cmpstr (cells[i + (cells[0][0] == '\0' ? 1 : 0)], ==, figure);
}

static void
test_text_shows_the_figures (Fixture *f, gconstpointer data)
{
  (void) data;
  g_autofree char *text = write_table (f, TABLE_TEXT);
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  const ChoicePlace *left = &answer_at (f, 0)->side[SIDE_LEFT];
  g_auto (GStrv) alignment = find_row (lines, "Alignment", " 1  ");
  g_auto (GStrv) costs = find_row (lines, "What it costs", " 1  ");

  check_cell (alignment, 0, left, CHOICE_CAMBER);
  check_cell (alignment, 1, left, CHOICE_CASTER);
  check_cell (alignment, 4, left, CHOICE_TRAIL);
  check_cell (costs, 0, left, CHOICE_TOE_BEFORE_RESET);
  check_cell (costs, 2, left, CHOICE_TIE_ROD_TURNS);
  check_cell (costs, 5, left, CHOICE_ROD_SIDE_FORCE);
}

static void
test_text_fits_a_terminal (Fixture *f, gconstpointer data)
{
  (void) data;
  g_autofree char *text = write_table (f, TABLE_TEXT);
  const char *blocks = strstr (text, "\nAlignment");

  g_assert_nonnull (blocks);
  g_auto (GStrv) lines = g_strsplit (blocks, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++)
    g_assert_cmpuint (text_columns (lines[i]), <=, 110);
  /* a name with a line feed in it stays on its line */
  g_assert_nonnull (strstr (text, "Three \"holes\", in a row of steel\n"));
  g_assert_nonnull (strstr (text, "Three \"holes\", in a r…"));
}

static void
test_text_marks_what_is_wrong (Fixture *f, gconstpointer data)
{
  (void) data;
  g_autofree char *text = write_table (f, TABLE_TEXT);
  guint n_faults = 0;

  for (guint rank = 0; rank < f->answers->len; rank++)
    for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++) {
      const ChoicePlace *place = &answer_at (f, rank)->side[side];
      g_autofree char *edge = choice_number_text (place, CHOICE_EDGE_MARGIN);
      g_autofree char *marked = g_strconcat (edge, "!\n", NULL);

      if ((place->faults & CHOICE_EDGE_TOO_NEAR) == 0)
        continue;
      n_faults++;
      g_assert_nonnull (strstr (text, marked));
    }
  g_assert_cmpuint (n_faults, >, 0);
  g_assert_nonnull (strstr (text, "−0.40*"));
  g_assert_nonnull (strstr (text, "Left less right: camber"));
}

/* Before each name, and explained below. */
static void
test_text_signs_have_a_key (Fixture *f, gconstpointer data)
{
  (void) data;
  g_autofree char *text = write_table (f, TABLE_TEXT);

  for (guint rank = 0; rank < f->answers->len; rank++) {
    const ChoiceAnswer *answer = answer_at (f, rank);
    const char *sign = answer->meets ? "✓" : answer->fits ? "≈" : "✗";
    g_autofree char *head = g_strdup_printf ("\n%2u %s  ", rank + 1, sign);

    g_assert_nonnull (strstr (text, head));
  }
  g_assert_nonnull (strstr (text,
                            "\n✓ meets every aim; ≈ fits, but misses an aim, or the "
                            "sides differ too much; ✗ does not fit.\n"));
}

static void
check_target (CarTarget target, const char *words)
{
  g_autofree char *text = choice_target_text (&target);

  g_assert_cmpstr (text, ==, words);
}

static void
test_targets_in_words (void)
{
  check_target ((CarTarget){ .aim = AIM_CAMBER, .least = -2.7, .most = -2.3 },
                "−2.70 to −2.30°");
  check_target ((CarTarget){ .aim = AIM_CASTER, .least = 5.0, .most = INFINITY },
                "5.00° or more");
  check_target ((CarTarget){ .aim = AIM_SCRUB_RADIUS, .least = -INFINITY, .most = 9.5 },
                "9.5 mm or less");
  check_target ((CarTarget){ .aim = AIM_SCRUB_CHANGE, .least = 0.0, .most = 0.0 },
                "0.0 mm");
}

/* Degrees and millimetres out of radians and the kernel's own. */
static void
test_numbers_have_edge_units (void)
{
  ChoicePlace place = { .camber_bolt = G_PI / 180.0,
                        .mount = { 1.0, 2.0, 3.0 },
                        .toe_before_reset = -G_PI / 90.0,
                        .bump_steer = G_PI / 360.0,
                        .bearing_tilt = G_PI / 60.0,
                        .tie_rod_change = 1.5,
                        .edge_margin = NAN,
                        .clearance = { .least = INFINITY } };

  place.value[QUANTITY_CAMBER] = -G_PI / 90.0;
  place.value[QUANTITY_TRAIL] = 12.5;
  assert_same (choice_number (&place, CHOICE_CAMBER_BOLT), 1.0);
  assert_same (choice_number (&place, CHOICE_REARWARD), 2.0);
  assert_same (choice_number (&place, CHOICE_TOE_BEFORE_RESET), -2.0);
  assert_same (choice_number (&place, CHOICE_BUMP_STEER), 0.5);
  assert_same (choice_number (&place, CHOICE_BEARING_TILT), 3.0);
  assert_same (choice_number (&place, CHOICE_TIE_ROD_CHANGE), 1.5);
  assert_same (choice_number (&place, CHOICE_CAMBER), -2.0);
  assert_same (choice_number (&place, CHOICE_TRAIL), 12.5);
  g_assert_true (isnan (choice_number (&place, CHOICE_EDGE_MARGIN)));
  g_assert_true (isnan (choice_number (&place, CHOICE_TYRE_CLEARANCE)));
}

static void
test_alike (Fixture *f, gconstpointer data)
{
  (void) data;
  ChoiceAnswer answer = *answer_at (f, 0);

  g_assert_false (choice_is_alike (&answer));
  answer.side[SIDE_RIGHT] = answer.side[SIDE_LEFT];
  g_assert_true (choice_is_alike (&answer));
  answer.side[SIDE_RIGHT].edge_margin = answer.side[SIDE_LEFT].edge_margin = NAN;
  g_assert_true (choice_is_alike (&answer));
  answer.side[SIDE_RIGHT].setting.place++;
  g_assert_false (choice_is_alike (&answer));
}

#define ADD(path, function) g_test_add (path, Fixture, NULL, set_up, function, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("/choice-table/csv", test_csv_reads_back);
  ADD ("/choice-table/csv-columns", test_csv_keeps_its_columns);
  ADD ("/choice-table/json", test_json_reads_back);
  ADD ("/choice-table/json-empty", test_json_without_answers);
  ADD ("/choice-table/not-given", test_what_is_not_given_is_empty);
  ADD ("/choice-table/decimal-point", test_numbers_keep_the_point);
  ADD ("/choice-table/text", test_text_shows_the_figures);
  ADD ("/choice-table/terminal", test_text_fits_a_terminal);
  ADD ("/choice-table/marks", test_text_marks_what_is_wrong);
  ADD ("/choice-table/key", test_text_signs_have_a_key);
  ADD ("/choice-table/alike", test_alike);
  g_test_add_func ("/choice-table/left-of-zero", test_what_a_search_leaves_is_zero);
  g_test_add_func ("/choice-table/targets", test_targets_in_words);
  g_test_add_func ("/choice-table/edge-units", test_numbers_have_edge_units);
  return g_test_run ();
}
