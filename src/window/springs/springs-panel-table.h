/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A law of the spring editor as one line of pairs, "0 0; 10 400; 20 1500", which a
 * spreadsheet's two columns paste into. */

#pragma once

#include "window/springs/springs-panel-rows.h"

/* Into row @at of @grid and the next; returns the rows taken. */
int springs_table_add (SpringsEdit *edit, SpringsTableName name, GtkGrid *grid, int at);

/* In the units chosen for the kinds of the row. Free with g_free (). */
char *springs_table_text (const SpringsTableRow *row, const SpringTable *table);
/* NULL, or why @text is no table: free with g_free (). What reads as @before did keeps
 * its numbers to the bit. */
char *springs_table_read (const SpringsTableRow *row,
                          const char *text,
                          const SpringTable *before,
                          SpringTable *table);
