/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the choice only: what the travel used does to one place, as a search asks for it
 * thousands of times. The same stations as a ToeCurve, to 1e-9 of its figures, in a third
 * of the time: a station is taken where the arm is thought to be, and what its travel is
 * off the one wanted is made good by the exact rates. */

#pragma once

#include "model/study/toe-curve.h"

typedef struct {
  double toe[TOE_CURVE_STATIONS];     /* rad, less that at the standing height */
  double chord_2[TOE_CURVE_STATIONS]; /* of the strut's tilt from @strut_as_measured */
  double longest;                     /* |S − U|, mm */
} ChoiceTravel;

/* @standing is the pose at the standing height. FALSE where any of it cannot be
 * assembled. */
gboolean choice_travel_solve (const Corner *linkage,
                              const Pose *standing,
                              ToeCurveRange range,
                              Vec3 strut_as_measured,
                              ChoiceTravel *travel);
