/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Below the sheet: the table of joint forces, and beside it what they and the springs
 * come to in words, each with its rule, and the caution. */

#pragma once

#include "window/bench/bench.h"

#include <gtk/gtk.h>

#define SW_TYPE_LOADS_PANEL (sw_loads_panel_get_type ())
G_DECLARE_FINAL_TYPE (SwLoadsPanel, sw_loads_panel, SW, LOADS_PANEL, GtkWidget)

GtkWidget *sw_loads_panel_new (SwBench *bench);
