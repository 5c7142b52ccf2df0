/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the choice only: one side of the car as a question puts it, and what a search
 * needs to know of a place on it. */

#pragma once

#include "model/choice/choice.h"
#include "model/study/toe-curve.h"

typedef struct {
  const Car *car;
  const GArray *targets; /* the car's, unless a search is to have others */
  SpringCarrier carrier;
  MeasuredCorner measured;
  Adjustment adjustment; /* the setup's; its mount is not used */
  Vec3 strut_as_measured;
  TyreShape tyre;
  StrutShape strut;
  gboolean has_strut; /* or tyre and strut say nothing */
  ToeCurveRange travel;
  double baseline_toe, baseline_scrub; /* NAN where the baseline cannot stand */
} ChoiceCorner;

ChoiceCorner
choice_corner_of (const Car *car, const ChoiceQuestion *question, CarSide side);

/* The setup's adjustment with the mount elsewhere and a camber bolt added, rad. */
Adjustment
choice_corner_adjust (const ChoiceCorner *corner, MountOffset mount, double camber_bolt);

/* mm; how far the bearing's centre is from the centre of the tower's opening, in plan. */
double choice_corner_off_centre (const ChoiceCorner *corner, MountOffset mount);

/* What the bearing's centre may be off it at most, mm, for the edge to be as far from the
 * bearing as @margin; NAN where tower or bearing are not given. */
double choice_corner_most_off_centre (const ChoiceCorner *corner,
                                      const Plate *plate,
                                      double margin);

/* One aim's value in edge units: @quantity has N_QUANTITIES. */
double choice_corner_aim (const ChoiceCorner *corner,
                          Aim aim,
                          const double *quantity,
                          double toe_before_reset,
                          double bump_steer);

/* How far @value is outside, signed; what is less than this share of the aim's unit is
 * none, being what rounding a setting makes of it. */
#define CHOICE_SAME 1e-3
double choice_miss (Aim aim, double value, double least, double most);

ChoicePlace choice_corner_place (const ChoiceCorner *corner,
                                 const Plate *plate,
                                 PlateSetting setting,
                                 double camber_bolt);
