/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The entries for what is measured on a car, in groups that fold. Signals: "changed" at
 * every key; "focused" when another entry has the focus. */

#pragma once

#include "window/measure/measure-window-reading.h"

#include <gtk/gtk.h>

#define SW_TYPE_MEASURE_FORM (sw_measure_form_get_type ())
G_DECLARE_FINAL_TYPE (SwMeasureForm, sw_measure_form, SW, MEASURE_FORM, GtkWidget)

/* The entries show @car, its points locked until the user unlocks them; NULL for a new
 * one: they are empty. */
GtkWidget *sw_measure_form_new (const Car *car);

/* Reads into @car and marks what is at fault. */
MeasureReading sw_measure_form_read (SwMeasureForm *self, Car *car);

/* The field whose entry has the focus, or had it last; -1 for none. */
int sw_measure_form_get_field (SwMeasureForm *self);
/* Takes the focus there, unfolding its group. */
void sw_measure_form_go_to (SwMeasureForm *self, guint field);
