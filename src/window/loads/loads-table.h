/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every joint's force of the setup in hand under the load in hand, and its rod's numbers,
 * with those of the baseline beside them. The table as text goes to the clipboard. */

#pragma once

#include "window/bench/loader.h"

#include <gtk/gtk.h>

#define SW_TYPE_LOADS_TABLE (sw_loads_table_get_type ())
G_DECLARE_FINAL_TYPE (SwLoadsTable, sw_loads_table, SW, LOADS_TABLE, GtkWidget)

GtkWidget *sw_loads_table_new (SwLoader *loader);
/* Shows what the loader has now. */
void sw_loads_table_show (SwLoadsTable *self);

/* With tabs between columns, its heads first; numbers with a point. Free with g_free ().
 */
char *sw_loads_table_get_text (SwLoadsTable *self);
