/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The units that people type behind numbers. */

#pragma once

#include "model/words/unit.h"

typedef struct {
  const char *symbol;
  UnitKind kind;
  double size;     /* in the stored unit of @kind, for which bare numbers may stand */
  double fraction; /* of the next smaller one that may follow: 1/60 after °; or 0 */
} TypedUnit;

/* The one that @text begins with: of @kind, or of any other where none of that fits;
 * NULL where there is none. */
const TypedUnit *typed_unit_find (const char *text, UnitKind kind);
