/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What an error in measuring one coordinate of one point does to the results, and so how
 * closely each has to be measured.
 *
 * A finite error is asked about, so it is tried: the corner is measured half a step off
 * either way, and the two are solved exactly, with static camber and toe-in as the gauge
 * read them. The difference is taken over the whole step. */

#pragma once

#include "kernel/measure.h"

#include <glib.h>

#define SENSITIVITY_BUMP 30.0 /* mm: where the results are read */
#define SENSITIVITY_STEP 1.0  /* mm: half of it either way */
typedef enum {
  SENSITIVE_CAMBER,
  SENSITIVE_CASTER,
  SENSITIVE_TOE_IN,
  SENSITIVE_ROLL_CENTRE,
  N_SENSITIVE
} Sensitive;

Quantity sensitive_quantity (Sensitive sensitive);
/* How far off an error may leave it, edge units: camber and toe-in 0.1°, as a gauge
 * reads; caster 0.25°, half of what may differ from side to side; the roll centre 5 mm.
 * Common practice, no published source. */
double sensitive_limit (Sensitive sensitive);

typedef struct {
  double per_mm[N_SENSITIVE]
               [3]; /* by x, y, z; edge units: degrees or mm per mm of error */
  /* How far off a coordinate may be, all others right, mm: the smallest of what the
   * limits allow. INFINITY where it changes nothing. */
  double tolerance[3];
  Sensitive decides[3];   /* whose limit that is */
  double least_tolerance; /* of the three */
} PointError;

typedef struct {
  PointError points[N_POINTS];
  /* All 24 coordinates off by a millimetre, each its own way: the root of the sum of the
   * squares. */
  double together[N_SENSITIVE];
} PointSensitivity;

/* FALSE where the corner, or one measured half a step otherwise, does not reach that
 * bump. */
gboolean point_sensitivity_solve (const MeasuredCorner *measured,
                                  PointSensitivity *sensitivity);
