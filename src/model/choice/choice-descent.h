/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the choice only: from one place down to the best one around it. */

#pragma once

#include "model/choice/choice-reach.h"
#include "model/choice/choice-terms.h"

/* A place as a search keeps it. */
typedef struct {
  double x[MOST_WAYS];
  double outputs[N_OUTPUTS];
  double excess; /* past the limits, squared; 0 within. INFINITY: not assembled */
  double cost;   /* ½ Σ weight·t² of the aims */
  double tie;
} Candidate;

Candidate choice_candidate (const ChoiceReach *reach, const double *x);

/* The limits first, then the aims, then the tie: below 0 where @a is better. */
int choice_candidate_compare (const Candidate *a, const Candidate *b);

Candidate choice_descend (const ChoiceReach *reach, Candidate start);
