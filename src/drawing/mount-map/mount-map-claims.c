/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/mount-map/mount-map-claims.h"

#include <math.h>

#define LINE_REACH 2.0 /* pixels */

MapBox
map_box_upright (PixelBox box)
{
  return (MapBox){ { box.x + box.width / 2.0, box.y + box.height / 2.0 },
                   { 1.0, 0.0 },
                   box.width / 2.0,
                   box.height / 2.0 };
}

MapBox
map_box_about (Pixel a, Pixel b, double reach)
{
  const double length = hypot (b.x - a.x, b.y - a.y);
  const Pixel along = length > 0.0 ? (Pixel){ (b.x - a.x) / length, (b.y - a.y) / length }
                                   : (Pixel){ 1.0, 0.0 };

  return (MapBox){
    { (a.x + b.x) / 2.0, (a.y + b.y) / 2.0 }, along, length / 2.0 + reach, reach
  };
}

MapBox
map_box_grown (MapBox box, double room)
{
  box.half_width += room;
  box.half_height += room;
  return box;
}

void
map_box_corners (const MapBox *box, Pixel corners[4])
{
  static const double signs[4][2] = { { -1, -1 }, { 1, -1 }, { 1, 1 }, { -1, 1 } };

  for (int i = 0; i < 4; i++) {
    const double u = signs[i][0] * box->half_width, v = signs[i][1] * box->half_height;

    corners[i] = (Pixel){ box->centre.x + u * box->along.x - v * box->along.y,
                          box->centre.y + u * box->along.y + v * box->along.x };
  }
}

/* How far the box reaches from its centre in the direction @d. */
static double
reach_along (const MapBox *box, Pixel d)
{
  return box->half_width * fabs (d.x * box->along.x + d.y * box->along.y) +
         box->half_height * fabs (d.y * box->along.x - d.x * box->along.y);
}

/* Apart if some side of either parts them. */
bool
map_boxes_meet (const MapBox *a, const MapBox *b)
{
  const Pixel sides[] = {
    a->along, { -a->along.y, a->along.x }, b->along, { -b->along.y, b->along.x }
  };
  const double dx = b->centre.x - a->centre.x, dy = b->centre.y - a->centre.y;

  for (int i = 0; i < 4; i++)
    if (fabs (dx * sides[i].x + dy * sides[i].y) >=
        reach_along (a, sides[i]) + reach_along (b, sides[i]))
      return false;
  return true;
}

void
map_claim (MapClaims *claims, MapBox box)
{
  if (claims->n < MAP_MOST_CLAIMS)
    claims->boxes[claims->n++] = box;
}

void
map_claim_line (MapClaims *claims, Pixel a, Pixel b)
{
  map_claim (claims, map_box_about (a, b, LINE_REACH));
}

bool
map_is_free (const MapClaims *claims, const MapBox *box)
{
  for (unsigned i = 0; i < claims->n; i++)
    if (map_boxes_meet (&claims->boxes[i], box))
      return false;
  return true;
}
