/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The opening in the tower, hatched outside as what is fixed to the body is on the sheet,
 * and the ring within which the bearing's centre has its margin to the edge. */

#include "drawing/mount-map/mount-map-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Pixels at ordinary type size. */
#define HATCH_STEP 9.0
#define HATCH_DEPTH 6.0
#define CLAIM_STEP 12.0
#define NOTE_AWAY 4.0

static double
opening_pixels (const MapPen *pen)
{
  return map_opening_radius (pen->view->car) * pen->layout->scale;
}

/* NAN or below 0 where there is none. */
static double
room_pixels (const MapPen *pen)
{
  return map_room_radius (pen->view) * pen->layout->scale;
}

static Pixel
centre_pixel (const MapPen *pen)
{
  return map_pixel (pen->layout, map_opening_centre (pen->view->car));
}

static Pixel
on_circle (Pixel centre, double radius, double angle)
{
  return (Pixel){ centre.x + radius * cos (angle), centre.y + radius * sin (angle) };
}

static void
claim_circle (const MapPen *pen, MapClaims *claims, double radius, double reach)
{
  const Pixel centre = centre_pixel (pen);
  const int n = MAX (8, (int) (2.0 * G_PI * radius / (CLAIM_STEP * pen->unit)));

  for (int i = 0; i < n; i++) {
    const Pixel a = on_circle (centre, radius, 2.0 * G_PI * i / n),
                b = on_circle (centre, radius, 2.0 * G_PI * (i + 1) / n);

    if (pixel_box_has (pen->layout->plot, a) || pixel_box_has (pen->layout->plot, b))
      map_claim (claims, map_box_about (a, b, reach));
  }
}

/* Inside the ring, where the bearing does not get by. */
static void
note_room (const MapPen *pen, MapClaims *claims, MapNotes *notes, double radius)
{
  static const double angles[] = { -90, 90, 180, 0, -45, 45, 135, -135 };
  const Pixel centre = centre_pixel (pen);
  const char *text = _ ("edge limit");

  for (gsize i = 0; i < G_N_ELEMENTS (angles); i++) {
    const double angle = angles[i] * G_PI / 180.0;

    if (map_note_beside (pen, claims, notes, text, on_circle (centre, radius, angle),
                         NOTE_AWAY * pen->unit, (Pixel){ -cos (angle), -sin (angle) },
                         pen->theme->soft_ink))
      return;
  }
}

void
map_tower_claim_strokes (const MapPen *pen, MapClaims *strokes)
{
  const double opening = opening_pixels (pen), room = room_pixels (pen);
  const double deep = HATCH_DEPTH * pen->unit;

  if (opening > 0.0)
    claim_circle (pen, strokes, opening + deep / 2.0, deep / 2.0 + 1.0);
  if (room > 0.0)
    claim_circle (pen, strokes, room, 1.5);
}

void
map_tower_note (const MapPen *pen, MapClaims *claims, MapNotes *notes)
{
  if (room_pixels (pen) > 0.0)
    note_room (pen, claims, notes, room_pixels (pen));
}

static void
draw_opening (const MapPen *pen, Pixel centre, double radius)
{
  const double deep = HATCH_DEPTH * pen->unit;
  const int n = MAX (8, (int) (2.0 * G_PI * radius / (HATCH_STEP * pen->unit)));

  theme_use (pen->cr, pen->theme->body);
  theme_line (pen->cr, LINE_FULL, 0.8 * pen->theme->thin);
  for (int i = 0; i < n; i++) {
    const double angle = 2.0 * G_PI * i / n;
    const Pixel foot = on_circle (centre, radius, angle);
    /* 45° to the edge */
    const Pixel top = on_circle (centre, radius + deep, angle + deep / radius);

    cairo_move_to (pen->cr, foot.x, foot.y);
    cairo_line_to (pen->cr, top.x, top.y);
  }
  cairo_stroke (pen->cr);
  theme_line (pen->cr, LINE_FULL, pen->theme->line);
  cairo_arc (pen->cr, centre.x, centre.y, radius, 0.0, 2.0 * G_PI);
  cairo_stroke (pen->cr);
}

void
map_tower_draw (const MapPen *pen)
{
  const double opening = opening_pixels (pen), room = room_pixels (pen);
  const Pixel centre = centre_pixel (pen);

  if (opening <= 0.0)
    return;
  draw_opening (pen, centre, opening);
  if (!(room > 0.0))
    return;
  theme_use (pen->cr, pen->theme->soft_ink);
  theme_line (pen->cr, LINE_DASHED, 0.6 * pen->theme->thin);
  cairo_new_sub_path (pen->cr);
  cairo_arc (pen->cr, centre.x, centre.y, room, 0.0, 2.0 * G_PI);
  cairo_stroke (pen->cr);
}
