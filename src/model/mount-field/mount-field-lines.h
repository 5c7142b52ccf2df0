/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lines of equal value through a solved field.
 *
 * Where a line crosses a mesh of the grid is found by solving the corner there, until the
 * value is right; then in the middle between two such places, where the line is bent
 * until that is right as well. */

#pragma once

#include "model/mount-field/mount-field.h"

/* Of the step between lines: how far a value may be off the line's at a vertex. Between
 * two vertices a line is straight, and off by no more than that again. */
#define FIELD_TOLERANCE 0.01

typedef struct {
  double level;          /* kernel units */
  guint first, n_points; /* in FieldLines.points */
  gboolean is_closed;    /* back to the first point, which is not said again */
} FieldLine;

typedef struct FieldScratch FieldScratch; /* room to work in */

/* Each line runs so that higher values lie to its left, inboard seen to the right of
 * rearward. It ends where the window does, where the corner cannot be
 * assembled, or where the values leap through infinity. */
typedef struct {
  GArray *points; /* of MountOffset, up as the grid's */
  GArray *lines;  /* of FieldLine */
  double step;    /* between levels, kernel units */
  FieldScratch *scratch;
} FieldLines;

FieldLines *field_lines_new (void);
void field_lines_free (FieldLines *lines);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FieldLines, field_lines_free)

/* Lines at round values, at most @most_levels of them; keeps what was allocated. Where
 * the values run away near the end of what assembles, the step is that of the rest, and
 * the levels are those next to the middle value. */
void field_lines_trace (FieldLines *lines,
                        const MountField *field,
                        FieldSubject subject,
                        int most_levels);
/* The lines of one value, appended unless they are there; to the tolerance of the step
 * that is there. */
void field_lines_trace_level (FieldLines *lines,
                              const MountField *field,
                              FieldSubject subject,
                              double level);
