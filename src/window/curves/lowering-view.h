/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The question "Height" in a window: where the roll centre goes as the car comes down.
 * Press or drag on a plot, or arrow keys, move the travel in hand; a setup's marker takes
 * that setup in hand. */

#pragma once

#include "window/bench/bench.h"
#include "window/canvas/canvas.h"

#define SW_TYPE_LOWERING_VIEW (sw_lowering_view_get_type ())
G_DECLARE_FINAL_TYPE (SwLoweringView, sw_lowering_view, SW, LOWERING_VIEW, SwCanvas)

GtkWidget *sw_lowering_view_new (SwBench *bench);

/* Buttons beside the switcher: play the lowering, explain it step by step. */
GtkWidget *lowering_tools_new (SwBench *bench);
