/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "kernel/construction.h"

/* A line of the front view: ny·y + nz·z = c. */
typedef struct {
  double ny, nz, c;
} Trace;

static Trace
trace_of_plane (Vec3 normal, Vec3 point, double x)
{
  return (Trace){ normal.y, normal.z, vec3_dot (normal, point) - normal.x * x };
}

static FrontPoint
at_y (Trace t, double y)
{
  return (FrontPoint){ y, (t.c - t.ny * y) / t.nz };
}

static FrontPoint
inward (Trace t)
{
  const double length = hypot (t.ny, t.nz);
  const double sign = t.nz > 0.0 ? -1.0 : 1.0;

  return (FrontPoint){ sign * t.nz / length, -sign * t.ny / length };
}

/* The pole in homogeneous form (y, z, w): w is 0 where the traces are parallel. */
static Vec3
meet (Trace a, Trace b)
{
  return (Vec3){ a.c * b.nz - b.c * a.nz, a.ny * b.c - b.ny * a.c,
                 a.ny * b.nz - b.ny * a.nz };
}

Construction
construction_draw (const Corner *corner, const Pose *pose, Vec3 contact)
{
  const double x = pose->wheel_centre.x;
  const Vec3 arm_normal =
      vec3_cross (corner->hinge_axis, vec3_sub (pose->ball_joint, corner->arm_pivot));
  const Trace arm = trace_of_plane (arm_normal, pose->ball_joint, x);
  const Trace strut = trace_of_plane (pose->strut_direction, corner->upper_mount, x);
  const Vec3 pole = meet (arm, strut);
  /* from the contact to the pole, scaled by w so that it lives through infinity */
  double dy = pole.x - contact.y * pole.z, dz = pole.y - contact.z * pole.z;
  const double length = hypot (dy, dz), sign = dy > 0.0 ? -1.0 : 1.0;

  dy *= sign / length;
  dz *= sign / length;
  return (Construction){
    .arm = at_y (arm, pose->ball_joint.y),
    .arm_direction = inward (arm),
    .mount = at_y (strut, corner->upper_mount.y),
    .mount_direction = inward (strut),
    .contact = { contact.y, contact.z },
    .pole = { pole.x / pole.z, pole.y / pole.z },
    .pole_direction = { dy, dz },
    .roll_centre_height = -contact.y * dz / dy,
  };
}
