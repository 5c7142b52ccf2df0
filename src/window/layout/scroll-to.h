/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What came to be where nobody sees it. */

#pragma once

#include <gtk/gtk.h>

/* Scrolls up or down, as soon as @widget has its place, so that it is seen, and what lies
 * between @from and it as far as there is room: @from goes first. Both are in the same
 * scrolled window; they may be one. */
void scroll_to (GtkWidget *widget, GtkWidget *from);
