/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where the two wheels of an axle come to stand by springs and anti-roll bar under forces
 * at their contacts. Both corners are alike; the right one is mirrored to the left.
 *
 * Of each wheel, by virtual work, per rise c of its contact:
 *   load (z) + k i (r − r′) = F_z + F_x v_Cx/v_Cz + F_y v_Cy/v_Cz
 * with load of the springs and of what is unsprung, k the bar's rate at one end, r the
 * rise of its link and i = dr/dc, r′ that of the other side's link. Newton's
 * method on both with exact rates, or one wheel inside the other's; a wheel that finds no
 * balance stands where the strut ends. */

#pragma once

#include "model/spring/spring-study.h"

typedef struct {
  const SpringCorner *corner;
  Vec3 contact[2];      /* forces on left and right, the right one mirrored */
  double least, most;   /* wheel travel between the strut's ends */
  double link_rate;     /* 0: each wheel by itself */
  gboolean is_weighing; /* what is unsprung counts */
} AxleBalance;

/* @link_rate is that of the corner's own bar. FALSE where nothing can be assembled. */
gboolean axle_balance_init (AxleBalance *self, const SpringCorner *corner);

/* A wheel at rest. */
typedef struct {
  double travel, link_rise;
  gboolean is_at_end; /* of the strut: it finds no balance inside */
} AxleWheel;

/* The wheel under @contact while the other side's link is at @other_rise. */
AxleWheel axle_balance_wheel (const AxleBalance *self, Vec3 contact, double other_rise);
/* The left wheel with the right one at rest as well. */
AxleWheel axle_balance_left (const AxleBalance *self, AxleWheel *right);
