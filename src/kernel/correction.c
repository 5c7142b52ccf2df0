/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "kernel/correction.h"
#include "kernel/axis-frame.h"

static bool
corrects_arm (const Corrections *c)
{
  return c->front_pivot_raise != 0.0 || c->rear_pivot_raise != 0.0 ||
         c->pivot_outboard != 0.0;
}

static bool
corrects_knuckle (const Corrections *c)
{
  return c->clamp_tilt != 0.0 || c->ball_joint_spacer != 0.0;
}

static bool
corrects_wheel (const Corrections *c)
{
  return c->wheel_spacer != 0.0;
}

static bool
corrects_tie_rod (const Corrections *c)
{
  return c->tie_rod_end_spacer != 0.0 || c->rack_raise != 0.0 ||
         c->tie_rod_lengthening != 0.0;
}

bool
adjustment_changes_linkage (const Adjustment *a)
{
  const Corrections *c = &a->corrections;

  return a->mount.inboard != 0.0 || a->mount.rearward != 0.0 || a->mount.up != 0.0 ||
         corrects_arm (c) || corrects_knuckle (c) || corrects_wheel (c) ||
         corrects_tie_rod (c) || (a->toe == TOE_RESET && a->lowering != 0.0);
}

/* The arm is rigid: the ball joint keeps its distance from the hinge axis, its place
 * along the axis from the front pivot, and, as near as the new axis lets it, its
 * direction. */
void
correct_arm (const Corrections *c, const MeasuredCorner *measured, Corner *corner)
{
  const Vec3 front = { 0.0, c->pivot_outboard, c->front_pivot_raise };
  const Vec3 rear = { 0.0, c->pivot_outboard, c->rear_pivot_raise };

  if (!corrects_arm (c))
    return;

  const Vec3 a1 = measured->at[POINT_ARM_FRONT_PIVOT];
  const Vec3 a2 = measured->at[POINT_ARM_REAR_PIVOT];
  const double along = vec3_dot (vec3_sub (corner->hinge_centre, a1), corner->hinge_axis);
  const double radius = vec3_length (corner->radius_0);
  Vec3 axis = vec3_unit (vec3_sub (vec3_add (a2, rear), vec3_add (a1, front)));

  if (vec3_dot (axis, corner->hinge_axis) < 0.0)
    axis = vec3_scale (axis, -1.0);
  corner->arm_pivot = vec3_add (a1, front);
  corner->arm_rear_pivot = vec3_add (a2, rear);
  corner->hinge_axis = axis;
  corner->hinge_centre = vec3_along (corner->arm_pivot, along, axis);
  corner->radius_0 =
      vec3_scale (vec3_unit (vec3_reject (corner->radius_0, axis)), radius);
  corner->radius_90 = vec3_cross (axis, corner->radius_0);
}

static Vec3
turned_about_x (Vec3 v, double angle)
{
  const double c = cos (angle), s = sin (angle);

  return (Vec3){ v.x, c * v.y - s * v.z, s * v.y + c * v.z };
}

/* The knuckle's vectors start at the ball joint: as it goes down, everything else is
 * higher. A strut whose top turns inboard on the knuckle, hung on the same mount, puts
 * the top of the wheel outboard: hence the sign of the turn. */
void
correct_knuckle (const Corrections *c, Corner *corner)
{
  if (!corrects_knuckle (c))
    return;
  corner->strut_foot.z += c->ball_joint_spacer;
  corner->tie_rod_outer.z += c->ball_joint_spacer;
  corner->wheel_centre.z += c->ball_joint_spacer;
  corner->strut_direction = turned_about_x (corner->strut_direction, c->clamp_tilt);
  corner->strut_perpendicular = vec3_reject (corner->strut_foot, corner->strut_direction);
  corner->strut_distance_2 =
      vec3_dot (corner->strut_perpendicular, corner->strut_perpendicular);
}

/* The hub face, which the spacer sits on, is square to the spin axis. */
void
correct_wheel (const Corrections *c, Corner *corner)
{
  if (!corrects_wheel (c))
    return;
  corner->wheel_centre =
      vec3_along (corner->wheel_centre, c->wheel_spacer, corner->spin_axis);
}

void
correct_tie_rod (const Corrections *c, Corner *corner)
{
  if (!corrects_tie_rod (c))
    return;
  corner->tie_rod_outer.z -= c->tie_rod_end_spacer;
  corner->tie_rod_inner.z += c->rack_raise;
  corner->tie_rod_length += c->tie_rod_lengthening;
}

Vec3
corrected_on_arm (const Corner *corner, Vec3 place)
{
  double along, out;
  const AxisFrame from = frame_towards (corner->measured_hinge_axis,
                                        corner->measured_radius_0, &along, &out);
  const AxisFrame to = frame_towards (corner->hinge_axis, corner->radius_0, &along, &out);
  const Vec3 lever = vec3_sub (place, corner->measured_hinge_centre);

  return vec3_add (corner->hinge_centre, frame_map (&to, &from, lever));
}

Vec3
corrected_on_tube (const Corner *corner, Vec3 place)
{
  const Vec3 lever = vec3_sub (place, corner->measured_foot);

  return vec3_add (corner->strut_foot, turned_about_x (lever, corner->clamp_tilt));
}
