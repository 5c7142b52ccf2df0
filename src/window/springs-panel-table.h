/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A law of the spring editor as one line of pairs, "0 0; 10 400; 20 1500", which a
 * spreadsheet's two columns paste into. */

#pragma once

#include "window/springs-panel-rows.h"

/* Into row @at of @grid and the next; returns the rows taken. */
int springs_table_add (SpringsEdit *edit, SpringsTableName name, GtkGrid *grid, int at);

/* Free with g_free (). */
char *springs_table_text (const SpringTable *table);
/* NULL, or why @text is no table, naming it as @name: free with g_free (). */
char *springs_table_read (const char *text,
                          const char *name,
                          const char *example,
                          SpringTable *table);
