/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A sentence that refuses what stands in an entry, in a line of its own below it. */

#pragma once

#include <gtk/gtk.h>

/* Of @entry, which stands in a grid or in an upright box, however deep; NULL takes the
 * line away. */
void refusal_line_show (GtkWidget *entry, const char *sentence);
