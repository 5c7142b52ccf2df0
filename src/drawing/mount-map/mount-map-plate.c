/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where the plate can put the bearing: a slot, a rectangle, a circle or a part of one, or
 * dots with their marks. */

#include "drawing/mount-map/mount-map-private.h"
#include "drawing/sheet/sheet-pen.h"

#include <math.h>

/* Pixels at ordinary type size. */
#define SLOT_HALF 7.0
#define DOT 4.0
#define LIT_DOT 6.0
#define LIT_RING 11.0
#define LEAST_REACH 12.0
#define NOTE_AWAY 7.0

#define ARC_STATIONS 72
#define ARC_CLAIMS 24

double
map_dot_reach (const MapLayout *layout)
{
  return fmax (LEAST_REACH, LEAST_REACH * layout->unit);
}

static Pixel
at_part (const MapPen *pen, double along, double across)
{
  return map_pixel (pen->layout, map_plate_at (pen->view, along, across));
}

static Pixel
at_place (const MapPen *pen, guint place)
{
  return map_pixel (pen->layout, map_plate_place (pen->view, place));
}

static gboolean
is_kind (const MapPen *pen, PlateKind kind)
{
  return pen->view->plate != NULL && pen->view->plate->kind == kind;
}

static gboolean
is_arc (const MapPen *pen)
{
  return is_kind (pen, PLATE_ECCENTRIC) && plate_n_ways (pen->view->plate) > 0;
}

static guint
n_dots (const MapPen *pen)
{
  return pen->view->plate != NULL ? plate_n_places (pen->view->plate) : 0;
}

static void
rectangle_corners (const MapPen *pen, Pixel corners[4])
{
  static const double parts[4][2] = { { 0, 0 }, { 1, 0 }, { 1, 1 }, { 0, 1 } };

  for (int i = 0; i < 4; i++)
    corners[i] = at_part (pen, parts[i][0], parts[i][1]);
}

static MapBox
dot_box (const MapPen *pen, guint place)
{
  const Pixel at = at_place (pen, place);

  return map_box_about (at, at, (DOT + 1.0) * pen->unit);
}

void
map_plate_claim (const MapPen *pen, MapClaims *claims)
{
  for (guint i = 0; i < n_dots (pen); i++)
    map_claim (claims, dot_box (pen, i));
}

void
map_plate_claim_strokes (const MapPen *pen, MapClaims *strokes)
{
  Pixel corners[4];

  if (is_kind (pen, PLATE_SLOT))
    map_claim (strokes, map_box_about (at_part (pen, 0, 0), at_part (pen, 1, 0),
                                       (SLOT_HALF + 1.0) * pen->unit));
  if (is_kind (pen, PLATE_CROSSED_SLOTS)) {
    rectangle_corners (pen, corners);
    for (int i = 0; i < 4; i++)
      map_claim_line (strokes, corners[i], corners[(i + 1) % 4]);
  }
  for (int i = 0; is_arc (pen) && i < ARC_CLAIMS; i++)
    map_claim_line (strokes, at_part (pen, i / (double) ARC_CLAIMS, 0),
                    at_part (pen, (i + 1) / (double) ARC_CLAIMS, 0));
}

static void
dot_text (const Plate *plate, guint place, char *text, gsize size)
{
  if (plate->kind == PLATE_HOLES)
    g_strlcpy (text, g_array_index (plate->holes, PlateHole, place).label, size);
  else if (plate->kind == PLATE_ECCENTRIC)
    g_snprintf (text, size, "%g°", g_array_index (plate->turns_deg, double, place));
  else
    text[0] = '\0';
}

static Pixel
eccentric_centre (const MapPen *pen)
{
  Plate point = *pen->view->plate; /* its circle drawn together */

  point.radius_mm = 0.0;
  return map_pixel (pen->layout,
                    plate_place (&point,
                                 (PlateSetting){ .is_swapped = pen->view->is_swapped }));
}

/* Away from the middle of an eccentric; above the dots of a row, beside those of a
 * column. */
static Pixel
outward (const MapPen *pen, guint place)
{
  const Plate *plate = pen->view->plate;
  const Pixel at = at_place (pen, place);

  if (plate->kind == PLATE_ECCENTRIC)
    return pixel_direction (eccentric_centre (pen), at);
  const Pixel next = at_place (pen, place > 0 ? place - 1 : MIN (1, n_dots (pen) - 1));

  return fabs (next.x - at.x) > fabs (next.y - at.y) ? (Pixel){ 0.0, -1.0 }
                                                     : (Pixel){ 1.0, 0.0 };
}

void
map_plate_note (const MapPen *pen, MapClaims *claims, MapNotes *notes)
{
  char text[64];

  for (guint i = 0; i < n_dots (pen); i++) {
    dot_text (pen->view->plate, i, text, sizeof text);
    if (text[0] != '\0')
      map_note_beside (pen, claims, notes, text, at_place (pen, i), NOTE_AWAY * pen->unit,
                       outward (pen, i), pen->theme->ink);
  }
}

/* Of the path in hand. */
static void
outline (const MapPen *pen)
{
  theme_use (pen->cr, colour_with_alpha (pen->theme->ink, 0.06));
  cairo_fill_preserve (pen->cr);
  theme_use (pen->cr, pen->theme->ink);
  theme_line (pen->cr, LINE_FULL, pen->theme->thin);
  cairo_stroke (pen->cr);
}

static void
draw_slot (const MapPen *pen)
{
  const Pixel a = at_part (pen, 0, 0), b = at_part (pen, 1, 0);
  const double radius = SLOT_HALF * pen->unit, angle = atan2 (b.y - a.y, b.x - a.x);

  cairo_new_path (pen->cr);
  cairo_arc (pen->cr, a.x, a.y, radius, angle + G_PI / 2.0, angle - G_PI / 2.0);
  cairo_arc (pen->cr, b.x, b.y, radius, angle - G_PI / 2.0, angle + G_PI / 2.0);
  cairo_close_path (pen->cr);
  outline (pen);
  theme_line (pen->cr, LINE_CHAIN, 0.7 * pen->theme->thin);
  cairo_move_to (pen->cr, a.x, a.y);
  cairo_line_to (pen->cr, b.x, b.y);
  cairo_stroke (pen->cr);
}

static void
draw_rectangle (const MapPen *pen)
{
  Pixel corners[4];

  rectangle_corners (pen, corners);
  cairo_new_path (pen->cr);
  for (int i = 0; i < 4; i++)
    cairo_line_to (pen->cr, corners[i].x, corners[i].y);
  cairo_close_path (pen->cr);
  outline (pen);
}

static void
draw_arc (const MapPen *pen)
{
  cairo_new_path (pen->cr);
  for (int i = 0; i <= ARC_STATIONS; i++) {
    const Pixel p = at_part (pen, i / (double) ARC_STATIONS, 0);

    cairo_line_to (pen->cr, p.x, p.y);
  }
  theme_use (pen->cr, pen->theme->ink);
  theme_line (pen->cr, LINE_FULL, pen->theme->line);
  cairo_set_line_cap (pen->cr, CAIRO_LINE_CAP_ROUND);
  cairo_stroke (pen->cr);
}

static void
draw_dot (const MapPen *pen, guint place, double radius, Colour fill)
{
  const Pixel at = at_place (pen, place);

  cairo_new_path (pen->cr);
  cairo_arc (pen->cr, at.x, at.y, radius * pen->unit, 0.0, 2.0 * G_PI);
  theme_use (pen->cr, fill);
  cairo_fill_preserve (pen->cr);
  theme_use (pen->cr, pen->theme->ink);
  theme_line (pen->cr, LINE_FULL, 1.3 * pen->theme->thin);
  cairo_stroke (pen->cr);
}

static Colour
hollow (const Theme *theme)
{
  return theme->ground.alpha > 0.0 ? theme->ground : theme->fill;
}

void
map_plate_draw (const MapPen *pen)
{
  if (is_kind (pen, PLATE_SLOT))
    draw_slot (pen);
  if (is_kind (pen, PLATE_CROSSED_SLOTS))
    draw_rectangle (pen);
  if (is_arc (pen))
    draw_arc (pen);
  for (guint i = 0; i < n_dots (pen); i++)
    draw_dot (pen, i, DOT, hollow (pen->theme));
}

void
map_plate_draw_lit (const MapPen *pen)
{
  const int place = pen->view->lit_place;

  if (place < 0 || (guint) place >= n_dots (pen))
    return;
  const Pixel at = at_place (pen, (guint) place);
  cairo_new_path (pen->cr);
  cairo_arc (pen->cr, at.x, at.y, LIT_RING * pen->unit, 0.0, 2.0 * G_PI);
  theme_use (pen->cr, colour_with_alpha (pen->theme->accent, 0.25));
  cairo_fill (pen->cr);
  draw_dot (pen, (guint) place, LIT_DOT, pen->theme->accent);
}
