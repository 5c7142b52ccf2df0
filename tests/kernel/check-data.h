/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Corners and tables that were computed outside the project, and how to read them. */

#pragma once

#include "kernel/sweep.h"

#include <glib.h>

#define DEGREES(rad) ((rad) *180.0 / G_PI)
#define RADIANS(deg) ((deg) *G_PI / 180.0)

/* A table of numbers with one row of names. */
typedef struct {
  GPtrArray *names;
  GArray *cells; /* double, NAN where a cell is a word */
  guint n_rows;
} CheckTable;

/* Of a file in tests/data/check; ends the test if it cannot be read. */
CheckTable *check_table_read (const char *file);
double check_table_get (const CheckTable *table, guint row, const char *name);
void check_table_free (CheckTable *table);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (CheckTable, check_table_free)

extern const MeasuredCorner set_m, set_p, worked_set;

Corner check_assemble (const MeasuredCorner *measured, Adjustment adjustment);
Corner check_assemble_moved (const MeasuredCorner *measured,
                             double inboard,
                             double rearward,
                             double up);
/* One station, which must assemble. */
Measures check_solve (const Corner *corner, double travel, double rack);
/* With the contact, not the wheel's centre, at @travel from where it was measured. */
Station check_solve_at_contact (const Corner *corner, double travel);
/* As a table has it: angles and rates of angles in degrees. */
double check_shown (const Measures *measures, Quantity quantity);
/* Fails unless |@value − @expected| ≤ @tolerance, naming what and where. */
void check_near (
    const char *what, double place, double value, double expected, double tolerance);
/* @value against a column of @table, to 1e-6 of what it says or to its @last_digit,
 * whichever is more. */
void check_column (const CheckTable *table,
                   guint row,
                   const char *name,
                   double value,
                   double last_digit);
