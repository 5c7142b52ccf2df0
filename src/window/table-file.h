/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a question shows as a table for other programs: CSV, in mm and degrees, the same
 * as the command line writes. */

#pragma once

#include "window/bench/bench.h"

#include <gtk/gtk.h>

/* Of the question of that name; free with g_free (). */
char *table_file_text (SwBench *bench, const char *question);

/* Asks where to, and writes it there. A failure is told by the action "win.tell". */
void table_file_ask (GtkWindow *parent, SwBench *bench, const char *question);
