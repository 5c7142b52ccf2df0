/* SPDX-License-Identifier: GPL-3.0-or-later */
/* In the panel of aims: the limits of the car, and what may be fitted. */

#pragma once

#include "window/bench/chooser.h"

#include <gtk/gtk.h>

GtkWidget *limits_panel_new (SwChooser *chooser);
