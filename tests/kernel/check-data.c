/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "check-data.h"

/* Computed independently: set M, a corner in space, and set P, a flat one. */
const MeasuredCorner set_m = {
  .at = { [POINT_ARM_FRONT_PIVOT] = { 10, 380, 200 },
          [POINT_ARM_REAR_PIVOT] = { -300, 395, 210 },
          [POINT_BALL_JOINT] = { 5, 700, 185 },
          [POINT_UPPER_MOUNT] = { -35, 575, 835 },
          [POINT_STRUT_FOOT] = { -12, 640, 430 },
          [POINT_TIE_ROD_OUTER] = { -130, 690, 240 },
          [POINT_TIE_ROD_INNER] = { -145, 345, 251 },
          [POINT_WHEEL_CENTRE] = { 0, 740, 300 } },
  .camber = RADIANS (-0.5),
  .toe_in = RADIANS (0.1),
  .loaded_radius = 300,
  .dive_lever = 0.65 * 2600 / 540,
};

const MeasuredCorner set_p = {
  .at = { [POINT_ARM_FRONT_PIVOT] = { 100, 380, 200 },
          [POINT_ARM_REAR_PIVOT] = { -200, 380, 200 },
          [POINT_BALL_JOINT] = { 0, 700, 185 },
          [POINT_UPPER_MOUNT] = { 0, 575, 835 },
          [POINT_STRUT_FOOT] = { 0, 656.25, 412.5 },
          [POINT_TIE_ROD_OUTER] = { -130, 700, 185 },
          [POINT_TIE_ROD_INNER] = { -130, 380, 200 },
          [POINT_WHEEL_CENTRE] = { 0, 740, 300 } },
  .loaded_radius = 300,
};

/* Computed independently, by raw constraints in a root finder with central differences.
 */
const MeasuredCorner worked_set = {
  .at = { [POINT_ARM_FRONT_PIVOT] = { 5, 345, 205 },
          [POINT_ARM_REAR_PIVOT] = { -290, 365, 215 },
          [POINT_BALL_JOINT] = { -5, 655, 190 },
          [POINT_UPPER_MOUNT] = { -35, 535, 770 },
          [POINT_STRUT_FOOT] = { -8, 600, 330 },
          [POINT_TIE_ROD_OUTER] = { -130, 640, 225 },
          [POINT_TIE_ROD_INNER] = { -140, 310, 240 },
          [POINT_WHEEL_CENTRE] = { 0, 700, 270 } },
  .camber = RADIANS (-0.5),
  .toe_in = RADIANS (0.05),
  .loaded_radius = 270,
};

static void
read_row (CheckTable *table, const char *line)
{
  g_auto (GStrv) cells = g_strsplit (line, ",", -1);

  g_assert_cmpuint (g_strv_length (cells), ==, table->names->len);
  for (guint i = 0; cells[i] != NULL; i++) {
    char *end;
    double number = g_ascii_strtod (cells[i], &end);

    if (end == cells[i])
      number = NAN;
    g_array_append_val (table->cells, number);
  }
  table->n_rows++;
}

CheckTable *
check_table_read (const char *file)
{
  g_autofree char *path =
      g_test_build_filename (G_TEST_DIST, "data", "check", file, NULL);
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  CheckTable *table = g_new0 (CheckTable, 1);

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);

  g_auto (GStrv) lines = g_strsplit (g_strstrip (text), "\n", -1);
  g_auto (GStrv) names = g_strsplit (g_strstrip (lines[0]), ",", -1);

  table->names = g_ptr_array_new_with_free_func (g_free);
  table->cells = g_array_new (FALSE, FALSE, sizeof (double));
  for (guint i = 0; names[i] != NULL; i++)
    g_ptr_array_add (table->names, g_strdup (names[i]));
  for (guint i = 1; lines[i] != NULL; i++)
    read_row (table, lines[i]);
  g_assert_cmpuint (table->n_rows, >, 0);
  return table;
}

double
check_table_get (const CheckTable *table, guint row, const char *name)
{
  guint column;

  if (!g_ptr_array_find_with_equal_func (table->names, name, g_str_equal, &column))
    g_error ("no column %s", name);
  return g_array_index (table->cells, double, row * table->names->len + column);
}

void
check_table_free (CheckTable *table)
{
  g_ptr_array_unref (table->names);
  g_array_unref (table->cells);
  g_free (table);
}

Corner
check_assemble (const MeasuredCorner *measured, Adjustment adjustment)
{
  Corner corner;

  g_assert_cmpint (corner_assemble (measured, &adjustment, &corner).status, ==,
                   CORNER_OK);
  return corner;
}

Corner
check_assemble_moved (const MeasuredCorner *measured,
                      double inboard,
                      double rearward,
                      double up)
{
  return check_assemble (measured, (Adjustment){ .mount = { inboard, rearward, up } });
}

Measures
check_solve (const Corner *corner, double travel, double rack)
{
  Station station;

  g_assert_cmpint (station_solve (corner, travel, rack, &station), ==, POSE_OK);
  return station.measures;
}

Station
check_solve_at_contact (const Corner *corner, double travel)
{
  const double home = check_solve (corner, 0.0, 0.0).contact.z;
  double centre = travel;
  Station s;

  for (int i = 0; i < 20; i++) {
    g_assert_cmpint (station_solve (corner, centre, 0.0, &s), ==, POSE_OK);
    centre += home + travel - s.measures.contact.z;
  }
  check_near ("contact", travel, s.measures.contact.z, home + travel, 1e-9);
  return s;
}

double
check_shown (const Measures *measures, Quantity quantity)
{
  const double value = measures->value[quantity];

  switch (quantity_dimension (quantity)) {
  case DIMENSION_ANGLE:
    return DEGREES (value);
  case DIMENSION_ANGLE_PER_LENGTH:
    return quantity == QUANTITY_ARM_RATIO ? value : DEGREES (value);
  default:
    return value;
  }
}

void
check_near (
    const char *what, double place, double value, double expected, double tolerance)
{
  /* a NAN on either side fails too */
  if (!(fabs (value - expected) <= tolerance))
    g_error ("%s at %g: %.9g, expected %.9g within %g", what, place, value, expected,
             tolerance);
}

void
check_column (
    const CheckTable *table, guint row, const char *name, double value, double last_digit)
{
  const double expected = check_table_get (table, row, name);
  const double place = g_array_index (table->cells, double, row * table->names->len);

  check_near (name, place, value, expected, fmax (1e-6 * fabs (expected), last_digit));
}
