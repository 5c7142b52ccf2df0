/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A law given by points: a monotone spline by Steffen's method through them and through
 * (0, 0), straight on past its ends.
 *
 * Source: M. Steffen, A simple method for monotonic interpolation in one dimension,
 * Astronomy and Astrophysics 239 (1990), as the GNU Scientific Library has it. */

#pragma once

#include "model/car/car-springs.h"

#include <gsl/gsl_interp.h>

typedef struct {
  gsize n; /* 0: no law, all 0 */
  double x[SPRING_TABLE_MOST + 1], y[SPRING_TABLE_MOST + 1];
  gsl_interp *spline;
} SpringCurve;

/* Points that do not rise are left out. */
SpringCurve spring_curve_new (const SpringTable *table);
void spring_curve_clear (SpringCurve *curve);
double spring_curve_value (const SpringCurve *curve, double x, double *slope);
