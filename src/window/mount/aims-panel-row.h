/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One aim in the panel: whether it is one, its range, and how much it counts. */

#pragma once

#include "window/bench/chooser.h"

#include <gtk/gtk.h>

typedef struct AimRow AimRow;

/* Puts its widgets into @row of @grid and lives as long as that. */
AimRow *aim_row_new (SwChooser *chooser, Aim aim, GtkGrid *grid, int row);
void aim_row_show (AimRow *self); /* what the car has */
