/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the kernel only: frames about an axis, which carry vectors of knuckle and arm
 * into the body. */

#pragma once

#include "kernel/vec3.h"

/* Orthonormal, about an axis: e along it, r towards one point. */
typedef struct {
  Vec3 e, r, c;
} AxisFrame;

/* @v of the frame @from, as the frame @to has it. */
static inline Vec3
frame_map (const AxisFrame *to, const AxisFrame *from, Vec3 v)
{
  const double along = vec3_dot (from->e, v);
  const double out = vec3_dot (from->r, v);
  const double across = vec3_dot (from->c, v);

  return vec3_along (vec3_along (vec3_scale (to->e, along), out, to->r), across, to->c);
}

/* About the unit vector @e; @point's places along it and off it come out too. */
static inline AxisFrame
frame_towards (Vec3 e, Vec3 point, double *along, double *out)
{
  *along = vec3_dot (e, point);
  const Vec3 off = vec3_along (point, -*along, e);
  *out = vec3_length (off);
  const Vec3 r = vec3_scale (off, 1.0 / *out);

  return (AxisFrame){ e, r, vec3_cross (e, r) };
}
