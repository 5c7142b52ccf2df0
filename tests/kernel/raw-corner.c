/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "raw-corner.h"

#include <gsl/gsl_errno.h>

#define MOST_ITERATIONS 200
#define UNIT_SCALE 1000.0 /* mm for an error of 1 in |q|² */

/* The solver's differences step by a share of each unknown, which therefore must not be
 * next to nothing: what is 0 as measured is given to it with 1 added. */
static const double shift[RAW_UNKNOWNS] = {
  [0] = 1.0, [4] = 1.0, [5] = 1.0, [6] = 1.0, [8] = 1.0
};

static Vec3
at (const double *x)
{
  return (Vec3){ x[0], x[1], x[2] };
}

/* Rodrigues: @v turned about the unit vector @axis. */
static Vec3
turn_about (Vec3 v, Vec3 axis, double angle)
{
  const Vec3 along = vec3_scale (axis, vec3_dot (axis, v) * (1.0 - cos (angle)));
  const Vec3 across = vec3_scale (vec3_cross (axis, v), sin (angle));

  return vec3_add (vec3_along (along, cos (angle), v), across);
}

/* v + 2 q0 (q × v) + 2 q × (q × v), for a unit quaternion (q0, q) */
static Vec3
turn_by (const double *quaternion, double sense, Vec3 v)
{
  const Vec3 q = vec3_scale (at (quaternion + 1), sense);
  const Vec3 once = vec3_cross (q, v);

  return vec3_along (vec3_along (v, 2.0 * quaternion[0], once), 2.0,
                     vec3_cross (q, once));
}

static void
put (gsl_vector *f, size_t i, Vec3 v)
{
  gsl_vector_set (f, i, v.x);
  gsl_vector_set (f, i + 1, v.y);
  gsl_vector_set (f, i + 2, v.z);
}

static int
residual (const gsl_vector *unknowns, void *data, gsl_vector *f)
{
  const RawCorner *raw = data;
  RawPose pose;

  for (size_t i = 0; i < RAW_UNKNOWNS; i++)
    pose.x[i] = gsl_vector_get (unknowns, i) - shift[i];

  const double *q = pose.x + 3;
  const Vec3 wheel = at (pose.x);
  const Vec3 ball = vec3_add (wheel, turn_by (q, 1.0, raw->ball));
  const Vec3 arm_end =
      vec3_add (raw->hinge, turn_about (raw->arm, raw->hinge_axis, pose.x[8]));
  const Vec3 foot = vec3_add (wheel, turn_by (q, 1.0, raw->foot));
  const Vec3 strut_top = vec3_along (foot, pose.x[7], turn_by (q, 1.0, raw->strut));
  const Vec3 outer_end = vec3_add (wheel, turn_by (q, 1.0, raw->outer_end));
  const double norm = q[0] * q[0] + q[1] * q[1] + q[2] * q[2] + q[3] * q[3];

  put (f, 0, vec3_sub (ball, arm_end));
  put (f, 3, vec3_sub (strut_top, raw->mount));
  gsl_vector_set (f, 6, vec3_distance (outer_end, raw->inner_end) - raw->tie_rod);
  gsl_vector_set (f, 7, wheel.z - raw->wanted_height);
  gsl_vector_set (f, 8, UNIT_SCALE * (norm - 1.0));
  return GSL_SUCCESS;
}

static void
join_knuckle_to_wheel (RawCorner *raw)
{
  const Vec3 *p = raw->measured.at;

  raw->ball = vec3_sub (p[POINT_BALL_JOINT], raw->wheel);
  raw->foot = vec3_sub (p[POINT_STRUT_FOOT], raw->wheel);
  raw->outer_end = vec3_sub (p[POINT_TIE_ROD_OUTER], raw->wheel);
}

void
raw_corner_init (const MeasuredCorner *measured, RawCorner *raw)
{
  const Vec3 *p = measured->at;
  const Vec3 hinge = p[POINT_ARM_FRONT_PIVOT];

  *raw = (RawCorner){
    .hinge = hinge,
    .hinge_axis = vec3_unit (vec3_sub (p[POINT_ARM_REAR_PIVOT], hinge)),
    .arm = vec3_sub (p[POINT_BALL_JOINT], hinge),
    .wheel = p[POINT_WHEEL_CENTRE],
    .strut = vec3_unit (vec3_sub (p[POINT_UPPER_MOUNT], p[POINT_STRUT_FOOT])),
    .tie_rod = vec3_distance (p[POINT_TIE_ROD_OUTER], p[POINT_TIE_ROD_INNER]),
    .measured = *measured,
    .solver = gsl_multiroot_fsolver_alloc (gsl_multiroot_fsolver_hybrids, RAW_UNKNOWNS),
  };
  join_knuckle_to_wheel (raw);
  raw_corner_ask (raw, (MountOffset){ 0 }, 0.0, 0.0);
}

void
raw_corner_move_wheel (RawCorner *raw, Vec3 move)
{
  raw->wheel = vec3_add (raw->measured.at[POINT_WHEEL_CENTRE], move);
  join_knuckle_to_wheel (raw);
}

void
raw_corner_clear (RawCorner *raw)
{
  gsl_multiroot_fsolver_free (raw->solver);
  raw->solver = NULL;
}

RawPose
raw_corner_measured_pose (const RawCorner *raw)
{
  const Vec3 *p = raw->measured.at, w = raw->wheel;

  return (RawPose){ { w.x, w.y, w.z, 1.0, 0.0, 0.0, 0.0,
                      vec3_distance (p[POINT_UPPER_MOUNT], p[POINT_STRUT_FOOT]), 0.0 } };
}

void
raw_corner_ask (RawCorner *raw, MountOffset mount, double travel, double rack)
{
  const Vec3 *p = raw->measured.at;
  const Vec3 move = { -mount.rearward, -mount.inboard, mount.up };

  raw->mount = vec3_add (p[POINT_UPPER_MOUNT], move);
  raw->inner_end = vec3_add (p[POINT_TIE_ROD_INNER], (Vec3){ 0.0, rack, 0.0 });
  raw->wanted_height = p[POINT_WHEEL_CENTRE].z + travel;
}

static double
sum_of_sizes (const gsl_vector *f)
{
  double sum = 0.0;

  for (size_t i = 0; i < f->size; i++)
    sum += fabs (gsl_vector_get (f, i));
  return sum;
}

double
raw_corner_solve (RawCorner *raw, const RawPose *start, double tolerance, RawPose *pose)
{
  gsl_multiroot_function system = { residual, RAW_UNKNOWNS, raw };
  double copy[RAW_UNKNOWNS];

  for (size_t i = 0; i < RAW_UNKNOWNS; i++)
    copy[i] = start->x[i] + shift[i];

  gsl_vector_view x = gsl_vector_view_array (copy, RAW_UNKNOWNS);
  int status = gsl_multiroot_fsolver_set (raw->solver, &system, &x.vector);

  for (int i = 0; i < MOST_ITERATIONS && status == GSL_SUCCESS; i++) {
    if (sum_of_sizes (raw->solver->f) < tolerance)
      break;
    status = gsl_multiroot_fsolver_iterate (raw->solver);
  }
  for (size_t i = 0; i < RAW_UNKNOWNS; i++)
    pose->x[i] = gsl_vector_get (raw->solver->x, i) - shift[i];
  return sum_of_sizes (raw->solver->f);
}

Vec3
raw_pose_point (const RawCorner *raw, const RawPose *pose, Vec3 measured)
{
  const Vec3 offset = vec3_sub (measured, raw->wheel);

  return vec3_add (at (pose->x), turn_by (pose->x + 3, 1.0, offset));
}

Vec3
raw_pose_direction (const RawPose *pose, Vec3 measured)
{
  return turn_by (pose->x + 3, 1.0, measured);
}

Vec3
raw_pose_arm_point (const RawCorner *raw, const RawPose *pose, Vec3 measured)
{
  const Vec3 lever = vec3_sub (measured, raw->hinge);

  return vec3_add (raw->hinge, turn_about (lever, raw->hinge_axis, pose->x[8]));
}

Vec3
raw_pose_point_as_measured (const RawCorner *raw, const RawPose *pose, Vec3 now)
{
  const Vec3 offset = vec3_sub (now, at (pose->x));

  return vec3_add (raw->wheel, turn_by (pose->x + 3, -1.0, offset));
}
