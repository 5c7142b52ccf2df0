/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a setup stands on through wheel travel, as text, CSV (RFC 4180) or JSON.
 *
 * CSV columns: wheel_travel_mm, wheel_load_n, wheel_rate_n_per_mm (per mm that the
 * contact rises), geometric_rate_n_per_mm (the part that is change of ratio), then each
 * element's share of the load at the wheel, and what the springs themselves see. JSON has
 * the same rows behind where the setup stands, its frequencies and what happens on the
 * way. A travel that cannot be assembled, or where a coil is bound, keeps its row with
 * empty fields. */

#pragma once

#include "model/spring/spring-study.h"
#include "model/study/travel-table.h"
#include "model/words/table-format.h"

#define SPRING_TABLE_TEXT_STEP 10.0 /* mm, where none is asked for */

/* @steps can be counted. */
void spring_table_write (const SpringStudy *study,
                         guint setup,
                         TravelSteps steps,
                         TableFormat format,
                         GString *text);
