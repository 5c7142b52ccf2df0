/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the setup in hand stands on, to be typed and dragged: springs, stops, anti-roll
 * bar, damper and rod, side by side as far as there is room. A setup stands on the car's
 * set unless it was given its own; with the baseline in hand the car's set is edited. */

#pragma once

#include "window/bench/bench.h"

#include <gtk/gtk.h>

#define SW_TYPE_SPRINGS_PANEL (sw_springs_panel_get_type ())
G_DECLARE_FINAL_TYPE (SwSpringsPanel, sw_springs_panel, SW, SPRINGS_PANEL, GtkWidget)

GtkWidget *sw_springs_panel_new (SwBench *bench);
