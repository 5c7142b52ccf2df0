/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Bump steer as a curve: toe through the travel around the standing height, and its exact
 * rates by the height of either end of the tie rod. */

#pragma once

#include "kernel/pose.h"

#include <glib.h>

#define TOE_CURVE_STATIONS 41

/* Even over @from … @to, mm from @standing, both ends included. */
typedef struct {
  double standing; /* wheel travel, mm */
  double from, to;
} ToeCurveRange;

typedef enum {
  TIE_ROD_OUTER_DOWN, /* a spacer under the outer end: down from the knuckle */
  TIE_ROD_INNER_UP    /* the rack raised in the body */
} TieRodMove;

typedef struct {
  Pose standing;
  Pose at[TOE_CURVE_STATIONS];
  double toe[TOE_CURVE_STATIONS]; /* toe-in less that at the standing height, rad */
} ToeCurve;

/* FALSE where any of it cannot be assembled. */
gboolean toe_curve_solve (const Corner *corner, ToeCurveRange range, ToeCurve *curve);

/* d toe/d move at every station, rad/mm. With @is_toe_reset the tie rod's length follows,
 * so that the toe at the standing height stays. */
void toe_curve_rates (const Corner *corner,
                      const ToeCurve *curve,
                      TieRodMove move,
                      gboolean is_toe_reset,
                      double rates[TOE_CURVE_STATIONS]);
