/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the kernel only: a position closed by the tie rod, or by a wanted toe before the
 * tie rod has its length. */

#pragma once

#include "kernel/pose.h"

/* Sine of the angle, seen along the steering axis, between the tie rod's two ends: less
 * is its dead point. */
#define LEAST_STEER_SINE 1e-4

typedef enum {
  CLOSE_TIE_ROD,
  CLOSE_TOE
} Closure;

PoseStatus pose_at_arm_angle_closed (
    const Corner *corner, double arm_angle, double rack, Closure closure, Pose *pose);

PoseStatus pose_at_travel_closed (const Corner *corner,
                                  double travel,
                                  double rack,
                                  Closure closure,
                                  const Pose *neighbour,
                                  Pose *pose);
