/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A tooltip with the whole text of a label, while it is cut short. */

#pragma once

#include <gtk/gtk.h>

void whole_text_tooltip_add (GtkLabel *label);
