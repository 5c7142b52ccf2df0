/* SPDX-License-Identifier: GPL-3.0-or-later */
/* With ω and v for dθ/dt = 1, a direction d of the knuckle has d' = ω × d / lift by wheel
 * travel, a point P of it P' = (v_B + ω × (P − B)) / lift, and the arm θ' = 1 / lift.
 * From two stations the arm's next angle, h further on, is θ₂ = θ₁ + h θ₁' + h²/2 (θ₁' −
 * θ₀') / (z₁ − z₀). */
#include "model/choice/choice-travel.h"

#include <math.h>

#define MOST_OFF 1e-3 /* mm of travel: rates make good no more */

typedef struct {
  const Corner *linkage;
  ToeCurveRange range;
  Vec3 strut_as_measured;
  double standing_toe;
  ChoiceTravel *out;
} Walk;

static double
toe_of (Vec3 spin_axis)
{
  return atan2 (spin_axis.x, spin_axis.y);
}

static double
travel_at (ToeCurveRange range, int i)
{
  return range.standing + range.from +
         (range.to - range.from) * i / (TOE_CURVE_STATIONS - 1);
}

static Vec3
rate_of (const Pose *pose, Vec3 direction)
{
  return vec3_scale (vec3_cross (pose->turn_rate, direction), 1.0 / pose->lift);
}

static void
write_station (const Walk *walk, const Pose *pose, int i)
{
  const double off = travel_at (walk->range, i) - pose->travel;
  const Vec3 n = pose->spin_axis, n_rate = rate_of (pose, n);
  const double toe_rate = (n.y * n_rate.x - n.x * n_rate.y) / (n.x * n.x + n.y * n.y);
  const Vec3 chord = vec3_sub (pose->strut_direction, walk->strut_as_measured);
  const double chord_2_rate =
      2.0 * vec3_dot (chord, rate_of (pose, pose->strut_direction));
  const Vec3 strut = vec3_sub (pose->strut_foot, walk->linkage->upper_mount);
  const Vec3 foot_rate =
      vec3_add (vec3_scale (pose->ball_velocity, 1.0 / pose->lift),
                rate_of (pose, vec3_sub (pose->strut_foot, pose->ball_joint)));
  const double length = vec3_length (strut);

  walk->out->toe[i] = toe_of (n) - walk->standing_toe + off * toe_rate;
  walk->out->chord_2[i] = vec3_dot (chord, chord) + off * chord_2_rate;
  walk->out->longest =
      fmax (walk->out->longest, length + off * vec3_dot (strut, foot_rate) / length);
}

static double
foretell (const Pose *one, const Pose *zero, double travel)
{
  const double h = travel - one->travel;
  const double bend = (1.0 / one->lift - 1.0 / zero->lift) / (one->travel - zero->travel);

  return one->arm_angle + h / one->lift + h * h / 2.0 * bend;
}

/* By what the last two stations foretell, or step by step. */
static gboolean
find_station (
    const Walk *walk, const Pose *one, const Pose *zero, double travel, Pose *pose)
{
  if (one->travel != zero->travel &&
      pose_at_arm_angle (walk->linkage, foretell (one, zero, travel), 0.0, pose) ==
          POSE_OK &&
      pose->lift > 0.0 && fabs (pose->travel - travel) <= MOST_OFF)
    return TRUE;
  return pose_at_travel (walk->linkage, travel, 0.0, one, pose) == POSE_OK;
}

/* From the standing height outward, to the end of the range. */
static gboolean
walk_to_end (const Walk *walk, const Pose *standing, int from, int step)
{
  Pose before = *standing, earlier = *standing, here;

  for (int i = from; i >= 0 && i < TOE_CURVE_STATIONS; i += step) {
    if (!find_station (walk, &before, &earlier, travel_at (walk->range, i), &here))
      return FALSE;
    write_station (walk, &here, i);
    earlier = before;
    before = here;
  }
  return TRUE;
}

gboolean
choice_travel_solve (const Corner *linkage,
                     const Pose *standing,
                     ToeCurveRange range,
                     Vec3 strut_as_measured,
                     ChoiceTravel *travel)
{
  const Walk walk = { linkage, range, strut_as_measured, toe_of (standing->spin_axis),
                      travel };
  int first_above = 0;

  travel->longest = vec3_distance (linkage->upper_mount, standing->strut_foot);
  while (first_above < TOE_CURVE_STATIONS &&
         travel_at (range, first_above) < range.standing)
    first_above++;
  return walk_to_end (&walk, standing, first_above, 1) &&
         walk_to_end (&walk, standing, first_above - 1, -1);
}
