/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Entries for numbers as people type them; see typed-number.h. */

#pragma once

#include <gtk/gtk.h>

/* A spin button that shows as many decimals as its number has. Return in it activates the
 * window's default. "changed" tells of every key. */
GtkSpinButton *typed_spin_new (double least, double most, double step, const char *label);

/* What stands in it now, the last sound number while something else does. */
double typed_spin_get (GtkSpinButton *spin);

/* Marks an entry that cannot stay as it is, for eyes and for screen readers. */
void entry_mark (GtkWidget *entry, gboolean is_at_fault);
