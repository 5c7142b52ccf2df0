/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/choice-corner.h"
#include "model/choice-travel.h"

#include <math.h>
#include <string.h>

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
  const CarSetup *setup = car_setup (car, MIN (question->setup, car->setups->len - 1));
  ChoiceCorner corner = { .car = car,
                          .targets = car->targets,
                          .carrier = question->carrier,
                          .measured = car_measured_side (car, side),
                          .adjustment = car_side_adjustment (setup, side),
                          .tyre = car_tyre_shape (car),
                          .strut = car_strut_shape (car),
                          .has_strut = car_has_strut_shape (car),
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

static gboolean
aims_for (const ChoiceCorner *corner, Aim aim)
{
  const GArray *targets = corner->targets;

  for (guint i = 0; i < targets->len; i++)
    if (g_array_index (targets, CarTarget, i).aim == aim)
      return TRUE;
  return FALSE;
}

/* The toe that the tie rod as it was would leave. Only where that is aimed for and
 * differs. */
static gboolean
find_toe_before_reset (const ChoiceCorner *corner,
                       const Adjustment *adjustment,
                       double *toe)
{
  Adjustment as_moved = *adjustment;
  Corner before;
  Pose pose;

  if (adjustment->toe == TOE_AS_MOVED || !aims_for (corner, AIM_TOE_CHANGE))
    return TRUE;
  as_moved.toe = TOE_AS_MOVED;
  corner_assemble (&corner->measured, &as_moved, &before);
  if (pose_at_travel (&before, adjustment->lowering, 0.0, NULL, &pose) != POSE_OK)
    return FALSE;
  *toe = atan2 (pose.spin_axis.x, pose.spin_axis.y);
  return TRUE;
}

static double
strut_length (const Corner *linkage, const Pose *pose)
{
  return vec3_distance (linkage->upper_mount, pose->strut_foot);
}

static void
measure_room (const ChoiceCorner *corner,
              const Corner *linkage,
              double length,
              double *room)
{
  const TyreClearance none = { .room = { INFINITY, INFINITY, INFINITY } };
  const TyreClearance clearance =
      corner->has_strut ? tyre_clearance (linkage, &corner->tyre, &corner->strut, length)
                        : none;

  memcpy (room, clearance.room, sizeof clearance.room);
}

static gboolean
probe_travel (const ChoiceCorner *corner,
              const Corner *linkage,
              const Pose *standing,
              double *longest,
              double *outputs)
{
  ChoiceTravel travel;

  if (!choice_travel_solve (linkage, standing, corner->travel, corner->strut_as_measured,
                            &travel))
    return FALSE;
  for (int i = 0; i < TOE_CURVE_STATIONS; i++) {
    outputs[OUTPUT_TOE + i] = DEGREES (travel.toe[i]);
    outputs[OUTPUT_CHORD_2 + i] = travel.chord_2[i];
  }
  *longest = travel.longest;
  return TRUE;
}

/* The strut is longest at the end of the droop, unless the linkage is a strange one. */
static gboolean
probe_droop (const ChoiceCorner *corner,
             const Corner *linkage,
             const Pose *standing,
             double *longest)
{
  Pose droop;

  if (!corner->has_strut || corner->strut.spring_radius <= 0.0)
    return TRUE;
  if (pose_at_travel (linkage, corner->travel.standing + corner->travel.from, 0.0,
                      standing, &droop) != POSE_OK)
    return FALSE;
  *longest = fmax (*longest, strut_length (linkage, &droop));
  return TRUE;
}

gboolean
choice_corner_probe (const ChoiceCorner *corner,
                     MountOffset mount,
                     double camber_bolt,
                     gboolean is_through_travel,
                     double outputs[N_OUTPUTS])
{
  const Adjustment adjustment = choice_corner_adjust (corner, mount, camber_bolt);
  const double off_centre = choice_corner_off_centre (corner, mount);
  Corner linkage;
  Station station;

  corner_assemble (&corner->measured, &adjustment, &linkage);
  if (station_solve (&linkage, adjustment.lowering, 0.0, &station) != POSE_OK)
    return FALSE;

  const double *quantity = station.measures.value;
  double toe = quantity[QUANTITY_TOE_IN],
         longest = strut_length (&linkage, &station.pose);

  if (!find_toe_before_reset (corner, &adjustment, &toe) ||
      !(is_through_travel
            ? probe_travel (corner, &linkage, &station.pose, &longest, outputs)
            : probe_droop (corner, &linkage, &station.pose, &longest)))
    return FALSE;
  for (Aim aim = 0; aim < N_AIMS; aim++)
    outputs[OUTPUT_AIM + aim] = choice_corner_aim (corner, aim, quantity, toe, NAN);
  outputs[OUTPUT_INBOARD] = mount.inboard;
  outputs[OUTPUT_REARWARD] = mount.rearward;
  outputs[OUTPUT_OFF_CENTRE_2] = off_centre * off_centre;
  measure_room (corner, &linkage, longest, &outputs[OUTPUT_ROOM]);
  return TRUE;
}
