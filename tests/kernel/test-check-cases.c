/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The kernel against corners in space that were solved outside the project: set M and the
 * worked set. Computed independently: raw constraints in a root finder, and a closed form
 * in 30-digit arithmetic, which agree to 1e-12 mm. */

#include "check-data.h"

#include "kernel/construction.h"

#include <json-glib/json-glib.h>

#define LAST_OF_7                                                                        \
  1e-7 /* the tables of set M have seven decimals; one unit of the last                  \
        */
#define LAST_OF_6 1e-6

typedef struct {
  const char *column;
  Quantity quantity;
} Column;

static const Column set_m_columns[] = {
  { "camber_deg", QUANTITY_CAMBER },
  { "camber_iso_epsV_deg", QUANTITY_CAMBER_ISO },
  { "toe_in_deg", QUANTITY_TOE_IN },
  { "caster_deg", QUANTITY_CASTER },
  { "sai_deg", QUANTITY_SAI },
  { "caster_trail_mm", QUANTITY_TRAIL },
  { "scrub_radius_mm", QUANTITY_SCRUB_RADIUS },
  { "trail_tyre_axes_mm", QUANTITY_TRAIL_IN_TYRE },
  { "scrub_tyre_axes_mm", QUANTITY_SCRUB_IN_TYRE },
  { "castor_offset_wheel_centre_mm", QUANTITY_TRAIL_AT_CENTRE },
  { "steer_axis_offset_wheel_centre_mm", QUANTITY_SCRUB_AT_CENTRE },
  { "half_track_change_mm", QUANTITY_HALF_TRACK_CHANGE },
  { "wheelbase_change_mm", QUANTITY_WHEELBASE_CHANGE },
  { "strut_length_SU_mm", QUANTITY_STRUT_LENGTH },
  { "strut_ratio", QUANTITY_STRUT_RATIO },
  { "camber_gain_deg_per_mm", QUANTITY_CAMBER_GAIN },
  { "bump_steer_deg_per_mm", QUANTITY_BUMP_STEER },
  { "roll_centre_height_mm", QUANTITY_ROLL_CENTRE_HEIGHT },
  { "side_view_slope", QUANTITY_SIDE_VIEW_SLOPE },
  { "arm_ratio_rad_per_mm", QUANTITY_ARM_RATIO },
};

static void
test_set_m_sweep (void)
{
  g_autoptr (CheckTable) table = check_table_read ("set-m-sweep.csv");
  const Corner corner = check_assemble (&set_m, (Adjustment){ 0 });
  const guint n = table->n_rows;
  g_autofree Station *stations = g_new (Station, n);
  const SweepRange range = { check_table_get (table, 0, "wheel_travel_mm"),
                             check_table_get (table, n - 1, "wheel_travel_mm"), n };

  g_assert_cmpuint (sweep_travel (&corner, range, 0.0, stations), ==, n);
  for (guint i = 0; i < n; i++) {
    const Measures *m = &stations[i].measures;

    g_assert_cmpfloat (stations[i].travel, ==,
                       check_table_get (table, i, "wheel_travel_mm"));
    for (guint c = 0; c < G_N_ELEMENTS (set_m_columns); c++)
      check_column (table, i, set_m_columns[c].column,
                    check_shown (m, set_m_columns[c].quantity), LAST_OF_7);
    check_column (table, i, "arm_angle_rad", m->value[QUANTITY_ARM_ANGLE], LAST_OF_7);
    check_column (table, i, "contact_x_mm", m->contact.x, LAST_OF_7);
    check_column (table, i, "contact_y_mm", m->contact.y, LAST_OF_7);
    check_column (table, i, "contact_z_mm", m->contact.z, LAST_OF_7);
    check_column (table, i, "wheel_centre_y_mm", stations[i].pose.wheel_centre.y,
                  LAST_OF_7);
  }
}

/* The paper construction leaves out the tie rod and so differs from the exact height. */
static void
test_set_m_construction (void)
{
  g_autoptr (CheckTable) table = check_table_read ("set-m-sweep.csv");
  const Corner corner = check_assemble (&set_m, (Adjustment){ 0 });

  for (guint i = 0; i < table->n_rows; i++) {
    Station s;
    const double travel = check_table_get (table, i, "wheel_travel_mm");

    g_assert_cmpint (station_solve (&corner, travel, 0.0, &s), ==, POSE_OK);
    const Construction c = construction_draw (&corner, &s.pose, s.measures.contact);
    check_column (table, i, "roll_centre_height_construction_mm", c.roll_centre_height,
                  LAST_OF_7);
    check_column (table, i, "fv_ic_construction_y_mm", c.pole.y, LAST_OF_7);
    check_column (table, i, "fv_ic_construction_z_mm", c.pole.z, LAST_OF_7);
  }
}

/* Computed independently. Reading the arm's line at B instead of at the wheel's x would
 * give 76.82 or 92.24 here: a band of 0.01 mm tells them apart. */
static void
test_set_m_traps (void)
{
  const Corner corner = check_assemble (&set_m, (Adjustment){ 0 });
  Station s;

  g_assert_cmpint (station_solve (&corner, 0.0, 0.0, &s), ==, POSE_OK);
  const Construction c = construction_draw (&corner, &s.pose, s.measures.contact);
  check_near ("construction", 0, c.roll_centre_height, 76.75, 0.005);
  check_near ("roll centre", 0, s.measures.value[QUANTITY_ROLL_CENTRE_HEIGHT], 76.66,
              0.005);
  check_near ("locked brake", 0, s.measures.value[QUANTITY_SIDE_VIEW_SLOPE], 0.05908,
              5e-6);
  check_near ("contact height", 0, s.measures.contact.z, 0.0114, 5e-5);
  /* case AD5, worked with the slope rounded to 0.0590772: 5e-8 of it is 1.6e-5 here */
  check_near ("anti-dive", 0, s.measures.value[QUANTITY_ANTI_DIVE], 18.48898, 1.6e-5);
  /* the instant centre goes through infinity between 70 and 71 mm, its inverse does not
   */
  const Measures below = check_solve (&corner, 70.0, 0.0);
  const Measures above = check_solve (&corner, 71.0, 0.0);
  g_assert_cmpfloat (below.value[QUANTITY_CAMBER_GAIN], <, 0.0);
  g_assert_cmpfloat (above.value[QUANTITY_CAMBER_GAIN], >, 0.0);
  g_assert_cmpfloat (fabs (above.value[QUANTITY_SWING_ARM_CURVATURE]), <, 1e-5);
  g_assert_cmpfloat (fabs (below.value[QUANTITY_SWING_ARM_CURVATURE]), <, 1e-5);
}

static JsonArray *
read_section (JsonParser *parser, const char *section)
{
  g_autofree char *path =
      g_test_build_filename (G_TEST_DIST, "data", "check", "set-m-3d.json", NULL);
  g_autoptr (GError) error = NULL;

  json_parser_load_from_file (parser, path, &error);
  g_assert_no_error (error);
  return json_object_get_array_member (json_node_get_object (
                                           json_parser_get_root (parser)),
                                       section);
}

static void
check_row (JsonObject *row, const Measures *m, double last_digit)
{
  const double place =
      json_object_get_double_member_with_default (row, "wheel_travel_mm", 0.0);

  for (guint c = 0; c < G_N_ELEMENTS (set_m_columns); c++) {
    const char *name = set_m_columns[c].column;

    if (!json_object_has_member (row, name))
      continue;
    const double expected = json_object_get_double_member (row, name);
    check_near (name, place, check_shown (m, set_m_columns[c].quantity), expected,
                fmax (1e-6 * fabs (expected), last_digit));
  }
}

static void
test_set_m_with_rack (void)
{
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonArray *rows = read_section (parser, "sweep_with_rack_y_20mm");
  const Corner corner = check_assemble (&set_m, (Adjustment){ 0 });

  g_assert_cmpuint (json_array_get_length (rows), ==, 3);
  for (guint i = 0; i < 3; i++) {
    JsonObject *row = json_array_get_object_element (rows, i);
    const double travel = json_object_get_double_member (row, "wheel_travel_mm");
    const Measures m = check_solve (&corner, travel, 20.0);

    check_row (row, &m, LAST_OF_7);
  }
}

static void
test_set_m_mount_moves (void)
{
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonArray *rows = read_section (parser, "upper_mount_moves_at_zero_travel");

  g_assert_cmpuint (json_array_get_length (rows), ==, 4);
  for (guint i = 0; i < 4; i++) {
    JsonObject *row = json_array_get_object_element (rows, i);
    JsonArray *move = json_object_get_array_member (row, "dU");
    const Corner corner =
        check_assemble_moved (&set_m, -json_array_get_double_element (move, 1),
                              -json_array_get_double_element (move, 0),
                              json_array_get_double_element (move, 2));
    const Measures m = check_solve (&corner, 0.0, 0.0);

    check_row (row, &m, LAST_OF_6);
  }
}

/* The strut's length held, so the knuckle turns rigidly about the steering axis. */
static void
test_set_m_steering (void)
{
  g_autoptr (CheckTable) table = check_table_read ("set-m-steer.csv");
  const Corner corner = check_assemble (&set_m, (Adjustment){ 0 });
  const guint n = table->n_rows;
  g_autofree Station *stations = g_new (Station, n);
  const SweepRange racks = { -75.0, 75.0, n };

  g_assert_cmpuint (sweep_rack (&corner, 0.0, racks, stations), ==, n);
  for (guint i = 0; i < n; i++) {
    const Measures *m = &stations[i].measures;

    g_assert_cmpfloat (stations[i].rack, ==, check_table_get (table, i, "rack_y_mm"));
    check_column (table, i, "steer_left_turn_positive_deg",
                  -check_shown (m, QUANTITY_TOE_IN), LAST_OF_6);
    check_column (table, i, "camber_deg", check_shown (m, QUANTITY_CAMBER), LAST_OF_6);
    check_column (table, i, "wheel_centre_z_mm", stations[i].pose.wheel_centre.z,
                  LAST_OF_6);
    check_column (table, i, "contact_z_mm", m->contact.z, LAST_OF_6);
    check_column (table, i, "trail_tyre_axes_mm", m->value[QUANTITY_TRAIL_IN_TYRE],
                  LAST_OF_6);
    check_column (table, i, "scrub_tyre_axes_mm", m->value[QUANTITY_SCRUB_IN_TYRE],
                  LAST_OF_6);
    g_assert_cmpfloat_with_epsilon (m->value[QUANTITY_STRUT_LENGTH],
                                    stations[n / 2].measures.value[QUANTITY_STRUT_LENGTH],
                                    1e-10);
  }
  check_near ("ISO camber", -75.0,
              check_shown (&stations[0].measures, QUANTITY_CAMBER_ISO), 4.5464, 5e-5);
}

typedef struct {
  Quantity quantity;
  double half_digit; /* half a unit of the last printed one */
  double at[5];      /* z = −80 … 80 */
} WorkedColumn;

static const WorkedColumn worked_columns[] = {
  { QUANTITY_CAMBER, 5e-4, { 1.671, 0.423, -0.500, -1.048, -1.120 } },
  { QUANTITY_TOE_IN, 5e-4, { 0.210, 0.034, 0.050, 0.210, 0.485 } },
  { QUANTITY_CASTER, 5e-4, { 2.297, 2.623, 2.961, 3.315, 3.688 } },
  { QUANTITY_SAI, 5e-4, { 9.141, 10.568, 11.689, 12.461, 12.794 } },
  { QUANTITY_SCRUB_RADIUS, 5e-3, { 9.26, 8.70, 8.05, 7.28, 6.37 } },
  { QUANTITY_TRAIL, 5e-3, { 1.56, 3.25, 4.82, 6.32, 7.81 } },
  { QUANTITY_ROLL_CENTRE_HEIGHT, 5e-3, { 291.37, 185.07, 77.58, -35.93, -161.58 } },
  { QUANTITY_HALF_TRACK_CHANGE, 5e-3, { -21.35, -7.54, 0.00, 1.23, -4.32 } },
  { QUANTITY_STRUT_RATIO, 5e-5, { 0.9068, 0.9268, 0.9528, 0.9851, 1.0247 } },
  { QUANTITY_STRUT_LENGTH, 5e-3, { 519.82, 483.17, 445.59, 406.86, 366.69 } },
};

static void
test_worked_set (void)
{
  const Corner corner = check_assemble (&worked_set, (Adjustment){ 0 });
  Station stations[5];

  g_assert_cmpuint (sweep_travel (&corner, (SweepRange){ -80, 80, 5 }, 0.0, stations), ==,
                    5);
  for (guint c = 0; c < G_N_ELEMENTS (worked_columns); c++)
    for (guint i = 0; i < 5; i++)
      check_near ("worked set", stations[i].travel,
                  check_shown (&stations[i].measures, worked_columns[c].quantity),
                  worked_columns[c].at[i], worked_columns[c].half_digit * 1.0001);
}

static void
test_worked_set_mount_moves (void)
{
  const Corner inboard = check_assemble_moved (&worked_set, 15, 0, 0);
  const Corner rearward = check_assemble_moved (&worked_set, 0, 15, 0);
  const Measures in = check_solve (&inboard, 0, 0), back = check_solve (&rearward, 0, 0);

  check_near ("camber", 0, check_shown (&in, QUANTITY_CAMBER), -1.928, 5e-4);
  check_near ("toe-in", 0, check_shown (&in, QUANTITY_TOE_IN), 0.452, 5e-4);
  check_near ("caster", 0, check_shown (&in, QUANTITY_CASTER), 2.951, 5e-4);
  check_near ("SAI", 0, check_shown (&in, QUANTITY_SAI), 13.074, 5e-4);
  check_near ("scrub", 0, check_shown (&in, QUANTITY_SCRUB_RADIUS), 8.20, 5e-3);
  check_near ("RC", 0, check_shown (&in, QUANTITY_ROLL_CENTRE_HEIGHT), 85.68, 5e-3);
  check_near ("camber", 0, check_shown (&back, QUANTITY_CAMBER), -0.480, 5e-4);
  check_near ("toe-in", 0, check_shown (&back, QUANTITY_TOE_IN), -0.032, 5e-4);
  check_near ("caster", 0, check_shown (&back, QUANTITY_CASTER), 4.435, 5e-4);
  check_near ("RC", 0, check_shown (&back, QUANTITY_ROLL_CENTRE_HEIGHT), 78.44, 5e-3);
  check_near ("trail", 0, check_shown (&back, QUANTITY_TRAIL), 11.87, 5e-3);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/kernel/set-m/sweep", test_set_m_sweep);
  g_test_add_func ("/kernel/set-m/construction", test_set_m_construction);
  g_test_add_func ("/kernel/set-m/traps", test_set_m_traps);
  g_test_add_func ("/kernel/set-m/with-rack", test_set_m_with_rack);
  g_test_add_func ("/kernel/set-m/mount-moves", test_set_m_mount_moves);
  g_test_add_func ("/kernel/set-m/steering", test_set_m_steering);
  g_test_add_func ("/kernel/worked-set/sweep", test_worked_set);
  g_test_add_func ("/kernel/worked-set/mount-moves", test_worked_set_mount_moves);
  return g_test_run ();
}
