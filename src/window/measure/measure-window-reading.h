/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the entries of the form come to: a sound car, or one sentence on what keeps them
 * from being one. */

#pragma once

#include "model/study/measure-field.h"

typedef struct {
  const char *name, *notes;
  const char *const *texts; /* measure_n_fields () of them, in the order of the fields */
  gboolean has_right;       /* the right side was measured too */
} MeasureEntries;

typedef enum {
  MEASURE_NONSENSE, /* an entry is no number */
  MEASURE_MISSING,  /* an entry is empty that must not be */
  MEASURE_REFUSED,  /* car_check () says no */
  MEASURE_SOUND
} MeasureVerdict;

typedef struct {
  MeasureVerdict verdict;
  char *sentence;        /* translated */
  char *warning;         /* translated: what looks unlike a car, and which entry may be to
                            blame; or NULL */
  int field;             /* that the sentence begins with, or -1 */
  gboolean *is_at_fault; /* by field: what the sentence is about, unless it is missing */
  gboolean *is_missing;  /* by field: a number must stand there, and does not */
} MeasureReading;

/* Puts what can be read into @car, which keeps its other members. */
MeasureReading measure_read (const MeasureEntries *entries, Car *car);
void measure_reading_clear (MeasureReading *reading);

/* @sentence of the model with the entries' names in place of paths. Free with g_free ().
 */
char *measure_in_words (const char *sentence);
