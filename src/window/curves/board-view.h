/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The curves in a window. Pointing lights a curve; press or drag on a plot, or arrow
 * keys, move the travel cursor; up and down walk from curve to curve. */

#pragma once

#include "window/bench/bench.h"
#include "window/canvas/tall-canvas.h"

#define SW_TYPE_BOARD_VIEW (sw_board_view_get_type ())
G_DECLARE_FINAL_TYPE (SwBoardView, sw_board_view, SW, BOARD_VIEW, SwTallCanvas)

/* Scrolled where the window is low. */
GtkWidget *board_page_new (SwBench *bench);
