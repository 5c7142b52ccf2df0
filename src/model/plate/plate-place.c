/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where a plate can put the bearing, and which of these places comes nearest to one.
 *
 * In plan, on either side of the car, x is inboard and y is rearward; an angle t runs
 * from inboard to rearward, so its direction is (cos t, sin t).
 *
 * Swapping. Lay the two plates of a car on the bench as they sit in it, left at the left:
 * each is the other's picture in a mirror that stands along the car. Now carry the right
 * plate over to the left tower without turning it. What pointed inboard on the right (to
 * the left) points outboard there, and rearward stays rearward:
 *
 *   (x, y) → (−x, y)
 *
 * Then it is turned about the vertical by swap_turn_deg = s, counted like t, until its
 * bolts meet the tower's:
 *
 *   (x, y) → (x cos s − y sin s, x sin s + y cos s)
 *
 * With s = −90° both together are (x, y) → (y, x): a slot made for camber then sets
 * caster. With s = 0 only inboard and outboard change places. Both steps keep distances,
 * so the nearest place of a swapped plate is the nearest place of the plate itself to the
 * target taken back through them. */

#include "model/plate/plate.h"

#include <math.h>

#define DEGREE (G_PI / 180.0)
#define FULL_TURN 360.0
#define SAME_TURN 1e-9 /* degrees: what rounding leaves of a full turn */

typedef struct {
  double x, y; /* inboard, rearward */
} InPlan;

/* Exact at the quarter turns, so that square plates stay square to the last bit. */
static InPlan
direction_at (double degrees)
{
  const double turn = fmod (degrees, FULL_TURN);

  if (turn == 0.0)
    return (InPlan){ 1.0, 0.0 };
  if (turn == 90.0 || turn == -270.0)
    return (InPlan){ 0.0, 1.0 };
  if (fabs (turn) == 180.0)
    return (InPlan){ -1.0, 0.0 };
  if (turn == -90.0 || turn == 270.0)
    return (InPlan){ 0.0, -1.0 };
  return (InPlan){ cos (turn * DEGREE), sin (turn * DEGREE) };
}

static InPlan
swap (const Plate *plate, InPlan place)
{
  const InPlan turn = direction_at (plate->swap_turn_deg);
  const InPlan mirrored = { -place.x, place.y };

  return (InPlan){ mirrored.x * turn.x - mirrored.y * turn.y,
                   mirrored.x * turn.y + mirrored.y * turn.x };
}

static InPlan
swap_back (const Plate *plate, InPlan place)
{
  const InPlan turn = direction_at (plate->swap_turn_deg);
  const InPlan mirrored = { place.x * turn.x + place.y * turn.y,
                            -place.x * turn.y + place.y * turn.x };

  return (InPlan){ -mirrored.x, mirrored.y };
}

/* The mirror takes t to 180° − t, the turn adds s. */
double
plate_scale_direction (const Plate *plate, PlateScaleName scale, gboolean is_swapped)
{
  const double as_made =
      plate->direction_deg + (scale == PLATE_SECOND_SCALE ? 90.0 : 0.0);
  const double turn =
      fmod (is_swapped ? 180.0 - as_made + plate->swap_turn_deg : as_made, FULL_TURN);

  return turn < 0.0 ? turn + FULL_TURN : turn;
}

guint
plate_n_ways (const Plate *plate)
{
  switch (plate->kind) {
  case PLATE_SLOT:
    return 1;
  case PLATE_CROSSED_SLOTS:
    return 2;
  case PLATE_ECCENTRIC:
    return plate->turns_deg->len > 0 ? 0 : 1;
  default:
    return 0;
  }
}

guint
plate_n_places (const Plate *plate)
{
  switch (plate->kind) {
  case PLATE_FIXED:
    return 1;
  case PLATE_HOLES:
    return plate->holes->len;
  case PLATE_ECCENTRIC:
    return plate->turns_deg->len;
  default:
    return 0;
  }
}

PlateScale
plate_along_range (const Plate *plate)
{
  if (plate_n_ways (plate) == 0)
    return (PlateScale){ 0.0, 0.0 };
  if (plate->kind == PLATE_ECCENTRIC)
    return (PlateScale){ plate->turn_least_deg, plate->turn_most_deg };
  return plate->along;
}

PlateScale
plate_across_range (const Plate *plate)
{
  return plate_n_ways (plate) == 2 ? plate->across : (PlateScale){ 0.0, 0.0 };
}

static double
keep_within (PlateScale scale, double value)
{
  return CLAMP (value, scale.least, scale.most);
}

static InPlan
place_on_scales (const Plate *plate, double along, double across)
{
  const InPlan direction = direction_at (plate->direction_deg);

  along = keep_within (plate_along_range (plate), along);
  across = keep_within (plate_across_range (plate), across);
  return (InPlan){ plate->inboard_mm + along * direction.x - across * direction.y,
                   plate->rearward_mm + along * direction.y + across * direction.x };
}

static InPlan
place_on_circle (const Plate *plate, double turn)
{
  const InPlan direction = direction_at (turn);

  return (InPlan){ plate->inboard_mm + plate->radius_mm * direction.x,
                   plate->rearward_mm + plate->radius_mm * direction.y };
}

static double
turn_of (const Plate *plate, PlateSetting setting)
{
  if (plate->turns_deg->len > 0)
    return g_array_index (plate->turns_deg, double,
                          MIN (setting.place, plate->turns_deg->len - 1));
  return keep_within (plate_along_range (plate), setting.along);
}

/* Of the plate as it is made: not swapped. */
static InPlan
place_unswapped (const Plate *plate, PlateSetting setting)
{
  const InPlan zero = { plate->inboard_mm, plate->rearward_mm };

  if (plate->kind == PLATE_SLOT || plate->kind == PLATE_CROSSED_SLOTS)
    return place_on_scales (plate, setting.along, setting.across);
  if (plate->kind == PLATE_ECCENTRIC)
    return place_on_circle (plate, turn_of (plate, setting));
  if (plate->kind != PLATE_HOLES)
    return zero;
  g_return_val_if_fail (plate->holes->len > 0, zero);

  const PlateHole *hole = &g_array_index (plate->holes, PlateHole,
                                          MIN (setting.place, plate->holes->len - 1));
  return (InPlan){ hole->inboard_mm, hole->rearward_mm };
}

MountOffset
plate_place (const Plate *plate, PlateSetting setting)
{
  InPlan place = place_unswapped (plate, setting);

  if (setting.is_swapped)
    place = swap (plate, place);
  return (MountOffset){ .inboard = place.x, .rearward = place.y, .up = plate->raises_mm };
}

static PlateSetting
nearest_of_list (const Plate *plate, InPlan target)
{
  const guint n = plate_n_places (plate);
  PlateSetting best = { 0 };
  double least = INFINITY;

  for (guint i = 0; i < n; i++) {
    const InPlan place = place_unswapped (plate, (PlateSetting){ .place = i });
    const double distance = hypot (place.x - target.x, place.y - target.y);

    if (distance < least) {
      least = distance;
      best.place = i;
    }
  }
  return best;
}

/* The target square to the scales; a scale that ends before it stands at its end. */
static PlateSetting
nearest_on_scales (const Plate *plate, InPlan target)
{
  const InPlan direction = direction_at (plate->direction_deg);
  const double x = target.x - plate->inboard_mm, y = target.y - plate->rearward_mm;

  return (PlateSetting){
    .along = keep_within (plate->along, x * direction.x + y * direction.y),
    .across = keep_within (plate_across_range (plate), y * direction.x - x * direction.y)
  };
}

/* The turn that points at the target, or that end of the range which is fewer degrees
 * away: on a circle the nearer by angle is the nearer. */
static PlateSetting
nearest_on_circle (const Plate *plate, InPlan target)
{
  const double x = target.x - plate->inboard_mm, y = target.y - plate->rearward_mm;
  const double least = plate->turn_least_deg, most = plate->turn_most_deg;
  PlateSetting setting = { .along = least };

  if (x == 0.0 && y == 0.0)
    return setting;

  const double past_least = fmod (atan2 (y, x) / DEGREE - least, FULL_TURN);
  const double turn = past_least < 0.0 ? past_least + FULL_TURN : past_least;
  const double short_of_least = FULL_TURN - turn, past_most = turn - (most - least);
  if (short_of_least <= MAX (past_most, SAME_TURN))
    return setting;
  setting.along = past_most > 0.0 ? most : least + turn;
  return setting;
}

PlateSetting
plate_nearest (const Plate *plate, MountOffset mount, gboolean is_swapped)
{
  const InPlan at = { mount.inboard, mount.rearward };
  const InPlan target = is_swapped ? swap_back (plate, at) : at;
  PlateSetting setting;

  if (plate_n_ways (plate) == 0)
    setting = nearest_of_list (plate, target);
  else if (plate->kind == PLATE_ECCENTRIC)
    setting = nearest_on_circle (plate, target);
  else
    setting = nearest_on_scales (plate, target);
  setting.is_swapped = is_swapped;
  return setting;
}
