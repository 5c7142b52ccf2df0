/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The question "what does this setup do to the corner through wheel travel?", solved: what
 * the window, the exports and the command line all draw from.
 *
 * A plain value of fixed size; solving it anew allocates nothing. */

#pragma once

#include "kernel/sweep.h"
#include "model/car.h"

#define STUDY_STATIONS 161

typedef struct {
  Corner corner;
  Station stations[STUDY_STATIONS]; /* through the whole wheel travel */
  Station now;                      /* at the travel in hand */
  size_t n_assembled;
} StudyCorner;

typedef struct {
  MeasuredCorner points; /* as measured, with alignment and tyre radius */
  SweepRange range;      /* −droop … +bump */
  double travel;        /* in hand */
  double standing;      /* the travel at which the setup stands: its lowering */
  StudyCorner measured; /* mount unmoved, not lowered */
  StudyCorner setup;
  gboolean is_moved; /* whether the setup differs from what was measured */
} Study;

/* Solves everything at @travel, held inside the car's travel. @car is sound (car-json.h). */
void study_solve (Study *study, const Car *car, const CarSetup *setup, double travel);

/* The same with another travel in hand; the curves stay. */
void study_set_travel (Study *study, double travel);

/* One translated sentence on why a position cannot be assembled. */
const char *pose_status_sentence (PoseStatus status);
