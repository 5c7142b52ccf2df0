/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A scalar carried together with its first and second derivative by the arm angle.
 *
 * The rules are those of the calculus (product, quotient, chain), so a formula written
 * once in jets yields its value and its exact rates; nothing is differenced. A jet that
 * is itself a rate has no meaningful second derivative: its `dd` is never read. */

#pragma once

#include "kernel/vec3.h"

typedef struct {
  double v, d, dd;
} Jet;

typedef struct {
  Jet x, y, z;
} Jet3;

static inline Jet
jet_constant (double v)
{
  return (Jet){ v, 0.0, 0.0 };
}

static inline Jet
jet_add (Jet a, Jet b)
{
  return (Jet){ a.v + b.v, a.d + b.d, a.dd + b.dd };
}

static inline Jet
jet_sub (Jet a, Jet b)
{
  return (Jet){ a.v - b.v, a.d - b.d, a.dd - b.dd };
}

static inline Jet
jet_scale (Jet a, double k)
{
  return (Jet){ a.v * k, a.d * k, a.dd * k };
}

static inline Jet
jet_negative (Jet a)
{
  return (Jet){ -a.v, -a.d, -a.dd };
}

static inline Jet
jet_mul (Jet a, Jet b)
{
  return (Jet){ a.v * b.v, a.d * b.v + a.v * b.d,
                a.dd * b.v + 2.0 * a.d * b.d + a.v * b.dd };
}

static inline Jet
jet_div (Jet a, Jet b)
{
  const double v = a.v / b.v;
  const double d = (a.d - v * b.d) / b.v;

  return (Jet){ v, d, (a.dd - 2.0 * d * b.d - v * b.dd) / b.v };
}

static inline Jet
jet_sqrt (Jet a)
{
  const double v = sqrt (a.v);
  const double d = a.d / (2.0 * v);

  return (Jet){ v, d, (a.dd / 2.0 - d * d) / v };
}

static inline Jet
jet_asin (Jet a)
{
  const double c2 = 1.0 - a.v * a.v, c = sqrt (c2);

  return (Jet){ asin (a.v), a.d / c, (a.dd + a.v * a.d * a.d / c2) / c };
}

static inline Jet
jet_atan2 (Jet y, Jet x)
{
  const double r2 = x.v * x.v + y.v * y.v;
  const double d = (x.v * y.d - y.v * x.d) / r2;
  const double r2_d = 2.0 * (x.v * x.d + y.v * y.d);

  return (Jet){ atan2 (y.v, x.v), d, (x.v * y.dd - y.v * x.dd - d * r2_d) / r2 };
}

static inline Jet3
jet3 (Vec3 v, Vec3 d, Vec3 dd)
{
  return (Jet3){ { v.x, d.x, dd.x }, { v.y, d.y, dd.y }, { v.z, d.z, dd.z } };
}

static inline Jet3
jet3_constant (Vec3 v)
{
  return jet3 (v, (Vec3){ 0 }, (Vec3){ 0 });
}

static inline Jet3
jet3_add (Jet3 a, Jet3 b)
{
  return (Jet3){ jet_add (a.x, b.x), jet_add (a.y, b.y), jet_add (a.z, b.z) };
}

static inline Jet3
jet3_sub (Jet3 a, Jet3 b)
{
  return (Jet3){ jet_sub (a.x, b.x), jet_sub (a.y, b.y), jet_sub (a.z, b.z) };
}

static inline Jet3
jet3_cross (Jet3 a, Jet3 b)
{
  return (Jet3){ jet_sub (jet_mul (a.y, b.z), jet_mul (a.z, b.y)),
                 jet_sub (jet_mul (a.z, b.x), jet_mul (a.x, b.z)),
                 jet_sub (jet_mul (a.x, b.y), jet_mul (a.y, b.x)) };
}

static inline Jet
jet3_length (Jet3 a)
{
  return jet_sqrt (
      jet_add (jet_mul (a.x, a.x), jet_add (jet_mul (a.y, a.y), jet_mul (a.z, a.z))));
}
