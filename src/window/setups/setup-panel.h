/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The typed side of every drag: which setup is in hand, and its mount, toe and height. */

#pragma once

#include "window/bench/bench.h"

#include <gtk/gtk.h>

#define SW_TYPE_SETUP_PANEL (sw_setup_panel_get_type ())
G_DECLARE_FINAL_TYPE (SwSetupPanel, sw_setup_panel, SW, SETUP_PANEL, GtkWidget)

GtkWidget *sw_setup_panel_new (SwBench *bench);
