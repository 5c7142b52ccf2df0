/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `strutwright choose`, started as a user or a script would. */
#include "car-fixture.h"
#include "program-run.h"

#include "model/choice/choice-table.h"
#include "model/json/json-strict.h"
#include "model/plate/plate-json.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#define SAME 1e-11 /* of a number, or of one: twelve digits are written */

static char *
demo_path (const char *name)
{
  g_autofree char *base = g_strconcat (name, ".swcar", NULL);

  return g_test_build_filename (G_TEST_DIST, "..", "data", base, NULL);
}

static char *
plate_path (const char *name)
{
  g_autofree char *base = g_strconcat (name, ".swplate", NULL);

  return g_test_build_filename (G_TEST_DIST, "..", "data", "plates", base, NULL);
}

static JsonObject *
parse (const char *text, JsonNode **root)
{
  g_autoptr (GError) error = NULL;

  *root = json_strict_parse (text, strlen (text), &error);
  g_assert_no_error (error);
  return json_node_get_object (*root);
}

static JsonObject *
answer_in (JsonObject *table, guint rank)
{
  return json_array_get_object_element (json_object_get_array_member (table, "answers"),
                                        rank);
}

static guint
n_answers_in (JsonObject *table)
{
  return json_array_get_length (json_object_get_array_member (table, "answers"));
}

static double
number_in (JsonObject *object, const char *name)
{
  JsonNode *node = json_object_get_member (object, name);

  g_assert_nonnull (node);
  return JSON_NODE_HOLDS_NULL (node) ? (double) NAN : json_node_get_double (node);
}

static void
assert_same (double written, double value)
{
  if (isnan (value))
    g_assert_true (isnan (written));
  else
    g_assert_cmpfloat_with_epsilon (written, value, SAME * fmax (1.0, fabs (value)));
}

static void
check_answer (JsonObject *object, const ChoiceAnswer *answer)
{
  JsonArray *sides = json_object_get_array_member (object, "sides");

  g_assert_cmpstr (json_object_get_string_member (object, "plate"), ==,
                   answer->plate->name);
  g_assert_cmpint (json_object_get_boolean_member (object, "meets"), ==, answer->meets);
  g_assert_cmpint (json_object_get_boolean_member (object, "fits"), ==, answer->fits);
  g_assert_cmpint (json_object_get_boolean_member (object, "swapped"), ==,
                   answer->is_swapped);
  for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++)
    for (ChoiceNumber i = 0; i < N_CHOICE_NUMBERS; i++)
      assert_same (number_in (json_array_get_object_element (sides, side),
                              choice_number_info (i).key),
                   choice_number (&answer->side[side], i));
}

typedef struct {
  Car *car;
  Plate *plates[3];
  char *car_file, *files[3];
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  (void) data;
  static const char *const names[] = { "sliding-camber-plate", "diagonal-slot-plate",
                                       "offset-bush-turned-in-place" };

  f->car_file = demo_path ("wren");
  f->car = fixture_demo ("wren");
  for (int i = 0; i < 3; i++) {
    f->files[i] = plate_path (names[i]);
    g_autoptr (GFile) file = g_file_new_for_path (f->files[i]);
    g_autoptr (GError) error = NULL;
    f->plates[i] = plate_load (file, &error);
    g_assert_no_error (error);
  }
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  car_free (f->car);
  g_free (f->car_file);
  for (int i = 0; i < 3; i++) {
    plate_free (f->plates[i]);
    g_free (f->files[i]);
  }
}

/* What the program must come to for @question and the first @n_plates. */
static void
check_json (Fixture *f, ChoiceQuestion question, guint n_plates, const char *json)
{
  g_autoptr (GArray) answers = choice_solve (f->car, &question,
                                             (const Plate *const *) f->plates, n_plates);
  g_autoptr (JsonNode) root = NULL;
  JsonObject *table = parse (json, &root);

  g_assert_cmpuint (n_answers_in (table), ==, answers->len);
  for (guint rank = 0; rank < answers->len; rank++)
    check_answer (answer_in (table, rank), &g_array_index (answers, ChoiceAnswer, rank));
}

static void
test_json_is_what_is_solved (Fixture *f, gconstpointer data)
{
  (void) data;
  g_auto (Outcome) o = RUN ("choose", f->car_file, "--format", "json", "--plates",
                            f->files[0], f->files[1], f->files[2]);

  g_assert_cmpint (o.status, ==, 0);
  g_assert_cmpstr (o.err, ==, "");
  check_json (f,
              (ChoiceQuestion){
                  .carrier = CARRIED_BY_TORSION_BAR, .try_bolt = TRUE, .try_swap = TRUE },
              3, o.out);
}

static void
test_plates_may_be_named_one_by_one (Fixture *f, gconstpointer data)
{
  (void) data;
  g_auto (Outcome) behind = RUN ("choose", f->car_file, "--format=json", "--plates",
                                 f->files[0], f->files[1]);
  g_auto (Outcome) each = RUN ("choose", "--plates", f->files[0], "--plates", f->files[1],
                               "--format=json", "--", f->car_file);

  g_assert_cmpint (each.status, ==, 0);
  g_assert_cmpstr (behind.out, ==, each.out);
}

static void
set_target (Car *car, Aim aim, double least, double most, double weight)
{
  const CarTarget target = { .aim = aim, .least = least, .most = most, .weight = weight };

  g_array_append_val (car->targets, target);
}

/* All options together; the car's own targets give way. */
static void
test_options_reach_the_solver (Fixture *f, gconstpointer data)
{
  (void) data;
  g_auto (Outcome) o =
              RUN ("choose", f->car_file, "--plates", f->files[0], f->files[1],
                   "--target", "camber=-1.6:-1.4@2", "--target=caster=4.5:", "--target",
                   "scrub_radius=:9", "--target", "sai=12.5", "--setup",
                   "Plate, 20 lower, toe reset", "--spring", "torsion", "--no-bolt",
                   "--no-swap", "--limit", "tyre_clearance=8.5", "--limit",
                   "edge_margin=4", "--limit", "travel_used=25", "--format", "json");

  g_assert_cmpstr (o.err, ==, "");
  g_assert_cmpint (o.status, ==, 0);
  g_array_set_size (f->car->targets, 0);
  set_target (f->car, AIM_CAMBER, -1.6, -1.4, 2.0);
  set_target (f->car, AIM_CASTER, 4.5, INFINITY, 1.0);
  set_target (f->car, AIM_SCRUB_RADIUS, -INFINITY, 9.0, 1.0);
  set_target (f->car, AIM_SAI, 12.5, 12.5, 1.0);
  f->car->limits.tyre_clearance_mm = 8.5;
  f->car->limits.edge_margin_mm = 4.0;
  f->car->limits.travel_used_mm = 25.0;
  check_json (f, (ChoiceQuestion){ .setup = 2, .carrier = CARRIED_BY_TORSION_BAR }, 2,
              o.out);
  g_assert_nonnull (strstr (o.out, "\"setup\": \"Plate, 20 lower, toe reset\""));
  g_assert_nonnull (strstr (o.out, "{ \"aim\": \"scrub_radius\", \"least_mm\": null, "
                                   "\"most_mm\": 9, \"weight\": 1 }"));
}

/* The others of the limits: the sides' difference and the bolt. */
static void
test_limits_of_bolt_and_sides (Fixture *f, gconstpointer data)
{
  (void) data;
  g_auto (Outcome) o = RUN ("choose", f->car_file, "--plates", f->files[2], "--limit",
                            "camber_bolt=1", "--limit", "cross_camber=0.1", "--limit",
                            "cross_caster=0.2", "--format=json");

  g_assert_cmpint (o.status, ==, 0);
  plate_free (f->plates[0]);
  f->plates[0] = plate_copy (f->plates[2]);
  f->car->limits.camber_bolt_deg = 1.0;
  f->car->limits.cross_camber_deg = 0.1;
  f->car->limits.cross_caster_deg = 0.2;
  check_json (f,
              (ChoiceQuestion){
                  .carrier = CARRIED_BY_TORSION_BAR, .try_bolt = TRUE, .try_swap = TRUE },
              1, o.out);
}

/* Two rows a plate and one head; text names each plate in three blocks. */
static void
test_csv_and_text (Fixture *f, gconstpointer data)
{
  (void) data;
  g_auto (Outcome) csv = RUN ("choose", f->car_file, "--plates", f->files[0], "--format",
                              "csv", "--no-bolt");
  g_auto (Outcome) text =
              RUN ("choose", f->car_file, "--plates", f->files[0], "--no-bolt");
  g_auto (GStrv) rows = g_strsplit (csv.out, "\r\n", -1);
  g_auto (GStrv) blocks =
              g_regex_split_simple ("\n 1 (?:. )? Sliding camber plate", text.out, 0, 0);

  g_assert_cmpint (csv.status, ==, 0);
  g_assert_cmpuint (g_strv_length (rows), ==, 4);
  g_assert_true (g_str_has_prefix (rows[0], "rank,plate,file,swapped,side,setting,"));
  g_assert_true (g_str_has_prefix (rows[1], "1,Sliding camber plate,"));
  g_assert_cmpint (text.status, ==, 0);
  g_assert_cmpuint (g_strv_length (blocks), ==, 4);
  g_assert_true (g_str_has_prefix (text.out, "Upper mounts for Wren 1.3 hill-climb "
                                             "hatch, setup “As measured”.\n"));
  g_assert_nonnull (strstr (text.out, "Aimed for: "));
  g_assert_true (g_str_has_suffix (text.out,
                                   "\nOff aim: 0 where every aim is met, and more the "
                                   "further off; it has no unit and only ranks.\n"));
}

static Outcome
run_with_shelf (const char *folder, const char *const *argv)
{
  g_auto (GStrv) environment = program_environment ();

  environment = g_environ_setenv (environment, "STRUTWRIGHT_DATADIR", folder, TRUE);
  environment = g_environ_setenv (environment, "XDG_DATA_HOME", folder, TRUE);
  return program_run_in (environment, argv);
}

static void
copy (const char *from, const char *folder, const char *name)
{
  g_autofree char *to = g_build_filename (folder, name, NULL);
  g_autofree char *text = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (from, &text, &length, NULL));
  g_assert_true (g_file_set_contents (to, text, (gssize) length, NULL));
}

/* What comes with the program, and what lies beside the car. */
static void
test_without_plates_the_shelf_is_taken (Fixture *f, gconstpointer data)
{
  (void) data;
  g_autofree char *shipped = g_test_build_filename (G_TEST_DIST, "..", "data", NULL);
  const char *shelf[] = { PROGRAM,     "choose",    f->car_file, "--format=csv",
                          "--no-bolt", "--no-swap", NULL };
  g_auto (Outcome) o = run_with_shelf (shipped, shelf);

  g_assert_cmpint (o.status, ==, 0);
  g_assert_cmpuint (count_lines (o.out), ==, 1 + 2 * 8);

  char *folder = fixture_folder_new ();
  g_autofree char *car = g_build_filename (folder, "my.swcar", NULL);
  const char *beside[] = { PROGRAM, "choose", car, "--format=csv", "--no-bolt", NULL };
  copy (f->car_file, folder, "my.swcar");
  copy (f->files[0], folder, "own.swplate");
  g_auto (Outcome) own = run_with_shelf (folder, beside);
  g_assert_cmpint (own.status, ==, 0);
  g_assert_cmpstr (own.err, ==, "");
  g_assert_nonnull (strstr (own.out, "own.swplate"));

  g_autofree char *broken = g_build_filename (folder, "broken.swplate", NULL);
  g_assert_true (g_file_set_contents (broken, "{", -1, NULL));
  g_auto (Outcome) warned = run_with_shelf (folder, beside);
  g_assert_cmpint (warned.status, ==, 0);
  g_assert_true (g_str_has_prefix (warned.err, "strutwright: Warning: "));
  g_assert_nonnull (strstr (warned.err, "broken.swplate"));
  g_assert_cmpuint (count_lines (warned.err), ==, 1);
  fixture_folder_remove (folder);
}

static void
test_an_empty_shelf_is_refused (Fixture *f, gconstpointer data)
{
  (void) data;
  char *folder = fixture_folder_new ();
  g_autofree char *car = g_build_filename (folder, "my.swcar", NULL);
  const char *argv[] = { PROGRAM, "choose", car, NULL };

  copy (f->car_file, folder, "my.swcar");
  g_auto (Outcome) o = run_with_shelf (folder, argv);
  g_assert_cmpint (o.status, ==, 1);
  g_assert_cmpstr (o.out, ==, "");
  g_assert_cmpstr (o.err, ==,
                   "strutwright: There are no plates to choose from: name some behind "
                   "--plates, or put plate files beside the car file.\n");
  fixture_folder_remove (folder);
}

static void
test_wrong_usage_is_2 (Fixture *f, gconstpointer data)
{
  (void) data;
  const char *car = f->car_file, *plate = f->files[0];
  g_autofree char *bare = program_car ("good", "set-m");

#define CHOOSE(...) RUN ("choose", car, "--plates", plate, __VA_ARGS__)
  program_check_usage (RUN ("choose"), "strutwright: choose needs a car file; see "
                                       "strutwright choose --help.\n");
  program_check_usage (RUN ("choose", car, plate),
                       "strutwright: choose needs one car file; plate files go behind "
                       "--plates.\n");
  program_check_usage (RUN ("choose", bare, "--plates", plate),
                       "strutwright: There is nothing to aim for: the car has no targets "
                       "of its own, so name some, such as --target camber=-2.7:-2.3 "
                       "--target caster=5:.\n");
  program_check_usage (CHOOSE ("--target", "grip=5"),
                       "strutwright: --target is for one of camber, caster, sai, "
                       "scrub_radius, trail, roll_centre_height, toe_change, "
                       "scrub_change, bump_steer, not “grip”.\n");
  program_check_usage (CHOOSE ("--target", "cambr=-2"),
                       "strutwright: --target has an unknown aim “cambr”; did you mean "
                       "“camber”?\n");
  program_check_usage (CHOOSE ("--target", "camber=-1", "--target", "camber=-2"),
                       "strutwright: --target has two ranges for camber.\n");
  program_check_usage (CHOOSE ("--limit", "tyre_clearance"),
                       "strutwright: --limit is one of tyre_clearance, edge_margin, "
                       "cross_camber, cross_caster, camber_bolt, travel_used, with = and "
                       "a number that is not below zero, such as tyre_clearance=8; not "
                       "“tyre_clearance”.\n");
  program_check_usage (CHOOSE ("--spring", "air"),
                       "strutwright: --spring is coil or torsion, not “air”.\n");
  program_check_usage (CHOOSE ("--format", "xml"),
                       "strutwright: --format is text, csv or json, not “xml”.\n");
  program_check_usage (CHOOSE ("--setup", "None"),
                       "strutwright: There is no setup “None”; the car has “As "
                       "measured”, “12 in, 6 back”, “Plate, 20 lower, toe reset”.\n");
  program_check_usage (CHOOSE ("--colour"), "strutwright: Unknown option --colour\n");
#undef CHOOSE
}

static void
test_bad_ranges_are_2 (Fixture *f, gconstpointer data)
{
  (void) data;
  static const struct {
    const char *word, *why;
  } words[] = {
    { "camber", "it has no range, as camber=-2.5 and camber=-2.7:-2.3 have." },
    { "camber=", "it has no range, as camber=-2.5 and camber=-2.7:-2.3 have." },
    { "camber=@2", "it has no range, as camber=-2.5 and camber=-2.7:-2.3 have." },
    { "camber=:", "both of its ends are open; caster=5: asks for at least 5." },
    { "camber=-2:-3",
      "-2 is above -3; the lower end goes first, as in camber=-2.7:-2.3." },
    { "camber=1:2:3",
      "it has more than one colon; a range has two ends, as camber=-2.7:-2.3 has." },
    { "camber=low", "“low” is no number, as -2.5 is in camber=-2.5." },
    { "camber=inf", "“inf” is no number, as -2.5 is in camber=-2.5." },
    { "camber=nan:", "“nan” is no number, as -2.5 is in camber=-2.5." },
    { "camber=1 ", "“1 ” is no number, as -2.5 is in camber=-2.5." },
    { "caster=5:x", "“x” is no number, as -2.5 is in camber=-2.5." },
    { "caster=0x10z", "“0x10z” is no number, as -2.5 is in camber=-2.5." },
    { "caster=1e999:2", "“1e999” is no number, as -2.5 is in camber=-2.5." },
    { "camber=-2,5",
      "“-2,5” is no number; the decimal mark is a point, as in camber=-2.5." },
    { "camber=1@", "“” is no weight; that is a number above 0 and not above 1000, as in "
                   "scrub_change=-1:1@0.2." },
    { "camber=1@0",
      "“0” is no weight; that is a number above 0 and not above 1000, as in "
      "scrub_change=-1:1@0.2." },
    { "camber=1@-1", "“-1” is no weight; that is a number above 0 and not above 1000, as "
                     "in scrub_change=-1:1@0.2." },
    { "camber=1@1001",
      "“1001” is no weight; that is a number above 0 and not above 1000, "
      "as in scrub_change=-1:1@0.2." },
    { "camber=1@2@3", "it has more than one @; one weight goes behind the range, as in "
                      "scrub_change=-1:1@0.2." },
    { "camber=-500", "“-500” is out of any car's range, which is from -90 to 90." },
    { "camber=-2:91", "“91” is out of any car's range, which is from -90 to 90." },
    { "trail=10001:",
      "“10001” is out of any car's range, which is from -10000 to 10000." },
  };
  static const char *const limits[] = { "tyre_clearance=",    "tyre_clearance=-1",
                                        "tyre_clearance=5mm", "tyre=5",
                                        "tyre_clearance=inf", "=5" };

  for (gsize i = 0; i < G_N_ELEMENTS (words); i++) {
    g_auto (Outcome) o = RUN ("choose", f->car_file, "--plates", f->files[0], "--target",
                              words[i].word);
    g_autofree char *said = g_strdup_printf ("strutwright: “%s” is no target: %s\n",
                                             words[i].word, words[i].why);

    g_assert_cmpstr (o.err, ==, said);
    g_assert_cmpstr (o.out, ==, "");
    g_assert_cmpint (o.status, ==, 2);
  }
  for (gsize i = 0; i < G_N_ELEMENTS (limits); i++) {
    g_auto (Outcome) o = RUN ("choose", f->car_file, "--plates", f->files[0], "--limit",
                              limits[i]);

    g_assert_true (g_str_has_prefix (o.err, "strutwright: --limit is one of "));
    g_assert_cmpint (o.status, ==, 2);
  }
}

static void
check_refused (Outcome outcome, const char *part)
{
  g_assert_cmpint (outcome.status, ==, 1);
  g_assert_cmpstr (outcome.out, ==, "");
  g_assert_cmpuint (count_lines (outcome.err), ==, 1);
  g_assert_true (g_str_has_prefix (outcome.err, "strutwright: "));
  g_assert_nonnull (strstr (outcome.err, part));
  outcome_clear (&outcome);
}

static void
test_refused_files_are_1 (Fixture *f, gconstpointer data)
{
  (void) data;
  g_autofree char *bad = program_car ("bad", "coordinate-text");
  g_autofree char *no_plate =
      g_strdup_printf ("strutwright: %s: ", f->car_file); /* a car is no plate */

  check_refused (RUN ("choose", bad, "--plates", f->files[0]),
                 "corner.ball_joint[1] must be a number.");
  check_refused (RUN ("choose", f->car_file, "--plates", f->files[0], f->car_file),
                 no_plate);
  check_refused (RUN ("choose", f->car_file, "--plates", "/nowhere/at-all.swplate"),
                 "/nowhere/at-all.swplate");
}

/* An answer of "none" is an answer. */
static void
test_no_plate_that_fits_is_0 (Fixture *f, gconstpointer data)
{
  (void) data;
  g_auto (Outcome) o = RUN ("choose", f->car_file, "--plates", f->files[0], "--limit",
                            "edge_margin=90", "--format=json");
  g_autoptr (JsonNode) root = NULL;
  JsonObject *answer = answer_in (parse (o.out, &root), 0);

  g_assert_cmpint (o.status, ==, 0);
  g_assert_cmpstr (o.err, ==, "");
  g_assert_false (json_object_get_boolean_member (answer, "fits"));
}

static guint
count_in_file (const char *path, const char *part)
{
  g_autofree char *text = NULL;
  gsize length;
  guint n = 0;

  g_assert_true (g_file_get_contents (path, &text, &length, NULL));
  for (gsize i = 0; i + strlen (part) <= length; i++)
    n += memcmp (text + i, part, strlen (part)) == 0;
  return n;
}

static void
test_card_is_one_page (Fixture *f, gconstpointer data)
{
  (void) data;
  char *folder = fixture_folder_new ();
  g_autofree char *pdf = g_build_filename (folder, "card.pdf", NULL);
  g_autofree char *svg = g_build_filename (folder, "card.svg", NULL);
  g_auto (Outcome) plain = RUN ("choose", f->car_file, "--plates", f->files[0]);
  g_auto (Outcome) o =
              RUN ("choose", f->car_file, "--plates", f->files[0], "--card", pdf);
  g_auto (Outcome) drawn = RUN ("choose", "--card", svg, "--date", "2026-03-05",
                                f->car_file, "--plates", f->files[0]);

  g_assert_cmpint (o.status, ==, 0);
  g_assert_cmpstr (o.err, ==, "");
  g_assert_cmpstr (o.out, ==, plain.out);
  g_assert_cmpuint (count_in_file (pdf, "%PDF-"), ==, 1);
  g_assert_cmpuint (count_in_file (pdf, "/Count 1"), ==, 1);
  g_assert_cmpint (drawn.status, ==, 0);
  g_assert_cmpuint (count_in_file (svg, "</svg>"), ==, 1);
  fixture_folder_remove (folder);
}

static void
test_card_of_a_plate_that_does_not_fit_warns (Fixture *f, gconstpointer data)
{
  (void) data;
  char *folder = fixture_folder_new ();
  g_autofree char *pdf = g_build_filename (folder, "card.pdf", NULL);
  g_auto (Outcome) o = RUN ("choose", f->car_file, "--plates", f->files[0], "--limit",
                            "edge_margin=90", "--card", pdf);

  g_assert_cmpint (o.status, ==, 0);
  g_assert_cmpstr (o.err, ==,
                   "strutwright: Warning: no plate fits; the card says why the best one "
                   "does not.\n");
  g_assert_true (g_file_test (pdf, G_FILE_TEST_EXISTS));
  fixture_folder_remove (folder);
}

static void
test_card_that_cannot_be_written (Fixture *f, gconstpointer data)
{
  (void) data;
  program_check_usage (RUN ("choose", f->car_file, "--plates", f->files[0], "--card",
                            "card.txt"),
                       "strutwright: “card.txt” does not end in .png, .svg or .pdf.\n");
  check_refused (RUN ("choose", f->car_file, "--plates", f->files[0], "--card",
                      "/nowhere/at-all/card.pdf"),
                 "/nowhere/at-all/card.pdf");
}

/* A table waits for no drawing library: none is linked, and the program that draws is not
 * asked for. */
static void
test_table_needs_no_drawing (Fixture *f, gconstpointer data)
{
  (void) data;
  const char *ldd[] = { "/bin/sh", "-c", "ldd \"$0\"", PROGRAM, NULL };
  char *folder = fixture_folder_new ();
  g_autofree char *alone = g_build_filename (folder, "strutwright", NULL);
  const char *argv[] = { alone, "choose", f->car_file, "--plates", f->files[0], NULL };
  g_auto (Outcome) libraries = program_run (ldd);

  if (libraries.status == 0) {
    g_assert_nonnull (strstr (libraries.out, "libgio"));
    g_assert_null (strstr (libraries.out, "libcairo"));
    g_assert_null (strstr (libraries.out, "libpango"));
    g_assert_null (strstr (libraries.out, "libgtk"));
  }
  copy (PROGRAM, folder, "strutwright");
  g_assert_cmpint (g_chmod (alone, 0700), ==, 0);
  g_auto (Outcome) o = program_run (argv);
  g_assert_cmpint (o.status, ==, 0);
  g_assert_cmpstr (o.err, ==, "");
  fixture_folder_remove (folder);
}

static void
test_a_decimal_comma_changes_no_number (Fixture *f, gconstpointer data)
{
  (void) data;
  g_auto (GStrv) environment = program_comma_environment ();
  const char *argv[] = { PROGRAM,     "choose",        f->car_file, "--plates",
                         f->files[0], "--format=json", NULL };

  if (environment == NULL)
    return;
  g_auto (Outcome) o = program_run_in (environment, argv);
  g_assert_cmpint (o.status, ==, 0);
  g_assert_nonnull (strstr (o.out, " mm on the scale"));
  check_json (f,
              (ChoiceQuestion){
                  .carrier = CARRIED_BY_TORSION_BAR, .try_bolt = TRUE, .try_swap = TRUE },
              1, o.out);
}

static void
test_help_tells_of_choose (Fixture *f, gconstpointer data)
{
  (void) f;
  (void) data;
  g_auto (Outcome) all = RUN ("--help"), own = RUN ("choose", "--help");

  g_assert_nonnull (strstr (all.out, "strutwright choose [OPTION…] FILE"));
  g_assert_cmpint (own.status, ==, 0);
  g_assert_nonnull (strstr (own.out, "--target=AIM=RANGE[@WEIGHT]"));
  g_assert_nonnull (strstr (own.out, "--card=PATH"));
}

#define ADD(path, function) g_test_add (path, Fixture, NULL, set_up, function, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("/choose/json", test_json_is_what_is_solved);
  ADD ("/choose/plates", test_plates_may_be_named_one_by_one);
  ADD ("/choose/options", test_options_reach_the_solver);
  ADD ("/choose/limits", test_limits_of_bolt_and_sides);
  ADD ("/choose/csv-text", test_csv_and_text);
  ADD ("/choose/shelf", test_without_plates_the_shelf_is_taken);
  ADD ("/choose/empty-shelf", test_an_empty_shelf_is_refused);
  ADD ("/choose/usage", test_wrong_usage_is_2);
  ADD ("/choose/ranges", test_bad_ranges_are_2);
  ADD ("/choose/refused", test_refused_files_are_1);
  ADD ("/choose/none-fits", test_no_plate_that_fits_is_0);
  ADD ("/choose/card", test_card_is_one_page);
  ADD ("/choose/card-none-fits", test_card_of_a_plate_that_does_not_fit_warns);
  ADD ("/choose/card-failure", test_card_that_cannot_be_written);
  ADD ("/choose/no-drawing", test_table_needs_no_drawing);
  ADD ("/choose/decimal-comma", test_a_decimal_comma_changes_no_number);
  ADD ("/choose/help", test_help_tells_of_choose);
  return g_test_run ();
}
