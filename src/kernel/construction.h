/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The classical front-view construction of the roll centre, as drawn on paper.
 *
 * In the transverse plane through the wheel centre: the trace of the arm's plane, and the
 * trace of the plane through the upper mount square to the strut. Where they meet is the
 * pole; the line from the contact to the pole, read at the centre plane, is the
 * constructed roll centre. It leaves out the tie rod, so on a corner in space it differs
 * a little from the exact value in Measures; on a flat corner both agree.
 *
 * Source: the planar construction as in Blundell & Harty, Multibody Systems Approach to
 * Vehicle Dynamics, p. 168. */

#pragma once

#include "kernel/measure.h"

typedef struct {
  double y, z; /* mm, in the plane x = W_x */
} FrontPoint;

typedef struct {
  FrontPoint arm;             /* on the arm's trace, at the ball joint's y */
  FrontPoint arm_direction;   /* unit, towards the centre plane */
  FrontPoint mount;           /* on the strut normal, at the mount's y */
  FrontPoint mount_direction; /* unit, towards the centre plane */
  FrontPoint contact;
  FrontPoint pole;           /* not finite when the traces are parallel */
  FrontPoint pole_direction; /* unit, from the contact towards the pole; finite always */
  double roll_centre_height; /* above the ground at that travel */
} Construction;

Construction construction_draw (const Corner *corner, const Pose *pose, Vec3 contact);
