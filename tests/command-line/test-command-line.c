/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The program itself, started as a user or a script would. */
#include "car-fixture.h"
#include "hard-places.h"
#include "program-run.h"

#include "model/file/file-replace.h"

#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

static void
test_table_prints_the_whole_travel (void)
{
  g_autofree char *car = program_car ("good", "set-m");
  g_auto (Outcome) o = RUN ("table", car);

  g_assert_cmpint (o.status, ==, 0);
  g_assert_cmpstr (o.err, ==, "");
  g_assert_cmpuint (count_lines (o.out), ==, 162);
  g_assert_true (g_str_has_prefix (o.out, "wheel_travel_mm,camber_deg,"));
  g_assert_nonnull (strstr (o.out, "\r\n-80,1.50126"));
  g_assert_nonnull (strstr (o.out, "\r\n0,-0.5,0.1,3.52"));
  g_assert_nonnull (strstr (o.out, "\r\n80,-1.1433"));
}

/* Set M with the mount 10 mm inboard: −0.863° camber, +0.835° SAI (computed apart from
 * this program: raw constraints in a general-purpose root finder). */
static void
test_table_takes_setup_and_range (void)
{
  g_autofree char *car = program_car ("good", "set-m");
  g_auto (Outcome) o = RUN ("table", "--setup", "10 in", "--from=-1", "--to", "1",
                            "--step", "0.5", car);
  g_auto (GStrv) lines = g_strsplit (o.out, "\r\n", -1);

  g_assert_cmpint (o.status, ==, 0);
  g_assert_cmpuint (g_strv_length (lines), ==, 7);
  g_auto (GStrv) fields = g_strsplit (lines[3], ",", -1);
  g_assert_cmpstr (fields[0], ==, "0");
  g_assert_cmpfloat_with_epsilon (g_ascii_strtod (fields[1], NULL), -0.5 - 0.863, 5e-4);
  g_assert_cmpfloat_with_epsilon (g_ascii_strtod (fields[4], NULL), 10.8855 + 0.835,
                                  6e-4);
}

static void
test_table_gives_json (void)
{
  g_autofree char *car = program_car ("good", "set-m");
  g_auto (Outcome) o = RUN ("table", "--format", "json", "--step", "80", car);

  g_assert_cmpint (o.status, ==, 0);
  g_assert_true (
      g_str_has_prefix (o.out,
                        "{\n  \"car\": \"Set M\",\n  \"setup\": \"As measured\",\n"));
  g_assert_cmpuint (count_lines (o.out), ==, 9);
}

static void
test_table_tells_of_gaps (void)
{
  g_autofree char *car = program_car ("good", "impossible-setup");
  g_auto (Outcome) o = RUN ("table", "--setup", "12 in, 6 back", "--step", "80", car);

  g_assert_cmpint (o.status, ==, 0);
  g_assert_nonnull (strstr (o.out, "\r\n-80,,,,,,,,,,,,,,,\r\n0,,,"));
  g_assert_cmpstr (
      o.err, ==,
      "strutwright: Warning: From −80 to 80 mm of wheel travel nothing can be "
      "assembled. The tie rod cannot reach: no steering angle fits its length "
      "here.\n");
}

static void
check_view (const char *view, const char *car, const char *path)
{
  g_autofree char *svg = NULL;
  g_auto (Outcome) o = RUN ("plot", "--view", view, "--output", path, car);

  g_assert_cmpint (o.status, ==, 0);
  g_assert_true (g_file_get_contents (path, &svg, NULL, NULL));
  g_assert_nonnull (strstr (svg, "</svg>"));
}

static void
test_plot_draws_other_views (void)
{
  g_autofree char *car = program_car ("good", "set-m");
  g_autofree char *folder = g_dir_make_tmp ("plot-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "view.svg", NULL);

  check_view ("lowering", car, path);
  check_view ("mount", car, path);
  check_view ("springs", car, path);
  check_view ("loads", car, path);
  program_check_usage (
      RUN ("plot", "--view", "height", "--output", path, car),
      "strutwright: --view is one of curves, sheet, lowering, mount, springs, loads, not “height”.\n");
  g_remove (path);
  g_rmdir (folder);
}

static void
test_wrong_usage_is_2 (void)
{
  g_autofree char *car = program_car ("good", "set-m");

  program_check_usage (RUN ("table"),
                       "strutwright: table needs exactly one car file; see "
                       "strutwright table --help.\n");
  program_check_usage (RUN ("check"),
                       "strutwright: check needs exactly one car file; see "
                       "strutwright check --help.\n");
  program_check_usage (RUN ("table", car, car),
                       "strutwright: table needs exactly one car file; see "
                       "strutwright table --help.\n");
  program_check_usage (RUN ("table", "--colour", car),
                       "strutwright: Unknown option --colour\n");
  program_check_usage (RUN ("table", "--from", "low", car),
                       "strutwright: Cannot parse double value “low” for --from\n");
  program_check_usage (RUN ("table", "--format", "xml", car),
                       "strutwright: --format is csv or json, not “xml”.\n");
  program_check_usage (
      RUN ("table", "--setup", "None", car),
      "strutwright: There is no setup “None”; the car has “As measured”, “10 "
      "in”.\n");
  program_check_usage (RUN ("table", "--from", "10", "--to", "-10", car),
                       "strutwright: The range must not end below its start.\n");
  program_check_usage (RUN ("table", "--step", "0", car),
                       "strutwright: The step must be above zero.\n");
  program_check_usage (
      RUN ("table", "--step", "0.0001", car),
      "strutwright: The table would have more than 100000 rows: take a larger "
      "step.\n");
  program_check_usage (RUN ("table", "--to", "inf", car),
                       "strutwright: The range and the step must be finite numbers.\n");
}

static void
test_refused_files_are_1 (void)
{
  static const char *const commands[] = { "table", "check", "compare" };
  g_autofree char *car = program_car ("bad", "coordinate-text");
  g_autofree char *sentence =
      g_strdup_printf ("strutwright: %s: corner.ball_joint[1] must be a number.\n", car);

  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++) {
    g_auto (Outcome) o = RUN (commands[i], car);
    g_auto (Outcome) none = RUN (commands[i], "/nowhere/at-all.swcar");

    g_assert_cmpint (o.status, ==, 1);
    g_assert_cmpstr (o.err, ==, sentence);
    g_assert_cmpstr (o.out, ==, "");
    g_assert_cmpint (none.status, ==, 1);
    g_assert_cmpstr (none.err, ==,
                     "strutwright: Error opening file /nowhere/at-all.swcar: No such "
                     "file or "
                     "directory\n");
  }
}

static void
test_check_says_sound (void)
{
  g_autofree char *car = program_car ("good", "minimal");
  g_autofree char *sentence =
      g_strdup_printf ("%s: the car is sound and nothing looks implausible.\n", car);
  g_auto (Outcome) o = RUN ("check", car);

  g_assert_cmpint (o.status, ==, 0);
  g_assert_cmpstr (o.out, ==, sentence);
  g_assert_cmpstr (o.err, ==, "");
}

static void
test_check_lists_warnings (void)
{
  g_autofree char *car =
      g_test_build_filename (G_TEST_DIST, "..", "data", "lapwing.swcar", NULL);
  g_auto (Outcome) o = RUN ("check", "--", car);

  g_assert_cmpint (o.status, ==, 0);
  g_assert_nonnull (strstr (o.out,
                            ": the car can be solved, but as measured 2 things look "
                            "implausible. Its setups have 4 warnings.\n"
                            "caster: Caster is 0.00°, outside the 1.5 to 7.5° usual"));
  const char *misread = strstr (o.out, "\nmisread: If one figure was misread, measure "
                                       "corner.ball_joint[0] again: with ");
  g_assert_nonnull (misread);
  g_assert_true (misread > strstr (o.out, "\ntrail: Caster trail is "));
  g_assert_true (misread < strstr (o.out, ": Setup “"));
  g_assert_cmpuint (count_lines (o.out), ==, 8);
  g_assert_cmpstr (o.err, ==, "");
}

/* Kept by contract, so no refusal; but a slip of the keyboard must not pass unseen. */
static void
test_check_names_what_is_not_read (void)
{
  g_autofree char *car = program_car ("good", "springs-unknown");
  g_autofree char *other = program_car ("good", "unknown-members");
  g_auto (Outcome) of_springs = RUN ("check", car);
  g_auto (Outcome) o = RUN ("check", other);
  g_autofree char *path = g_build_filename (g_get_tmp_dir (), "misspelt.swcar", NULL);
  g_autofree char *text = NULL;
  g_auto (GStrv) parts = NULL;

  g_assert_cmpint (of_springs.status, ==, 0);
  g_assert_true (g_str_has_suffix (
      of_springs.out,
      "\nunknown: Kept, but not read: strut.thread, loads.by, loads.cases[1].road, "
      "springs.torsion_bar.heat, springs.torsion_bar.sections[1].shot_peened and 11 "
      "more.\n"));
  g_assert_cmpint (o.status, ==, 0);
  g_assert_nonnull (strstr (o.out, "\nunknown: Kept, but not read: history, "
                                   "corner.camber_bolt, corner.steering_arm, "
                                   "alignment.gauge, tyre.pressure_bar and "));

  g_assert_true (g_file_get_contents (car, &text, NULL, NULL));
  parts = g_strsplit (text, "\"section_width_mm\"", -1);
  g_autofree char *spoilt = g_strjoinv ("\"section_widht_mm\"", parts);
  g_assert_true (g_file_set_contents (path, spoilt, -1, NULL));
  g_auto (Outcome) misspelt = RUN ("check", path);
  g_assert_cmpint (misspelt.status, ==, 0);
  g_assert_nonnull (strstr (misspelt.out,
                            "\nunknown: tyre.section_widht_mm is not read; was "
                            "section_width_mm meant?\n"));
  g_unlink (path);
}

/* A setup may be meant to be unusual: the car itself is sound. */
static void
test_check_keeps_setups_apart (void)
{
  g_autofree char *car =
      g_test_build_filename (G_TEST_DIST, "..", "data", "wren.swcar", NULL);
  g_auto (Outcome) o = RUN ("check", car);

  g_assert_cmpint (o.status, ==, 0);
  g_assert_nonnull (strstr (o.out, ": the car is sound, with 3 warnings.\ncamber: "));
  g_assert_null (strstr (o.out, "misread"));
}

/* Set M lowered 30 mm, toe and roll centre as the travel table has them at z = 30. */
static void
test_compare_prints_all_setups (void)
{
  g_autofree char *car = program_car ("good", "set-m-lowered");
  g_auto (Outcome) text = RUN ("compare", car);
  g_auto (Outcome) csv = RUN ("compare", "--format=csv", "--setup", "30 down", car);
  g_auto (Outcome) json = RUN ("compare", "--format", "json", car);
  g_auto (Outcome) table = RUN ("table", "--from", "30", "--to", "30", car);
  g_auto (GStrv) rows = g_strsplit (table.out, "\r\n", -1);
  g_auto (GStrv) fields = g_strsplit (rows[1], ",", -1);
  g_autofree char *roll_centre =
      g_strdup_printf ("\r\nroll_centre_height_mm,mm,76.6631780826,0,%s,-84.", fields[7]);

  g_assert_cmpint (text.status, ==, 0);
  g_assert_cmpstr (text.err, ==, "");
  g_assert_cmpuint (count_lines (text.out), ==, 20);
  g_assert_nonnull (strstr (text.out, "30 down, 10 in"));
  g_assert_cmpint (csv.status, ==, 0);
  g_assert_true (g_str_has_prefix (csv.out,
                                   "quantity,unit,As measured,As measured: change from "
                                   "As measured,30 down,30 down: change from As "
                                   "measured\r\n"));
  g_assert_nonnull (strstr (csv.out, roll_centre));
  g_assert_cmpint (json.status, ==, 0);
  g_assert_true (g_str_has_prefix (json.out, "{\n  \"baseline\": \"As measured\",\n"));
}

static void
test_compare_tells_of_gaps (void)
{
  g_autofree char *car = program_car ("good", "impossible-setup");
  g_auto (Outcome) o = RUN ("compare", car);

  g_assert_cmpint (o.status, ==, 0);
  g_assert_true (g_str_has_prefix (o.err, "strutwright: Warning: the setup “12 in, 6 "
                                          "back” cannot be assembled where it stands. "));
}

static void
test_restore_says_what_would_put_it_back (void)
{
  g_autofree char *car = program_car ("good", "set-m-lowered");
  g_auto (Outcome) all = RUN ("restore", "--setup", "30 down", car);
  g_auto (Outcome) one = RUN ("restore", "--setup", "30 down", "--goal", "roll-centre",
                              "--limit", "0:20", car);
  g_auto (Outcome) json = RUN ("restore", "--setup", "30 down", "--goal",
                               "bump-steer-rack", "--travel=60", "--format=json", car);

  g_assert_cmpint (all.status, ==, 0);
  g_assert_cmpstr (all.err, ==, "");
  g_assert_cmpuint (count_lines (all.out), ==, 4);
  g_assert_cmpint (one.status, ==, 0);
  g_assert_cmpuint (count_lines (one.out), ==, 1);
  g_assert_true (g_str_has_prefix (one.out, "No ball-joint spacer from 0 to 20 mm puts"));
  g_assert_cmpint (json.status, ==, 0);
  g_assert_nonnull (strstr (json.out, "\"goal\": \"bump-steer-rack\", \"status\": "
                                      "\"ok\", \"part\": \"rack_raise_mm\", "));
  /* 30 mm down, 50 of its 80 mm of bump are left */
  g_assert_nonnull (strstr (json.out, "\"from_mm\": -60, \"to_mm\": 50 }\n  ]\n}\n"));
}

static void
test_wrong_usage_of_setups_is_2 (void)
{
  g_autofree char *car = program_car ("good", "set-m-lowered");

  program_check_usage (RUN ("compare", "--format", "xml", car),
                       "strutwright: --format is text, csv or json, not “xml”.\n");
  program_check_usage (
      RUN ("compare", "--setup", "None", car),
      "strutwright: There is no setup “None”; the car has “As measured”, “30 "
      "down”, “30 down, 10 in”.\n");
  program_check_usage (
      RUN ("restore", car),
      "strutwright: restore needs --setup with the setup to put right.\n");
  program_check_usage (
      RUN ("restore", "--setup", "As measured", car),
      "strutwright: “As measured” is the baseline itself: there is nothing to "
      "put back.\n");
  program_check_usage (
      RUN ("restore", "--setup", "30 down", "--goal", "grip", car),
      "strutwright: --goal is roll-centre, camber-gain, bump-steer-spacer or "
      "bump-steer-rack, not “grip”.\n");
  program_check_usage (RUN ("restore", "--setup", "30 down", "--limit", "9:-9", car),
                       "strutwright: --limit is two numbers in order, such as 0:25, not "
                       "“9:-9”.\n");
  program_check_usage (RUN ("restore", "--setup", "30 down", "--travel", "0", car),
                       "strutwright: --travel must be above zero.\n");
  program_check_usage (RUN ("restore", "--setup", "30 down", "--format", "csv", car),
                       "strutwright: --format is text or json, not “csv”.\n");
}

static void
test_help_and_version (void)
{
  g_auto (Outcome) help = RUN ("--help"), version = RUN ("--version");
  g_auto (Outcome) table = RUN ("table", "--help");

  g_assert_cmpint (help.status, ==, 0);
  g_assert_nonnull (strstr (help.out, "strutwright table [OPTION…] FILE"));
  g_assert_nonnull (strstr (help.out, "strutwright check"));
  g_assert_cmpint (version.status, ==, 0);
  g_assert_true (g_str_has_prefix (version.out, "strutwright "));
  g_assert_cmpuint (count_lines (version.out), ==, 1);
  g_assert_cmpint (table.status, ==, 0);
  g_assert_nonnull (strstr (table.out, "strutwright table [OPTION"));
  g_assert_nonnull (strstr (table.out, "--setup=NAME"));
}

static void
test_output_that_cannot_be_written_is_1 (void)
{
  g_autofree char *car = program_car ("good", "set-m");
  const char *argv[] = { "/bin/sh", "-c", "\"$0\" table \"$1\" >/dev/full",
                         PROGRAM,   car,  NULL };

  if (!g_file_test ("/dev/full", G_FILE_TEST_EXISTS)) {
    g_test_skip ("no /dev/full here");
    return;
  }
  g_auto (Outcome) o = program_run (argv);
  g_assert_cmpint (o.status, ==, 1);
  g_assert_cmpstr (o.err, ==,
                   "strutwright: The output could not be written: No space left on "
                   "device.\n");
}

static void
test_a_decimal_comma_changes_no_table (void)
{
  g_autofree char *car = program_car ("good", "set-m");
  g_auto (GStrv) environment = program_comma_environment ();
  const char *csv[] = { PROGRAM, "table", "--step", "0.5", car, NULL };
  const char *json[] = { PROGRAM, "table", "--format=json", car, NULL };
  const char *check[] = { PROGRAM, "check", car, NULL };
  const char *compare[] = { PROGRAM, "compare", "--format=csv", car, NULL };

  if (environment == NULL)
    return;
  g_auto (Outcome) csv_here = program_run (csv),
                   csv_there = program_run_in (environment, csv);
  g_auto (Outcome) json_here = program_run (json),
                   json_there = program_run_in (environment, json);
  g_auto (Outcome) check_there = program_run_in (environment, check);
  g_auto (Outcome) compare_here = program_run (compare);
  g_auto (Outcome) compare_there = program_run_in (environment, compare);
  g_assert_cmpstr (csv_here.out, ==, csv_there.out);
  g_assert_cmpstr (compare_here.out, ==, compare_there.out);
  g_assert_cmpstr (json_here.out, ==, json_there.out);
  /* which proves that the locale was taken up */
  g_assert_nonnull (strstr (check_there.out, "Total toe-in is 0,92°"));
}

static const char translation[] =
    "msgid \"\"\nmsgstr \"Content-Type: text/plain; charset=UTF-8\\n\"\n"
    "msgid \"The step must be above zero.\"\n"
    "msgstr \"Die Schrittweite muss größer als null sein.\"\n";

/* @folder/de/LC_MESSAGES/strutwright.mo, or FALSE without msgfmt. */
static gboolean
make_translation (const char *folder, const char *messages)
{
  g_autofree char *source = g_build_filename (folder, "de.po", NULL);
  g_autofree char *target = g_build_filename (messages, "strutwright.mo", NULL);
  const char *argv[] = { "msgfmt", "-o", target, source, NULL };

  g_assert_cmpint (g_mkdir_with_parents (messages, 0700), ==, 0);
  g_assert_true (g_file_set_contents (source, translation, -1, NULL));
  return g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, NULL,
                       NULL, NULL, NULL);
}

static void
remove_translation (char *folder, const char *messages)
{
  g_autofree char *target = g_build_filename (messages, "strutwright.mo", NULL);
  g_autofree char *language = g_path_get_dirname (messages);

  g_unlink (target);
  g_rmdir (messages);
  g_rmdir (language);
  fixture_folder_remove (folder);
}

static void
test_sentences_are_translated (void)
{
  g_autofree char *car = program_car ("good", "set-m");
  g_auto (GStrv) environment = program_comma_environment ();
  const char *argv[] = { PROGRAM, "table", "--step", "0", car, NULL };

  if (environment == NULL)
    return;
  char *folder = fixture_folder_new ();
  g_autofree char *messages = g_build_filename (folder, "de", "LC_MESSAGES", NULL);
  if (make_translation (folder, messages)) {
    environment = g_environ_setenv (environment, "STRUTWRIGHT_LOCALEDIR", folder, TRUE);
    g_auto (Outcome) o = program_run_in (environment, argv);
    g_assert_cmpstr (o.err, ==,
                     "strutwright: Die Schrittweite muss größer als null sein.\n");
  } else {
    g_test_skip ("msgfmt is not here");
  }
  remove_translation (folder, messages);
}

/* A copy of the program in a folder of its own, so that no built window is beside it. */
static char *
copy_program (const char *folder)
{
  char *copy = g_build_filename (folder, "strutwright", NULL);
  g_autoptr (GFile) from = g_file_new_for_path (PROGRAM), to = g_file_new_for_path (copy);
  g_autoptr (GError) error = NULL;

  g_file_copy (from, to, G_FILE_COPY_OVERWRITE, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  return copy;
}

static void
test_without_a_command_the_window_gets_it_all (void)
{
  static const char script[] =
      "#!/bin/sh\nfor a in \"$@\"; do echo \"<$a>\"; done\nexit 7\n";
  char *folder = fixture_folder_new ();
  g_autofree char *program = copy_program (folder);
  g_autofree char *window = g_build_filename (folder, "strutwright-window", NULL);
  const char *argv[] = { program, "a car.swcar", "--option", NULL };

  g_assert_true (g_file_set_contents_full (window, script, -1, G_FILE_SET_CONTENTS_NONE,
                                           0700, NULL));
  g_auto (Outcome) o = program_run (argv);
  g_assert_cmpstr (o.out, ==, "<a car.swcar>\n<--option>\n");
  g_assert_cmpint (o.status, ==, 7);
  fixture_folder_remove (folder);
}

static void
test_a_missing_window_is_said (void)
{
  char *folder = fixture_folder_new ();
  g_autofree char *program = copy_program (folder);
  const char *argv[] = { program, NULL };

  g_setenv ("STRUTWRIGHT_LIBEXECDIR", "/nowhere/at/all", TRUE);
  g_auto (Outcome) o = program_run (argv);
  g_unsetenv ("STRUTWRIGHT_LIBEXECDIR");
  g_assert_cmpint (o.status, ==, 1);
  g_assert_cmpstr (o.err, ==,
                   "strutwright: The program strutwright-window was found neither beside "
                   "this program nor in /nowhere/at/all.\n");
  fixture_folder_remove (folder);
}

/* A sentence is UTF-8 whatever the name of the file is. */
static void
test_odd_names (void)
{
  g_autofree char *good = program_car ("good", "set-m");
  g_autofree char *bad = program_car ("bad", "camber-missing");
  g_autofree char *sound = NULL, *unsound = NULL;
  char *folder = fixture_folder_new ();

  g_assert_true (g_file_get_contents (good, &sound, NULL, NULL));
  g_assert_true (g_file_get_contents (bad, &unsound, NULL, NULL));
  for (guint i = 0; i < N_ODD_NAMES; i++) {
    g_autofree char *name = odd_name (i, ".swcar"), *drawing = odd_name (i, ".svg");
    g_autofree char *path = g_build_filename (folder, name, NULL);
    g_autofree char *output = g_build_filename (folder, drawing, NULL);

    g_assert_true (file_replace (path, sound, strlen (sound), NULL));
    g_auto (Outcome) table = RUN ("table", "--step", "40", path);
    g_assert_cmpint (table.status, ==, 0);
    g_auto (Outcome) plot = RUN ("plot", "--output", output, path);
    g_assert_cmpstr (plot.err, ==, "");
    g_assert_cmpint (plot.status, ==, 0);
    g_assert_true (file_replace (path, unsound, strlen (unsound), NULL));
    g_auto (Outcome) check = RUN ("check", path);
    g_assert_cmpint (check.status, ==, 1);
    g_assert_true (g_utf8_validate (check.err, -1, NULL));
  }
  fixture_folder_remove (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/command-line/table", test_table_prints_the_whole_travel);
  g_test_add_func ("/command-line/table-options", test_table_takes_setup_and_range);
  g_test_add_func ("/command-line/table-json", test_table_gives_json);
  g_test_add_func ("/command-line/table-gaps", test_table_tells_of_gaps);
  g_test_add_func ("/command-line/plot-draws-other-views", test_plot_draws_other_views);
  g_test_add_func ("/command-line/usage", test_wrong_usage_is_2);
  g_test_add_func ("/command-line/refused", test_refused_files_are_1);
  g_test_add_func ("/command-line/check", test_check_says_sound);
  g_test_add_func ("/command-line/check-warnings", test_check_lists_warnings);
  g_test_add_func ("/command-line/check-setups", test_check_keeps_setups_apart);
  g_test_add_func ("/command-line/check-unknown", test_check_names_what_is_not_read);
  g_test_add_func ("/command-line/compare", test_compare_prints_all_setups);
  g_test_add_func ("/command-line/compare-gaps", test_compare_tells_of_gaps);
  g_test_add_func ("/command-line/restore", test_restore_says_what_would_put_it_back);
  g_test_add_func ("/command-line/usage-of-setups", test_wrong_usage_of_setups_is_2);
  g_test_add_func ("/command-line/help", test_help_and_version);
  g_test_add_func ("/command-line/odd-names", test_odd_names);
  g_test_add_func ("/command-line/full-disk", test_output_that_cannot_be_written_is_1);
  g_test_add_func ("/command-line/decimal-comma", test_a_decimal_comma_changes_no_table);
  g_test_add_func ("/command-line/translated", test_sentences_are_translated);
  g_test_add_func ("/command-line/window", test_without_a_command_the_window_gets_it_all);
  g_test_add_func ("/command-line/no-window", test_a_missing_window_is_said);
  return g_test_run ();
}
