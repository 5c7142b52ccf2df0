/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The loads of all setups beside the sheet; a press on the bars of one takes it in hand.
 */

#pragma once

#include "window/bench/bench.h"
#include "window/canvas/tall-canvas.h"

#define SW_TYPE_LOADS_VIEW (sw_loads_view_get_type ())
G_DECLARE_FINAL_TYPE (SwLoadsView, sw_loads_view, SW, LOADS_VIEW, SwTallCanvas)

/* Which case, what carries it, and the cases themselves. */
GtkWidget *loads_bar_new (SwBench *bench);
/* The bar over the view, which is scrolled where the window is low. */
GtkWidget *loads_page_new (SwBench *bench);
