/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Places where a function has one value, found by solving it until it has. */

#pragma once

#include "model/mount-field/mount-field-trace.h"

/* Vertices are found to this part of the tolerance, and the middles between them tested
 * against it; where the function is so flat that lines would show corners, both are held
 * to what it changes by over this part of a mesh. */
#define FIELD_LEVEL_PART 0.5
#define FIELD_LEVEL_EYE 0.015
#define FIELD_SAME_PLACE 1e-9 /* mm */

typedef struct {
  const FieldSurface *surface;
  double value, tolerance;
} FieldLevel;

MountOffset field_between (MountOffset a, MountOffset b, double part);
double field_distance (MountOffset a, MountOffset b); /* in plan, mm */

/* How far the function is above the level; NAN in a gap. */
double field_level_excess (const FieldLevel *level, MountOffset at);

/* Two neighbours in a row of the grid, or in a column when @stride is a row long. */
typedef struct {
  size_t from, stride;
  size_t place, n; /* of the first in its row or column of n */
} FieldEdge;

/* Where the level crosses the edge from @p to @q, whose ends lie to either side of it.
 * FALSE where it leaps or runs into a gap. */
gboolean field_level_cross (const FieldLevel *level,
                            const FieldEdge *edge,
                            MountOffset p,
                            MountOffset q,
                            MountOffset *at);

/* Adds to @bends, of MountOffset, what the way from @a to @b needs to be off the level by
 * no more than @near. Where that cannot be had the tolerance will do; FALSE, and nothing
 * added, where not even that can. */
gboolean field_level_bend (
    const FieldLevel *level, MountOffset a, MountOffset b, double near, GArray *bends);
