/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A number of the spring editor: its name, an entry, its unit; where it can be dragged a
 * scale below, all of whose motion is one undo step. */

#pragma once

#include "model/words/unit.h"
#include "window/springs/springs-panel-rows.h"

/* Into row @at of @grid, and the scale into the next; returns the rows taken. */
int springs_number_add (SpringsEdit *edit, SpringsRowName name, GtkGrid *grid, int at);

/* What is typed as a number; NULL, or why it is none: free with g_free (). Nothing is 0
 * where it may be. */
char *springs_read_number (const char *text,
                           const char *name,
                           UnitKind kind,
                           gboolean may_be_empty,
                           double *value);
/* The text of a number; nothing for 0 where that means nothing. Free with g_free (). */
char *springs_number_text (UnitKind kind, double value, gboolean may_be_empty);

GtkWidget *springs_label_new (const char *text, const char *style);
