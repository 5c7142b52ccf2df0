/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Entries for numbers as people type them; see typed-number.h. */

#pragma once

#include "model/words/unit.h"

#include <gtk/gtk.h>

/* A spin button that shows as many decimals as its number has. Return in it activates the
 * window's default. "changed" tells of every key. */
GtkSpinButton *typed_spin_new (double least, double most, double step, const char *label);

/* Of the units that may be typed behind numbers; none until it is told. */
void typed_spin_set_kind (GtkSpinButton *spin, UnitKind kind);

/* What stands in it now, 0 where nothing does; the last number while it is none. */
double typed_spin_get (GtkSpinButton *spin);
/* Whether a number stands there that the spin button will keep. */
gboolean typed_spin_is_sound (GtkSpinButton *spin);

/* Marks it and says so where what stands in it is no number; else NULL. Free with g_free
 * (). @name is the entry's. */
char *typed_spin_refusal (GtkSpinButton *spin, const char *name);

/* What was typed so far does not come back by Undo in the entry, where nobody would have
 * read it again: for one whose text was read or put there just now. */
void entry_forget_undo (GtkWidget *entry);
/* Whether the key is the desktop's for Undo. */
gboolean is_undo_key (guint key, GdkModifierType state);

/* Marks an entry that cannot stay as it is, for eyes and for screen readers. */
void entry_mark (GtkWidget *entry, gboolean is_at_fault);
