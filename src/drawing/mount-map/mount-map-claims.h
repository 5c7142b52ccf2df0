/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Room on the map: boxes, turned or not, that no text may lie on. */

#pragma once

#include "drawing/sheet/sheet-layout.h"

typedef struct {
  Pixel centre, along; /* a unit vector: which way its width runs */
  double half_width, half_height;
} MapBox;

MapBox map_box_upright (PixelBox box);
/* As wide as the way from @a to @b, and so far to either side. */
MapBox map_box_about (Pixel a, Pixel b, double reach);
/* The same with more room all round. */
MapBox map_box_grown (MapBox box, double room);
void map_box_corners (const MapBox *box, Pixel corners[4]);
bool map_boxes_meet (const MapBox *a, const MapBox *b);

#define MAP_MOST_CLAIMS 320
typedef struct {
  MapBox boxes[MAP_MOST_CLAIMS];
  unsigned n;
} MapClaims;

void map_claim (MapClaims *claims, MapBox box);
/* The line from @a to @b. */
void map_claim_line (MapClaims *claims, Pixel a, Pixel b);
bool map_is_free (const MapClaims *claims, const MapBox *box);
