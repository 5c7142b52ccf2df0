/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A menu button with every quantity, to put its curve on the board or take it off. */

#pragma once

#include "window/bench/bench.h"

#include <gtk/gtk.h>

GtkWidget *curve_picker_new (SwBench *bench);
