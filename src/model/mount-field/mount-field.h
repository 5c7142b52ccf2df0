/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The corner over all places of the upper mount that matter, at the height where a setup
 * stands: a grid of exact solutions, and lines of equal value through it. */

#pragma once

#include "kernel/mount-place.h"
#include "model/car/aim.h"
#include "model/car/car.h"

/* What lines can be drawn of. */
typedef enum {
  FIELD_CAMBER,
  FIELD_CASTER,
  FIELD_SAI,
  FIELD_SCRUB_RADIUS,
  FIELD_TRAIL,
  FIELD_ROLL_CENTRE_HEIGHT,
  FIELD_TOE_BEFORE_RESET,
  N_FIELD_SUBJECTS
} FieldSubject;

const char *field_subject_name (FieldSubject subject); /* translated */
Quantity
field_subject_quantity (FieldSubject subject); /* for units, digits, sign words */

/* The target of @car that bears on the subject, or NULL. */
const CarTarget *field_subject_target (const Car *car, FieldSubject subject);

/* What that target allows, kernel units, −INFINITY and INFINITY where it is open. A toe
 * change counts from the baseline's toe where that stands. FALSE where there is none, or
 * the baseline cannot stand. */
gboolean field_subject_band (
    const Car *car, CarSide side, FieldSubject subject, double *least, double *most);

typedef struct {
  double inboard_from, inboard_to, rearward_from, rearward_to; /* mm */
} FieldWindow;

typedef struct {
  MeasuredCorner points;
  Adjustment adjustment; /* of the setup, on that side; its own mount does not matter */
  MountGrid grid;
  MountPlace *places;
  size_t n_assembled, n_allocated;
} MountField;

MountField *mount_field_new (void);
void mount_field_free (MountField *field);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (MountField, mount_field_free)

/* Solves all places of @window, some 700 in nearly square meshes. The height of the mount
 * is that of the setup. Allocates only when the grid grows. FALSE where nothing has
 * changed since the last call: then it solves nothing. */
gboolean mount_field_solve (
    MountField *field, const Car *car, guint setup, CarSide side, FieldWindow window);

double mount_place_value (const MountPlace *place,
                          FieldSubject subject); /* kernel units */
/* Exactly there, not from the grid; NAN where it cannot be assembled. */
double
mount_field_exact (const MountField *field, FieldSubject subject, MountOffset mount);
