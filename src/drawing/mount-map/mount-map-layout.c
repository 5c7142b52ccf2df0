/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/mount-map/mount-map-layout.h"

#include <math.h>

/* mm */
#define LEAST_SPAN 50.0
#define LEAST_ROOM 8.0 /* about mounts and plates */
#define OPENING_ROOM 3.0
#define BOUND_STEP 2.0
#define REACH_STATIONS 24

/* Pixels at ordinary type size. */
#define LEFT_RULER 34.0
#define BOTTOM_RULER 21.0
#define LEGEND 22.0
#define MARGIN 10.0

MountOffset
map_mount (const MountMapView *view, guint setup)
{
  return car_side_adjustment (car_setup (view->car, setup), view->side).mount;
}

gboolean
map_shows_setup (const MountMapView *view, guint setup)
{
  return setup != view->setup &&
         (setup == view->car->baseline || !car_setup (view->car, setup)->is_hidden);
}

MountOffset
map_plate_at (const MountMapView *view, double along, double across)
{
  const PlateScale a = plate_along_range (view->plate),
                   b = plate_across_range (view->plate);

  return plate_place (view->plate,
                      (PlateSetting){ .along = a.least + along * (a.most - a.least),
                                      .across = b.least + across * (b.most - b.least),
                                      .is_swapped = view->is_swapped });
}

MountOffset
map_plate_place (const MountMapView *view, guint place)
{
  return plate_place (view->plate,
                      (PlateSetting){ .place = place, .is_swapped = view->is_swapped });
}

double
map_opening_radius (const Car *car)
{
  return car->tower.opening_diameter_mm / 2.0;
}

MountOffset
map_opening_centre (const Car *car)
{
  return (MountOffset){ car->tower.opening_inboard_mm, car->tower.opening_rearward_mm,
                        0.0 };
}

double
map_room_radius (const MountMapView *view)
{
  const double opening = map_opening_radius (view->car);

  if (opening <= 0.0 || view->plate == NULL || view->plate->bearing_diameter_mm <= 0.0)
    return NAN;
  return opening - view->plate->bearing_diameter_mm / 2.0 -
         view->car->limits.edge_margin_mm;
}

static void
extend (FieldWindow *bounds, MountOffset at, double room)
{
  bounds->inboard_from = fmin (bounds->inboard_from, at.inboard - room);
  bounds->inboard_to = fmax (bounds->inboard_to, at.inboard + room);
  bounds->rearward_from = fmin (bounds->rearward_from, at.rearward - room);
  bounds->rearward_to = fmax (bounds->rearward_to, at.rearward + room);
}

static void
extend_by_plate (FieldWindow *bounds, const MountMapView *view)
{
  if (view->plate == NULL)
    return;
  for (guint i = 0; i < plate_n_places (view->plate); i++)
    extend (bounds, map_plate_place (view, i), LEAST_ROOM);
  for (int i = 0; plate_n_ways (view->plate) > 0 && i <= REACH_STATIONS; i++)
    for (int across = 0; across <= 1; across++)
      extend (bounds, map_plate_at (view, i / (double) REACH_STATIONS, across),
              LEAST_ROOM);
}

static void
widen (double *from, double *to)
{
  const double lacking = fmax (LEAST_SPAN - (*to - *from), 0.0);

  *from = BOUND_STEP * floor ((*from - lacking / 2.0) / BOUND_STEP);
  *to = BOUND_STEP * ceil ((*to + lacking / 2.0) / BOUND_STEP);
}

FieldWindow
map_bounds (const MountMapView *view)
{
  FieldWindow bounds = { -LEAST_ROOM, LEAST_ROOM, -LEAST_ROOM, LEAST_ROOM };
  const double opening = map_opening_radius (view->car);

  if (opening > 0.0)
    extend (&bounds, map_opening_centre (view->car), opening + OPENING_ROOM);
  extend_by_plate (&bounds, view);
  for (guint i = 0; i < view->car->setups->len; i++)
    if (i == view->setup || map_shows_setup (view, i))
      extend (&bounds, map_mount (view, i), LEAST_ROOM);
  if (view->best != NULL)
    extend (&bounds, view->best->mount, LEAST_ROOM);
  widen (&bounds.inboard_from, &bounds.inboard_to);
  widen (&bounds.rearward_from, &bounds.rearward_to);
  return bounds;
}

static PixelBox
place_plot (double unit, double width, double height)
{
  const double left = round (LEFT_RULER * unit), top = round (MARGIN * unit);
  const double below = round ((BOTTOM_RULER + LEGEND) * unit);

  return (PixelBox){ left, top, fmax (width - left - top, 20.0),
                     fmax (height - top - below, 20.0) };
}

MapLayout
map_layout_fit (const Theme *theme, FieldWindow bounds, double width, double height)
{
  const double unit = theme->text / theme_light ().text;
  const PixelBox plot = place_plot (unit, width, height);
  const double scale = fmin (plot.width / (bounds.inboard_to - bounds.inboard_from),
                             plot.height / (bounds.rearward_to - bounds.rearward_from));
  const double in = (bounds.inboard_from + bounds.inboard_to) / 2.0,
               back = (bounds.rearward_from + bounds.rearward_to) / 2.0;
  const double half_in = plot.width / scale / 2.0, half_back = plot.height / scale / 2.0;

  return (MapLayout){
    .unit = unit,
    .canvas = { 0, 0, width, height },
    .plot = plot,
    .bounds = bounds,
    .window = { in - half_in, in + half_in, back - half_back, back + half_back },
    .scale = scale,
    .legend_y = height - round (7.0 * unit),
  };
}

Pixel
map_pixel (const MapLayout *layout, MountOffset at)
{
  return (Pixel){
    layout->plot.x + (layout->window.inboard_to - at.inboard) * layout->scale,
    layout->plot.y + (layout->window.rearward_to - at.rearward) * layout->scale
  };
}

MountOffset
map_offset (const MapLayout *layout, Pixel p)
{
  return (MountOffset){
    layout->window.inboard_to - (p.x - layout->plot.x) / layout->scale,
    layout->window.rearward_to - (p.y - layout->plot.y) / layout->scale, 0.0
  };
}
