/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Sequential quadratic programming within a trust region: a model of the outputs to the
 * second order, the best step on it, and a look at what it really brings. */
#include "model/choice/choice-descent.h"
#include "model/choice/choice-step.h"

#include <math.h>
#include <string.h>

#define MOST_MODELS 30
#define MOST_TRIES 12
#define FIRST_STEP 20.0 /* mm */
#define STILL 1e-7      /* mm: Newton's next step would be its square */
#define NEAR                                                                             \
  1e-3             /* mm: here the sum is too flat to tell a better place from a worse,  \
                      and its conditions alone are to be trusted */
#define NOISE 1e-9 /* of the sum, what rounding makes of it */
#define SAME_SHARE 1e-10 /* of the smaller, for all three */
#define SAME_EXCESS 1e-12
#define SAME_TIE 1e-10

typedef struct {
  const ChoiceReach *reach;
  Terms terms;
  Tie tie;
  double wall_weight;
  double x[MOST_WAYS];
  double outputs[N_OUTPUTS];
} Descent;

Candidate
choice_candidate (const ChoiceReach *reach, const double *x)
{
  Candidate candidate = { .excess = INFINITY, .cost = INFINITY, .tie = INFINITY };
  Terms terms;

  memcpy (candidate.x, x, sizeof candidate.x);
  if (!choice_reach_probe (reach, x, candidate.outputs))
    return candidate;

  const LimitExcess excess =
      limits_excess (reach->corner, reach->plate, candidate.outputs);
  terms_of_aims (reach->corner, reach->plate, candidate.outputs, &terms);
  candidate.excess =
      excess.edge * excess.edge + excess.tyre * excess.tyre + excess.tilt * excess.tilt;
  candidate.cost = terms_cost (&terms, candidate.outputs);
  candidate.tie = choice_tie (reach, x, candidate.outputs);
  return candidate;
}

static int
compare (double a, double b, double same)
{
  if (a == b || fabs (a - b) <= same + SAME_SHARE * fmin (a, b))
    return 0;
  return a < b ? -1 : 1;
}

int
choice_candidate_compare (const Candidate *a, const Candidate *b)
{
  const int by_excess = compare (a->excess, b->excess, SAME_EXCESS);

  if (by_excess != 0)
    return by_excess;
  const int by_cost = compare (a->cost, b->cost, SAME_COST);
  return by_cost != 0 ? by_cost : compare (a->tie, b->tie, SAME_TIE);
}

static double
sum_at (const Descent *descent, const double *x, const double *outputs)
{
  const double tie =
      descent->tie == TIE_TO_AS_MEASURED ? choice_tie (descent->reach, x, outputs) : 0.0;

  return terms_cost (&descent->terms, outputs) + tie +
         descent->wall_weight * terms_trespass (&descent->terms, outputs);
}

static double
length_of (const ChoiceStep *step)
{
  double length = 0.0;

  for (guint i = 0; i < MOST_WAYS; i++)
    length = fmax (length, fabs (step->by[i]));
  return length;
}

/* Walls weigh more than what any aim could gain by passing them. */
static void
weigh_walls (Descent *descent, const ChoiceStep *step)
{
  for (guint r = 0; r < descent->terms.n_rows; r++)
    if (descent->terms.rows[r].term == WALL)
      descent->wall_weight = fmax (descent->wall_weight, 1.0 + 2.0 * step->multiplier[r]);
}

static void
step_from (const Descent *descent, const ChoiceStep *step, double *x)
{
  const ChoiceReach *reach = descent->reach;

  memcpy (x, descent->x, sizeof descent->x);
  for (guint i = 0; i < reach->n_ways; i++)
    x[i] = CLAMP (x[i] + step->by[i], reach->least[i], reach->most[i]);
}

/* TRUE where the step was taken. */
static gboolean
try_step (Descent *descent, const ChoiceStep *step)
{
  double x[MOST_WAYS], outputs[N_OUTPUTS];

  step_from (descent, step, x);
  if (!choice_reach_probe (descent->reach, x, outputs))
    return FALSE;

  const double before = sum_at (descent, descent->x, descent->outputs);
  const double after = sum_at (descent, x, outputs);
  const double blur = length_of (step) < NEAR ? NOISE * (1.0 + before) : 0.0;
  if (!(after < before + blur))
    return FALSE;
  memcpy (descent->x, x, sizeof x);
  memcpy (descent->outputs, outputs, sizeof outputs);
  return TRUE;
}

/* One model and the best step that it holds true for. Returns its length, 0 for none. */
static double
go_down (Descent *descent, ChoiceStep *step, double *longest)
{
  ChoiceModel model;

  if (!choice_reach_model (descent->reach, descent->x, descent->outputs, &model))
    return 0.0;
  for (guint i = 0; i < MOST_TRIES; i++) {
    if (!choice_step_solve (descent->reach, &model, &descent->terms, descent->tie,
                            descent->x, *longest, step))
      return 0.0;
    weigh_walls (descent, step);

    const double length = length_of (step);
    if (length < STILL || try_step (descent, step)) {
      if (length >= *longest * 0.99)
        *longest *= 2.0;
      return length;
    }
    *longest = length / 4.0;
  }
  return 0.0;
}

static void
descend (Descent *descent, Tie tie)
{
  ChoiceStep step = { 0 };
  double longest = FIRST_STEP;

  descent->tie = tie;
  for (guint i = 0; i < MOST_MODELS; i++)
    if (go_down (descent, &step, &longest) < STILL)
      break;
}

/* The tie-break pulls what decides a little off its place, too: once it has chosen, it
 * lets go. */
static void
settle (Descent *descent)
{
  descend (descent, TIE_TO_AS_MEASURED);
  descend (descent, TIE_TO_WHERE_IT_IS);
}

Candidate
choice_descend (const ChoiceReach *reach, Candidate start)
{
  Descent descent = { .reach = reach, .wall_weight = 1.0 };

  memcpy (descent.x, start.x, sizeof start.x);
  memcpy (descent.outputs, start.outputs, sizeof start.outputs);
  if (start.excess > 0.0) {
    terms_of_limits (reach->corner, reach->plate, descent.outputs, &descent.terms);
    settle (&descent);
  }
  terms_of_aims (reach->corner, reach->plate, descent.outputs, &descent.terms);
  settle (&descent);
  return choice_candidate (reach, descent.x);
}
