/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The curves of the setup in hand as a table, for those who read them as numbers: a row
 * for each wheel travel, a column for each curve. It follows the car while it is open. */

#pragma once

#include "window/bench/bench.h"

#include <gtk/gtk.h>

/* Of the springs, or of the curves that are chosen. */
void curve_window_present (GtkWindow *parent, SwBench *bench, gboolean is_of_springs);
