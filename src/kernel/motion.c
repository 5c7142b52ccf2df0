/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "kernel/motion.h"

Jet3
motion_of_point (const Pose *pose, const Acceleration *a, Vec3 point)
{
  const Vec3 r = vec3_sub (point, pose->ball_joint), w = pose->turn_rate;
  const Vec3 turning = vec3_cross (w, r);

  return jet3 (point, vec3_add (pose->ball_velocity, turning),
               vec3_add (a->ball, vec3_add (vec3_cross (a->turn_rate, r),
                                            vec3_cross (w, turning))));
}

static Jet3
direction_on_knuckle (const Pose *pose, const Acceleration *a, Vec3 direction)
{
  const Vec3 turning = vec3_cross (pose->turn_rate, direction);

  return jet3 (direction, turning,
               vec3_add (vec3_cross (a->turn_rate, direction),
                         vec3_cross (pose->turn_rate, turning)));
}

/* C = W + r·(n_z n − k)/√(1 − n_z²) */
static Jet3
contact_jet (double radius, Jet3 wheel, Jet3 n)
{
  const Jet flat = jet_sqrt (jet_sub (jet_constant (1.0), jet_mul (n.z, n.z)));
  const Jet lean = jet_scale (jet_div (n.z, flat), radius);

  return (Jet3){ jet_add (wheel.x, jet_mul (lean, n.x)),
                 jet_add (wheel.y, jet_mul (lean, n.y)),
                 jet_sub (wheel.z, jet_scale (flat, radius)) };
}

Motion
motion_of (const Corner *corner, const Pose *pose)
{
  const Acceleration a = pose_acceleration (corner, pose);
  const Vec3 none = { 0 };
  Motion m;

  m.acceleration = a;
  m.ball = jet3 (pose->ball_joint, pose->ball_velocity, a.ball);
  m.foot = motion_of_point (pose, &a, pose->strut_foot);
  m.wheel = motion_of_point (pose, &a, pose->wheel_centre);
  m.spin = direction_on_knuckle (pose, &a, pose->spin_axis);
  m.turn = jet3 (pose->turn_rate, a.turn_rate, none);
  m.contact = contact_jet (corner->loaded_radius, m.wheel, m.spin);
  m.strut_length = jet3_length (jet3_sub (m.foot, jet3_constant (corner->upper_mount)));
  return m;
}

/* Two directions that never fall together: the steering axis, and from it to T. */
KnuckleTurn
knuckle_turn (const Corner *corner, const Pose *pose)
{
  const double length = vec3_distance (corner->upper_mount, pose->strut_foot);
  const Vec3 mount = vec3_along (corner->strut_foot, length, corner->strut_direction);
  const Vec3 axis = vec3_sub (corner->upper_mount, pose->ball_joint);
  const Vec3 outer = vec3_sub (pose->tie_rod_outer, pose->ball_joint);
  double along, out;

  return (KnuckleTurn){
    .knuckle = frame_towards (vec3_unit (mount), corner->tie_rod_outer, &along, &out),
    .body = frame_towards (vec3_unit (axis), outer, &along, &out),
  };
}

Vec3
knuckle_vector (const KnuckleTurn *turn, Vec3 vector)
{
  return frame_map (&turn->body, &turn->knuckle, vector);
}
