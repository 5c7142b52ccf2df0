/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What an error of a coordinate does: held against a root finder that knows nothing of
 * the kernel, against what a measured car as a whole cannot change, and against a hand
 * calculation. */
#include "check-data.h"
#include "raw-measures.h"

#include "model/study/point-sensitivity.h"

#include <math.h>

static PointSensitivity
solve (const MeasuredCorner *measured)
{
  PointSensitivity sensitivity;

  g_assert_true (point_sensitivity_solve (measured, &sensitivity));
  return sensitivity;
}

/* A displaced corner at that bump by equations of its own. */
static RawMeasures
solve_raw (const MeasuredCorner *measured)
{
  RawCorner raw;
  RawPose row[RAW_ROW], pose;

  raw_corner_init (measured, &raw);
  pose = raw_corner_measured_pose (&raw);
  for (int i = 1; i <= 4; i++) {
    const RawPose start = pose;

    raw_corner_ask (&raw, (MountOffset){ 0 }, SENSITIVITY_BUMP * i / 4.0, 0.0);
    g_assert_cmpfloat (raw_corner_solve (&raw, &start, 1e-12, &pose), <, 1e-9);
  }
  for (int k = -RAW_REACH; k <= RAW_REACH; k++) {
    raw_corner_ask (&raw, (MountOffset){ 0 }, SENSITIVITY_BUMP + k * RAW_STEP, 0.0);
    g_assert_cmpfloat (raw_corner_solve (&raw, &pose, 1e-12, &row[RAW_REACH + k]), <,
                       1e-9);
  }
  const RawMeasures measures = raw_measures (&raw, row);
  raw_corner_clear (&raw);
  return measures;
}

static MeasuredCorner
put_off (const MeasuredCorner *measured, PointName point, int axis, double error)
{
  MeasuredCorner off = *measured;

  off.at[point] =
      vec3_add (off.at[point], (Vec3){ axis == 0 ? error : 0, axis == 1 ? error : 0,
                                       axis == 2 ? error : 0 });
  return off;
}

static void
test_a_root_finder_agrees (void)
{
  const PointSensitivity sensitivity = solve (&set_m);

  for (PointName point = 0; point < N_POINTS; point++)
    for (int axis = 0; axis < 3; axis++) {
      const MeasuredCorner less = put_off (&set_m, point, axis, -0.5);
      const MeasuredCorner more = put_off (&set_m, point, axis, 0.5);
      const RawMeasures a = solve_raw (&less), b = solve_raw (&more);

      for (Sensitive s = 0; s < N_SENSITIVE; s++) {
        const Quantity q = sensitive_quantity (s);
        const double scale = s == SENSITIVE_ROLL_CENTRE ? 1.0 : 180.0 / G_PI;

        check_near ("per mm", 10 * point + axis,
                    sensitivity.points[point].per_mm[s][axis],
                    (b.value[q] - a.value[q]) * scale, 1e-6);
      }
    }
}

static double
sum_over_points (const PointSensitivity *sensitivity, Sensitive s, int axis)
{
  double sum = 0.0;

  for (PointName point = 0; point < N_POINTS; point++)
    sum += sensitivity->points[point].per_mm[s][axis];
  return sum;
}

/* The whole car measured from a plane that lies 1 mm off turns no angle. The roll centre
 * stays too where that plane is the front axle's or the ground's, and moves by h/C_y
 * where it is the centre plane. Left over: the third order of half a step. */
static void
test_a_plane_that_lies_off_turns_nothing (void)
{
  static const MeasuredCorner *const corners[] = { &set_m, &set_p, &worked_set };

  for (gsize i = 0; i < G_N_ELEMENTS (corners); i++) {
    const PointSensitivity sensitivity = solve (corners[i]);
    const Corner corner = check_assemble (corners[i], (Adjustment){ 0 });
    const Measures at = check_solve (&corner, SENSITIVITY_BUMP, 0.0);

    for (Sensitive s = 0; s < N_SENSITIVE; s++)
      for (int axis = 0; axis < 3; axis++)
        check_near ("sum", (double) (10 * s + axis),
                    sum_over_points (&sensitivity, s, axis),
                    s == SENSITIVE_ROLL_CENTRE && axis == 1
                        ? at.value[QUANTITY_ROLL_CENTRE_HEIGHT] / at.contact.y
                        : 0.0,
                    s == SENSITIVE_ROLL_CENTRE ? 1e-3 : 1e-5);
  }
}

/* Caster of the flat corner is atan ((B_x − U_x)/(U_z − B_z)) and 0. At 30 mm of bump the
 * arm has turned up by φ with 320 sin φ − 15 cos φ near 30 · 0.9860 − 15 (the ball joint
 * rises by arm ratio times reach, 0.003081 · 320 = 0.9860 of the wheel): B_z is near
 * 214.6 mm and a millimetre at the mount is 57.296/(835 − 214.6) = 0.0924°. By hand. */
static void
test_caster_of_the_flat_corner_by_hand (void)
{
  const PointSensitivity sensitivity = solve (&set_p);

  check_near ("caster", 30,
              sensitivity.points[POINT_UPPER_MOUNT].per_mm[SENSITIVE_CASTER][0], -0.0924,
              2e-4);
  check_near ("caster", 30,
              sensitivity.points[POINT_BALL_JOINT].per_mm[SENSITIVE_CASTER][0], 0.0924,
              2e-3);
}

/* Off by its tolerance, a coordinate spoils one of the four by its limit and none by
 * more; large tolerances are tried at 10 mm only, as they bend. */
static void
test_tolerances_keep_what_they_promise (void)
{
  const PointSensitivity sensitivity = solve (&worked_set);
  const Corner corner = check_assemble (&worked_set, (Adjustment){ 0 });
  const Measures right = check_solve (&corner, SENSITIVITY_BUMP, 0.0);

  for (PointName point = 0; point < N_POINTS; point++)
    for (int axis = 0; axis < 3; axis++) {
      const PointError *error = &sensitivity.points[point];
      const double tolerance = error->tolerance[axis];
      const MeasuredCorner off =
          put_off (&worked_set, point, axis, fmin (tolerance, 10.0));
      const Corner displaced = check_assemble (&off, (Adjustment){ 0 });
      const Measures wrong = check_solve (&displaced, SENSITIVITY_BUMP, 0.0);
      double used[N_SENSITIVE], most = 0.0;

      for (Sensitive s = 0; s < N_SENSITIVE; s++) {
        const Quantity q = sensitive_quantity (s);

        used[s] = fabs (check_shown (&wrong, q) - check_shown (&right, q)) /
                  sensitive_limit (s);
        most = fmax (most, used[s]);
      }
      g_test_message ("point %d axis %d: %.2f mm uses %.3f, of %d %.3f", point, axis,
                      tolerance, most, error->decides[axis], used[error->decides[axis]]);
      g_assert_cmpfloat (most, <, 1.15);
      if (tolerance < 10.0)
        g_assert_cmpfloat (used[error->decides[axis]], >, 0.85);
      g_assert_cmpfloat (error->least_tolerance, <=, tolerance);
    }
}

static void
test_together_is_more_than_each (void)
{
  const PointSensitivity sensitivity = solve (&set_m);
  double squares = 0.0;

  for (PointName point = 0; point < N_POINTS; point++)
    for (int axis = 0; axis < 3; axis++) {
      const double one = sensitivity.points[point].per_mm[SENSITIVE_CAMBER][axis];

      squares += one * one;
      g_assert_cmpfloat (sensitivity.together[SENSITIVE_CAMBER], >=, fabs (one));
    }
  check_near ("together", 0,
              sensitivity.together[SENSITIVE_CAMBER] *
                  sensitivity.together[SENSITIVE_CAMBER],
              squares, 1e-12);
}

/* A tie rod that is straightened before 30 mm of bump. */
static void
test_what_does_not_get_there_has_no_answer (void)
{
  MeasuredCorner short_rod = set_p;
  PointSensitivity sensitivity;

  short_rod.at[POINT_TIE_ROD_INNER] = (Vec3){ -130.0, 697.0, 188.0 };
  g_assert_false (point_sensitivity_solve (&short_rod, &sensitivity));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/point-sensitivity/root-finder", test_a_root_finder_agrees);
  g_test_add_func ("/point-sensitivity/planes", test_a_plane_that_lies_off_turns_nothing);
  g_test_add_func ("/point-sensitivity/by-hand", test_caster_of_the_flat_corner_by_hand);
  g_test_add_func ("/point-sensitivity/tolerances",
                   test_tolerances_keep_what_they_promise);
  g_test_add_func ("/point-sensitivity/together", test_together_is_more_than_each);
  g_test_add_func ("/point-sensitivity/out-of-reach",
                   test_what_does_not_get_there_has_no_answer);
  return g_test_run ();
}
