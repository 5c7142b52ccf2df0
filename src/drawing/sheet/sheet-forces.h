/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The forces of a load on the sheet: an arrow for each, all to one scale, its size beside
 * it; what the road does to the tyre, what body and rack get, the weight of the wheel. In
 * the front view also the line from the mount along which a coil would leave the rod no
 * side force. They stand in place of the dimensions. */

#pragma once

#include "drawing/sheet/sheet-pen.h"

/* Of view->loads, which is solved. */
void forces_draw (const SheetPen *pen, SheetViewName view);

/* Newtons that 100 pixels at ordinary type size stand for: so that no arrow of any view
 * leaves the canvas or crosses a caption. */
double forces_scale (const SheetPen *pen);

/* An arrow of a round force with its figure, within @room from (@x, @y) on; nothing where
 * that is too little. */
void forces_draw_scale (const SheetPen *pen, double x, double y, double room);
