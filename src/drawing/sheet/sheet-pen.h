/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The strokes that the sheet is made of, and the record of what each of them shows. */

#pragma once

#include "drawing/pen/text.h"
#include "drawing/sheet/sheet-layout.h"

#define SHEET_MOST_TARGETS 64

/* A stroke that stands for a quantity. */
typedef struct {
  SheetViewName view;
  int quantity;
  Pixel a, b;
} SheetTarget;

typedef struct {
  SheetTarget at[SHEET_MOST_TARGETS];
  unsigned n_targets;
} SheetTargets;

typedef struct SheetWriting SheetWriting;

typedef struct {
  cairo_t *cr;
  const SheetView *view;
  const Theme *theme;
  const SheetLayout *layout;
  TextCache *texts;
  SheetTargets *targets;
  double unit;           /* pixels at ordinary type size */
  SheetWriting *writing; /* NULL where only parts are drawn */
} SheetPen;

typedef struct {
  LineKind kind;
  double width;
  Colour colour;
} Stroke;

/* Outline and inside of a part. */
typedef struct {
  double width; /* across, pixels */
  Colour fill, edge;
  double edge_width;
} Solid;

Pixel pixel_add (Pixel a, double dx, double dy);
Pixel pixel_between (Pixel a, Pixel b, double part);
/* Unit vector from @a to @b, or (1, 0) where they coincide. */
Pixel pixel_direction (Pixel a, Pixel b);
double pixel_distance_to (Pixel p, Pixel a, Pixel b); /* to the line between a and b */

Pixel pen_at (const SheetPen *pen, SheetViewName view, Vec3 point);
TextStyle pen_style (const SheetPen *pen, double size, TextWeight weight);

/* Thickness of a part of @mm: enough to be seen however small the sheet. */
double pen_wide (const SheetPen *pen, double mm, double least);
Stroke pen_thin (const SheetPen *pen, LineKind kind, Colour colour);
/* How a moving part looks, and the inside of a hole. */
Solid pen_moving (const SheetPen *pen, double mm, double least);
Colour pen_hollow (const SheetPen *pen);

void pen_line (const SheetPen *pen, Pixel a, Pixel b, Stroke stroke);
void pen_circle (const SheetPen *pen, Pixel centre, double radius, Solid solid);
/* A part as thick as @solid says along each of the lines from points[0] to the others. */
void
pen_spokes (const SheetPen *pen, const Pixel *points, unsigned n_points, Solid solid);
/* A bar with square ends. */
void pen_bar (const SheetPen *pen, Pixel a, Pixel b, Solid solid);
/* Hatching on the right-hand side of the way from @a to @b, and its edge. */
void pen_hatched_edge (const SheetPen *pen, Pixel a, Pixel b, double depth, Stroke edge);
void pen_arrow_head (const SheetPen *pen, Pixel tip, Pixel direction, Colour colour);

/* The sheet's own ground, one line of text high, so that what lies behind does not cross
 * letters. */
void pen_patch (const SheetPen *pen, Pixel left, double width);

/* Says that the line shows @quantity: it can be hit, and glows when that is lit. To be
 * called before the stroke itself. */
void pen_shows (const SheetPen *pen, SheetViewName view, int quantity, Pixel a, Pixel b);
