/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What runs from left to right in every language: numbers, whose sign would go to the
 * wrong end of them, and whatever follows an axis of a drawing. */

#pragma once

#include <gtk/gtk.h>

/* A label, a scale or a row of parts, or the text of an entry; not the parts in it. */
void keep_left_to_right (GtkWidget *widget);
