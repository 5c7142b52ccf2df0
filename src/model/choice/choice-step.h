/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the choice only: the best step on a model of the places around one.
 *
 * Unknowns: the step p of the ways and t of each term, both with k = FIRST_UNIT put to
 * t: t² + 2kt is (t + k)² but for a constant. With the outputs' slopes at what
 * has been gone already, and H what bends: their second rates times the multipliers of
 * their rows, and the tie-break,
 *   min ½ Σ weight·t² + ½ pᵀHp + gᵀp,  t ≥ rows + k, t ≥ k, 0 ≥ rows of walls, p in
 * bounds; by H = LLᵀ a shortest vector, see choice-least-distance.h. Repeated on the same
 * model until it moves no more: Newton's method on the conditions of a constrained least.
 */

#pragma once

#include "model/choice/choice-reach.h"
#include "model/choice/choice-terms.h"

/* What settles it between places that serve alike. */
typedef enum {
  TIE_TO_AS_MEASURED, /* nearest to the mount as measured, with the least bolt */
  TIE_TO_WHERE_IT_IS  /* nearest to where the step starts: pulls nowhere */
} Tie;

/* Small enough to be seen only where nothing else is. */
#define TIE_WEIGHT 1e-6 /* per mm², terms being of weight 1 at most */

double choice_tie (const ChoiceReach *reach, const double *x, const double *outputs);

typedef struct {
  double by[MOST_WAYS];         /* mm */
  double multiplier[MOST_ROWS]; /* of the terms' rows: goes in as a guess, 0 for none */
} ChoiceStep;

/* FALSE where the walls leave no step. */
gboolean choice_step_solve (const ChoiceReach *reach,
                            const ChoiceModel *model,
                            const Terms *terms,
                            Tie tie,
                            const double *x,
                            double longest,
                            ChoiceStep *step);

/* The outputs that the model expects after a step. */
void choice_model_after (const ChoiceModel *model, const double *by, double *outputs);
