/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The entries of one group of fields, laid out; each is put into @entries by its field.
 */

#pragma once

#include "model/study/measure-field.h"

#include <gtk/gtk.h>

/* The eight points in rows, their coordinates in columns. */
GtkWidget *measure_points_grid_new (CarSide side, GtkEntry **entries);
/* Numbers in rows. */
GtkWidget *measure_numbers_grid_new (MeasureGroup group, GtkEntry **entries);
