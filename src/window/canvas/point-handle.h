/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A handle of a drawing as a widget: what takes the focus, the arrow keys and the words
 * for those who do not see the drawing. It draws nothing but its focus ring; the
 * drawing shows the handle, and the pointer is its view's.
 *
 * Signals: "nudged" (int right, int up, uint modifiers), "homed", "cancelled". */

#pragma once

#include "drawing/sheet/sheet.h"

#include <gtk/gtk.h>

#define SW_TYPE_POINT_HANDLE (sw_point_handle_get_type ())
G_DECLARE_FINAL_TYPE (SwPointHandle, sw_point_handle, SW, POINT_HANDLE, GtkWidget)

GtkWidget *sw_point_handle_new (SheetHandle handle, SheetViewName view);
/* For another drawing than the sheet; @name is what assistive technology calls it. */
GtkWidget *sw_point_handle_new_named (const char *name);

SheetHandle sw_point_handle_get_handle (SwPointHandle *self);
SheetViewName sw_point_handle_get_view (SwPointHandle *self);
/* Its middle, in its parent. Its size follows the text, as what the drawing shows. */
void sw_point_handle_place (SwPointHandle *self, double x, double y);
/* Tells assistive technology the value, in words and as a number between limits. */
void sw_point_handle_set_value (
    SwPointHandle *self, double value, double least, double most, const char *words);
