/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The corner driven through wheel travel or rack travel.
 *
 * A sweep starts at the assembly that was measured and walks outward from it, so it never
 * jumps to the mirror assembly. Past the first station that cannot be assembled nothing
 * can be reached: those stations keep their place and their status, and their numbers are
 * NAN. */

#pragma once

#include "kernel/measure.h"

#include <stddef.h>

typedef struct {
  double from, to; /* mm; to above from, or equal for one station */
  size_t n_stations;
} SweepRange;

typedef struct {
  PoseStatus status;
  double travel, rack; /* as asked */
  Pose pose;
  Measures measures;
} Station;

/* Both fill @n_stations of the caller's @stations and return how many were assembled. */
size_t
sweep_travel (const Corner *corner, SweepRange range, double rack, Station *stations);

/* The arm is held where @travel puts it with the rack in the middle, so the strut keeps
 * its length and the knuckle turns about the steering axis alone. */
size_t
sweep_rack (const Corner *corner, double travel, SweepRange racks, Station *stations);

/* One station by itself: the same numbers as in a sweep, from a cold start. */
PoseStatus
station_solve (const Corner *corner, double travel, double rack, Station *station);

/* The place of station @i in @range. */
double sweep_place (SweepRange range, size_t i);
