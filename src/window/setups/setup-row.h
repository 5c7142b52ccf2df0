/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One setup in the list: its line and marker as on the curves, its name, whether it is
 * the baseline, and a switch that shows or hides it. */

#pragma once

#include "model/car/car.h"

#include <gtk/gtk.h>

#define SW_TYPE_SETUP_ROW (sw_setup_row_get_type ())
G_DECLARE_FINAL_TYPE (SwSetupRow, sw_setup_row, SW, SETUP_ROW, GtkListBoxRow)

/* Signals: "renamed" (const char *name), "shown" (gboolean). */
GtkWidget *sw_setup_row_new (guint index);
void sw_setup_row_show (SwSetupRow *self, const CarSetup *setup, gboolean is_baseline);
void sw_setup_row_rename (SwSetupRow *self);
