/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The measuring guide of the car in hand, to be looked at, saved and printed. */

#pragma once

#include "window/bench/bench.h"

#include <gtk/gtk.h>

void guide_window_open (GtkWindow *parent, SwBench *bench);
