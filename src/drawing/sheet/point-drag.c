/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/sheet/point-drag.h"

#include <glib.h>

#define FINE 0.1
/* Of values that a drag gives, mm: what a screen shows is what is set. */
#define SNAP 0.1

/* An axis that did not move keeps its value to the bit. */
static double
moved_value (double value, double way, double least, double most)
{
  if (way == 0.0)
    return value;
  return CLAMP (round ((value + way) / SNAP) / (1.0 / SNAP), least, most);
}

static PointPlace
moved_place (PointPlace place, SheetHandle handle, TravelLimits limits, Vec3 way)
{
  const double most = POINT_DRAG_MOST_MOUNT;
  MountOffset *mount = &place.mount;

  switch (handle) {
  case SHEET_HANDLE_MOUNT:
    mount->inboard = moved_value (mount->inboard, -way.y, -most, most);
    mount->rearward = moved_value (mount->rearward, -way.x, -most, most);
    mount->up = moved_value (mount->up, way.z, -most, most);
    break;
  case SHEET_HANDLE_WHEEL:
    place.travel = moved_value (place.travel, way.z, limits.least, limits.most);
    break;
  case SHEET_HANDLE_HEIGHT:
    place.lowering = moved_value (place.lowering, -way.z, limits.least, limits.most);
    break;
  default:
    break;
  }
  return place;
}

PointDrag
point_drag_begin (SheetHandle handle,
                  SheetViewName view,
                  PointPlace start,
                  TravelLimits limits,
                  double x,
                  double y)
{
  return (PointDrag){ .handle = handle,
                      .view = view,
                      .limits = limits,
                      .start = start,
                      .place = start,
                      .x = x,
                      .y = y };
}

PointPlace
point_drag_to (PointDrag *drag, const Sheet *sheet, double x, double y, bool fine)
{
  const Vec3 way = sheet_move (sheet, drag->view, x - drag->x, y - drag->y);

  drag->x = x;
  drag->y = y;
  drag->moved = vec3_along (drag->moved, fine ? FINE : 1.0, way);
  drag->place = moved_place (drag->start, drag->handle, drag->limits, drag->moved);
  return drag->place;
}

PointPlace
point_drag_cancel (PointDrag *drag)
{
  drag->place = drag->start;
  drag->moved = (Vec3){ 0 };
  return drag->place;
}

static Vec3
nudge_way (SheetViewName view, double right, double up)
{
  switch (view) {
  case SHEET_FRONT:
    return (Vec3){ 0.0, right, up };
  case SHEET_SIDE:
    return (Vec3){ right, 0.0, up };
  default:
    return (Vec3){ -up, right, 0.0 };
  }
}

PointPlace
point_nudge (PointPlace place,
             SheetHandle handle,
             SheetViewName view,
             TravelLimits limits,
             PointStep step,
             int right,
             int up)
{
  static const double mm[] = {
    [POINT_STEP_FINE] = 0.1, [POINT_STEP_PLAIN] = 1.0, [POINT_STEP_COARSE] = 5.0
  };

  return moved_place (place, handle, limits,
                      nudge_way (view, mm[step] * right, mm[step] * up));
}
