/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Copying what a canvas shows: Ctrl+C, and a menu under the right button, Menu or
 * Shift+F10. */

#pragma once

#include "window/canvas/canvas.h"

typedef void (*CanvasPaint) (
    SwCanvas *canvas, gpointer part, cairo_t *cr, double width, double height);

/* Puts a picture of @width × @height on the clipboard, at twice as many dots. @part goes
 * to @paint. */
void canvas_copy_picture (
    SwCanvas *canvas, CanvasPaint paint, gpointer part, double width, double height);

/* The whole of it as it stands on the screen. */
void canvas_copy_whole (SwCanvas *canvas);

typedef void (*CanvasAsked) (SwCanvas *canvas);

/* @menu holds the entries; the first is what Ctrl+C does. Takes over @actions, the group
 * "copy" of the menu's actions. @asked, or NULL, is called before the menu takes the
 * pointer away, and before Ctrl+C. */
void canvas_copy_add (SwCanvas *canvas,
                      GMenuModel *menu,
                      GActionGroup *actions,
                      CanvasAsked asked);
