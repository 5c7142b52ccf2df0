/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The question "what do these setups do to the corner through wheel travel?", solved:
 * what the window, the exports and the command line all draw from.
 *
 * Solving a study anew allocates only when the car has more setups than before. */

#pragma once

#include "kernel/sweep.h"
#include "model/car/car.h"

#define STUDY_STATIONS 161

/* One corner through the whole wheel travel. */
typedef struct {
  /* Of the setup, the car's, which stays as it is in a drag; and as setup-title.h has
   * it, for what stands still. Of the measured car both are its title. */
  const char *name, *title;
  Corner corner;
  Station stations[STUDY_STATIONS];
  Station now;       /* at the travel in hand */
  Station at_height; /* where the setup stands: at its lowering */
  double lowering;   /* mm */
  size_t n_assembled;
  gboolean is_moved; /* whether its linkage differs from the one that was measured */
  gboolean is_shown; /* in hand, the baseline, or not hidden */
} StudyCorner;

typedef struct {
  MeasuredCorner points; /* what was measured */
  SweepRange range;      /* −droop … +bump */
  double travel;         /* in hand */
  double cg_height;      /* of the car as measured, mm above the ground */
  StudyCorner measured;  /* nothing moved */
  StudyCorner *setups;   /* n_setups of them, in the car's order */
  guint n_setups, n_allocated;
  guint in_hand, baseline;
} Study;

Study *study_new (void);
void study_free (Study *study);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Study, study_free)

/* Solves everything at @travel, held inside the car's travel. @car is sound (car-json.h)
 * and stays alive while the study's names are read. */
void study_solve (Study *study, const Car *car, guint in_hand, double travel);

/* The same with another travel in hand; the curves stay. */
void study_set_travel (Study *study, double travel);

const StudyCorner *study_in_hand (const Study *study);

/* What the setup in hand is compared with: the baseline, or the corner as measured when
 * the baseline itself is in hand. */
const StudyCorner *study_reference (const Study *study);

/* Whether the setup in hand and the reference differ, so that both are worth drawing. */
gboolean study_has_reference (const Study *study);

/* One translated sentence on why a position cannot be assembled. */
const char *pose_status_sentence (PoseStatus status);
