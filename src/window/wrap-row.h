/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Two parts beside each other, the second at the far end; one below the other where that
 * is too narrow, so that a window is no wider than the wider of them needs. */

#pragma once

#include <gtk/gtk.h>

/* @row has the two as its children. */
void wrap_row_use (GtkWidget *row);
