/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Numbers as people type and paste them: with the locale's decimal mark or a point, with
 * either minus sign, and without marks between thousands. */

#pragma once

#include "model/words/unit.h"

#include <glib.h>

typedef enum {
  TYPED_NOTHING, /* but blanks */
  TYPED_NUMBER,
  TYPED_NONSENSE
} Typed;

/* Sets @value to what was typed, 0 unless it is a number. */
Typed typed_number_read (const char *text, double *value);

/* The same, or a sum with units as typed-expression.h has it; bare numbers and @value in
 * the stored unit of @kind. */
Typed typed_measure_read (const char *text, UnitKind kind, double *value);
/* What was meant by @text where it would be a number if its one comma were the locale's
 * decimal mark; else NULL. Free with g_free (). */
char *typed_number_meant (const char *text);

/* The shortest text that reads back to the bit. Free with g_free (). */
char *typed_number_text (double value);

/* Several of them as a spreadsheet hands them over or a person lists them, between tabs,
 * line ends, blanks, semicolons, or commas where those are no decimal mark. Of double;
 * NULL where a piece is no number. */
GArray *typed_numbers_read (const char *text);
/* The reverse. */
char *typed_numbers_text (const double *values, guint n);
