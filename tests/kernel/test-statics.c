/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Forces in balance against the kernel's velocities: what the contact puts in, spring or
 * torsion bar must take up. The balance of forces knows nothing of velocities, so this
 * holds the kernel's rates against statics alone. */

#include "check-data.h"
#include "random-corner.h"

#include <gsl/gsl_linalg.h>
#include <json-glib/json-glib.h>

typedef enum {
  CARRIED_BY_COIL,   /* on the strut */
  CARRIED_BY_TORSION /* bar on the arm's hinge */
} Carrier;

/* N; N·mm */
typedef struct {
  Vec3 ball;            /* on the knuckle at the ball joint */
  double tie_rod;       /* pushing is positive, as in the strut */
  Vec3 side;            /* on the tube at the mount, square to the strut */
  double axial, torque; /* of the carrier, each positive against bump */
  Vec3 tower;           /* on the body at the mount */
} Loads;

static void
put_force (gsl_matrix *m, size_t column, Vec3 force, Vec3 at)
{
  const Vec3 moment = vec3_cross (at, force);
  const double rows[6] = { force.x, force.y, force.z, moment.x, moment.y, moment.z };

  for (size_t i = 0; i < 6; i++)
    gsl_matrix_set (m, i, column, rows[i]);
}

/* Unknowns: ball joint (3), tie rod, side force (2), and axial force or torque.
 * Equations: forces and moments on knuckle and tube (6), moment of the arm about its
 * hinge (1). Moments are taken about the origin. */
static void
set_up (const Corner *corner, const Pose *p, Carrier carrier, gsl_matrix *m)
{
  const Vec3 B = p->ball_joint, U = corner->upper_mount, u = p->strut_direction;
  const Vec3 rod = vec3_unit (vec3_sub (p->tie_rod_outer, p->tie_rod_inner));
  const Vec3 across = vec3_any_normal (u);
  const Vec3 unit[3] = { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } };
  const Vec3 arm = vec3_sub (B, corner->arm_pivot);

  gsl_matrix_set_zero (m);
  for (size_t i = 0; i < 3; i++) {
    put_force (m, i, unit[i], B);
    /* the arm gets the opposite of what the knuckle gets */
    gsl_matrix_set (m, 6, i, -vec3_dot (corner->hinge_axis, vec3_cross (arm, unit[i])));
  }
  put_force (m, 3, rod, p->tie_rod_outer);
  put_force (m, 4, across, U);
  put_force (m, 5, vec3_cross (u, across), U);
  if (carrier == CARRIED_BY_COIL)
    put_force (m, 6, vec3_scale (u, -1.0), U);
  else
    gsl_matrix_set (m, 6, 6, -1.0);
}

static Loads
read_loads (const Pose *p, Carrier carrier, const gsl_vector *x)
{
  const Vec3 u = p->strut_direction, across = vec3_any_normal (u);
  Loads l = { .ball = { gsl_vector_get (x, 0), gsl_vector_get (x, 1),
                        gsl_vector_get (x, 2) },
              .tie_rod = gsl_vector_get (x, 3),
              .side = vec3_along (vec3_scale (across, gsl_vector_get (x, 4)),
                                  gsl_vector_get (x, 5), vec3_cross (u, across)) };

  if (carrier == CARRIED_BY_COIL)
    l.axial = gsl_vector_get (x, 6);
  else
    l.torque = gsl_vector_get (x, 6);
  l.tower = vec3_sub (vec3_scale (u, l.axial), l.side);
  return l;
}

static Loads
balance (const Corner *corner, const Station *s, Vec3 force, Carrier carrier)
{
  double cells[49], right[7] = { 0 }, unknowns[7];
  gsl_matrix_view m = gsl_matrix_view_array (cells, 7, 7);
  gsl_vector_view b = gsl_vector_view_array (right, 7);
  gsl_vector_view x = gsl_vector_view_array (unknowns, 7);
  gsl_permutation *order = gsl_permutation_alloc (7);
  const Vec3 moment = vec3_cross (s->measures.contact, force);
  int sign;

  set_up (corner, &s->pose, carrier, &m.matrix);
  for (size_t i = 0; i < 3; i++) {
    right[i] = -(i == 0 ? force.x : i == 1 ? force.y : force.z);
    right[3 + i] = -(i == 0 ? moment.x : i == 1 ? moment.y : moment.z);
  }
  gsl_linalg_LU_decomp (&m.matrix, order, &sign);
  gsl_linalg_LU_solve (&m.matrix, order, &b.vector, &x.vector);
  gsl_permutation_free (order);
  return read_loads (&s->pose, carrier, &x.vector);
}

static Vec3
contact_velocity (const Station *s)
{
  const Pose *p = &s->pose;
  const Vec3 r = vec3_sub (s->measures.contact, p->ball_joint);

  return vec3_add (p->ball_velocity, vec3_cross (p->turn_rate, r));
}

/* Power in at the contact equals power taken up, for dθ/dt = 1. */
static void
test_power_balance (void)
{
  Dice dice = { 301 };

  for (int i = 0; i < 400; i++) {
    const RandomCase c = dice_case (&dice);
    const Corner corner = check_assemble (&c.measured, c.adjustment);
    const Vec3 force = { dice_between (&dice, -3000, 3000),
                         dice_between (&dice, -3000, 3000),
                         dice_between (&dice, 1000, 6000) };
    Station s;

    g_assert_cmpint (station_solve (&corner, c.travel, c.rack, &s), ==, POSE_OK);
    const Loads coil = balance (&corner, &s, force, CARRIED_BY_COIL);
    const Loads bar = balance (&corner, &s, force, CARRIED_BY_TORSION);
    const double power = vec3_dot (force, contact_velocity (&s));
    const double squeeze = s.measures.value[QUANTITY_STRUT_RATIO] * s.pose.lift;

    /* N·mm against some 1e6 */
    check_near ("coil", i, coil.axial * squeeze, power, 1e-4);
    check_near ("torsion bar", i, bar.torque, power, 1e-4);
    check_near ("tie rod", i, bar.tie_rod, coil.tie_rod, 1e-6);
  }
}

/* The ratios that the sheet shows say the same: with only a vertical load, the load that
 * the roll centre and the side-view slope add to it takes no power. */
static void
test_roll_centre_and_slope_take_no_power (void)
{
  Dice dice = { 302 };

  for (int i = 0; i < 400; i++) {
    const RandomCase c = dice_case (&dice);
    const Corner corner = check_assemble (&c.measured, c.adjustment);
    Station s;

    g_assert_cmpint (station_solve (&corner, c.travel, c.rack, &s), ==, POSE_OK);
    const double *q = s.measures.value;
    /* along the line from the contact to the roll centre, and along the side-view one */
    const double side = 1000.0,
                 rise = side * q[QUANTITY_ROLL_CENTRE_HEIGHT] / s.measures.contact.y;
    const Loads lateral =
        balance (&corner, &s, (Vec3){ 0, -side, rise }, CARRIED_BY_COIL);
    const Loads braked =
        balance (&corner, &s, (Vec3){ -side, 0, side * q[QUANTITY_SIDE_VIEW_SLOPE] },
                 CARRIED_BY_COIL);

    check_near ("roll centre", i, lateral.axial, 0.0, 1e-6);
    check_near ("anti-dive", i, braked.axial, 0.0, 1e-6);
  }
}

static Vec3
read_vec3 (JsonObject *row, const char *name)
{
  JsonArray *a = json_object_get_array_member (row, name);

  return (Vec3){ json_array_get_double_element (a, 0),
                 json_array_get_double_element (a, 1),
                 json_array_get_double_element (a, 2) };
}

/* Computed independently. */
static void
test_set_m_loads (void)
{
  g_autofree char *path =
      g_test_build_filename (G_TEST_DIST, "data", "check", "set-m-3d.json", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (GError) error = NULL;
  const Corner corner = check_assemble (&set_m, (Adjustment){ 0 });

  json_parser_load_from_file (parser, path, &error);
  g_assert_no_error (error);
  JsonArray *rows =
      json_object_get_array_member (json_node_get_object (json_parser_get_root (parser)),
                                    "loads");
  g_assert_cmpuint (json_array_get_length (rows), ==, 4);
  for (guint i = 0; i < 4; i++) {
    JsonObject *row = json_array_get_object_element (rows, i);
    const bool coil = g_str_equal (json_object_get_string_member (row, "spring"), "coil");
    Station s;

    station_solve (&corner, json_object_get_double_member (row, "wheel_travel_mm"), 0.0,
                   &s);
    const Loads l = balance (&corner, &s, read_vec3 (row, "contact_force_N"),
                             coil ? CARRIED_BY_COIL : CARRIED_BY_TORSION);
    check_near ("axial", i, l.axial, json_object_get_double_member (row, "axial_N"),
                5e-5);
    check_near ("side", i, vec3_length (l.side),
                json_object_get_double_member (row, "side_N"), 5e-5);
    check_near ("tie rod", i, l.tie_rod, json_object_get_double_member (row, "tie_rod_N"),
                5.1e-5);
    check_near ("torque", i, l.torque,
                json_object_get_double_member (row, "torsion_torque_Nmm"), 5e-4);
    g_assert_cmpfloat (vec3_distance (l.tower, read_vec3 (row, "tower_on_body_N")), <,
                       0.05 * sqrt (3.0));
  }
}

/* Three forces on the flat corner meet in one point: the load line at the arm's line.
 * Method: Barton & Fieldhouse, Automotive Chassis Engineering, 3.10.2.2, p. 185. */
static void
test_set_p_three_forces (void)
{
  const Corner corner = check_assemble (&set_p, (Adjustment){ 0 });
  const Vec3 U = set_p.at[POINT_UPPER_MOUNT], G = { 0, 740, 183.125 };
  Station s;

  g_assert_cmpint (station_solve (&corner, 0.0, 0.0, &s), ==, POSE_OK);
  const Loads l = balance (&corner, &s, (Vec3){ 0, 0, 3500 }, CARRIED_BY_COIL);
  const Vec3 along = vec3_unit (vec3_sub (U, G));

  check_near ("axial", 0, l.axial, 3647.602, 5e-4);
  check_near ("arm", 0, hypot (l.ball.y, l.ball.z), 897.528, 5e-4);
  check_near ("side", 0, vec3_length (l.side), 211.509, 5e-4);
  check_near ("at the mount", 0, vec3_length (l.tower), 3653.729, 5e-4);
  check_near ("through G", 0, vec3_length (vec3_cross (l.tower, along)), 0.0, 1e-6);
  check_near ("angle", 0, DEGREES (acos (vec3_dot (along, s.pose.strut_direction))),
              3.31863, 5e-6);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/kernel/statics/power-balance", test_power_balance);
  g_test_add_func ("/kernel/statics/roll-centre-and-slope",
                   test_roll_centre_and_slope_take_no_power);
  g_test_add_func ("/kernel/statics/set-m-loads", test_set_m_loads);
  g_test_add_func ("/kernel/statics/set-p-three-forces", test_set_p_three_forces);
  return g_test_run ();
}
