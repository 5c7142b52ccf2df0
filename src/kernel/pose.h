/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One position of the corner, solved in closed form, with the knuckle's exact velocity.
 *
 * Unknown: the arm angle θ. Given θ, in this order:
 *   B(θ)              the arm turns about its hinge;
 *   s = √(L² − d²)    L = |U − B|: the strut closes the distance;
 *   e = (U − B)/L     the steering axis;
 *   cos φ             the knuckle's turn about e, from |T − R| = tie-rod length.
 * For a wanted wheel travel, Newton's method on θ with the exact rate dz/dθ. */

#pragma once

#include "kernel/corner.h"

typedef struct {
  double arm_angle; /* θ, 0 as measured, bump positive */
  double travel;    /* of the wheel centre, from the reference height */
  double rack;      /* of the tie rod's inner end, along y */

  Vec3 ball_joint, strut_foot, tie_rod_outer, tie_rod_inner, wheel_centre;
  Vec3 spin_axis;       /* n, unit, outboard */
  Vec3 strut_direction; /* u, unit, up */

  /* velocity for dθ/dt = 1 */
  Vec3 ball_velocity;
  Vec3 turn_rate; /* ω of the knuckle */
  double lift;    /* dz/dθ, mm/rad, above zero */
} Pose;

PoseStatus
pose_at_arm_angle (const Corner *corner, double arm_angle, double rack, Pose *pose);

/* @neighbour, when not NULL, is an assembled position of the same corner and rack to
 * start from. Never leaves the assembly that was measured: what cannot be reached by
 * moving continuously from the start is POSE_OUT_OF_REACH. */
PoseStatus pose_at_travel (
    const Corner *corner, double travel, double rack, const Pose *neighbour, Pose *pose);

/* Accelerations for dθ/dt = 1 held constant. */
typedef struct {
  Vec3 ball;      /* of the ball joint */
  Vec3 turn_rate; /* dω/dt of the knuckle */
} Acceleration;

Acceleration pose_acceleration (const Corner *corner, const Pose *pose);

/* The centre of the tyre's contact: W + radius · (down in the wheel plane). */
Vec3 pose_contact (const Corner *corner, const Pose *pose);
