/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "kernel/corner.h"
#include "kernel/corner-assembly.h"
#include "kernel/correction.h"
#include "kernel/pose-closure.h"

#define NEAR_ZERO 1e-6  /* mm: two points closer than this are the same place */
#define LEAST_LIFT 1.0  /* mm/rad at the wheel: less is no suspension */
#define START_STEP 0.02 /* rad, when looking for a position that assembles */
#define START_REACH 1.0 /* rad, either way */

static CornerVerdict
verdict (CornerStatus status, PointName first, PointName second)
{
  return (CornerVerdict){ status, first, second };
}

static CornerVerdict
check_numbers (const MeasuredCorner *m)
{
  const double steepest = acos (-1.0) / 4.0;

  for (PointName i = 0; i < N_POINTS; i++)
    if (!vec3_is_finite (m->at[i]))
      return verdict (CORNER_NOT_FINITE, i, i);
  if (!isfinite (m->camber) || !isfinite (m->toe_in) || !isfinite (m->loaded_radius))
    return verdict (CORNER_NOT_FINITE, N_POINTS, N_POINTS);
  if (m->loaded_radius <= 0.0)
    return verdict (CORNER_BAD_RADIUS, N_POINTS, N_POINTS);
  if (fabs (m->camber) > steepest || fabs (m->toe_in) > steepest)
    return verdict (CORNER_BAD_ANGLE, N_POINTS, N_POINTS);

  for (PointName i = 0; i < N_POINTS; i++)
    for (PointName j = i + 1; j < N_POINTS; j++)
      if (vec3_distance (m->at[i], m->at[j]) < NEAR_ZERO)
        return verdict (CORNER_COINCIDENT, i, j);
  return verdict (CORNER_OK, N_POINTS, N_POINTS);
}

static bool
place_arm (const MeasuredCorner *m, Corner *corner)
{
  const Vec3 a1 = m->at[POINT_ARM_FRONT_PIVOT];
  const Vec3 a = vec3_unit (vec3_sub (m->at[POINT_ARM_REAR_PIVOT], a1));
  const Vec3 radius = vec3_reject (vec3_sub (m->at[POINT_BALL_JOINT], a1), a);

  corner->hinge_axis = a;
  corner->arm_pivot = a1;
  corner->arm_rear_pivot = m->at[POINT_ARM_REAR_PIVOT];
  corner->hinge_centre = vec3_sub (m->at[POINT_BALL_JOINT], radius);
  corner->radius_0 = radius;
  corner->radius_90 = vec3_cross (a, radius);
  return vec3_length (radius) > NEAR_ZERO;
}

static bool
place_strut (const MeasuredCorner *m, Corner *corner)
{
  const Vec3 b = m->at[POINT_BALL_JOINT], u = m->at[POINT_UPPER_MOUNT];
  const Vec3 foot = m->at[POINT_STRUT_FOOT];

  corner->strut_direction = vec3_unit (vec3_sub (u, foot));
  corner->strut_foot = vec3_sub (foot, b);
  corner->strut_perpendicular = vec3_reject (corner->strut_foot, corner->strut_direction);
  corner->strut_distance_2 =
      vec3_dot (corner->strut_perpendicular, corner->strut_perpendicular);
  return corner->strut_direction.z > 0.0 && u.z > b.z &&
         vec3_dot (vec3_sub (u, b), corner->strut_direction) > 0.0;
}

static CornerStatus
place_tie_rod (const MeasuredCorner *m, Corner *corner)
{
  const Vec3 b = m->at[POINT_BALL_JOINT];
  const Vec3 e = vec3_unit (vec3_sub (m->at[POINT_UPPER_MOUNT], b));
  const Vec3 outer = vec3_sub (m->at[POINT_TIE_ROD_OUTER], b);
  const Vec3 t = vec3_reject (outer, e);
  const Vec3 r = vec3_reject (vec3_sub (m->at[POINT_TIE_ROD_INNER], b), e);
  const double product = vec3_length (t) * vec3_length (r);

  if (vec3_length (t) < NEAR_ZERO || vec3_length (r) < NEAR_ZERO)
    return CORNER_TIE_ROD_ON_AXIS;

  const double sine = vec3_dot (e, vec3_cross (r, t)) / product;
  const double across = m->at[POINT_TIE_ROD_OUTER].y - m->at[POINT_TIE_ROD_INNER].y;

  corner->tie_rod_inner = m->at[POINT_TIE_ROD_INNER];
  corner->tie_rod_outer = outer;
  corner->tie_rod_length =
      vec3_distance (m->at[POINT_TIE_ROD_OUTER], corner->tie_rod_inner);
  corner->reference_tie_rod_length = corner->tie_rod_length;
  corner->tie_rod_side = sine < 0.0 ? -1.0 : 1.0;
  corner->tie_rod_reach = round (across / corner->tie_rod_length);
  return fabs (sine) < LEAST_STEER_SINE ? CORNER_TIE_ROD_DEAD : CORNER_OK;
}

static void
place_wheel (const MeasuredCorner *m, Corner *corner)
{
  corner->wheel_centre = vec3_sub (m->at[POINT_WHEEL_CENTRE], m->at[POINT_BALL_JOINT]);
  corner->spin_axis = (Vec3){ cos (m->camber) * sin (m->toe_in),
                              cos (m->camber) * cos (m->toe_in), -sin (m->camber) };
  corner->toe_in = m->toe_in;
  corner->loaded_radius = m->loaded_radius;
  corner->reference_height = m->at[POINT_WHEEL_CENTRE].z;
  corner->reference_wheel_x = m->at[POINT_WHEEL_CENTRE].x;
  corner->dive_lever = m->dive_lever;
}

/* Turns the hinge axis so that a positive arm angle lifts the wheel. */
static bool
aim_hinge (Corner *corner)
{
  Pose pose;
  const PoseStatus status = pose_at_arm_angle (corner, 0.0, 0.0, &pose);

  if (status != POSE_OK || !(fabs (pose.lift) >= LEAST_LIFT))
    return false;
  if (pose.lift < 0.0) {
    corner->hinge_axis = vec3_scale (corner->hinge_axis, -1.0);
    corner->radius_90 = vec3_scale (corner->radius_90, -1.0);
  }
  corner->reference_contact_y = pose_contact (corner, &pose).y;
  return true;
}

/* The arm angle nearest to 0 at which the wheel hangs together and the arm lifts it. */
static void
find_start (Corner *corner, Closure closure)
{
  PoseStatus first = POSE_OK;

  for (int i = 0; i <= 2 * (int) (START_REACH / START_STEP); i++) {
    const double angle = START_STEP * (double) ((i + 1) / 2) * (i % 2 == 0 ? -1.0 : 1.0);
    Pose pose;
    PoseStatus status = pose_at_arm_angle_closed (corner, angle, 0.0, closure, &pose);

    if (status == POSE_OK && !(pose.lift > 0.0))
      status = POSE_OUT_OF_REACH;
    if (i == 0)
      first = status;
    corner->start_angle = angle;
    corner->start_status = status;
    if (status == POSE_OK)
      return;
  }
  corner->start_status = first;
}

/* At the lowered height, the knuckle is turned to its static toe; the tie rod then gets
 * the length that holds it there, if with that length the arm still lifts the wheel. */
static void
reset_toe (double lowering, Corner *corner)
{
  Pose pose;

  find_start (corner, CLOSE_TOE);
  corner->start_status =
      pose_at_travel_closed (corner, lowering, 0.0, CLOSE_TOE, NULL, &pose);
  if (corner->start_status != POSE_OK)
    return;

  corner->tie_rod_length = vec3_distance (pose.tie_rod_outer, pose.tie_rod_inner);
  corner->start_angle = pose.arm_angle;
  if (pose_at_arm_angle (corner, corner->start_angle, 0.0, &pose) != POSE_OK ||
      !(pose.lift > 0.0))
    corner->start_status = POSE_TOE_OUT_OF_REACH;
}

Vec3
corner_mount_at (const MeasuredCorner *measured, MountOffset mount)
{
  const Vec3 move = { -mount.rearward, -mount.inboard, mount.up };

  return vec3_add (measured->at[POINT_UPPER_MOUNT], move);
}

void
corner_hang (const MeasuredCorner *measured, const Adjustment *a, Corner *corner)
{
  corner->upper_mount = corner_mount_at (measured, a->mount);
  if (a->toe == TOE_RESET && adjustment_changes_linkage (a))
    reset_toe (a->lowering, corner);
  else
    find_start (corner, CLOSE_TIE_ROD);
}

static void
keep_measured (const MeasuredCorner *measured, const Adjustment *a, Corner *corner)
{
  corner->measured_hinge_axis = corner->hinge_axis;
  corner->measured_hinge_centre = corner->hinge_centre;
  corner->measured_radius_0 = corner->radius_0;
  corner->measured_foot = measured->at[POINT_STRUT_FOOT];
  corner->clamp_tilt = a->corrections.clamp_tilt;
}

CornerVerdict
corner_prepare (const MeasuredCorner *measured, const Adjustment *a, Corner *corner)
{
  CornerVerdict result = check_numbers (measured);

  if (result.status != CORNER_OK)
    return result;
  corner->upper_mount = measured->at[POINT_UPPER_MOUNT];
  place_wheel (measured, corner);
  if (!place_arm (measured, corner))
    return verdict (CORNER_BALL_ON_HINGE, POINT_BALL_JOINT, POINT_ARM_FRONT_PIVOT);
  if (!place_strut (measured, corner))
    return verdict (CORNER_STRUT_UPSIDE_DOWN, POINT_UPPER_MOUNT, POINT_STRUT_FOOT);
  result.status = place_tie_rod (measured, corner);
  if (result.status != CORNER_OK)
    return verdict (result.status, POINT_TIE_ROD_OUTER, POINT_TIE_ROD_INNER);
  if (!aim_hinge (corner))
    return verdict (CORNER_ARM_CANNOT_LIFT, POINT_BALL_JOINT, POINT_ARM_FRONT_PIVOT);

  keep_measured (measured, a, corner);
  correct_arm (&a->corrections, measured, corner);
  correct_knuckle (&a->corrections, corner);
  correct_wheel (&a->corrections, corner);
  correct_tie_rod (&a->corrections, corner);
  return result;
}

CornerVerdict
corner_assemble (const MeasuredCorner *measured,
                 const Adjustment *adjustment,
                 Corner *corner)
{
  const CornerVerdict result = corner_prepare (measured, adjustment, corner);

  if (result.status == CORNER_OK)
    corner_hang (measured, adjustment, corner);
  return result;
}

double
corner_tie_rod_change (const Corner *corner)
{
  return corner->tie_rod_length - corner->reference_tie_rod_length;
}
