/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/mount/mount-view-steps.h"

#include "drawing/sheet/point-drag.h"

#include <math.h>

#define STEPS_PER_UNIT 10.0 /* what a screen shows is what is set */
/* The cosine from which on a scale counts as going the way of the key. */
#define SAME_WAY 0.2
/* How much further a place counts for each mm that it lies beside the way of the key. */
#define BESIDE 2.0

static double
stepped (double value)
{
  return round (value * STEPS_PER_UNIT) / STEPS_PER_UNIT;
}

static double
stepped_within (double value, PlateScale range)
{
  return CLAMP (stepped (value), range.least, range.most);
}

static MountOffset
free_place (MountOffset m)
{
  const double most = POINT_DRAG_MOST_MOUNT;

  return (MountOffset){ CLAMP (stepped (m.inboard), -most, most),
                        CLAMP (stepped (m.rearward), -most, most), m.up };
}

static MountOffset
place_of (const MountRail *rail, PlateSetting setting)
{
  if (plate_n_ways (rail->plate) > 0)
    setting.along = stepped_within (setting.along, plate_along_range (rail->plate));
  if (plate_n_ways (rail->plate) > 1)
    setting.across = stepped_within (setting.across, plate_across_range (rail->plate));
  return plate_place (rail->plate, setting);
}

MountOffset
mount_rail_nearest (const MountRail *rail, MountOffset wanted)
{
  if (rail->plate == NULL)
    return free_place (wanted);
  return place_of (rail, plate_nearest (rail->plate, wanted, rail->is_swapped));
}

/* How far @to lies from @from the way of the key, and beside it. */
static double
way_to (MountOffset from, MountOffset to, int right, int up, double *beside)
{
  const double x = from.inboard - to.inboard, y = to.rearward - from.rearward;

  *beside = fabs (x * up - y * right);
  return x * right + y * up;
}

static MountOffset
nudge_places (const MountRail *rail, MountOffset from, int right, int up)
{
  PlateSetting setting = plate_nearest (rail->plate, from, rail->is_swapped);
  const MountOffset here = plate_place (rail->plate, setting);
  MountOffset best = here;
  double least = INFINITY;

  for (setting.place = 0; setting.place < plate_n_places (rail->plate); setting.place++) {
    const MountOffset there = plate_place (rail->plate, setting);
    double beside;
    const double way = way_to (here, there, right, up, &beside);
    const double cost = way + BESIDE * beside;

    if (way > SAME_WAY * hypot (way, beside) && cost < least) {
      least = cost;
      best = there;
    }
  }
  return best;
}

/* Of one scale of @setting: mm the way of the key for each unit of it, and mm in all. */
static double
scale_way (const MountRail *rail,
           const PlateSetting *setting,
           gboolean is_across,
           int right,
           int up,
           double *length)
{
  const PlateScale range =
      is_across ? plate_across_range (rail->plate) : plate_along_range (rail->plate);
  const double at = is_across ? setting->across : setting->along;
  const double least = MAX (at - 0.5, range.least), most = MIN (at + 0.5, range.most);
  PlateSetting before = *setting, after = *setting;
  double beside;

  *(is_across ? &before.across : &before.along) = least;
  *(is_across ? &after.across : &after.along) = most;

  const double way = way_to (plate_place (rail->plate, before),
                             plate_place (rail->plate, after), right, up, &beside);
  const double units = most > least ? most - least : 1.0;
  *length = hypot (way, beside) / units;
  return way / units;
}

/* A full turn has no ends. */
static double
turned_within (double turn, PlateScale range)
{
  if (range.most - range.least >= 360.0) {
    while (turn > range.most)
      turn -= 360.0;
    while (turn < range.least)
      turn += 360.0;
  }
  return turn;
}

static MountOffset
nudge_scales (const MountRail *rail, MountOffset from, double mm, int right, int up)
{
  PlateSetting setting = plate_nearest (rail->plate, from, rail->is_swapped);
  const gboolean has_across = plate_n_ways (rail->plate) > 1;
  double length, length_across = 0.0;
  const double along = scale_way (rail, &setting, FALSE, right, up, &length);
  const double across =
      has_across ? scale_way (rail, &setting, TRUE, right, up, &length_across) : 0.0;

  if (MAX (fabs (along), fabs (across)) <= SAME_WAY * MAX (length, length_across))
    return plate_place (rail->plate, setting);
  if (fabs (across) > fabs (along))
    setting.across += copysign (mm / length_across, across);
  else
    setting.along += copysign (mm / length, along);
  if (rail->plate->kind == PLATE_ECCENTRIC)
    setting.along = turned_within (setting.along, plate_along_range (rail->plate));
  return place_of (rail, setting);
}

MountOffset
mount_rail_nudge (const MountRail *rail, MountOffset from, double mm, int right, int up)
{
  if (rail->plate == NULL)
    return free_place (
        (MountOffset){ from.inboard - mm * right, from.rearward + mm * up, from.up });
  if (plate_n_ways (rail->plate) == 0)
    return nudge_places (rail, from, right, up);
  return nudge_scales (rail, from, mm, right, up);
}

MountOffset
mount_rail_walk (const MountRail *rail, MountOffset from, int steps)
{
  if (rail->plate == NULL || plate_n_places (rail->plate) == 0)
    return from;

  PlateSetting setting = plate_nearest (rail->plate, from, rail->is_swapped);
  const int n = (int) plate_n_places (rail->plate);

  setting.place = (guint) ((((int) setting.place + steps) % n + n) % n);
  return plate_place (rail->plate, setting);
}
