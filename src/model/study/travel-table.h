/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The travel table: one row a wheel travel, as CSV (RFC 4180) or JSON.
 *
 * Columns, units and signs are those of QuantityInfo, behind `wheel_travel_mm`. Twelve
 * significant digits, `.` in every locale; what is smaller than rounding leaves is 0. A
 * travel that cannot be assembled keeps its row with empty fields (CSV) or null (JSON).
 */

#pragma once

#include "model/car/car.h"

#define TRAVEL_TABLE_MOST_ROWS 100000
#define TRAVEL_TABLE_STEP 1.0 /* mm, where none is asked for */

/* Rows stand at from, from + step, … and not past to: a step that does not divide the
 * range leaves its end out. All mm, from the reference height. */
typedef struct {
  double from, to, step;
} TravelSteps;

typedef enum {
  TRAVEL_TABLE_CSV,
  TRAVEL_TABLE_JSON
} TravelTableFormat;

/* The car's whole travel in steps of 1 mm. */
TravelSteps travel_steps_of_car (const Car *car);

/* G_OPTION_ERROR_BAD_VALUE, with a sentence, unless numbers are finite, from ≤ to, step >
 * 0 and the rows are not too many. */
gboolean travel_steps_count (TravelSteps steps, gsize *n_rows, GError **error);

/* The travel of row @i of those. */
double travel_steps_at (TravelSteps steps, gsize i);

/* Appends the table to @text and its gaps to @gaps (travel-gap.h). @steps can be counted.
 */
void travel_table_write (const Car *car,
                         guint setup,
                         TravelSteps steps,
                         TravelTableFormat format,
                         GString *text,
                         GArray *gaps);
