/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Spin buttons that hold a stored number and show it in the unit chosen; people may type
 * sums, fractions and units into them. What is no number, or one beyond the bounds, stays
 * to be corrected, marked, with the sentence that says why in a line below it; what
 * counts is the number that stood there. */

#pragma once

#include "model/words/unit.h"

#include <gtk/gtk.h>

/* Turns @spin into one. @decimals are those of the stored unit, "digits" of a spin button
 * otherwise; the adjustment keeps its stored numbers. @unit, or NULL, is the label behind
 * it. */
void unit_spin_begin (GtkSpinButton *spin, UnitKind kind, int decimals, GtkLabel *unit);
/* The unit by itself, which follows the choice. */
GtkWidget *unit_label_new (UnitKind kind);
/* What refusals and assistive technology call it where no label has it for its mnemonic
 * widget. */
void unit_spin_set_name (GtkSpinButton *spin, const char *name);
/* A value that is shown as nothing, and that nothing stands for. */
void unit_spin_set_open (GtkSpinButton *spin, double open);
