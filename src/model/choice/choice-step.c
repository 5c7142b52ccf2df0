/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/choice/choice-step.h"
#include "model/choice/choice-least-distance.h"

#include <gsl/gsl_linalg.h>
#include <math.h>
#include <string.h>

#define MOST_ROUNDS 12
#define STILL 1e-10 /* mm */
#define MOST_INEQUALITIES (MOST_ROWS + MOST_TERMS + 2 * MOST_WAYS)

/* ½ pᵀHp + gᵀp, with H = LLᵀ. */
typedef struct {
  double H[MOST_WAYS][MOST_WAYS], L[MOST_WAYS][MOST_WAYS];
  double g[MOST_WAYS];
  double start[MOST_WAYS]; /* where it is least by itself */
} Bowl;

/* The outputs' values and slopes where the last round has come to. */
typedef struct {
  double value[N_OUTPUTS];
  double slope[MOST_WAYS][N_OUTPUTS];
} Local;

static gboolean
has_bolt (const ChoiceReach *reach)
{
  return reach->n_ways > reach->n_plate_ways;
}

double
choice_tie (const ChoiceReach *reach, const double *x, const double *outputs)
{
  const double inboard = outputs[OUTPUT_INBOARD], rearward = outputs[OUTPUT_REARWARD];
  const double bolt = has_bolt (reach) ? x[reach->n_plate_ways] : 0.0;

  return TIE_WEIGHT / 2.0 * (inboard * inboard + rearward * rearward + bolt * bolt);
}

static double
slope_after (const ChoiceModel *model, const double *by, guint way, guint k)
{
  double slope = model->slope[way][k];

  for (guint j = 0; j < model->n_ways; j++)
    slope += model->bend[way][j][k] * by[j];
  return slope;
}

static double
value_after (const ChoiceModel *model, const double *by, guint k)
{
  double value = model->value[k];

  for (guint i = 0; i < model->n_ways; i++)
    value += by[i] * (model->slope[i][k] + slope_after (model, by, i, k)) / 2.0;
  return value;
}

void
choice_model_after (const ChoiceModel *model, const double *by, double *outputs)
{
  for (guint k = 0; k < model->n_outputs; k++)
    outputs[k] = value_after (model, by, k);
}

static void
localise (const ChoiceModel *model, const double *by, Local *local)
{
  choice_model_after (model, by, local->value);
  for (guint i = 0; i < model->n_ways; i++)
    for (guint k = 0; k < model->n_outputs; k++)
      local->slope[i][k] = slope_after (model, by, i, k);
}

static void
bend_by_multipliers (const ChoiceModel *model,
                     const Terms *terms,
                     const double *multiplier,
                     Bowl *bowl)
{
  for (guint r = 0; r < terms->n_rows; r++) {
    const TermRow *row = &terms->rows[r];
    const double share = multiplier[r] * row->scale * row->sign;

    for (guint i = 0; i < model->n_ways && share != 0.0; i++)
      for (guint j = 0; j < model->n_ways; j++)
        bowl->H[i][j] += share * model->bend[i][j][row->output];
  }
}

static void
tie_to_as_measured (const ChoiceReach *reach,
                    const ChoiceModel *model,
                    const Local *local,
                    const double *x,
                    const double *by,
                    Bowl *bowl)
{
  for (guint k = OUTPUT_INBOARD; k <= OUTPUT_REARWARD; k++)
    for (guint i = 0; i < model->n_ways; i++) {
      bowl->g[i] += TIE_WEIGHT * local->value[k] * local->slope[i][k];
      for (guint j = 0; j < model->n_ways; j++)
        bowl->H[i][j] += TIE_WEIGHT * (local->slope[i][k] * local->slope[j][k] +
                                       local->value[k] * model->bend[i][j][k]);
    }
  if (has_bolt (reach)) {
    const guint i = reach->n_plate_ways;

    bowl->g[i] += TIE_WEIGHT * (x[i] + by[i]);
    bowl->H[i][i] += TIE_WEIGHT;
  }
}

static void
tie_to_where_it_is (guint n_ways, const double *by, Bowl *bowl)
{
  for (guint i = 0; i < n_ways; i++) {
    bowl->g[i] += TIE_WEIGHT * by[i];
    bowl->H[i][i] += TIE_WEIGHT;
  }
}

/* Cholesky's H = LLᵀ. FALSE where H is not a bowl, or next to none. */
static gboolean
factor (guint n, Bowl *bowl)
{
  for (guint j = 0; j < n; j++) {
    double rest = bowl->H[j][j];

    for (guint k = 0; k < j; k++)
      rest -= bowl->L[j][k] * bowl->L[j][k];
    if (!(rest > TIE_WEIGHT / 100.0))
      return FALSE;
    bowl->L[j][j] = sqrt (rest);
    for (guint i = j + 1; i < n; i++) {
      double sum = bowl->H[i][j];

      for (guint k = 0; k < j; k++)
        sum -= bowl->L[i][k] * bowl->L[j][k];
      bowl->L[i][j] = sum / bowl->L[j][j];
    }
  }
  return TRUE;
}

/* v := L⁻¹ v */
static void
forward (guint n, const Bowl *bowl, double *v)
{
  for (guint i = 0; i < n; i++) {
    for (guint k = 0; k < i; k++)
      v[i] -= bowl->L[i][k] * v[k];
    v[i] /= bowl->L[i][i];
  }
}

/* v := L⁻ᵀ v */
static void
backward (guint n, const Bowl *bowl, double *v)
{
  for (guint i = n; i-- > 0;) {
    for (guint k = i + 1; k < n; k++)
      v[i] -= bowl->L[k][i] * v[k];
    v[i] /= bowl->L[i][i];
  }
}

/* A saddle is filled up until it is a bowl. */
static void
shape (guint n, Bowl *bowl)
{
  for (double fill = TIE_WEIGHT; !factor (n, bowl); fill *= 4.0)
    for (guint i = 0; i < n; i++)
      bowl->H[i][i] += fill;
  for (guint i = 0; i < n; i++)
    bowl->start[i] = -bowl->g[i];
  forward (n, bowl, bowl->start);
  backward (n, bowl, bowl->start);
}

/* row_p·p + row_t·t ≥ level, as an inequality of y = (Lᵀ (p − start), √weight·t). */
static void
write_ways (guint n, const Bowl *bowl, const double *row_p, Inequality *inequality)
{
  for (guint i = 0; i < n; i++) {
    inequality->row[i] = row_p[i];
    inequality->level -= row_p[i] * bowl->start[i];
  }
  forward (n, bowl, inequality->row);
}

static Inequality
inequality_of_row (
    guint n, const Bowl *bowl, const Terms *terms, const TermRow *row, const Local *local)
{
  Inequality inequality = { .level = term_row_value (row, local->value) };
  double row_p[MOST_WAYS];

  for (guint i = 0; i < n; i++)
    row_p[i] = -row->scale * row->sign * local->slope[i][row->output];
  write_ways (n, bowl, row_p, &inequality);
  if (row->term != WALL) {
    inequality.row[n + row->term] = 1.0 / sqrt (terms->weight[row->term]);
    inequality.level += FIRST_UNIT;
  }
  return inequality;
}

/* An aim that is met costs nothing, however well it is met. */
static Inequality
inequality_of_term (guint n, const Terms *terms, guint term)
{
  Inequality inequality = { .level = FIRST_UNIT };

  inequality.row[n + term] = 1.0 / sqrt (terms->weight[term]);
  return inequality;
}

/* sign·p ≥ level */
static Inequality
inequality_of_bound (guint n, const Bowl *bowl, guint way, double sign, double level)
{
  Inequality inequality = { .level = level };
  double row_p[MOST_WAYS] = { 0 };

  row_p[way] = sign;
  write_ways (n, bowl, row_p, &inequality);
  return inequality;
}

static guint
write_inequalities (const ChoiceReach *reach,
                    const Terms *terms,
                    const Bowl *bowl,
                    const Local *local,
                    const double *x,
                    double longest,
                    const double *by,
                    Inequality *out)
{
  const guint n = reach->n_ways;
  guint n_out = 0;

  for (guint r = 0; r < terms->n_rows; r++)
    out[n_out++] = inequality_of_row (n, bowl, terms, &terms->rows[r], local);
  for (guint term = 0; term < terms->n_terms; term++)
    out[n_out++] = inequality_of_term (n, terms, term);
  for (guint i = 0; i < n; i++) {
    const double down = fmin (x[i] - reach->least[i], longest);
    const double up = fmin (reach->most[i] - x[i], longest);

    out[n_out++] = inequality_of_bound (n, bowl, i, 1.0, -down - by[i]);
    out[n_out++] = inequality_of_bound (n, bowl, i, -1.0, by[i] - up);
  }
  return n_out;
}

/* One round: moves step->by, and returns how far; NAN where the walls leave none. */
static double
improve (const ChoiceReach *reach,
         const ChoiceModel *model,
         const Terms *terms,
         Tie tie,
         const double *x,
         double longest,
         ChoiceStep *step)
{
  const guint n = model->n_ways;
  Inequality inequalities[MOST_INEQUALITIES];
  double y[LEAST_DISTANCE_MOST_UNKNOWNS], moved = 0.0;
  Bowl bowl = { 0 };
  Local local;

  localise (model, step->by, &local);
  bend_by_multipliers (model, terms, step->multiplier, &bowl);
  if (tie == TIE_TO_AS_MEASURED)
    tie_to_as_measured (reach, model, &local, x, step->by, &bowl);
  else
    tie_to_where_it_is (n, step->by, &bowl);
  shape (n, &bowl);

  const guint n_inequalities = write_inequalities (reach, terms, &bowl, &local, x,
                                                   longest, step->by, inequalities);
  if (!least_distance_solve (inequalities, n_inequalities, n + terms->n_terms, y))
    return NAN;
  for (guint r = 0; r < terms->n_rows; r++)
    step->multiplier[r] = inequalities[r].multiplier;
  backward (n, &bowl, y);
  for (guint i = 0; i < n; i++) {
    step->by[i] += y[i] + bowl.start[i];
    moved = fmax (moved, fabs (y[i] + bowl.start[i]));
  }
  return moved;
}

gboolean
choice_step_solve (const ChoiceReach *reach,
                   const ChoiceModel *model,
                   const Terms *terms,
                   Tie tie,
                   const double *x,
                   double longest,
                   ChoiceStep *step)
{
  memset (step->by, 0, sizeof step->by);
  for (guint round = 0; round < MOST_ROUNDS; round++) {
    const double moved = improve (reach, model, terms, tie, x, longest, step);

    if (isnan (moved))
      return round > 0;
    if (moved < STILL)
      break;
  }
  return TRUE;
}
