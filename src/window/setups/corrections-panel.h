/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The corrections of the setup in hand, in the hardware's own terms. */

#pragma once

#include "window/bench/bench.h"

#include <gtk/gtk.h>

#define SW_TYPE_CORRECTIONS_PANEL (sw_corrections_panel_get_type ())
G_DECLARE_FINAL_TYPE (
    SwCorrectionsPanel, sw_corrections_panel, SW, CORRECTIONS_PANEL, GtkWidget)

GtkWidget *sw_corrections_panel_new (SwBench *bench);
