/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The bolt positions of a plate as rows: its mark, inboard, rearward. Signal "changed".
 */

#pragma once

#include "model/plate/plate.h"

#include <gtk/gtk.h>

#define SW_TYPE_HOLE_LIST (sw_hole_list_get_type ())
G_DECLARE_FINAL_TYPE (SwHoleList, sw_hole_list, SW, HOLE_LIST, GtkWidget)

GtkWidget *sw_hole_list_new (const Plate *plate);
/* Puts the rows into the plate; what it had beside them stays with each row. */
void sw_hole_list_read (SwHoleList *self, Plate *plate);

/* What is no number the plate never sees: marks it and says so, or NULL. */
char *sw_hole_list_check (SwHoleList *self);

/* Marks what `holes[2].label` names; returns its translated name, or NULL. Takes all
 * marks away when @path is NULL. */
char *sw_hole_list_mark (SwHoleList *self, const char *path);
