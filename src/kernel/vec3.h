/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Vectors in the vehicle axes of ISO 8855: x forward, y left, z up; lengths in mm. */

#pragma once

#include <math.h>
#include <stdbool.h>
#include <stddef.h>

typedef struct {
  double x, y, z;
} Vec3;

static inline Vec3
vec3_add (Vec3 a, Vec3 b)
{
  return (Vec3){ a.x + b.x, a.y + b.y, a.z + b.z };
}

static inline Vec3
vec3_sub (Vec3 a, Vec3 b)
{
  return (Vec3){ a.x - b.x, a.y - b.y, a.z - b.z };
}

static inline Vec3
vec3_scale (Vec3 a, double k)
{
  return (Vec3){ a.x * k, a.y * k, a.z * k };
}

/* a + k b */
static inline Vec3
vec3_along (Vec3 a, double k, Vec3 b)
{
  return (Vec3){ a.x + k * b.x, a.y + k * b.y, a.z + k * b.z };
}

static inline double
vec3_dot (Vec3 a, Vec3 b)
{
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

static inline Vec3
vec3_cross (Vec3 a, Vec3 b)
{
  return (Vec3){ a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x };
}

static inline double
vec3_length (Vec3 a)
{
  return sqrt (vec3_dot (a, a));
}

static inline double
vec3_distance (Vec3 a, Vec3 b)
{
  return vec3_length (vec3_sub (a, b));
}

/* Undefined for the zero vector. */
static inline Vec3
vec3_unit (Vec3 a)
{
  return vec3_scale (a, 1.0 / vec3_length (a));
}

/* The part of @a square to the unit vector @axis. */
static inline Vec3
vec3_reject (Vec3 a, Vec3 axis)
{
  return vec3_along (a, -vec3_dot (a, axis), axis);
}

/* Some unit vector square to the unit vector @a; jumps where the smallest component
 * changes. */
static inline Vec3
vec3_any_normal (Vec3 a)
{
  const double x = fabs (a.x), y = fabs (a.y), z = fabs (a.z);
  const Vec3 least = x <= y && x <= z ? (Vec3){ 1, 0, 0 }
                     : y <= z         ? (Vec3){ 0, 1, 0 }
                                      : (Vec3){ 0, 0, 1 };

  return vec3_unit (vec3_cross (a, least));
}

static inline bool
vec3_is_finite (Vec3 a)
{
  return isfinite (a.x) && isfinite (a.y) && isfinite (a.z);
}
