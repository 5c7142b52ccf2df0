/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the choice only: aims and limits as one sum that is to be least.
 *
 *   f = ½ Σ weight·(t² + 2·FIRST_UNIT·t),  t = max (0, rows of the term),  row =
 * scale·(sign·output − bound)
 *
 * in units that a bench can tell apart. A range has two rows; what counts over the travel
 * used has two for each station. Rows of a wall must not rise above 0. */

#pragma once

#include "model/choice/choice-probe.h"

/* What a miss costs besides its square, in units: f has a corner where an aim is met. */
#define FIRST_UNIT 0.25

/* Costs that differ by less are the same: that of a miss of 2e-6 units. */
#define SAME_COST 1e-6

#define MOST_TERMS N_AIMS
#define WALL MOST_TERMS
#define MOST_ROWS (2 * N_AIMS + N_STRUT_PARTS + 1 + 3 * TOE_CURVE_STATIONS)

typedef struct {
  guint output; /* of choice_probe () */
  guint term;   /* or WALL */
  double sign, bound, scale;
} TermRow;

typedef struct {
  TermRow rows[MOST_ROWS];
  guint n_rows;
  double weight[MOST_TERMS]; /* 1 at most */
  guint n_terms;
} Terms;

double term_row_value (const TermRow *row, const double *outputs);
/* t² + 2·FIRST_UNIT·t of a miss of @t units. */
double term_cost (double t);
double terms_cost (const Terms *terms, const double *outputs);
double terms_trespass (const Terms *terms,
                       const double *outputs); /* sum past the walls */

/* What the limits are passed by, mm and degrees; 0 within. */
typedef struct {
  double edge, tyre, tilt;
} LimitExcess;

LimitExcess
limits_excess (const ChoiceCorner *corner, const Plate *plate, const double *outputs);

/* Whether anything that counts needs the outputs through the travel. */
gboolean choice_needs_travel (const ChoiceCorner *corner, const Plate *plate);

/* The aims as terms, the limits as walls; where the place of @outputs passes one, the
 * wall stands there. */
void terms_of_aims (const ChoiceCorner *corner,
                    const Plate *plate,
                    const double *outputs,
                    Terms *terms);

/* The limits as terms, without walls: to come within them, or as near as can be. */
void terms_of_limits (const ChoiceCorner *corner,
                      const Plate *plate,
                      const double *outputs,
                      Terms *terms);
