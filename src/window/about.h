/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Who made the program and under which licence, and the cautions for those who work on
 * cars with its numbers. */

#pragma once

#include <gtk/gtk.h>

void about_present (GtkWindow *parent);
void cautions_present (GtkWindow *parent);
