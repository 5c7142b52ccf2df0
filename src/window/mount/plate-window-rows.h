/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The numbers of a plate as rows of its form, and which kinds of plate have them. A new
 * number in the plate file is one more row in plate-window-rows.c. */

#pragma once

#include "model/plate/plate.h"

#define PLATE_ROW_SINGLE 0 /* instead of a second member */

/* A number of the plate, or a pair of them from least to most. */
typedef struct {
  const char *path, *name, *meaning; /* the latter two to be translated */
  const char *unit;
  gsize offset, most_offset; /* of the doubles in a Plate */
  double least, most, step;
  guint kinds; /* a bit for each */
} PlateRow;

#define N_PLATE_ROWS 11
#define PLATE_ROW_TURN 6
#define PLATE_ROW_ITSELF 7 /* from here on they are of every plate */

extern const PlateRow plate_rows[N_PLATE_ROWS];
gboolean plate_row_is_of (const PlateRow *row, PlateKind kind);
