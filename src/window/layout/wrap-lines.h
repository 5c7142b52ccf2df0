/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Parts side by side as words stand in a text: what has no room on a line begins the next
 * one, and what is wider than a line gets all of it. */

#pragma once

#include <gtk/gtk.h>

#define SW_TYPE_WRAP_LINES (sw_wrap_lines_get_type ())
G_DECLARE_FINAL_TYPE (SwWrapLines, sw_wrap_lines, SW, WRAP_LINES, GtkWidget)

/* Gaps in pixels: between the parts of a line, and between lines. */
GtkWidget *sw_wrap_lines_new (int gap, int line_gap);
void sw_wrap_lines_append (SwWrapLines *self, GtkWidget *part);
