/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sheet's texts: each claims a place of its own inside the canvas, and all are
 * written over the strokes at the end. What finds no place is left out. */

#pragma once

#include "drawing/sheet/sheet-pen.h"

#define SHEET_MOST_CLAIMS 96
#define SHEET_MOST_LINES 64

/* One line of small text. */
typedef struct {
  char text[120];
  Pixel left; /* the middle of its left end */
  double width;
  TextWeight weight;
  Colour colour;
} WrittenLine;

struct SheetWriting {
  PixelBox claims[SHEET_MOST_CLAIMS];
  unsigned n_claims;
  WrittenLine lines[SHEET_MOST_LINES];
  unsigned n_lines;
};

/* Of the small text, pixels. */
double writing_width (const SheetPen *pen, const char *text, TextWeight weight);
/* What one line of small text takes. */
PixelBox writing_box (const SheetPen *pen, Pixel left, double width);

/* Whether @box lies inside the canvas and clear of all that is claimed. */
bool writing_has_room (const SheetPen *pen, PixelBox box);
/* Keeps all texts that come later away from @box. */
void writing_claim (const SheetPen *pen, PixelBox box);
/* Takes back the lines that @box would cover, and claims it. */
void writing_displace (const SheetPen *pen, PixelBox box);

/* Writes the line at the end, in a place that its caller has found free; claims it. */
void writing_add (const SheetPen *pen, const char *text, Pixel left, Colour colour);
/* The same, if there is room, in that weight; returns whether. */
bool writing_try (
    const SheetPen *pen, const char *text, Pixel left, TextWeight weight, Colour colour);

void writing_draw (const SheetPen *pen);
