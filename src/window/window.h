/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One window, one car: the setup in hand at the left, the sheet, the question beside it,
 * the numbers below. */

#pragma once

#include "window/bench/bench.h"

#include <gtk/gtk.h>

#define SW_TYPE_WINDOW (sw_window_get_type ())
G_DECLARE_FINAL_TYPE (SwWindow, sw_window, SW, WINDOW, GtkApplicationWindow)

SwWindow *sw_window_new (GtkApplication *application);

SwBench *sw_window_get_bench (SwWindow *self);

/* Opens @file here. When it is refused, the open document stays and the reason is shown
 * in the window. */
gboolean sw_window_open (SwWindow *self, GFile *file);

/* The same as a car without a file, so that saving asks where to. */
void sw_window_open_example (SwWindow *self, GFile *file);

/* Opens the editor on the plate in @file, over the car that is open here. When it is
 * refused the reason is shown in the window. */
gboolean sw_window_open_plate (SwWindow *self, GFile *file);

/* Offers the work that a crash has left, if there is any. */
void sw_window_offer_left_over (SwWindow *self);

/* The tour in five steps, which is best taken with the demo car. */
void sw_window_start_tour (SwWindow *self);
/* Whether it has never been shown, as far as can be kept; not where the environment has
 * STRUTWRIGHT_TOUR=no. */
gboolean sw_window_is_tour_due (void);
/* Whether it shows an example that nobody has changed. */
gboolean sw_window_shows_example (SwWindow *self);

/* Shows one sentence in place; NULL takes it away. */
void sw_window_show_message (SwWindow *self, const char *sentence);
