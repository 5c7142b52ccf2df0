/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/choice/choice-terms.h"

#include <math.h>

#define DEGREES(radians) (180.0 / G_PI * (radians))
#define RADIANS(degrees) (G_PI / 180.0 * (degrees))

/* mm or degrees: walls stand so much within the limits that rounding does not fault what
 * stands at them; what has to come within them first goes a little further. */
#define WALL_WITHIN 1e-7
#define TERM_WITHIN 1e-4
#define LEAST_TILT 1e-3 /* °: a limit below it has no slope left to go by */

double
term_row_value (const TermRow *row, const double *outputs)
{
  return row->scale * (row->sign * outputs[row->output] - row->bound);
}

double
term_cost (double t)
{
  return t * (t + 2.0 * FIRST_UNIT);
}

double
terms_cost (const Terms *terms, const double *outputs)
{
  double most[MOST_TERMS] = { 0 }, cost = 0.0;

  for (guint i = 0; i < terms->n_rows; i++) {
    const TermRow *row = &terms->rows[i];

    if (row->term != WALL)
      most[row->term] = fmax (most[row->term], term_row_value (row, outputs));
  }
  for (guint i = 0; i < terms->n_terms; i++)
    cost += terms->weight[i] * term_cost (most[i]) / 2.0;
  return cost;
}

double
terms_trespass (const Terms *terms, const double *outputs)
{
  double sum = 0.0;

  for (guint i = 0; i < terms->n_rows; i++)
    if (terms->rows[i].term == WALL)
      sum += fmax (0.0, term_row_value (&terms->rows[i], outputs));
  return sum;
}

static double
chord_of (double angle_deg)
{
  return 2.0 * sin (RADIANS (angle_deg) / 2.0);
}

static double
tilt_excess (const Plate *plate, double within, const double *outputs)
{
  double most = 0.0;

  if (plate->bearing_tilt_deg <= 0.0)
    return 0.0;
  for (int i = 0; i < TOE_CURVE_STATIONS; i++)
    most = fmax (most, outputs[OUTPUT_CHORD_2 + i]);
  return fmax (0.0, DEGREES (2.0 * asin (sqrt (most) / 2.0)) -
                        (plate->bearing_tilt_deg - within));
}

static LimitExcess
excess_over (const ChoiceCorner *corner,
             const Plate *plate,
             double within,
             const double *outputs)
{
  const CarLimits *limits = &corner->car->limits;
  const double most_off =
      choice_corner_most_off_centre (corner, plate, limits->edge_margin_mm + within);
  const double least_room = limits->tyre_clearance_mm + within;
  LimitExcess excess = { .tilt = tilt_excess (plate, within, outputs) };

  if (!isnan (most_off))
    excess.edge = fmax (0.0, sqrt (outputs[OUTPUT_OFF_CENTRE_2]) - most_off);
  for (int i = 0; corner->has_strut && i < N_STRUT_PARTS; i++)
    excess.tyre = fmax (excess.tyre, least_room - outputs[OUTPUT_ROOM + i]);
  return excess;
}

LimitExcess
limits_excess (const ChoiceCorner *corner, const Plate *plate, const double *outputs)
{
  return excess_over (corner, plate, 0.0, outputs);
}

gboolean
choice_needs_travel (const ChoiceCorner *corner, const Plate *plate)
{
  const GArray *targets = corner->targets;

  for (guint i = 0; i < targets->len; i++)
    if (g_array_index (targets, CarTarget, i).aim == AIM_BUMP_STEER)
      return TRUE;
  return plate->bearing_tilt_deg > 0.0;
}

static void
add_row (Terms *terms, guint term, guint output, double sign, double bound, double scale)
{
  g_assert (terms->n_rows < MOST_ROWS);
  terms->rows[terms->n_rows++] = (TermRow){ output, term, sign, bound, scale };
}

static guint
add_term (Terms *terms, double weight)
{
  g_assert (terms->n_terms < MOST_TERMS);
  terms->weight[terms->n_terms] = weight;
  return terms->n_terms++;
}

static void
add_range (Terms *terms, const CarTarget *target, double weight)
{
  const double scale = 1.0 / aim_info (target->aim).unit_size;
  const guint term = add_term (terms, weight), output = OUTPUT_AIM + target->aim;

  if (isfinite (target->most))
    add_row (terms, term, output, 1.0, target->most, scale);
  if (isfinite (target->least))
    add_row (terms, term, output, -1.0, -target->least, scale);
}

/* No station's toe may be further off than the most; at least the furthest must be as far
 * as the least. */
static void
add_bump_steer (Terms *terms,
                const CarTarget *target,
                double weight,
                const double *outputs)
{
  const double scale = 1.0 / aim_info (AIM_BUMP_STEER).unit_size;
  const guint term = add_term (terms, weight);
  guint furthest = OUTPUT_TOE;

  for (guint i = OUTPUT_TOE; i < OUTPUT_TOE + TOE_CURVE_STATIONS; i++) {
    if (fabs (outputs[i]) > fabs (outputs[furthest]))
      furthest = i;
    if (isfinite (target->most)) {
      add_row (terms, term, i, 1.0, target->most, scale);
      add_row (terms, term, i, -1.0, target->most, scale);
    }
  }
  if (target->least > 0.0)
    add_row (terms, term, furthest, -copysign (1.0, outputs[furthest]), -target->least,
             scale);
}

static double
most_weight (const GArray *targets)
{
  double most = 0.0;

  for (guint i = 0; i < targets->len; i++)
    most = fmax (most, g_array_index (targets, CarTarget, i).weight);
  return most;
}

/* One limit's rows, all of one term or a wall. @within moves the bound inward. */
typedef struct {
  guint term;
  double within;
} LimitUse;

static void
add_edge (const ChoiceCorner *corner, const Plate *plate, LimitUse use, Terms *terms)
{
  const double margin = corner->car->limits.edge_margin_mm + use.within;
  const double most = choice_corner_most_off_centre (corner, plate, margin);

  if (!isnan (most))
    add_row (terms, use.term, OUTPUT_OFF_CENTRE_2, 1.0, most > 0.0 ? most * most : 0.0,
             0.5 / fmax (most, 1.0));
}

static void
add_tyre (const ChoiceCorner *corner, const double *outputs, LimitUse use, Terms *terms)
{
  const double least = corner->car->limits.tyre_clearance_mm + use.within;

  for (guint i = OUTPUT_ROOM; corner->has_strut && i < OUTPUT_ROOM + N_STRUT_PARTS; i++)
    if (isfinite (outputs[i]))
      add_row (terms, use.term, i, -1.0, -least, 1.0);
}

static void
add_tilt (const Plate *plate, LimitUse use, Terms *terms)
{
  const double chord = chord_of (fmax (plate->bearing_tilt_deg - use.within, LEAST_TILT));

  if (plate->bearing_tilt_deg <= 0.0)
    return;
  for (guint i = OUTPUT_CHORD_2; i < OUTPUT_CHORD_2 + TOE_CURVE_STATIONS; i++)
    add_row (terms, use.term, i, 1.0, chord * chord, DEGREES (0.5 / chord));
}

/* No nearer than where it is passed already. */
static LimitUse
wall (double passed_by)
{
  return (LimitUse){ WALL, WALL_WITHIN - passed_by };
}

void
terms_of_aims (const ChoiceCorner *corner,
               const Plate *plate,
               const double *outputs,
               Terms *terms)
{
  const LimitExcess passed_by = excess_over (corner, plate, WALL_WITHIN, outputs);
  const GArray *targets = corner->targets;
  const double most = most_weight (targets);

  terms->n_rows = terms->n_terms = 0;
  for (guint i = 0; i < targets->len; i++) {
    const CarTarget *target = &g_array_index (targets, CarTarget, i);
    const double weight = target->weight / most;

    if (target->aim == AIM_BUMP_STEER)
      add_bump_steer (terms, target, weight, outputs);
    else if (isfinite (outputs[OUTPUT_AIM + target->aim]))
      add_range (terms, target, weight);
  }
  add_edge (corner, plate, wall (passed_by.edge), terms);
  add_tyre (corner, outputs, wall (passed_by.tyre), terms);
  add_tilt (plate, wall (passed_by.tilt), terms);
}

void
terms_of_limits (const ChoiceCorner *corner,
                 const Plate *plate,
                 const double *outputs,
                 Terms *terms)
{
  terms->n_rows = terms->n_terms = 0;
  add_edge (corner, plate, (LimitUse){ add_term (terms, 1.0), TERM_WITHIN }, terms);
  add_tyre (corner, outputs, (LimitUse){ add_term (terms, 1.0), TERM_WITHIN }, terms);
  add_tilt (plate, (LimitUse){ add_term (terms, 1.0), TERM_WITHIN }, terms);
}
