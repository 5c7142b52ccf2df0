/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The fitting card as it will be printed, to be saved or sent to a printer: of the plate
 * in hand as it was ranked, or of the setup in hand where no answer is chosen. */

#pragma once

#include "window/bench/chooser.h"

#include <gtk/gtk.h>

/* Whether there is anything to make a card of. */
gboolean card_window_can_open (SwChooser *chooser);
void card_window_open (GtkWindow *parent, SwChooser *chooser);
