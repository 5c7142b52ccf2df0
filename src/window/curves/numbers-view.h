/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The table of numbers in a window. Pointing at a row, or up and down keys, light it
 * everywhere; its tooltip says what the quantity is and what moves it. */

#pragma once

#include "window/bench/bench.h"
#include "window/canvas/canvas.h"

#define SW_TYPE_NUMBERS_VIEW (sw_numbers_view_get_type ())
G_DECLARE_FINAL_TYPE (SwNumbersView, sw_numbers_view, SW, NUMBERS_VIEW, SwCanvas)

GtkWidget *sw_numbers_view_new (SwBench *bench);

/* All shown setups at their own standing heights, instead of the one in hand at the
 * cursor. */
void sw_numbers_view_set_side_by_side (SwNumbersView *self, gboolean side_by_side);

/* The whole table with full digits, tab separated, for the clipboard. Free with g_free
 * (). */
char *sw_numbers_view_get_text (SwNumbersView *self);
