/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where the map lies on its canvas, and the way between places and pixels: true to scale,
 * outboard to the right, forward down. */

#pragma once

#include "drawing/mount-map/mount-map.h"
#include "drawing/sheet/sheet-layout.h"

typedef struct {
  double unit;        /* 1 at ordinary type size */
  PixelBox canvas;    /* without the title */
  PixelBox plot;      /* inside the rulers */
  FieldWindow bounds; /* mm: what has to be seen */
  FieldWindow window; /* mm: what is seen, as large as the plot */
  double scale;       /* pixels per mm */
  double legend_y;    /* its baseline */
} MapLayout;

/* What has to be seen: opening, reach of the plate, mounts, with some margin; in steps,
 * so that the map seldom shifts. */
FieldWindow map_bounds (const MountMapView *view);
MapLayout
map_layout_fit (const Theme *theme, FieldWindow bounds, double width, double height);

Pixel map_pixel (const MapLayout *layout, MountOffset at);
MountOffset map_offset (const MapLayout *layout, Pixel p);

/* Of a setup, on the side that is looked at. */
MountOffset map_mount (const MountMapView *view, guint setup);
/* Whether another setup than the one in hand has a marker. */
gboolean map_shows_setup (const MountMapView *view, guint setup);

/* Unit of what is @view->plate, at @part of its reach: along a slot or a circle. */
MountOffset map_plate_at (const MountMapView *view, double along, double across);
MountOffset map_plate_place (const MountMapView *view, guint place);

/* mm; not above 0 where the opening is not given. */
double map_opening_radius (const Car *car);
MountOffset map_opening_centre (const Car *car);
/* How far from that centre the bearing may stand with its edge margin; NAN where opening
 * or bearing are not given. */
double map_room_radius (const MountMapView *view);
