/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Forces in balance: joint_forces () against the equations of balance in GSL,
 * against the sums of forces and moments, against figures computed independently, and
 * against the kernel's velocities, of which statics knows nothing: what the contact puts
 * in, spring or torsion bar must take up. */

#include "check-data.h"
#include "raw-balance.h"

#include <json-glib/json-glib.h>

#define N_CASES 400

/* What carries alone. */
static const SpringCarrier carriers[] = { CARRIED_BY_COIL, CARRIED_BY_STRUT,
                                          CARRIED_BY_TORSION_BAR };

static JointForces
balance (const Corner *corner, const Station *s, Vec3 force, SpringCarrier carrier)
{
  const LoadedCorner l = { *corner, *s, { .contact = force } };

  return check_balance_alone (&l, carrier);
}

static void
test_second_way (void)
{
  Dice dice = { 300 };

  for (int i = 0; i < N_CASES; i++) {
    const LoadedCorner l = dice_loaded_corner (&dice);

    for (size_t c = 0; c < G_N_ELEMENTS (carriers); c++) {
      const SpringHold hold = spring_hold_alone (&l.corner, &l.station.pose, carriers[c]);
      const JointForces f = check_balance (&l, &hold);
      const JointForces g = raw_balance (&l.corner, &l.station.pose, &l.load, &hold);

      check_same_forces (&f, &g, i, 1e-9, vec3_length (l.load.contact));
      g_assert_true (carriers[c] == CARRIED_BY_TORSION_BAR ? f.axial == 0.0
                                                           : f.torque == 0.0);
    }
  }
}

/* What holds the body up is the contact force, whole: tower, tie rod and arm pivots. The
 * moments of the knuckle's forces are taken about the centre of the car on the ground. */
static void
check_sums (const LoadedCorner *l, const JointForces *f, int i)
{
  const Pose *p = &l->station.pose;
  const Vec3 rod = vec3_unit (vec3_sub (p->tie_rod_outer, p->tie_rod_inner));
  const Vec3 push = vec3_scale (rod, f->tie_rod), contact = l->station.measures.contact;
  const Vec3 at_mount = vec3_scale (f->tower, -1.0);
  const Vec3 sum =
      vec3_add (vec3_add (f->ball_joint, push), vec3_add (at_mount, l->load.contact));
  const Vec3 moment = vec3_add (vec3_add (vec3_cross (p->ball_joint, f->ball_joint),
                                          vec3_cross (p->tie_rod_outer, push)),
                                vec3_add (vec3_cross (l->corner.upper_mount, at_mount),
                                          vec3_cross (contact, l->load.contact)));
  const double size = vec3_length (l->load.contact);

  check_near ("forces", i, vec3_length (sum), 0.0, 1e-9 * size);
  check_near ("moments", i, vec3_length (moment), 0.0,
              1e-9 * size * vec3_length (contact));
  check_near ("arm", i, vec3_dot (p->ball_velocity, f->ball_joint), -f->torque,
              1e-9 * size * vec3_length (p->ball_velocity));
  check_near ("side along strut", i, vec3_dot (f->side, p->strut_direction), 0.0,
              1e-9 * size);
}

static void
test_sums (void)
{
  Dice dice = { 303 };

  for (int i = 0; i < N_CASES; i++) {
    const LoadedCorner l = dice_loaded_corner (&dice);

    for (size_t c = 0; c < G_N_ELEMENTS (carriers); c++) {
      const JointForces f = balance (&l.corner, &l.station, l.load.contact, carriers[c]);

      check_sums (&l, &f, i);
    }
  }
}

static void
test_no_load (void)
{
  Dice dice = { 304 };

  for (int i = 0; i < N_CASES; i++) {
    const LoadedCorner l = dice_loaded_corner (&dice);

    for (size_t c = 0; c < G_N_ELEMENTS (carriers); c++) {
      const JointForces f = balance (&l.corner, &l.station, (Vec3){ 0 }, carriers[c]);

      g_assert_true (f.tie_rod == 0.0 && f.axial == 0.0 && f.torque == 0.0);
      g_assert_true (vec3_length (f.ball_joint) == 0.0 && vec3_length (f.side) == 0.0 &&
                     vec3_length (f.tower) == 0.0);
    }
  }
}

/* Twice the load, twice everything; and one load after another adds up. */
static void
test_loads_add_up (void)
{
  Dice dice = { 305 };

  for (int i = 0; i < N_CASES; i++) {
    const LoadedCorner l = dice_loaded_corner (&dice);
    const Vec3 other = { 700, -900, 2100 };

    for (size_t c = 0; c < G_N_ELEMENTS (carriers); c++) {
      const JointForces one =
          balance (&l.corner, &l.station, l.load.contact, carriers[c]);
      const JointForces two = balance (&l.corner, &l.station, other, carriers[c]);
      const JointForces both =
          balance (&l.corner, &l.station, vec3_along (l.load.contact, 2.0, other),
                   carriers[c]);

      check_vector ("tower", i, both.tower, vec3_along (one.tower, 2.0, two.tower), 1e-7);
      check_vector ("ball joint", i, both.ball_joint,
                    vec3_along (one.ball_joint, 2.0, two.ball_joint), 1e-7);
      check_near ("tie rod", i, both.tie_rod, one.tie_rod + 2.0 * two.tie_rod, 1e-7);
    }
  }
}

static void
test_dead_point (void)
{
  const Corner corner = check_assemble (&set_m, (Adjustment){ 0 });
  const CornerLoad load = { .contact = { 0, 0, 1000 } };
  JointForces f;
  Station s;

  g_assert_cmpint (station_solve (&corner, 0.0, 0.0, &s), ==, POSE_OK);
  const SpringHold hold = spring_hold_alone (&corner, &s.pose, CARRIED_BY_COIL);
  /* the tie rod along the line from the ball joint to the mount steers nothing */
  s.pose.tie_rod_outer = vec3_along (s.pose.ball_joint, 0.2,
                                     vec3_sub (corner.upper_mount, s.pose.ball_joint));
  g_assert_false (joint_forces (&corner, &s.pose, &load, &hold, &f));
  g_assert_true (isnan (f.tie_rod) && isnan (f.axial) && isnan (f.torque));
  g_assert_true (isnan (f.tower.x) && isnan (f.side.y) && isnan (f.ball_joint.z));
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

  for (int i = 0; i < N_CASES; i++) {
    const LoadedCorner l = dice_loaded_corner (&dice);
    const Station *s = &l.station;
    const JointForces coil = balance (&l.corner, s, l.load.contact, CARRIED_BY_COIL);
    const JointForces bar =
        balance (&l.corner, s, l.load.contact, CARRIED_BY_TORSION_BAR);
    const Vec3 v = contact_velocity (s);
    const double power = vec3_dot (l.load.contact, v);
    const double squeeze = s->measures.value[QUANTITY_STRUT_RATIO] * s->pose.lift;
    const double tolerance = 1e-9 * vec3_length (l.load.contact) * vec3_length (v);

    check_near ("coil", i, coil.axial * squeeze, power, tolerance);
    check_near ("torsion bar", i, bar.torque, power, tolerance);
    check_near ("tie rod", i, bar.tie_rod, coil.tie_rod, 1e-6);
  }
}

/* The ratios that the sheet shows say the same: with only a vertical load, the load that
 * the roll centre and the side-view slope add to it takes no power. */
static void
test_roll_centre_and_slope_take_no_power (void)
{
  Dice dice = { 302 };

  for (int i = 0; i < N_CASES; i++) {
    const LoadedCorner l = dice_loaded_corner (&dice);
    const Station *s = &l.station;
    const double *q = s->measures.value;
    /* along the line from the contact to the roll centre, and along the side-view one */
    const double side = 1000.0,
                 rise = side * q[QUANTITY_ROLL_CENTRE_HEIGHT] / s->measures.contact.y;
    const JointForces lateral =
        balance (&l.corner, s, (Vec3){ 0, -side, rise }, CARRIED_BY_COIL);
    const JointForces braked =
        balance (&l.corner, s, (Vec3){ -side, 0, side * q[QUANTITY_SIDE_VIEW_SLOPE] },
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
    const JointForces l = balance (&corner, &s, read_vec3 (row, "contact_force_N"),
                                   coil ? CARRIED_BY_COIL : CARRIED_BY_TORSION_BAR);
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

/* Computed independently: set P under a spring of 25 N/mm that carries 3500 N as
 * measured, and with a torsion bar instead. */
static void
test_set_p_spring (void)
{
  static const struct {
    double travel, load;
  } rows[] = { { -40, 2532.854 }, { 0, 3500 }, { 40, 4559.874 } };
  const Corner corner = check_assemble (&set_p, (Adjustment){ 0 });
  const Station home = check_solve_at_contact (&corner, 0.0);
  const double length = home.measures.value[QUANTITY_STRUT_LENGTH];

  for (size_t i = 0; i < G_N_ELEMENTS (rows); i++) {
    const Station s = check_solve_at_contact (&corner, rows[i].travel);
    const double squeezed = length - s.measures.value[QUANTITY_STRUT_LENGTH];
    const JointForces f =
        balance (&corner, &s, (Vec3){ 0, 0, rows[i].load }, CARRIED_BY_COIL);

    /* half a last digit of the load, and of the axial force as measured */
    check_near ("axial", rows[i].travel, f.axial, 3647.602 + 25.0 * squeezed, 1.1e-3);
  }
  const JointForces bar =
      balance (&corner, &home, (Vec3){ 0, 0, 3500 }, CARRIED_BY_TORSION_BAR);
  check_near ("torque", 0, bar.torque, 1135897, 0.5);
}

/* Computed independently, to the digits printed. */
static void
test_worked_set (void)
{
  static const struct {
    Vec3 force;
    SpringCarrier carrier;
    double carried, side, tie_rod; /* axial force or torque */
    Vec3 tower;
  } rows[] = {
    { { 0, 0, 2600 }, CARRIED_BY_COIL, 2731, 366.6, -30.2, { -158.9, -761.0, 2643.5 } },
    { { 0, 0, 2600 },
      CARRIED_BY_TORSION_BAR,
      815139,
      210.9,
      -30.2,
      { -20.5, -207.5, -31.9 } },
    { { 0, -2000, 3800 },
      CARRIED_BY_COIL,
      3759.3,
      124.9,
      35.1,
      { -226.0, -424.9, 3730.5 } },
    { { 0, -2000, 3800 },
      CARRIED_BY_TORSION_BAR,
      1122093,
      342.3,
      35.1,
      { -35.5, 337.1, 47.6 } },
  };
  const Corner corner = check_assemble (&worked_set, (Adjustment){ 0 });
  Station s;

  g_assert_cmpint (station_solve (&corner, 0.0, 0.0, &s), ==, POSE_OK);
  for (size_t i = 0; i < G_N_ELEMENTS (rows); i++) {
    const JointForces f = balance (&corner, &s, rows[i].force, rows[i].carrier);

    check_near ("carried", i, f.axial + f.torque, rows[i].carried, i == 2 ? 0.05 : 0.5);
    check_near ("side", i, vec3_length (f.side), rows[i].side, 0.05);
    check_near ("tie rod", i, f.tie_rod, rows[i].tie_rod, 0.05);
    check_near ("tower x", i, f.tower.x, rows[i].tower.x, 0.05);
    check_near ("tower y", i, f.tower.y, rows[i].tower.y, 0.05);
    check_near ("tower z", i, f.tower.z, rows[i].tower.z, 0.05);
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
  const JointForces l = balance (&corner, &s, (Vec3){ 0, 0, 3500 }, CARRIED_BY_COIL);
  const Vec3 along = vec3_unit (vec3_sub (U, G));

  check_near ("axial", 0, l.axial, 3647.602, 5e-4);
  check_near ("arm", 0, hypot (l.ball_joint.y, l.ball_joint.z), 897.528, 5e-4);
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
  g_test_add_func ("/kernel/statics/set-p-spring", test_set_p_spring);
  g_test_add_func ("/kernel/statics/worked-set", test_worked_set);
  g_test_add_func ("/kernel/statics/second-way", test_second_way);
  g_test_add_func ("/kernel/statics/sums", test_sums);
  g_test_add_func ("/kernel/statics/no-load", test_no_load);
  g_test_add_func ("/kernel/statics/loads-add-up", test_loads_add_up);
  g_test_add_func ("/kernel/statics/dead-point", test_dead_point);
  return g_test_run ();
}
