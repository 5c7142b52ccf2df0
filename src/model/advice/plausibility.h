/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What looks unlike a road car's front corner, or cannot work as entered. These warn and
 * never refuse: a tape measure slips more often than a car is strange. */

#pragma once

#include "kernel/measure.h"
#include "model/car/car.h"
#include "model/plate/plate-library.h"
#include "model/words/unit.h"

#define PLAUSIBILITY_AS_MEASURED -1

typedef struct {
  const char *id; /* stable, for programs: "caster", "travel-gap" */
  int setup;      /* its index, or PLAUSIBILITY_AS_MEASURED */
  char *sentence; /* translated; names the setup where there is one */
} PlausibilityWarning;

/* Of PlausibilityWarning, owned by the array: the corner as measured first, then each
 * setup that changes something. @car is sound (car-json.h). */
GPtrArray *plausibility_check (const Car *car);
/* And where a setup's mount or strut passes the car's own limits, by the bearings of the
 * plates that the setups name, as far as @library, which may be NULL, has them. */
GPtrArray *plausibility_check_fitted (const Car *car, const PlateLibrary *library);
/* How many of @warnings find the corner as measured implausible: they come first. */
guint plausibility_n_measured (GPtrArray *warnings);

/* Whether it is about the corner as measured and other points could mend it: static
 * camber and toe-in are what the gauge said. */
gboolean plausibility_is_of_points (const PlausibilityWarning *warning);

/* How far outside the bands that the points decide the corner as measured stands, as a
 * multiple of the width of the band that it misses by most: 0 or less inside all of them,
 * with the tyre's contact on the ground and the arm's pivots the right way round.
 * INFINITY where a point lies on the right, and where it cannot be assembled as it stands
 * or at either end of its travel. */
double plausibility_excess (const Car *car, const MeasuredCorner *measured);

/* What is usual for a road car with struts as it was measured: the bands that the
 * warnings watch. */
typedef struct {
  const char *id;
  const char *name; /* translated: "Camber gain over 25 mm of bump" */
  const char *unit; /* to follow a number as stored: "°", " mm" */
  UnitKind kind;
  int decimals;
  double least, most;
  const char *source; /* translated, whole sentences */
} PlausibilityBand;

/* What follows a number in the units chosen, for @unit of a band. */
const char *plausibility_band_unit (UnitKind kind, const char *unit);

#define PLAUSIBILITY_MOST_BANDS 2
/* Returns how many watch @quantity: itself, twice it, or its change. */
guint plausibility_bands (Quantity quantity,
                          PlausibilityBand found[PLAUSIBILITY_MOST_BANDS]);
