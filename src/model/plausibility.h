/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What looks unlike a road car's front corner, or cannot work as entered. These warn and
 * never refuse: a tape measure slips more often than a car is strange. */

#pragma once

#include "model/car.h"

#define PLAUSIBILITY_AS_MEASURED -1

typedef struct {
  const char *id; /* stable, for programs: "caster", "travel-gap" */
  int setup;      /* its index, or PLAUSIBILITY_AS_MEASURED */
  char *sentence; /* translated; names the setup where there is one */
} PlausibilityWarning;

/* Of PlausibilityWarning, owned by the array: the corner as measured first, then each
 * setup that changes something. @car is sound (car-json.h). */
GPtrArray *plausibility_check (const Car *car);
