/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `strutwright loads` and `strutwright springs`, started as a user or a script would. The
 * figures are those of sets that were computed outside the project: raw equations of
 * balance in a general-purpose solver. */
#include "car-fixture.h"
#include "program-run.h"

#include "model/car/car-json.h"
#include "model/json/json-strict.h"

#include <math.h>
#include <string.h>

static JsonObject *
parse (const char *text, JsonNode **root)
{
  g_autoptr (GError) error = NULL;

  *root = json_strict_parse (text, strlen (text), &error);
  g_assert_no_error (error);
  return json_node_get_object (*root);
}

static double
number_in (JsonObject *object, const char *name)
{
  JsonNode *node = json_object_get_member (object, name);

  g_assert_nonnull (node);
  return JSON_NODE_HOLDS_NULL (node) ? (double) NAN : json_node_get_double (node);
}

static double
part_in (JsonObject *object, const char *name, guint i)
{
  return json_array_get_double_element (json_object_get_array_member (object, name), i);
}

/* A figure that was printed with some digits, to half a unit of its last one. */
static void
near (double value, double printed, double half_a_unit)
{
  g_assert_cmpfloat_with_epsilon (value, printed, half_a_unit * 1.0001);
}

typedef struct {
  const char *car, *travel, *force, *spring;
  double axial, side, tie_rod, torque, tower[3];
  double half, half_torque; /* units of the last digit */
} Printed;

static void
check_printed (const Printed *p)
{
  g_autofree char *car = program_car ("good", p->car);
  g_auto (Outcome) o = RUN ("loads", car, "--travel", p->travel, "--force", p->force,
                            "--spring", p->spring, "--format", "json");
  g_autoptr (JsonNode) root = NULL;

  g_assert_cmpstr (o.err, ==, "");
  g_assert_cmpint (o.status, ==, 0);
  JsonObject *loads = parse (o.out, &root);
  near (number_in (loads, "axial_n"), p->axial, p->half);
  near (number_in (loads, "side_n"), p->side, p->half);
  near (number_in (loads, "tie_rod_n"), p->tie_rod, p->half);
  near (number_in (loads, "torsion_torque_nmm"), p->torque, p->half_torque);
  for (guint i = 0; i < 3; i++)
    near (part_in (loads, "tower_on_body_n", i), p->tower[i], 0.05);
  g_assert_cmpstr (json_object_get_string_member (loads, "spring"), ==, p->spring);
}

/* Set M, four digits, and the worked set as printed. */
static void
test_loads_of_sets_computed_outside (void)
{
  static const Printed printed[] = {
    { "set-m",
      "0",
      "0,0,3500",
      "coil",
      3654.5187,
      346.2723,
      -95.999,
      0.0,
      { -191.2, -920.0, 3548.6 },
      5e-4,
      5e-4 },
    { "set-m",
      "0",
      "0,0,3500",
      "torsion",
      0.0,
      235.2776,
      -95.999,
      1131202.494,
      { 29.4, -230.7, -35.4 },
      5e-4,
      5e-4 },
    { "set-m",
      "20",
      "-1500,-2500,5200",
      "coil",
      5193.9815,
      508.3857,
      251.5852,
      0.0,
      { 151.8, -634.7, 5177.8 },
      5e-5,
      5e-4 },
    { "set-m",
      "20",
      "-1500,-2500,5200",
      "torsion",
      0.0,
      616.9739,
      251.5852,
      1626969.066,
      { 479.9, 376.9, 91.2 },
      5e-5,
      5e-4 },
    { "worked-set",
      "0",
      "0,0,2600",
      "coil",
      2731,
      366.6,
      -30.2,
      0.0,
      { -158.9, -761.0, 2643.5 },
      0.5,
      0.5 },
    { "worked-set",
      "0",
      "0,0,2600",
      "torsion",
      0.0,
      210.9,
      -30.2,
      815139,
      { -20.5, -207.5, -31.9 },
      0.05,
      0.5 },
    { "worked-set",
      "0",
      "0,-2000,3800",
      "coil",
      3759.3,
      124.9,
      35.1,
      0.0,
      { -226.0, -424.9, 3730.5 },
      0.05,
      0.5 },
    { "worked-set",
      "0",
      "0,-2000,3800",
      "torsion",
      0.0,
      342.3,
      35.1,
      1122093,
      { -35.5, 337.1, 47.6 },
      0.05,
      0.5 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (printed); i++)
    check_printed (&printed[i]);
}

/* Set P: a coil of 25 N/mm carrying 3500 N, and a bar of 20 mm by 600 mm. */
static void
test_rates_of_the_flat_set (void)
{
  static const struct {
    const char *setup;
    double rate;
  } expected[] = { { "Coil", 25.23063 }, { "Bar", 19.79020 } };
  g_autofree char *car = program_car ("good", "set-p-sprung");

  for (gsize i = 0; i < G_N_ELEMENTS (expected); i++) {
    g_auto (Outcome) o = RUN ("springs", car, "--setup", expected[i].setup, "--format",
                              "json", "--step", "40");
    g_autoptr (JsonNode) root = NULL;

    g_assert_cmpstr (o.err, ==, "");
    JsonObject *springs = parse (o.out, &root);
    near (number_in (springs, "corner_weight_n"), 3500.0, 1e-8);
    near (number_in (springs, "standing_travel_mm"), 0.0, 1e-4);
    near (number_in (springs, "wheel_rate_n_per_mm"), expected[i].rate, 5e-6);
    g_assert_cmpuint (json_array_get_length (
                          json_object_get_array_member (springs, "stations")),
                      ==, 5);
  }
}

static void
test_tables_agree (void)
{
  g_autofree char *car = program_car ("good", "set-p-sprung");
  g_auto (Outcome) csv = RUN ("springs", car, "--format", "csv");
  g_auto (Outcome) text = RUN ("springs", car);
  g_auto (Outcome) loads = RUN ("loads", car);

  g_assert_cmpstr (csv.err, ==, "");
  g_assert_cmpuint (count_lines (csv.out), ==, 162);
  g_assert_true (g_str_has_prefix (csv.out, "wheel_travel_mm,wheel_load_n,"));
  g_assert_nonnull (strstr (text.out, "25.23"));
  g_assert_nonnull (strstr (text.out, "not a proof of strength"));
  g_assert_cmpint (loads.status, ==, 0);
  g_assert_nonnull (strstr (loads.out, "Strut on tower"));
  g_assert_nonnull (strstr (loads.out, "not a proof of strength"));
}

/* The overhanging beam of Shigley's Mechanical Engineering Design, Table A-9: over the
 * guide with the load F at the end of the overhang a, the piston at l behind it, the
 * reactions are F (a + l)/l and F a/l, the moment F a, the deflection
 * F a² (a + l)/(3 E I); bending stress 32 M/(π d³). The Dunnock's rod is 20 mm of steel
 * of 207 GPa. */
static void
test_the_rod_is_a_beam (void)
{
  g_autofree char *car =
      g_test_build_filename (G_TEST_DIST, "..", "data", "dunnock.swcar", NULL);
  g_auto (Outcome) o =
              RUN ("loads", car, "--case", "Fast bend, outer wheel", "--format", "json");
  g_autoptr (JsonNode) root = NULL;
  const double d = 20.0;

  g_assert_cmpstr (o.err, ==, "");
  JsonObject *loads = parse (o.out, &root);
  const double a = number_in (loads, "rod_overhang_mm"),
               l = number_in (loads, "rod_spacing_mm"),
               guide = number_in (loads, "rod_guide_n"),
               piston = number_in (loads, "rod_piston_n"),
               moment = number_in (loads, "rod_moment_nmm"),
               bent = number_in (loads, "rod_deflection_mm");
  const double force = guide - piston;

  /* bending hardly changes the force that bends, and less the strut's length, of which
   * the reach that is printed is the straight one's */
  near (force, number_in (loads, "side_n"), 0.02 * force);
  near (guide, force * (a + l) / l, 1e-3 * guide);
  near (moment, force * a, 1e-3 * moment);
  near (number_in (loads, "rod_stress_n_per_mm2"), 32.0 * moment / (G_PI * d * d * d),
        1e-6);
  near (bent, force * a * a * (a + l) / (3.0 * 207000.0 * G_PI * d * d * d * d / 64.0),
        1e-3 * bent);
  /* the mount's end moves some 530 mm above the ball joint in this much bump, square to
   * the strut */
  const double camber = number_in (loads, "rod_camber_deg") * G_PI / 180.0;
  g_assert_cmpfloat (fabs (camber), >, 0.2 * bent / 530.0);
  g_assert_cmpfloat (fabs (camber), <, 1.1 * bent / 530.0);
  g_assert_cmpfloat (fabs (number_in (loads, "rod_toe_in_deg")), >, 0.0);
}

/* Rows in every format where a rod is given, and nothing of one where none is. */
static void
test_rod_rows_are_where_a_rod_is (void)
{
  static const char *const formats[] = { "text", "csv", "json" };
  static const char *const words[] = { "Bending moment of the rod", "\nrod_moment_nmm,",
                                       "\"rod_moment_nmm\"" };
  g_autofree char *with_rod =
      g_test_build_filename (G_TEST_DIST, "..", "data", "dunnock.swcar", NULL);
  g_autofree char *without = program_car ("good", "set-p-sprung");

  for (gsize i = 0; i < G_N_ELEMENTS (formats); i++) {
    g_auto (Outcome) some = RUN ("loads", with_rod, "--format", formats[i]);
    g_auto (Outcome) none = RUN ("loads", without, "--format", formats[i]);

    g_assert_nonnull (strstr (some.out, words[i]));
    g_assert_null (strstr (none.out, words[i]));
    g_assert_null (strstr (none.out, "rod_toe"));
  }
}

static void
test_a_wheel_that_lifts_is_remarked (void)
{
  g_autofree char *car = program_car ("good", "set-p-sprung");
  g_auto (Outcome) down = RUN ("loads", car, "--spring", "coil", "--force", "0,0,-200");
  g_auto (Outcome) up = RUN ("loads", car, "--spring", "coil", "--force", "0,0,200");

  g_assert_nonnull (strstr (down.out, "The wheel load is negative"));
  g_assert_null (strstr (up.out, "The wheel load is negative"));
  g_assert_nonnull (strstr (up.out, "By a "));
}

static void
test_wrong_usage_is_2 (void)
{
  g_autofree char *car = program_car ("good", "set-p-sprung");

  program_check_usage (RUN ("loads", car, "--force", "1,2"),
                       "strutwright: --force is three numbers with commas between them, "
                       "forward, left and up in N, as 0,-2000,3800; not “1,2”.\n");
  program_check_usage (RUN ("loads", car, "--force", "0,0,1", "--case", "Standing"),
                       "strutwright: Give --force or --case, not both.\n");
  program_check_usage (RUN ("loads", car, "--spring", "leaf"),
                       "strutwright: --spring is coil, torsion or as-set, not “leaf”.\n");
  program_check_usage (RUN ("springs", car, "--format", "xml"),
                       "strutwright: --format is text, csv or json, not “xml”.\n");
  program_check_usage (RUN ("springs", car, "--step", "0"),
                       "strutwright: The step must be above zero.\n");
}

/* The bar wound up by 90° pushes the corner to the end of its droop: `check` says so of
 * that setup, and the car stays sound. */
static void
test_check_names_a_setup_that_does_not_stand (void)
{
  g_autofree char *path = program_car ("good", "set-p-sprung");
  g_autofree char *folder = fixture_folder_new ();
  g_autofree char *wound = g_build_filename (folder, "wound.swcar", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path), to = g_file_new_for_path (wound);
  g_autoptr (Car) car = car_load (file, NULL);

  g_assert_nonnull (car);
  g_auto (Outcome) before = RUN ("check", path);
  car_setup (car, 1)->springs.bar.clamp_angle_deg = 90.0;
  g_assert_true (car_save (car, to, NULL));
  g_auto (Outcome) after = RUN ("check", wound);
  g_assert_null (strstr (before.out, "springs: "));
  g_assert_cmpint (after.status, ==, 0);
  g_assert_nonnull (strstr (after.out, "springs: “Bar”: These springs push the corner up "
                                       "to the end of droop"));
  fixture_folder_remove (g_steal_pointer (&folder));
}

static void
test_a_car_without_springs (void)
{
  g_autofree char *car = program_car ("good", "worked-set");
  g_auto (Outcome) springs = RUN ("springs", car);
  g_auto (Outcome) loads = RUN ("loads", car, "--force", "0,0,2600");

  g_assert_cmpint (springs.status, ==, 0);
  g_assert_cmpstr (springs.err, ==,
                   "strutwright: Warning: the car file gives no spring for the setup "
                   "“As measured”.\n");
  g_assert_cmpint (loads.status, ==, 1);
  g_assert_cmpstr (loads.err, ==,
                   "strutwright: The car file gives no spring for this setup: say "
                   "--spring coil or --spring torsion.\n");
}

static void
test_a_decimal_comma_changes_no_number (void)
{
  g_auto (GStrv) comma = program_comma_environment ();
  g_autofree char *car = program_car ("good", "set-p-sprung");

  if (comma == NULL)
    return;
  const char *const springs[] = { PROGRAM, "springs", car, "--format", "json", NULL };
  const char *const loads[] = { PROGRAM, "loads", car, "--format", "csv", NULL };
  g_auto (Outcome) a = program_run (springs);
  g_auto (Outcome) b = program_run_in (comma, springs);
  g_auto (Outcome) c = program_run (loads);
  g_auto (Outcome) d = program_run_in (comma, loads);

  g_assert_cmpstr (a.out, ==, b.out);
  g_assert_cmpstr (c.out, ==, d.out);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/loads/outside", test_loads_of_sets_computed_outside);
  g_test_add_func ("/springs/flat-set", test_rates_of_the_flat_set);
  g_test_add_func ("/springs/tables", test_tables_agree);
  g_test_add_func ("/loads/rod", test_the_rod_is_a_beam);
  g_test_add_func ("/loads/rod-rows", test_rod_rows_are_where_a_rod_is);
  g_test_add_func ("/loads/lifted", test_a_wheel_that_lifts_is_remarked);
  g_test_add_func ("/loads/usage", test_wrong_usage_is_2);
  g_test_add_func ("/check/springs", test_check_names_a_setup_that_does_not_stand);
  g_test_add_func ("/springs/none", test_a_car_without_springs);
  g_test_add_func ("/loads/decimal-comma", test_a_decimal_comma_changes_no_number);
  return g_test_run ();
}
