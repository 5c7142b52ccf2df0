/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/choice/choice-corner.h"

#include <math.h>

#define DEGREES(radians) (180.0 / G_PI * (radians))

/* What the car has of it to either side of standing. */
static ToeCurveRange
travel_used (const Car *car, const CarSetup *setup)
{
  const double bump = car->bump_mm - setup->lowering_mm;
  const double droop = car->droop_mm + setup->lowering_mm;
  const double used = car->limits.travel_used_mm;

  return (ToeCurveRange){ setup->lowering_mm, -CLAMP (droop, 0.0, used),
                          CLAMP (bump, 0.0, used) };
}

static void
find_baseline (ChoiceCorner *corner, CarSide side)
{
  const CarSetup *baseline =
      car_setup (corner->car, MIN (corner->car->baseline, corner->car->setups->len - 1));
  const Adjustment adjustment = car_side_adjustment (baseline, side);
  MountPlace place;

  mount_place_solve (&corner->measured, &adjustment, adjustment.mount, &place);
  corner->baseline_toe = place.value[QUANTITY_TOE_IN];
  corner->baseline_scrub = place.value[QUANTITY_SCRUB_RADIUS];
}

ChoiceCorner
choice_corner_of (const Car *car, const ChoiceQuestion *question, CarSide side)
{
  const guint index = MIN (question->setup, car->setups->len - 1);
  const CarSetup *setup = car_setup (car, index);
  ChoiceCorner corner = { .car = car,
                          .targets = car->targets,
                          .carrier = question->carrier,
                          .measured = car_measured_side (car, side),
                          .adjustment = car_side_adjustment (setup, side),
                          .tyre = car_tyre_shape (car),
                          .strut = car_setup_strut_shape (car, index),
                          .has_strut = car_setup_has_strut_shape (car, index),
                          .travel = travel_used (car, setup) };
  const Vec3 *at = corner.measured.at;

  corner.strut_as_measured =
      vec3_unit (vec3_sub (at[POINT_UPPER_MOUNT], at[POINT_STRUT_FOOT]));
  find_baseline (&corner, side);
  return corner;
}

Adjustment
choice_corner_adjust (const ChoiceCorner *corner, MountOffset mount, double camber_bolt)
{
  Adjustment adjustment = corner->adjustment;

  adjustment.mount = mount;
  adjustment.corrections.clamp_tilt += camber_bolt;
  return adjustment;
}

double
choice_corner_off_centre (const ChoiceCorner *corner, MountOffset mount)
{
  const CarTower *tower = &corner->car->tower;

  return hypot (mount.inboard - tower->opening_inboard_mm,
                mount.rearward - tower->opening_rearward_mm);
}

double
choice_corner_most_off_centre (const ChoiceCorner *corner,
                               const Plate *plate,
                               double margin)
{
  const double opening = corner->car->tower.opening_diameter_mm;

  if (opening <= 0.0 || plate->bearing_diameter_mm <= 0.0)
    return NAN;
  return (opening - plate->bearing_diameter_mm) / 2.0 - margin;
}

double
choice_corner_aim (const ChoiceCorner *corner,
                   Aim aim,
                   const double *quantity,
                   double toe_before_reset,
                   double bump_steer)
{
  switch (aim) {
  case AIM_CAMBER:
    return DEGREES (quantity[QUANTITY_CAMBER]);
  case AIM_CASTER:
    return DEGREES (quantity[QUANTITY_CASTER]);
  case AIM_SAI:
    return DEGREES (quantity[QUANTITY_SAI]);
  case AIM_SCRUB_RADIUS:
    return quantity[QUANTITY_SCRUB_RADIUS];
  case AIM_TRAIL:
    return quantity[QUANTITY_TRAIL];
  case AIM_ROLL_CENTRE_HEIGHT:
    return quantity[QUANTITY_ROLL_CENTRE_HEIGHT];
  case AIM_TOE_CHANGE:
    return DEGREES (toe_before_reset - corner->baseline_toe);
  case AIM_SCRUB_CHANGE:
    return quantity[QUANTITY_SCRUB_RADIUS] - corner->baseline_scrub;
  case AIM_BUMP_STEER:
    return fabs (DEGREES (bump_steer));
  default:
    g_return_val_if_reached (NAN);
  }
}
