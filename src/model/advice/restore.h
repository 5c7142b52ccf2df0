/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What would put it back? For a setup that was lowered or moved: the hardware that
 * returns what the baseline had at its own standing height, and what then stays
 * unmatched.
 *
 * The setup keeps its wheel travel, and a toe that is reset stays reset. Bump steer is
 * the curve of toe less the toe at the standing height: two curves of the same shape
 * match even where static toe differs.
 *
 * Source of the solver: Brent's bracketing root finder, as in the GNU Scientific Library.
 * One thread at a time: that library's error handler is set aside during a solve. */

#pragma once

#include "model/car/car.h"

typedef enum {
  RESTORE_ROLL_CENTRE,          /* by a ball-joint spacer */
  RESTORE_CAMBER_GAIN,          /* by a ball-joint spacer */
  RESTORE_BUMP_STEER_BY_SPACER, /* by a tie-rod-end spacer: least squares over the travel
                                 */
  RESTORE_BUMP_STEER_BY_RACK,   /* by the rack's height: least squares over the travel */
  N_RESTORE_GOALS
} RestoreGoal;

typedef enum {
  RESTORE_OK,
  RESTORE_OUT_OF_LIMITS, /* no answer within the hardware's limits; .value is what comes
                            nearest within them, as a rule one of the limits */
  RESTORE_NOT_ASSEMBLED  /* setup or baseline cannot be assembled where it stands, or over
                            the travel used; only .limits, .from and .to are numbers */
} RestoreStatus;

typedef struct {
  double least, most; /* of the part, mm */
} RestoreLimits;

typedef struct {
  RestoreStatus status;
  double value;  /* of the part, mm: the whole of it, not what is added */
  double target; /* what the baseline has; mm, rad/mm, or 0 for bump steer */
  double before; /* what the setup has now; for bump steer the RMS difference of the
                    toe curves over the travel used, rad */
  double after;  /* what it has with the part */
  RestoreLimits limits; /* as asked */
  double from, to;      /* travel over which bump steer was matched, mm from standing */
} RestoreAnswer;

/* What kits reach: common practice, no published source. */
RestoreLimits restore_usual_limits (RestoreGoal goal);
#define RESTORE_USUAL_TRAVEL 40.0 /* mm either way */

/* @limits are finite and in order. @travel_used: bump steer is matched over standing
 * height ± this, mm, as far as the car has travel left there; above 0. Of several spacers
 * that answer, the nearest to what the setup has now. */
RestoreAnswer restore_solve (const Car *car,
                             guint setup,
                             RestoreGoal goal,
                             RestoreLimits limits,
                             double travel_used);

/* The setup with the answer's part in it. */
void restore_apply (CarSetup *setup, RestoreGoal goal, double value);

/* One translated sentence for the answer. Free with g_free (). */
char *restore_sentence (RestoreGoal goal, const RestoreAnswer *answer);
