/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/sheet/sheet-pen.h"

#include <glib.h>

/* Of hatching, pixels at ordinary type size. */
#define HATCH_STEP 6.0
#define GLOW_WIDTH 13.0
#define ARROW_LENGTH 7.0
#define ARROW_HALF 2.1

Pixel
pixel_add (Pixel a, double dx, double dy)
{
  return (Pixel){ a.x + dx, a.y + dy };
}

Pixel
pixel_between (Pixel a, Pixel b, double part)
{
  return (Pixel){ a.x + part * (b.x - a.x), a.y + part * (b.y - a.y) };
}

Pixel
pixel_direction (Pixel a, Pixel b)
{
  const double length = hypot (b.x - a.x, b.y - a.y);

  if (!(length > 1e-9))
    return (Pixel){ 1.0, 0.0 };
  return (Pixel){ (b.x - a.x) / length, (b.y - a.y) / length };
}

double
pixel_distance_to (Pixel p, Pixel a, Pixel b)
{
  const double dx = b.x - a.x, dy = b.y - a.y, length2 = dx * dx + dy * dy;
  const double along =
      length2 > 0.0 ? ((p.x - a.x) * dx + (p.y - a.y) * dy) / length2 : 0.0;
  const Pixel nearest = pixel_between (a, b, CLAMP (along, 0.0, 1.0));

  return hypot (p.x - nearest.x, p.y - nearest.y);
}

Pixel
pen_at (const SheetPen *pen, SheetViewName view, Vec3 point)
{
  return sheet_layout_place (pen->layout, view, point);
}

TextStyle
pen_style (const SheetPen *pen, double size, TextWeight weight)
{
  return (TextStyle){ pen->theme->font, size, weight };
}

double
pen_wide (const SheetPen *pen, double mm, double least)
{
  return fmax (mm * pen->layout->scale, least * pen->unit);
}

Stroke
pen_thin (const SheetPen *pen, LineKind kind, Colour colour)
{
  return (Stroke){ kind, pen->theme->thin, colour };
}

Solid
pen_moving (const SheetPen *pen, double mm, double least)
{
  const Theme *t = pen->theme;

  return (Solid){ pen_wide (pen, mm, least), t->fill, t->ink, t->line * 0.8 };
}

Colour
pen_hollow (const SheetPen *pen)
{
  return pen->theme->ground.alpha > 0.0 ? pen->theme->ground : pen->theme->fill;
}

/* The canvas with room for the thickest pen: what lies beyond is not worth drawing, and a
 * zoomed sheet may reach past what cairo can count. */
static PixelBox
visible (const SheetPen *pen)
{
  const PixelBox c = pen->layout->canvas;
  const double room = 100.0 * pen->unit;

  return (PixelBox){ c.x - room, c.y - room, c.width + 2.0 * room,
                     c.height + 2.0 * room };
}

void
pen_line (const SheetPen *pen, Pixel a, Pixel b, Stroke stroke)
{
  if (!pixel_box_clip (visible (pen), &a, &b))
    return;
  theme_use (pen->cr, stroke.colour);
  theme_line (pen->cr, stroke.kind, stroke.width);
  cairo_move_to (pen->cr, a.x, a.y);
  cairo_line_to (pen->cr, b.x, b.y);
  cairo_stroke (pen->cr);
}

void
pen_circle (const SheetPen *pen, Pixel centre, double radius, Solid solid)
{
  theme_line (pen->cr, LINE_FULL, solid.edge_width);
  cairo_new_sub_path (pen->cr);
  cairo_arc (pen->cr, centre.x, centre.y, radius, 0.0, 2.0 * G_PI);
  theme_use (pen->cr, solid.fill);
  cairo_fill_preserve (pen->cr);
  theme_use (pen->cr, solid.edge);
  cairo_stroke (pen->cr);
}

/* The edge first, a pen's width thicker all round, then the inside over it: what is left
 * is the outline of the whole. */
static void
stroke_twice (const SheetPen *pen, Solid solid, cairo_line_cap_t cap)
{
  theme_line (pen->cr, LINE_FULL, solid.width + solid.edge_width);
  cairo_set_line_cap (pen->cr, cap);
  theme_use (pen->cr, solid.edge);
  cairo_stroke_preserve (pen->cr);
  cairo_set_line_width (pen->cr, fmax (solid.width - solid.edge_width, 0.0));
  theme_use (pen->cr, solid.fill);
  cairo_stroke (pen->cr);
}

void
pen_spokes (const SheetPen *pen, const Pixel *points, unsigned n_points, Solid solid)
{
  for (unsigned i = 1; i < n_points; i++) {
    cairo_move_to (pen->cr, points[0].x, points[0].y);
    cairo_line_to (pen->cr, points[i].x, points[i].y);
  }
  stroke_twice (pen, solid, CAIRO_LINE_CAP_ROUND);
}

void
pen_bar (const SheetPen *pen, Pixel a, Pixel b, Solid solid)
{
  const Pixel d = pixel_direction (a, b);
  const double x = -d.y * solid.width / 2.0, y = d.x * solid.width / 2.0;

  cairo_move_to (pen->cr, a.x + x, a.y + y);
  cairo_line_to (pen->cr, b.x + x, b.y + y);
  cairo_line_to (pen->cr, b.x - x, b.y - y);
  cairo_line_to (pen->cr, a.x - x, a.y - y);
  cairo_close_path (pen->cr);
  theme_line (pen->cr, LINE_FULL, solid.edge_width);
  theme_use (pen->cr, solid.fill);
  cairo_fill_preserve (pen->cr);
  theme_use (pen->cr, solid.edge);
  cairo_stroke (pen->cr);
}

void
pen_hatched_edge (const SheetPen *pen, Pixel a, Pixel b, double depth, Stroke edge)
{
  if (!pixel_box_clip (visible (pen), &a, &b))
    return;

  const double length = hypot (b.x - a.x, b.y - a.y), step = HATCH_STEP * pen->unit;
  const Pixel d = pixel_direction (a, b);

  theme_use (pen->cr, edge.colour);
  theme_line (pen->cr, LINE_FULL, pen->theme->thin * 0.8);
  /* 45° back from each station of the edge; the first ones run off its end */
  for (double s = step; s <= length; s += step) {
    const double reach = fmin (depth, s);

    cairo_move_to (pen->cr, a.x + s * d.x, a.y + s * d.y);
    cairo_rel_line_to (pen->cr, reach * (-d.x - d.y), reach * (-d.y + d.x));
  }
  cairo_stroke (pen->cr);
  pen_line (pen, a, b, edge);
}

void
pen_arrow_head (const SheetPen *pen, Pixel tip, Pixel d, Colour colour)
{
  const double length = ARROW_LENGTH * pen->unit, half = ARROW_HALF * pen->unit;

  cairo_move_to (pen->cr, tip.x, tip.y);
  cairo_line_to (pen->cr, tip.x - length * d.x - half * d.y,
                 tip.y - length * d.y + half * d.x);
  cairo_line_to (pen->cr, tip.x - length * d.x + half * d.y,
                 tip.y - length * d.y - half * d.x);
  cairo_close_path (pen->cr);
  theme_use (pen->cr, colour);
  cairo_fill (pen->cr);
}

void
pen_patch (const SheetPen *pen, Pixel left, double width)
{
  const double room = 2.0 * pen->unit, high = 1.25 * pen->theme->small_text;

  if (pen->theme->ground.alpha <= 0.0)
    return;
  theme_use (pen->cr, colour_with_alpha (pen->theme->ground, 0.85));
  cairo_rectangle (pen->cr, left.x - room, left.y - high / 2.0, width + 2.0 * room, high);
  cairo_fill (pen->cr);
}

void
pen_shows (const SheetPen *pen, SheetViewName view, int quantity, Pixel a, Pixel b)
{
  SheetTargets *targets = pen->targets;

  if (quantity < 0 || !pixel_box_clip (visible (pen), &a, &b))
    return;
  if (targets->n_targets < SHEET_MOST_TARGETS)
    targets->at[targets->n_targets++] = (SheetTarget){ view, quantity, a, b };
  if (pen->view->lit != quantity)
    return;
  theme_use (pen->cr, pen->theme->glow);
  theme_line (pen->cr, LINE_FULL, GLOW_WIDTH * pen->unit);
  cairo_set_line_cap (pen->cr, CAIRO_LINE_CAP_ROUND);
  for (int i = 0; i < 2; i++) {
    cairo_move_to (pen->cr, a.x, a.y);
    cairo_line_to (pen->cr, b.x, b.y);
    cairo_stroke (pen->cr);
    cairo_set_line_width (pen->cr, GLOW_WIDTH * pen->unit * 0.6);
  }
}
