/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The heads of a table's columns, where GTK 4.8 has no words for what they need. */

#pragma once

#include <gtk/gtk.h>

/* The last @n stand over their figures, and all are called by their titles. Again whenever
 * a title has changed. */
void column_heads_arrange (GtkColumnView *table, guint n);
