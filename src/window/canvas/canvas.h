/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A widget that shows a drawing of the drawing layer. The drawing is rasterised once per
 * change into a picture of its own, so that frames in which it did not change only copy.
 */

#pragma once

#include "drawing/pen/theme.h"

#include <gtk/gtk.h>

#define SW_TYPE_CANVAS (sw_canvas_get_type ())
G_DECLARE_DERIVABLE_TYPE (SwCanvas, sw_canvas, SW, CANVAS, GtkWidget)

struct _SwCanvasClass {
  GtkWidgetClass parent_class;

  gboolean is_opaque; /* draw () covers everything: no picture needs clearing */
  void (*draw) (SwCanvas *self, cairo_t *cr, double width, double height);
};

/* Draws anew at the next frame. */
void sw_canvas_invalidate (SwCanvas *self);

/* Light or dark and with as much contrast as the desktop has it, with its text size. */
Theme sw_canvas_get_theme (SwCanvas *self);
