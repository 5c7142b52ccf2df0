/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The question "Springs" in a window: what carries the wheel through its travel. Press or
 * drag on a plot, or arrow keys, move the travel in hand; another setup's line takes that
 * setup in hand; pointing at an area lights its spring. */

#pragma once

#include "window/bench/bench.h"
#include "window/canvas/tall-canvas.h"

#define SW_TYPE_SPRINGS_VIEW (sw_springs_view_get_type ())
G_DECLARE_FINAL_TYPE (SwSpringsView, sw_springs_view, SW, SPRINGS_VIEW, SwTallCanvas)

/* The view, scrolled where the window is low. */
GtkWidget *springs_page_new (SwBench *bench);
