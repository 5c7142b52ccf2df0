/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/choice/choice-least-distance.h"

#include <gsl/gsl_linalg.h>
#include <math.h>

#define MOST_ROWS (LEAST_DISTANCE_MOST_UNKNOWNS + 1)
#define SLACK 1e-13    /* of a unit row: what counts as satisfied */
#define PARALLEL 1e-11 /* sine: a column that says nothing new */
#define MOST_STEPS 400

/* One column of E, of unit length in its row part, so that all are compared alike. */
typedef struct {
  double e[MOST_ROWS];
  double length; /* it was divided by */
  double u;
  gboolean is_active, is_barred;
} Column;

typedef struct {
  guint n_rows; /* of E: one more than unknowns */
  Column *columns;
  guint n_columns;
  guint active[MOST_ROWS];
  guint n_active;
  double residual[MOST_ROWS]; /* f − Eu */
} Dual;

static Column
column_of (const Inequality *inequality, guint n_unknowns)
{
  Column column = { 0 };

  for (guint i = 0; i < n_unknowns; i++)
    column.length = hypot (column.length, inequality->row[i]);
  if (column.length == 0.0)
    column.length = 1.0;
  for (guint i = 0; i < n_unknowns; i++)
    column.e[i] = inequality->row[i] / column.length;
  column.e[n_unknowns] = inequality->level / column.length;
  return column;
}

static double
slope (const Dual *dual, const Column *column)
{
  double sum = 0.0;

  for (guint i = 0; i < dual->n_rows; i++)
    sum += column->e[i] * dual->residual[i];
  return sum;
}

/* The column along which the distance falls most, or −1. */
static int
steepest (const Dual *dual)
{
  double most = SLACK;
  int found = -1;

  for (guint j = 0; j < dual->n_columns; j++) {
    const Column *column = &dual->columns[j];

    if (column->is_active || column->is_barred)
      continue;
    const double here = slope (dual, column);
    if (here > most) {
      most = here;
      found = (int) j;
    }
  }
  return found;
}

/* @z: of the active columns, whatever its signs. FALSE where the last of them depends on
 * the others. */
static gboolean
fit_active (const Dual *dual, double *z)
{
  double e[MOST_ROWS * MOST_ROWS], tau[MOST_ROWS], f[MOST_ROWS] = { 0 }, rest[MOST_ROWS];
  const guint n = dual->n_active;

  if (n > dual->n_rows)
    return FALSE;
  for (guint i = 0; i < dual->n_rows; i++)
    for (guint j = 0; j < n; j++)
      e[i * n + j] = dual->columns[dual->active[j]].e[i];
  f[dual->n_rows - 1] = 1.0;

  gsl_matrix_view E = gsl_matrix_view_array (e, dual->n_rows, n);
  gsl_vector_view T = gsl_vector_view_array (tau, n);
  gsl_vector_view F = gsl_vector_view_array (f, dual->n_rows);
  gsl_vector_view Z = gsl_vector_view_array (z, n);
  gsl_vector_view R = gsl_vector_view_array (rest, dual->n_rows);
  gsl_linalg_QR_decomp (&E.matrix, &T.vector);
  if (fabs (e[(n - 1) * n + n - 1]) < PARALLEL)
    return FALSE;
  gsl_linalg_QR_lssolve (&E.matrix, &T.vector, &F.vector, &Z.vector, &R.vector);
  return TRUE;
}

static void
settle_residual (Dual *dual)
{
  for (guint i = 0; i < dual->n_rows; i++)
    dual->residual[i] = i + 1 == dual->n_rows ? 1.0 : 0.0;
  for (guint j = 0; j < dual->n_active; j++) {
    const Column *column = &dual->columns[dual->active[j]];

    for (guint i = 0; i < dual->n_rows; i++)
      dual->residual[i] -= column->u * column->e[i];
  }
}

/* As far towards @z as all of it stays positive; what comes to 0 leaves. TRUE where that
 * is all the way. */
static gboolean
go_towards (Dual *dual, const double *z)
{
  double share = 1.0;
  guint n_left = 0;
  int first = -1;

  for (guint j = 0; j < dual->n_active; j++) {
    const double u = dual->columns[dual->active[j]].u;

    if (z[j] <= 0.0 && u / (u - z[j]) < share) {
      share = u / (u - z[j]);
      first = (int) j;
    }
  }
  for (guint j = 0; j < dual->n_active; j++) {
    Column *column = &dual->columns[dual->active[j]];

    column->u += share * (z[j] - column->u);
    if ((int) j == first || column->u <= 0.0) {
      column->u = 0.0;
      column->is_active = FALSE;
    } else {
      dual->active[n_left++] = dual->active[j];
    }
  }
  dual->n_active = n_left;
  return first < 0;
}

/* Lets @column in; the others make room. FALSE where it brings nothing. */
static gboolean
let_in (Dual *dual, guint column)
{
  double z[MOST_ROWS];

  dual->columns[column].is_active = TRUE;
  dual->active[dual->n_active++] = column;
  if (!fit_active (dual, z) || z[dual->n_active - 1] <= 0.0) {
    dual->n_active--;
    dual->columns[column].is_active = FALSE;
    return FALSE;
  }
  while (!go_towards (dual, z) && dual->n_active > 0)
    if (!fit_active (dual, z))
      break;
  return TRUE;
}

static void
minimise (Dual *dual)
{
  settle_residual (dual);
  for (guint i = 0; i < MOST_STEPS; i++) {
    const int column = dual->n_active < dual->n_rows ? steepest (dual) : -1;

    if (column < 0)
      return;
    if (!let_in (dual, (guint) column)) {
      dual->columns[column].is_barred = TRUE;
      continue;
    }
    settle_residual (dual);
    for (guint j = 0; j < dual->n_columns; j++)
      dual->columns[j].is_barred = FALSE;
  }
}

gboolean
least_distance_solve (Inequality *inequalities,
                      guint n_inequalities,
                      guint n_unknowns,
                      double *y)
{
  g_autofree Column *columns = g_new (Column, MAX (n_inequalities, 1));
  Dual dual = { .n_rows = n_unknowns + 1,
                .columns = columns,
                .n_columns = n_inequalities };

  g_return_val_if_fail (n_unknowns <= LEAST_DISTANCE_MOST_UNKNOWNS, FALSE);

  for (guint j = 0; j < n_inequalities; j++)
    columns[j] = column_of (&inequalities[j], n_unknowns);
  minimise (&dual);

  const double left = dual.residual[n_unknowns];
  if (left < SLACK)
    return FALSE;
  for (guint i = 0; i < n_unknowns; i++)
    y[i] = -dual.residual[i] / left;
  for (guint j = 0; j < n_inequalities; j++)
    inequalities[j].multiplier = columns[j].u / columns[j].length / left;
  return TRUE;
}
