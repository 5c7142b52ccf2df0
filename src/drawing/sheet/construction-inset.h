/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The construction as a whole, small, where the instant centre is off the large picture.
 */

#pragma once

#include "drawing/sheet/construction-words.h"
#include "drawing/sheet/sheet-pen.h"

typedef struct {
  PixelBox box;  /* frame, its caption included */
  PixelBox plot; /* what the lines fill */
  double scale;  /* pixels per mm; 0: the instant centre is too far for any */
  Pixel origin;  /* of the car's axes */
} StoryInset;

/* In @box with a line of @text for the caption. Scales come in steps, so that it stands
 * still through most of a motion. */
StoryInset
inset_fit (PixelBox box, double text, const StoryNumbers *numbers, double outboard);

Pixel inset_place (const StoryInset *inset, FrontPoint point);

void inset_draw (const StoryInset *inset,
                 const SheetPen *pen,
                 const StudyCorner *corner,
                 const StoryNumbers *numbers,
                 StoryStep step);
