/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside plate-json only: what a plate file holds, by name, by the kinds of plate that
 * have it, and in the order of writing. */

#pragma once

#include "model/json/json-member.h"
#include "model/plate/plate.h"

#define PLATE_FILE_FORMAT "strutwright-plate"

typedef struct {
  const char *name;
  gsize offset; /* of the double in a Plate */
  guint kinds;  /* a bit for each */
  gboolean is_required;
  NumberRange range;
} PlateNumber;

/* A list of two numbers, the first below the second. */
typedef struct {
  const char *name;
  gsize least, most; /* offsets of the doubles in a Plate */
  guint kinds;
  NumberRange range;
} PlatePair;

extern const PlateNumber plate_numbers[], plate_extras[];
extern const gsize n_plate_numbers, n_plate_extras;
extern const PlatePair plate_pairs[];
extern const gsize n_plate_pairs;
extern const NumberRange plate_turn_range, plate_hole_range;

extern const char *const plate_kind_words[N_PLATE_KINDS]; /* as files have them */
/* NULL-terminated: the members that this version knows. */
extern const char *const plate_members[];
extern const char *const plate_hole_members[];

/* Whether a plate of that kind has the member @name, one of plate_members. */
gboolean plate_kind_has (PlateKind kind, const char *name);

double *plate_number (Plate *plate, gsize offset);
double plate_number_value (const Plate *plate, gsize offset);
