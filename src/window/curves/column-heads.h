/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The heads of a table's columns, where GTK 4.8 has no words for what they need. */

#pragma once

#include <gtk/gtk.h>

/* The last @n stand over their figures, and all are called by their titles. Again
 * whenever a title has changed. */
void column_heads_arrange (GtkColumnView *table, guint n);
/* From right to left the first column is in sight at first, and stays where it is when
 * columns grow: GTK 4.8 begins at the left. */
void column_heads_begin_at_first (GtkScrolledWindow *scrolled);
