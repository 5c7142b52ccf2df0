/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Flat corners, whose answers stand in closed form or in a handbook. */

#include "check-data.h"

#include "kernel/construction.h"

#define LAST_OF_8 1e-8
#define LAST_OF_5 1e-5

/* Set P at one arm angle, front view. Computed independently: the arm turns about
 * (380, 200); the strut axis runs through the ball joint and leans α inboard; the wheel
 * leans by as much as the strut does; the instant centre lies on the arm's line and on
 * the normal to the strut at the mount. */
typedef struct {
  double arm, lean; /* φ, α */
  double ball_y, ball_z, wheel_y, wheel_z, contact_y, contact_z, centre_y, centre_z;
} FlatPose;

static const double flat_mount_y = 575.0, flat_mount_z = 835.0;

static FlatPose
flat_at_angle (double arm)
{
  const double rho = hypot (320.0, 15.0), lean_0 = atan2 (125.0, 650.0);
  FlatPose f = { .arm = arm };

  f.ball_y = 380.0 + rho * cos (arm);
  f.ball_z = 200.0 + rho * sin (arm);
  f.lean = atan2 (f.ball_y - flat_mount_y, flat_mount_z - f.ball_z);

  const double s = sin (f.lean - lean_0), c = cos (f.lean - lean_0);
  f.wheel_y = f.ball_y + 40.0 * c - 115.0 * s;
  f.wheel_z = f.ball_z + 40.0 * s + 115.0 * c;
  f.contact_y = f.wheel_y + 300.0 * s;
  f.contact_z = f.wheel_z - 300.0 * c;

  /* B + t (cos φ, sin φ) on the normal: (U − B − t·arm)·strut = 0 */
  const double strut_y = -sin (f.lean), strut_z = cos (f.lean);
  const double t =
      ((flat_mount_y - f.ball_y) * strut_y + (flat_mount_z - f.ball_z) * strut_z) /
      (cos (arm) * strut_y + sin (arm) * strut_z);
  f.centre_y = f.ball_y + t * cos (arm);
  f.centre_z = f.ball_z + t * sin (arm);
  return f;
}

static FlatPose
flat_at_travel (double travel)
{
  double low = -0.6, high = 0.4;

  for (int i = 0; i < 100; i++) {
    const double middle = (low + high) / 2.0;

    if (flat_at_angle (middle).wheel_z - 300.0 < travel)
      low = middle;
    else
      high = middle;
  }
  return flat_at_angle ((low + high) / 2.0);
}

/* Read at the centre plane on the line from the contact to the instant centre. */
static double
flat_roll_centre (const FlatPose *f)
{
  return -f->contact_y * (f->centre_z - f->contact_z) / (f->centre_y - f->contact_y);
}

static void
test_set_p_closed_form (void)
{
  const Corner corner = check_assemble (&set_p, (Adjustment){ 0 });
  const double lean_0 = atan2 (125.0, 650.0);

  for (double z = -90.0; z <= 90.0; z += 7.5) {
    const FlatPose f = flat_at_travel (z);
    const Measures m = check_solve (&corner, z, 0.0);
    const double *q = m.value;
    const double ball_to_foot = hypot (700 - 656.25, 185 - 412.5);
    const double gain = -1.0 / (f.wheel_y - f.centre_y);

    check_near ("camber", z, q[QUANTITY_CAMBER], lean_0 - f.lean, 1e-13);
    check_near ("SAI", z, q[QUANTITY_SAI], f.lean, 1e-13);
    check_near ("contact y", z, m.contact.y, f.contact_y, 1e-10);
    check_near ("contact z", z, m.contact.z, f.contact_z, 1e-10);
    check_near ("camber gain", z, q[QUANTITY_CAMBER_GAIN], gain, 1e-14);
    check_near ("arm angle", z, q[QUANTITY_ARM_ANGLE], f.arm + atan2 (15, 320), 1e-13);
    check_near ("strut", z, q[QUANTITY_STRUT_LENGTH] + ball_to_foot,
                hypot (f.ball_y - 575, f.ball_z - 835), 1e-10);
    check_near ("roll centre", z, q[QUANTITY_ROLL_CENTRE_HEIGHT], flat_roll_centre (&f),
                1e-9);
    check_near ("centre", z, m.instant_centre_z / f.centre_z, 1.0, 1e-9);
    check_near ("toe", z, q[QUANTITY_TOE_IN], 0.0, 1e-13);
    check_near ("caster", z, q[QUANTITY_CASTER], 0.0, 1e-13);
    check_near ("trail", z, q[QUANTITY_TRAIL], 0.0, 1e-10);
    check_near ("side slope", z, q[QUANTITY_SIDE_VIEW_SLOPE], 0.0, 1e-13);
  }
}

/* Computed independently. The table holds the length B–U; the kernel's is S–U, and S lies
 * on that line at a fixed distance from B. */
static void
test_set_p_table (void)
{
  g_autoptr (CheckTable) table = check_table_read ("set-p-planar.csv");
  const Corner corner = check_assemble (&set_p, (Adjustment){ 0 });
  const double ball_to_foot = hypot (700 - 656.25, 185 - 412.5);

  for (guint i = 0; i < table->n_rows; i++) {
    const double travel = check_table_get (table, i, "wheel_travel_mm");
    const Measures m = check_solve (&corner, travel, 0.0);

    check_column (table, i, "camber_deg", check_shown (&m, QUANTITY_CAMBER), LAST_OF_8);
    check_column (table, i, "sai_deg", check_shown (&m, QUANTITY_SAI), LAST_OF_8);
    check_column (table, i, "scrub_radius_mm", m.value[QUANTITY_SCRUB_RADIUS], LAST_OF_8);
    check_column (table, i, "half_track_change_mm", m.value[QUANTITY_HALF_TRACK_CHANGE],
                  LAST_OF_8);
    check_column (table, i, "strut_length_BU_mm",
                  m.value[QUANTITY_STRUT_LENGTH] + ball_to_foot, LAST_OF_8);
    check_column (table, i, "strut_ratio", m.value[QUANTITY_STRUT_RATIO], LAST_OF_8);
    check_column (table, i, "camber_gain_deg_per_mm",
                  check_shown (&m, QUANTITY_CAMBER_GAIN), LAST_OF_8);
    check_column (table, i, "ic_y_mm", m.instant_centre_y, LAST_OF_8);
    check_column (table, i, "ic_z_mm", m.instant_centre_z, LAST_OF_8);
    check_column (table, i, "roll_centre_height_mm", m.value[QUANTITY_ROLL_CENTRE_HEIGHT],
                  LAST_OF_8);
    check_column (table, i, "toe_in_deg", check_shown (&m, QUANTITY_TOE_IN), 1e-9);
    check_column (table, i, "caster_deg", check_shown (&m, QUANTITY_CASTER), 1e-9);
  }
}

/* On a flat corner both readings of the roll centre are the same thing. */
static void
test_set_p_construction (void)
{
  const Corner corner = check_assemble (&set_p, (Adjustment){ 0 });

  for (double z = -80.0; z <= 80.0; z += 5.0) {
    Station s;

    g_assert_cmpint (station_solve (&corner, z, 0.0, &s), ==, POSE_OK);
    const Construction c = construction_draw (&corner, &s.pose, s.measures.contact);
    check_near ("construction", z, c.roll_centre_height,
                s.measures.value[QUANTITY_ROLL_CENTRE_HEIGHT], 1e-9);
  }
}

/* Computed independently. Camber still gains where the arm is level, and turns where the
 * arm stands square to the strut: the rule that gain ends with the arm level is wrong. */
static void
test_set_p_arm_level (void)
{
  const Corner corner = check_assemble (&set_p, (Adjustment){ 0 });
  Measures m;
  Pose pose;

  g_assert_cmpint (pose_at_arm_angle (&corner, atan2 (15, 320), 0.0, &pose), ==, POSE_OK);
  pose_measure (&corner, &pose, &m);
  check_near ("ball joint", 0, pose.ball_joint.z, 200.0, 1e-12);
  check_near ("level travel", 0, pose.travel, 15.1950, 5e-5);
  check_near ("level camber", 0, check_shown (&m, QUANTITY_CAMBER), -0.28130, 5e-6);
  check_near ("level RC", 0, m.value[QUANTITY_ROLL_CENTRE_HEIGHT], 40.4922, 5e-5);
  g_assert_cmpfloat (check_shown (&m, QUANTITY_CAMBER_GAIN), <, -0.01);
}

static void
test_set_p_arm_square_to_strut (void)
{
  const Corner corner = check_assemble (&set_p, (Adjustment){ 0 });
  const Measures at = check_solve (&corner, 80.9029, 0.0);
  const Measures before = check_solve (&corner, 80.9, 0.0);
  const Measures after = check_solve (&corner, 80.906, 0.0);

  check_near ("camber", 80.9, check_shown (&at, QUANTITY_CAMBER), -0.876779, 5e-7);
  check_near ("SAI", 80.9, check_shown (&at, QUANTITY_SAI), 11.76231, 5e-6);
  g_assert_cmpfloat (before.value[QUANTITY_CAMBER_GAIN], <, 0.0);
  g_assert_cmpfloat (after.value[QUANTITY_CAMBER_GAIN], >, 0.0);
}

/* Toe-in by travel, −60 … 60, with the inner end of the tie rod moved: too high or too
 * low is a slope, too short or too long a bow. Computed independently; the shapes are
 * common practice, no published source. */
static void
test_set_p_tie_rod_moved (void)
{
  static const double travels[6] = { -60, -40, -20, 20, 40, 60 };
  static const struct {
    Vec3 inner;
    double toe[6];
  } rows[] = {
    { { -130, 380, 205 }, { -0.43322, -0.28327, -0.13933, 0.13600, 0.26995, 0.40315 } },
    { { -130, 380, 195 }, { 0.42940, 0.28104, 0.13836, -0.13530, -0.26878, -0.40177 } },
    { { -130, 430, 197.65625 },
      { -0.48613, -0.20950, -0.05110, -0.04952, -0.19673, -0.44244 } },
    { { -130, 330, 202.34375 },
      { 0.34678, 0.15088, 0.03708, 0.03628, 0.14443, 0.32495 } },
  };

  for (guint r = 0; r < G_N_ELEMENTS (rows); r++) {
    MeasuredCorner measured = set_p;

    measured.at[POINT_TIE_ROD_INNER] = rows[r].inner;
    const Corner corner = check_assemble (&measured, (Adjustment){ 0 });
    for (int i = 0; i < 6; i++) {
      const Measures m = check_solve (&corner, travels[i], 0.0);

      check_near ("toe-in", travels[i], check_shown (&m, QUANTITY_TOE_IN), rows[r].toe[i],
                  LAST_OF_5 / 2 * 1.0001);
    }
  }
}

/* Roll centre of a strut corner by the handbook's formula.
 * Source: Reimpell, Stoll, Betzler, The Automotive Chassis, 2nd ed. 2001, 3.4.3 (from
 * memory):
 *   k = (c+o)/sin(α+β),  p = k sin β + d,  h_Ro = b_f/2 · p/(k cos β + d tan σ + r_σ). */
typedef struct {
  double alpha, beta, c_plus_o, d, sigma, r_sigma, track;
} Handbook;

static Handbook
read_handbook (const CheckTable *t, guint row)
{
  return (Handbook){ RADIANS (check_table_get (t, row, "alpha_deg")),
                     RADIANS (check_table_get (t, row, "beta_deg")),
                     check_table_get (t, row, "c_plus_o_mm"),
                     check_table_get (t, row, "d_mm"),
                     RADIANS (check_table_get (t, row, "sigma_deg")),
                     check_table_get (t, row, "r_sigma_mm"),
                     check_table_get (t, row, "track_mm") };
}

static double
handbook_roll_centre (const Handbook *h)
{
  const double k = h->c_plus_o / sin (h->alpha + h->beta);
  const double p = k * sin (h->beta) + h->d;

  return h->track / 2.0 * p / (k * cos (h->beta) + h->d * tan (h->sigma) + h->r_sigma);
}

/* The flat corner that has those dimensions: the arm 320 long on its line, the foot 380
 * below the mount on the strut's axis, the tie rod beside the arm and equal to it. */
static MeasuredCorner
handbook_corner (const Handbook *h)
{
  const double y = h->track / 2.0 - h->r_sigma - h->d * tan (h->sigma);
  const double reach = h->c_plus_o / cos (h->sigma - h->alpha);
  const Vec3 ball = { 0, y, h->d };
  const Vec3 mount =
      vec3_along (ball, reach, (Vec3){ 0, -sin (h->sigma), cos (h->sigma) });
  const Vec3 pivot = vec3_along (ball, 320, (Vec3){ 0, -cos (h->beta), sin (h->beta) });

  return (MeasuredCorner){
    .at = { [POINT_ARM_FRONT_PIVOT] = { 100, pivot.y, pivot.z },
            [POINT_ARM_REAR_PIVOT] = { -200, pivot.y, pivot.z },
            [POINT_BALL_JOINT] = ball,
            [POINT_UPPER_MOUNT] = mount,
            [POINT_STRUT_FOOT] =
                vec3_along (mount, 380, (Vec3){ 0, sin (h->alpha), -cos (h->alpha) }),
            [POINT_TIE_ROD_OUTER] = { -130, ball.y, ball.z },
            [POINT_TIE_ROD_INNER] = { -130, pivot.y, pivot.z },
            [POINT_WHEEL_CENTRE] = { 0, h->track / 2.0, 300 } },
    .loaded_radius = 300
  };
}

static void
test_handbook_roll_centres (void)
{
  g_autoptr (CheckTable) t = check_table_read ("roll-centre-planar.csv");

  g_assert_cmpuint (t->n_rows, ==, 5);
  for (guint i = 0; i < t->n_rows; i++) {
    const Handbook h = read_handbook (t, i);
    const MeasuredCorner measured = handbook_corner (&h);
    const Vec3 mount = measured.at[POINT_UPPER_MOUNT];
    const double height = handbook_roll_centre (&h);
    const Corner corner = check_assemble (&measured, (Adjustment){ 0 });
    Station s;

    g_assert_cmpint (station_solve (&corner, 0.0, 0.0, &s), ==, POSE_OK);
    const Construction c = construction_draw (&corner, &s.pose, s.measures.contact);
    const double *q = s.measures.value;

    check_near ("mount y", i, mount.y, check_table_get (t, i, "upper_mount_y"), 5.1e-5);
    check_near ("mount z", i, mount.z, check_table_get (t, i, "upper_mount_z"), 5.1e-5);
    check_near ("printed", i, height, check_table_get (t, i, "roll_centre_mm"), 5.1e-5);
    check_near ("velocity", i, q[QUANTITY_ROLL_CENTRE_HEIGHT], height, 1e-8);
    check_near ("construction", i, c.roll_centre_height, height, 1e-8);
    check_near ("pole y", i, c.pole.y, check_table_get (t, i, "pole_y"), 5.1e-5);
    check_near ("pole z", i, c.pole.z, check_table_get (t, i, "pole_z"), 5.1e-5);
    check_near ("instant centre", i, s.measures.instant_centre_y / c.pole.y, 1.0, 1e-10);
    check_near ("swing arm", i, q[QUANTITY_SWING_ARM_LENGTH],
                hypot (c.pole.y - c.contact.y, c.pole.z - c.contact.z), 1e-5);
    /* the handbook's is measured along the ground */
    check_near ("swing arm along y", i, c.contact.y - c.pole.y,
                check_table_get (t, i, "swing_arm_mm"), 5.1e-5);
    check_near ("SAI", i, q[QUANTITY_SAI], h.sigma, 1e-12);
    check_near ("scrub", i, q[QUANTITY_SCRUB_RADIUS], h.r_sigma, 1e-10);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/kernel/set-p/closed-form", test_set_p_closed_form);
  g_test_add_func ("/kernel/set-p/table", test_set_p_table);
  g_test_add_func ("/kernel/set-p/construction", test_set_p_construction);
  g_test_add_func ("/kernel/set-p/arm-level", test_set_p_arm_level);
  g_test_add_func ("/kernel/set-p/arm-square-to-strut", test_set_p_arm_square_to_strut);
  g_test_add_func ("/kernel/set-p/tie-rod-moved", test_set_p_tie_rod_moved);
  g_test_add_func ("/kernel/handbook/roll-centres", test_handbook_roll_centres);
  return g_test_run ();
}
