/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A spin button for one end of a range, which may stay open: then it is empty. */

#pragma once

#include "model/car/aim.h"

#include <gtk/gtk.h>

/* @name is what assistive technology calls it; it steps by the unit of @aim.
 * Its "value-changed" tells of every change, open or not. */
GtkWidget *range_bound_new (gboolean is_lower, const AimInfo *aim, const char *name);

/* −INFINITY or INFINITY where it is open. */
double range_bound_get (GtkWidget *bound);
void range_bound_set (GtkWidget *bound, double value);

/* Where it starts when an open one is stepped. */
void range_bound_set_start (GtkWidget *bound, double start);
