/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A drawing that asks for the height it needs at its width, on a page that scrolls where
 * the window is lower than that. The caution on springs and loads does not scroll away.
 */

#pragma once

#include "window/canvas.h"

#define SW_TYPE_TALL_CANVAS (sw_tall_canvas_get_type ())
G_DECLARE_DERIVABLE_TYPE (SwTallCanvas, sw_tall_canvas, SW, TALL_CANVAS, SwCanvas)

struct _SwTallCanvasClass {
  SwCanvasClass parent_class;

  double (*least_height) (SwTallCanvas *self, double width);
};

/* Draws anew at the next frame, at another height where what it shows needs one. */
void sw_tall_canvas_renew (SwTallCanvas *self);

GtkWidget *tall_canvas_page_new (GtkWidget *canvas);
