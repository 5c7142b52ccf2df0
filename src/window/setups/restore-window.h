/* SPDX-License-Identifier: GPL-3.0-or-later */
/* "What would put it back?": the part that returns what the baseline had, for each goal,
 * with what stays unmatched, and a button that fits it to the setup in hand. */

#pragma once

#include "window/bench/bench.h"

#include <gtk/gtk.h>

void restore_window_present (GtkWindow *parent, SwBench *bench);
