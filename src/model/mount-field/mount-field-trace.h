/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The tracer by itself, for any function on a grid: marching squares with exact
 * crossings. */

#pragma once

#include "model/mount-field/mount-field-lines.h"

typedef double (*FieldFunction) (gconstpointer data, MountOffset mount);

typedef struct {
  const MountGrid *grid;
  const double *values; /* of the grid's places, row by row; NAN for a gap */
  FieldFunction exact;  /* that they come from; NAN for a gap */
  gconstpointer data;
} FieldSurface;

/* The lines of one value, appended; to the tolerance of lines->step, above 0. */
void
field_lines_trace_surface (FieldLines *lines, const FieldSurface *surface, double level);

FieldScratch *field_scratch_new (void);
void field_scratch_free (FieldScratch *scratch);
/* Room for @n values, kept between calls. */
double *field_scratch_values (FieldScratch *scratch, size_t n);
