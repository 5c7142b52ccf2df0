/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Escape closes a window that asks nothing first. */

#pragma once

#include <gtk/gtk.h>

void escape_key_closes (GtkWidget *window);
