/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The report as it will be printed, with what goes into it beside its pages, to be saved
 * or sent to a printer. */

#pragma once

#include "window/bench/bench.h"

#include <gtk/gtk.h>

void report_window_open (GtkWindow *parent, SwBench *bench);
