/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A small window to choose the units that are shown; what is chosen holds at once. */

#pragma once

#include <gtk/gtk.h>

void units_window_present (GtkWindow *parent);
