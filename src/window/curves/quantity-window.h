/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The pages on the quantities: a list that can be searched, and beside it what the chosen
 * one is, its sign, what changes it, what is usual and what is often said wrongly. */

#pragma once

#include "kernel/measure.h"

#include <gtk/gtk.h>

/* At that quantity; -1 leaves it where it is, at the first one to begin with. Each
 * @parent has one such window, which comes to the front. */
void quantity_window_present (GtkWindow *parent, int quantity);
