/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sheet in a window, with its handles. Drag the upper mount or the wheel; Ctrl moves
 * finely, Escape cancels, a double click puts the mount back. Scroll zooms about the
 * pointer, dragging the paper moves it. */

#pragma once

#include "window/bench/bench.h"
#include "window/canvas/canvas.h"

#define SW_TYPE_SHEET_VIEW (sw_sheet_view_get_type ())
G_DECLARE_FINAL_TYPE (SwSheetView, sw_sheet_view, SW, SHEET_VIEW, SwCanvas)

GtkWidget *sw_sheet_view_new (SwBench *bench);

/* The ground keeps its place and the body moves, as a class sees lowering; else the body
 * keeps its place. */
void sw_sheet_view_set_ground_fixed (SwSheetView *self, gboolean ground_fixed);

/* Those of the load in hand (loader.h), as arrows in place of the dimensions. */
void sw_sheet_view_set_shows_forces (SwSheetView *self, gboolean shows_forces);

void sw_sheet_view_fit (SwSheetView *self);
/* About the middle. */
void sw_sheet_view_zoom (SwSheetView *self, double factor);
