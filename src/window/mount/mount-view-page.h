/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The question "Mount": what is aimed for, and below it the map. Its insides are made
 * when it is shown first, so that a window starts without them. */

#pragma once

#include "window/bench/bench.h"

#include <gtk/gtk.h>

GtkWidget *mount_page_new (SwBench *bench);

/* Beside the switcher: what the lines show, and the plate in hand. */
GtkWidget *mount_tools_new (SwBench *bench);
