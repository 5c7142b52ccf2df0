/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/load/joint-table.h"
#include "model/json/json-write.h"
#include "model/load/joint-table-text.h"
#include "model/words/csv.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stddef.h>

typedef enum {
  ROW_SCALAR,
  ROW_SHARE, /* a scalar that is only worth a line where it carries something */
  ROW_ANGLE, /* kept in radians */
  ROW_VECTOR,
  ROW_SIZE /* of a vector, its parts not told */
} RowShape;

typedef struct {
  const char *key, *name, *unit, *meaning;
  RowShape shape;
  gsize offset; /* in JointLoads, or in RodStation */
  int decimals;
} RowInfo;

/* Offset and decimals. */
#define IN(member) offsetof (JointLoads, member), 0
#define ROD(member, decimals) offsetof (RodStation, member), decimals

static const RowInfo rows[] = {
  { "contact_force_n", N_ ("Road on tyre"), "N", N_ ("at the contact centre"), ROW_VECTOR,
    IN (load.contact) },
  { "unsprung_weight_n", N_ ("Unsprung weight"), "N", N_ ("at the wheel centre"),
    ROW_VECTOR, IN (load.wheel_centre) },
  { "axial_n", N_ ("Along the strut"), "N",
    N_ ("spring, stop and damper; pushed together is positive"), ROW_SCALAR,
    IN (forces.axial) },
  { "coil_along_strut_n", N_ ("Coil, along the strut"), "N",
    N_ ("its part of the force along the strut"), ROW_SHARE, IN (shares.coil) },
  { "helper_n", N_ ("Helper"), "N", N_ ("its part of the force along the strut"),
    ROW_SHARE, IN (shares.helper) },
  { "bump_stop_n", N_ ("Bump stop"), "N", N_ ("its part of the force along the strut"),
    ROW_SHARE, IN (shares.bump_stop) },
  { "gas_n", N_ ("Gas force"), "N", N_ ("its part of the force along the strut"),
    ROW_SHARE, IN (shares.gas) },
  { "left_over_n", N_ ("Damper or end of travel"), "N",
    N_ ("the rest along the strut: the damper, the droop stop, a coil pressed solid"),
    ROW_SCALAR, IN (left_over) },
  { "coil_n", N_ ("Coil, along its own line"), "N", N_ ("pushed together is positive"),
    ROW_SCALAR, IN (forces.coil) },
  { "side_n", N_ ("Side force on the rod"), "N", N_ ("square to the strut, at the mount"),
    ROW_SIZE, IN (forces.side) },
  { "tie_rod_n", N_ ("Tie rod"), "N", N_ ("a pushed rod is positive"), ROW_SCALAR,
    IN (forces.tie_rod) },
  { "torsion_torque_nmm", N_ ("Torsion bar"), "N·mm", N_ ("against bump is positive"),
    ROW_SCALAR, IN (forces.torque) },
  { "anti_roll_bar_link_n", N_ ("Anti-roll bar's link"), "N",
    N_ ("upward on arm or strut is positive"), ROW_SCALAR, IN (link_force) },
  { "tower_on_body_n", N_ ("Strut on tower"), "N",
    N_ ("upper mount and seat on the body"), ROW_VECTOR, IN (forces.tower) },
  { "ball_joint_on_knuckle_n", N_ ("Ball joint on knuckle"), "N", "", ROW_VECTOR,
    IN (forces.ball_joint) },
  { "tie_rod_on_rack_n", N_ ("Tie rod on rack"), "N", "", ROW_VECTOR,
    IN (forces.tie_rod_on_rack) },
  { "front_pivot_on_body_n", N_ ("Front arm pivot on body"), "N",
    N_ ("square to the hinge axis"), ROW_VECTOR, IN (forces.front_pivot) },
  { "rear_pivot_on_body_n", N_ ("Rear arm pivot on body"), "N",
    N_ ("square to the hinge axis"), ROW_VECTOR, IN (forces.rear_pivot) },
  { "along_hinge_on_body_n", N_ ("Both pivots along the hinge"), "N",
    N_ ("statics do not say how they share it"), ROW_VECTOR, IN (forces.along_hinge) },
  { "anti_roll_bar_on_body_n", N_ ("Anti-roll bar's bearings on body"), "N", "",
    ROW_VECTOR, IN (bar_on_body) },
  { "anchor_moment_on_body_nmm", N_ ("Torsion bar's anchor"), "N·mm",
    N_ ("moment on the body"), ROW_VECTOR, IN (forces.anchor_moment) },
};

guint
joint_rows_count (void)
{
  return G_N_ELEMENTS (rows);
}

JointRow
joint_row (const JointLoads *loads, guint row)
{
  const RowInfo *info = &rows[row];
  const gconstpointer at = (const char *) loads + info->offset;
  JointRow out = { .key = info->key,
                   .name = _ (info->name),
                   .unit = info->unit,
                   .meaning = info->meaning[0] != '\0' ? _ (info->meaning) : "",
                   .is_share = info->shape == ROW_SHARE,
                   .is_vector = info->shape == ROW_VECTOR };

  if (info->shape == ROW_SCALAR || info->shape == ROW_SHARE) {
    out.value = loads->is_solved ? *(const double *) at : (double) NAN;
  } else {
    out.parts = loads->is_solved ? *(const Vec3 *) at : (Vec3){ NAN, NAN, NAN };
    out.value = vec3_length (out.parts);
  }
  return out;
}

gboolean
joint_row_is_idle (const JointRow *row)
{
  return row->is_share && !(fabs (row->value) > 0.0);
}

static const RowInfo rod_rows[] = {
  { "rod_overhang_mm", N_ ("Rod between mount and guide"), "mm",
    N_ ("what sticks out: the longer, the more it bends"), ROW_SCALAR,
    ROD (reach.overhang, 1) },
  { "rod_spacing_mm", N_ ("Rod between guide and piston"), "mm",
    N_ ("what holds it: the longer, the less it jams"), ROW_SCALAR,
    ROD (reach.spacing, 1) },
  { "rod_guide_n", N_ ("Guide on the rod"), "N", N_ ("by the side force on the bent rod"),
    ROW_SCALAR, ROD (bending.guide, 0) },
  { "rod_piston_n", N_ ("Piston in the tube"), "N",
    N_ ("by the side force on the bent rod"), ROW_SCALAR, ROD (bending.piston, 0) },
  { "rod_moment_nmm", N_ ("Bending moment of the rod"), "N·mm", N_ ("at the guide"),
    ROW_SCALAR, ROD (bending.moment, 0) },
  { "rod_stress_n_per_mm2", N_ ("Bending stress of the rod"), "N/mm²",
    N_ ("at the guide; bending alone"), ROW_SCALAR, ROD (bending.stress, 0) },
  { "rod_deflection_mm", N_ ("Deflection at the mount"), "mm",
    N_ ("of the rod's end against the tube's axis"), ROW_SCALAR,
    ROD (bending.deflection, 2) },
  { "rod_camber_deg", N_ ("Camber by bending"), "°",
    N_ ("that the bent rod costs; the wheel's top outward is positive"), ROW_ANGLE,
    ROD (camber_cost, 3) },
  { "rod_toe_in_deg", N_ ("Toe-in by bending"), "°",
    N_ ("that the bent rod costs, of this wheel"), ROW_ANGLE, ROD (toe_cost, 3) },
  { "breakaway_n", N_ ("Friction at the wheel"), "N",
    N_ ("wheel load that it takes until the strut slides"), ROW_SCALAR,
    ROD (breakaway, 0) },
};

guint
rod_rows_count (void)
{
  return G_N_ELEMENTS (rod_rows);
}

JointRow
rod_row (const RodStation *station, guint row)
{
  const RowInfo *info = &rod_rows[row];
  const gconstpointer at = (const char *) station + info->offset;
  const double value = *(const double *) at;

  return (JointRow){ .key = info->key,
                     .name = _ (info->name),
                     .unit = info->unit,
                     .meaning = _ (info->meaning),
                     .decimals = info->decimals,
                     .value = info->shape == ROW_ANGLE ? value * 180.0 / G_PI : value };
}

guint
joint_table_rows (const JointTable *table)
{
  return joint_rows_count () + (table->rod != NULL ? rod_rows_count () : 0);
}

JointRow
joint_table_row (const JointTable *table, guint row)
{
  const guint n = joint_rows_count ();

  return row < n ? joint_row (table->loads, row) : rod_row (table->rod, row - n);
}

static const char *
mode_key (SpringMode mode)
{
  return mode == SPRING_COIL_ONLY  ? "coil"
         : mode == SPRING_BAR_ONLY ? "torsion"
                                   : "as-set";
}

static void
append_csv_number (GString *text, double value)
{
  g_string_append_c (text, ',');
  csv_append_number (text, value);
}

static void
write_csv (const JointTable *table, GString *text)
{
  g_string_append (text, "quantity,unit,value,x,y,z\r\n");
  for (guint i = 0; i < joint_table_rows (table); i++) {
    const JointRow row = joint_table_row (table, i);

    g_string_append_printf (text, "%s,%s", row.key, row.unit);
    append_csv_number (text, row.value);
    append_csv_number (text, row.is_vector ? row.parts.x : (double) NAN);
    append_csv_number (text, row.is_vector ? row.parts.y : (double) NAN);
    append_csv_number (text, row.is_vector ? row.parts.z : (double) NAN);
    g_string_append (text, "\r\n");
  }
}

static void
write_json_row (const JointRow *row, GString *text)
{
  g_string_append_printf (text, ",\n  \"%s\": ", row->key);
  if (!row->is_vector) {
    json_write_number (text, row->value);
    return;
  }
  g_string_append_c (text, '[');
  json_write_number (text, row->parts.x);
  g_string_append (text, ", ");
  json_write_number (text, row->parts.y);
  g_string_append (text, ", ");
  json_write_number (text, row->parts.z);
  g_string_append_c (text, ']');
}

static void
write_json (const JointTable *table, GString *text)
{
  const SpringStudy *study = table->study;

  g_string_append (text, "{\n  \"car\": ");
  json_write_string (text, study->car->name);
  g_string_append (text, ",\n  \"setup\": ");
  json_write_string (text, car_setup (study->car, table->setup)->name);
  g_string_append (text, ",\n  \"case\": ");
  if (table->load_case != NULL)
    json_write_string (text, table->load_case->name);
  else
    g_string_append (text, "null");
  g_string_append_printf (text, ",\n  \"spring\": \"%s\",\n  \"wheel_travel_mm\": ",
                          mode_key (table->mode));
  json_write_number (text, table->loads->travel);
  for (guint i = 0; i < joint_table_rows (table); i++) {
    const JointRow row = joint_table_row (table, i);

    write_json_row (&row, text);
  }
  g_string_append (text, "\n}\n");
}

void
joint_table_write (const JointTable *table, TableFormat format, GString *text)
{
  switch (format) {
  case TABLE_TEXT:
    joint_table_write_text (table, text);
    break;
  case TABLE_CSV:
    write_csv (table, text);
    break;
  case TABLE_JSON:
    write_json (table, text);
    break;
  }
}
