/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The menus that stand in menus.ui, read once for all windows: GTK 4.8's builder keeps
 * some of each item that it reads. */

#pragma once

#include <gtk/gtk.h>

/* The menu of that id, on that button. */
void menus_put (GtkMenuButton *button, const char *id);
