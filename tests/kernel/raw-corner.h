/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The same corner as a root-finding problem: joints written as they are on the car, given
 * to GSL's hybrid solver. It shares nothing with the kernel but the measured points and
 * the arithmetic of vectors.
 *
 * Unknowns (9): W, the knuckle's quaternion q, the strut's length from foot to mount, the
 * arm's angle about A1→A2.
 * Equations (9): the arm's end is the knuckle's ball joint (3); the foot plus the strut's
 * length along its axis is the mount (3); the tie rod keeps its length (1); W stands at
 * the wanted height (1); q is a unit quaternion (1). Lengths in mm, the last scaled to
 * mm. */

#pragma once

#include "kernel/corner.h"

#include <gsl/gsl_multiroots.h>

#define RAW_UNKNOWNS 9

typedef struct {
  double x[RAW_UNKNOWNS];
} RawPose;

typedef struct {
  Vec3 hinge, hinge_axis;            /* A1, unit A1→A2 */
  Vec3 arm;                          /* B − A1 as measured */
  Vec3 wheel;                        /* W on the knuckle, as measured */
  Vec3 ball, foot, strut, outer_end; /* knuckle, from W, as measured */
  Vec3 mount, inner_end;             /* body, moved as asked */
  double tie_rod, wanted_height;
  MeasuredCorner measured;
  gsl_multiroot_fsolver *solver;
} RawCorner;

void raw_corner_init (const MeasuredCorner *measured, RawCorner *raw);
void raw_corner_clear (RawCorner *raw);

/* Puts the wheel's centre elsewhere on the knuckle than it was measured. */
void raw_corner_move_wheel (RawCorner *raw, Vec3 move);

/* The corner as measured: it solves the equations without any work, but for the height of
 * a wheel that was moved. */
RawPose raw_corner_measured_pose (const RawCorner *raw);

/* What is asked of the next solution. */
void raw_corner_ask (RawCorner *raw, MountOffset mount, double travel, double rack);

/* One call of the solver from @start, until the residuals add up to less than @tolerance
 * or no longer get smaller. Returns what they add up to, mm. */
double
raw_corner_solve (RawCorner *raw, const RawPose *start, double tolerance, RawPose *pose);

/* Where a point or a direction that was measured on the knuckle is now. */
Vec3 raw_pose_point (const RawCorner *raw, const RawPose *pose, Vec3 measured);
Vec3 raw_pose_direction (const RawPose *pose, Vec3 measured);
/* Where a point of the arm is now. */
Vec3 raw_pose_arm_point (const RawCorner *raw, const RawPose *pose, Vec3 measured);
/* Where a point that is on the knuckle now was when the corner was measured. */
Vec3 raw_pose_point_as_measured (const RawCorner *raw, const RawPose *pose, Vec3 now);
