/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A drawing to a file: size, background, date, with a preview that is drawn by the
 * same code as the file. */

#pragma once

#include "drawing/card/card.h"
#include "window/bench/bench.h"

#include <gtk/gtk.h>

#define SW_TYPE_EXPORT_WINDOW (sw_export_window_get_type ())
G_DECLARE_FINAL_TYPE (SwExportWindow, sw_export_window, SW, EXPORT_WINDOW, GtkWindow)

/* Begins with @subject, what stands beside the sheet. */
GtkWidget *sw_export_window_new (GtkWindow *parent, SwBench *bench, CardSubject subject);
