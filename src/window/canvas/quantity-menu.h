/* SPDX-License-Identifier: GPL-3.0-or-later */
/* "What is this?" on a drawing that shows quantities: the other mouse button, the menu
 * key or Shift+F10. The quantity under the pointer is asked about, or the one that is
 * lit. */

#pragma once

#include "window/bench/bench.h"

#include <gtk/gtk.h>

/* The quantity there, or -1. */
typedef int (*QuantityAtFunc) (GtkWidget *widget, double x, double y);

/* @bench is kept alive as long as @widget. */
void quantity_menu_add (GtkWidget *widget, SwBench *bench, QuantityAtFunc at);

/* The entry for what is there, or else for what is lit; NULL where there is nothing or
 * the widget has no such menu. For a widget that opens a menu of its own, and says so by
 * data of this name. Free with g_object_unref (). */
#define QUANTITY_MENU_IS_PART "quantity-menu-is-part"
GMenuModel *quantity_menu_at (GtkWidget *widget, double x, double y);
