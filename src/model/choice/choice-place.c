/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/choice/choice-corner.h"
#include "model/choice/choice-terms.h"

#include <math.h>

#define GRAVITY                                                                          \
  9.80665          /* m/s², standard gravity: 3rd General Conference on Weights and     \
                      Measures, 1901 */
#define POINT 1e-9 /* mm; wide enough to be a bearing that is given */
#define RADIANS(degrees) (G_PI / 180.0 * (degrees))

/* What no answer has come to yet. */
static ChoicePlace
unknown_place (const ChoiceCorner *corner,
               const Plate *plate,
               PlateSetting setting,
               double camber_bolt)
{
  ChoicePlace place = {
    .setting = setting,
    .mount = plate_place (plate, setting),
    .camber_bolt = corner->adjustment.corrections.clamp_tilt + camber_bolt,
    .toe_before_reset = NAN,
    .tie_rod_change = NAN,
    .tie_rod_turns = NAN,
    .bump_steer = NAN,
    .clearance = { .least = NAN },
    .side_force = NAN,
    .bearing_tilt = NAN,
    .cost = INFINITY,
  };

  for (int i = 0; i < N_QUANTITIES; i++)
    place.value[i] = NAN;
  for (int i = 0; i < N_STRUT_PARTS; i++)
    place.clearance.room[i] = NAN;
  for (int i = 0; i < N_AIMS; i++)
    place.aim_value[i] = place.aim_miss[i] = NAN;
  place.edge_margin = choice_corner_most_off_centre (corner, plate, 0.0) -
                      choice_corner_off_centre (corner, place.mount);
  return place;
}

static gboolean
stand (const ChoiceCorner *corner, const Adjustment *adjustment, ChoicePlace *place)
{
  MountPlace solved;

  if (mount_place_solve (&corner->measured, adjustment, place->mount, &solved) != POSE_OK)
    return FALSE;
  for (int i = 0; i < N_QUANTITIES; i++)
    place->value[i] = solved.value[i];
  place->toe_before_reset = solved.toe_as_moved;
  place->tie_rod_change = solved.tie_rod_change;
  place->tie_rod_turns = solved.tie_rod_change / corner->car->thread_pitch_mm;
  place->bearing_tilt = solved.bearing_tilt;
  return TRUE;
}

/* Half the front axle stands on one contact. */
static void
carry (const ChoiceCorner *corner, const Corner *linkage, ChoicePlace *place)
{
  const double weight = corner->car->body.front_mass_kg * GRAVITY / 2.0;
  const CornerLoad load = { .contact = { 0.0, 0.0, weight } };
  JointForces forces;
  Pose pose;

  if (pose_at_travel (linkage, corner->adjustment.lowering, 0.0, NULL, &pose) != POSE_OK)
    return;
  const SpringHold hold = spring_hold_alone (linkage, &pose, corner->carrier);
  if (joint_forces (linkage, &pose, &load, &hold, &forces))
    place->side_force = vec3_length (forces.side);
}

static double
tilt_of (const ChoiceCorner *corner, const Pose *pose)
{
  const Vec3 a = pose->strut_direction, b = corner->strut_as_measured;

  return atan2 (vec3_length (vec3_cross (a, b)), vec3_dot (a, b));
}

/* The spring's upper end follows the body, and a longer spring leaves less room. */
static gboolean
travel (const ChoiceCorner *corner, const Corner *linkage, ChoicePlace *place)
{
  ToeCurve curve;
  double longest = place->value[QUANTITY_STRUT_LENGTH];

  if (!toe_curve_solve (linkage, corner->travel, &curve))
    return FALSE;
  place->bump_steer = 0.0;
  for (int i = 0; i < TOE_CURVE_STATIONS; i++) {
    const Pose *pose = &curve.at[i];

    longest = fmax (longest, vec3_distance (linkage->upper_mount, pose->strut_foot));
    place->bearing_tilt = fmax (place->bearing_tilt, tilt_of (corner, pose));
    if (fabs (curve.toe[i]) > fabs (place->bump_steer))
      place->bump_steer = curve.toe[i];
  }
  if (corner->has_strut)
    place->clearance = tyre_clearance (linkage, &corner->tyre, &corner->strut, longest);
  return TRUE;
}

static guint
limits_passed (const ChoiceCorner *corner, const Plate *plate, const ChoicePlace *place)
{
  const CarLimits *limits = &corner->car->limits;
  guint faults = 0;

  if (place->clearance.least < limits->tyre_clearance_mm)
    faults |= CHOICE_TYRE_TOO_NEAR;
  if (place->edge_margin < limits->edge_margin_mm)
    faults |= CHOICE_EDGE_TOO_NEAR;
  if (plate->bearing_tilt_deg > 0.0 &&
      place->bearing_tilt > RADIANS (plate->bearing_tilt_deg))
    faults |= CHOICE_BEARING_TILTS_TOO_FAR;
  return faults;
}

double
choice_miss (Aim aim, double value, double least, double most)
{
  const double miss = value > most ? value - most : value < least ? value - least : 0.0;

  return fabs (miss) <= CHOICE_SAME * aim_info (aim).unit_size ? 0.0 : miss;
}

static void
count_misses (const ChoiceCorner *corner, ChoicePlace *place)
{
  const GArray *targets = corner->targets;

  for (Aim aim = 0; aim < N_AIMS; aim++) {
    place->aim_value[aim] =
        choice_corner_aim (corner, aim, place->value, place->toe_before_reset,
                           place->bump_steer);
    place->aim_miss[aim] = 0.0;
  }
  place->cost = 0.0;
  for (guint i = 0; i < targets->len; i++) {
    const CarTarget *target = &g_array_index (targets, CarTarget, i);
    const double value = place->aim_value[target->aim];
    const double miss =
        isnan (value) ? NAN
                      : choice_miss (target->aim, value, target->least, target->most);
    const double n_units = miss / aim_info (target->aim).unit_size;

    place->aim_miss[target->aim] = miss;
    place->cost += isnan (miss) ? INFINITY : target->weight * term_cost (fabs (n_units));
    if (miss != 0.0)
      place->faults |= CHOICE_MISSES_AIM;
  }
}

ChoicePlace
choice_corner_place (const ChoiceCorner *corner,
                     const Plate *plate,
                     PlateSetting setting,
                     double camber_bolt)
{
  ChoicePlace place = unknown_place (corner, plate, setting, camber_bolt);
  const Adjustment adjustment = choice_corner_adjust (corner, place.mount, camber_bolt);
  Corner linkage;

  if (!stand (corner, &adjustment, &place)) {
    place.faults = CHOICE_NOT_ASSEMBLED;
  } else {
    corner_assemble (&corner->measured, &adjustment, &linkage);
    carry (corner, &linkage, &place);
    if (!travel (corner, &linkage, &place))
      place.faults = CHOICE_NOT_ASSEMBLED;
    count_misses (corner, &place);
  }
  place.faults |= limits_passed (corner, plate, &place);
  return place;
}

ChoicePlace
choice_place (const Car *car,
              const ChoiceQuestion *question,
              CarSide side,
              const Plate *plate,
              PlateSetting setting,
              double camber_bolt)
{
  const ChoiceCorner corner = choice_corner_of (car, question, side);

  return choice_corner_place (&corner, plate, setting, camber_bolt);
}

ChoicePlace
choice_place_of_mount (const Car *car,
                       const ChoiceQuestion *question,
                       CarSide side,
                       const Plate *fitted)
{
  const MountOffset mount =
      car_side_adjustment (car_setup (car, question->setup), side).mount;
  g_autoptr (Plate) there = fitted != NULL ? plate_copy (fitted) : plate_new ();

  there->kind = PLATE_FIXED;
  there->inboard_mm = mount.inboard;
  there->rearward_mm = mount.rearward;
  there->raises_mm = mount.up;
  if (there->bearing_diameter_mm <= 0.0)
    there->bearing_diameter_mm = POINT;
  return choice_place (car, question, side, there, (PlateSetting){ 0 }, 0.0);
}
