/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The corner over all places of the upper mount that matter, at the height where a setup
 * stands: a grid of exact solutions, and lines of equal value through it. */

#pragma once

#include "kernel/mount-place.h"
#include "model/aim.h"
#include "model/car.h"

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

/* The target of @car that bears on the subject, or NULL. A toe change counts from the
 * static toe. */
const CarTarget *field_subject_target (const Car *car, FieldSubject subject);

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

/* Solves all places of @window anew, some 40 each way, on as many cores as serve. The
 * height of the mount is that of the setup. Allocates only when the grid grows. */
void mount_field_solve (
    MountField *field, const Car *car, guint setup, CarSide side, FieldWindow window);

double mount_place_value (const MountPlace *place,
                          FieldSubject subject); /* kernel units */
/* Exactly there, not from the grid. */
double
mount_field_exact (const MountField *field, FieldSubject subject, MountOffset mount);

/* One line of equal value, in mm. The value at each vertex is exact to FIELD_TOLERANCE of
 * the step between lines; between two vertices it is straight, and off by no more than
 * that again. */
#define FIELD_TOLERANCE 0.01
typedef struct {
  double level;          /* kernel units */
  guint first, n_points; /* in FieldLines.points */
  gboolean is_closed;
} FieldLine;
typedef struct {
  GArray *points; /* of MountOffset, up as the grid's */
  GArray *lines;  /* of FieldLine */
  double step;    /* between levels, kernel units */
} FieldLines;

FieldLines *field_lines_new (void);
void field_lines_free (FieldLines *lines);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FieldLines, field_lines_free)

/* Lines at round values, at most @most_levels; keeps what was allocated. */
void field_lines_trace (FieldLines *lines,
                        const MountField *field,
                        FieldSubject subject,
                        int most_levels);
/* The lines of one value, appended. */
void field_lines_trace_level (FieldLines *lines,
                              const MountField *field,
                              FieldSubject subject,
                              double level);
