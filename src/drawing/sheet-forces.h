/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The forces of a load on the sheet: an arrow for each, all to one scale, its size beside
 * it; what the road does to the tyre, what body and rack get, the weight of the wheel. In
 * the front view also the line from the mount along which a coil would leave the rod no
 * side force. They stand in place of the dimensions. */

#pragma once

#include "drawing/sheet-pen.h"

/* Of view->loads, which is solved. */
void forces_draw (const SheetPen *pen, SheetViewName view);

/* Newtons that a length on the sheet of @scale pixels a mm stands for: 1, 2 or 5 times a
 * power of ten, N per pixel · 100 pixels at ordinary type size. */
double forces_scale (const SheetPen *pen);
