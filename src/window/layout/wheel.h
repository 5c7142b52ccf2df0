/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The mouse's wheel, which GTK gives to what lies under the pointer first. */

#pragma once

#include <gtk/gtk.h>

/* Leaves the wheel to what holds @widget, or no longer. */
void wheel_set_ignored (GtkWidget *widget, gboolean is_ignored);
