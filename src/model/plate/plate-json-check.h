/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside plate-json only: what the values of a plate must keep to. */

#pragma once

#include "model/plate/plate.h"

/* One sentence in the domain FILE_REFUSAL that names the member by its path as it would
 * stand in the file. */
gboolean plate_check_values (const Plate *plate, GError **error);
/* How many entries the list @name has: at least one, at most PLATE_MOST_PLACES. */
gboolean plate_check_count (const char *name, guint n, GError **error);
