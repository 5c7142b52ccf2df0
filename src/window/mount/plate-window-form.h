/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The entries that describe a plate; only those of its kind are there. Signal "changed"
 * at every key. */

#pragma once

#include "model/plate/plate.h"

#include <gtk/gtk.h>

#define SW_TYPE_PLATE_FORM (sw_plate_form_get_type ())
G_DECLARE_FINAL_TYPE (SwPlateForm, sw_plate_form, SW, PLATE_FORM, GtkWidget)

GtkWidget *sw_plate_form_new (const Plate *plate);

/* What the entries say, sound or not; good until the next call. */
const Plate *sw_plate_form_read (SwPlateForm *self);

/* Why this cannot be saved, in one translated sentence, and marks the entry; NULL where
 * it can. */
char *sw_plate_form_check (SwPlateForm *self);
/* Marks the name, which the shelf has already. */
void sw_plate_form_mark_name (SwPlateForm *self);
