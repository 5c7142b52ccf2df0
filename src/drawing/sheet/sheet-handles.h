/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The handles of the sheet: where they are, how near is near, what they look like. */

#pragma once

#include "drawing/sheet/sheet-pen.h"

/* False where that view has none, or the setup cannot be assembled and no wheel stands.
 */
bool handle_place (const SheetLayout *layout,
                   const Study *study,
                   SheetHandle handle,
                   SheetViewName view,
                   Pixel *place);
/* Of the target, pixels. */
double handle_reach (const SheetLayout *layout);

/* What is said of the handle that is held. */
typedef struct {
  char text[120]; /* or "" */
  PixelBox box;
} HandleTag;

/* Keeps texts off the handles, and places those that belong to them. */
HandleTag handles_claim (const SheetPen *pen);
void handles_draw (const SheetPen *pen, const HandleTag *tag);

/* A handle as drawn: a ring, and arrows that say which ways it goes. */
typedef struct {
  bool is_crosswise; /* to all sides, or up and down alone */
  bool is_near, is_held;
} HandleMark;
void handle_mark_draw (
    cairo_t *cr, const Theme *theme, double unit, Pixel centre, HandleMark mark);
/* From the centre to the tips of the arrows, pixels. */
double handle_mark_reach (double unit);
