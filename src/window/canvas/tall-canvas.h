/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A drawing that asks for the height it needs at its width, and scrolls where the window
 * is lower than that. */

#pragma once

#include "window/canvas/canvas.h"

#define SW_TYPE_TALL_CANVAS (sw_tall_canvas_get_type ())
G_DECLARE_DERIVABLE_TYPE (SwTallCanvas, sw_tall_canvas, SW, TALL_CANVAS, SwCanvas)

struct _SwTallCanvasClass {
  SwCanvasClass parent_class;

  double (*least_height) (SwTallCanvas *self, double width);
};

/* Draws anew at the next frame, at another height where what it shows needs one. */
void sw_tall_canvas_renew (SwTallCanvas *self);

GtkWidget *tall_canvas_scrolled_new (GtkWidget *canvas);
/* Of springs or loads: the caution below it does not scroll away. */
GtkWidget *tall_canvas_page_new (GtkWidget *canvas);
