/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A dialog to make a plate or to change one, with a drawing of where it can put the
 * bearing that follows every entry. Saves into the user's folder of plates, or over the
 * user's own file. */

#pragma once

#include "window/bench/chooser.h"

#include <gtk/gtk.h>

/* @plate is what the entries begin with, or NULL for a new one; of a plate that came with
 * the program a copy is made. On saving the chooser takes it in hand. */
void plate_window_open (GtkWindow *parent, SwChooser *chooser, const ShelfPlate *plate);

/* The same with the plate of any file: changes that file if it stands on the shelf, else
 * saves it among the user's own and leaves the file as it is. */
gboolean plate_window_open_file (GtkWindow *parent,
                                 SwChooser *chooser,
                                 GFile *file,
                                 GError **error);
