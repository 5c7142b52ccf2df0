/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Curves or sheet to a file: size, background, date, with a preview that is drawn by the
 * same code as the file. */

#pragma once

#include "window/bench.h"

#include <gtk/gtk.h>

#define SW_TYPE_EXPORT_WINDOW (sw_export_window_get_type ())
G_DECLARE_FINAL_TYPE (SwExportWindow, sw_export_window, SW, EXPORT_WINDOW, GtkWindow)

GtkWidget *sw_export_window_new (GtkWindow *parent, SwBench *bench);
