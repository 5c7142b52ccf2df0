/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the alignment aims for: the sentence over the map, and the panel behind its button
 * where aims, limits and what may be fitted are set. Aims and limits are the car's, each
 * change an undo step. */

#pragma once

#include "window/bench/chooser.h"

#include <gtk/gtk.h>

/* "Camber −2.60 to −2.40°, caster at least 5.00°", or that nothing is aimed for. Free
 * with g_free (). */
char *aims_sentence (const Car *car);

/* The sentence with the button that opens the panel. */
GtkWidget *aims_bar_new (SwChooser *chooser);

/* What the popover holds. */
GtkWidget *aims_panel_new (SwChooser *chooser);
