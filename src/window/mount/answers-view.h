/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The ranked plates as a table: what each is set to, what comes of it, and why it fails.
 * The row that is selected is the plate in hand; Return or a double click fit it. */

#pragma once

#include "window/bench/bench.h"

#include <gtk/gtk.h>

#define SW_TYPE_ANSWERS_VIEW (sw_answers_view_get_type ())
G_DECLARE_FINAL_TYPE (SwAnswersView, sw_answers_view, SW, ANSWERS_VIEW, GtkWidget)

GtkWidget *sw_answers_view_new (SwBench *bench);

/* Above the table: what the plate in hand comes to in one sentence, and buttons to fit it
 * and to see its card. */
GtkWidget *answers_tools_new (SwBench *bench);
