/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What people type into an entry: arithmetic on numbers, fractions and units.
 *
 *   sum      = ["+" | "−"] product {("+" | "−") product}
 *   product  = factor {("*" | "/") factor}
 *   factor   = "−" factor | measure | "(" sum ")" [unit]
 *   measure  = figure [unit], or several in falling units: 1°30′, 2 ft 3 in
 *   figure   = number | [whole] whole "/" whole
 *
 * "12.5+1/8 in", "12 1/2", "1°30'", "2 1/4\"", "5 lbf/in". A number without a unit counts
 * in the unit that the entry shows; a product has one at most. Numbers have the locale's
 * decimal mark or a point and no marks between thousands. Nothing else is evaluated. */

#pragma once

#include "model/words/unit.h"

/* Brackets and signs in one another. */
#define TYPED_EXPRESSION_NESTING 32

typedef enum {
  EXPRESSION_EMPTY, /* but blanks */
  EXPRESSION_VALUE,
  EXPRESSION_REFUSED
} ExpressionStatus;

/* Sets @value, in the stored unit of @kind; 0 unless there is one. @refusal takes one
 * sentence that names what was not understood, to be freed with g_free (), or NULL; may
 * be NULL itself. */
ExpressionStatus
typed_expression_read (const char *text, UnitKind kind, double *value, char **refusal);

/* The same for an entry that shows the stored unit whatever is chosen. @kind is no toe.
 */
ExpressionStatus typed_expression_read_stored (const char *text,
                                               UnitKind kind,
                                               double *value,
                                               char **refusal);
