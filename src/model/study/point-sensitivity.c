/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/study/point-sensitivity.h"

#include "kernel/sweep.h"
#include "model/study/quantity-info.h"

#include <math.h>

#define NOTHING 1e-9 /* per mm: what rounding leaves of no influence */

Quantity
sensitive_quantity (Sensitive sensitive)
{
  static const Quantity quantities[N_SENSITIVE] = {
    [SENSITIVE_CAMBER] = QUANTITY_CAMBER,
    [SENSITIVE_CASTER] = QUANTITY_CASTER,
    [SENSITIVE_TOE_IN] = QUANTITY_TOE_IN,
    [SENSITIVE_ROLL_CENTRE] = QUANTITY_ROLL_CENTRE_HEIGHT,
  };

  g_return_val_if_fail (sensitive >= 0 && sensitive < N_SENSITIVE, QUANTITY_CAMBER);
  return quantities[sensitive];
}

double
sensitive_limit (Sensitive sensitive)
{
  static const double limits[N_SENSITIVE] = {
    [SENSITIVE_CAMBER] = 0.1,
    [SENSITIVE_CASTER] = 0.25,
    [SENSITIVE_TOE_IN] = 0.1,
    [SENSITIVE_ROLL_CENTRE] = 5.0,
  };

  g_return_val_if_fail (sensitive >= 0 && sensitive < N_SENSITIVE, 0.0);
  return limits[sensitive];
}

static gboolean
solve (const MeasuredCorner *measured, Measures *measures)
{
  const Adjustment none = { 0 };
  Corner corner;
  Station station;

  if (corner_assemble (measured, &none, &corner).status != CORNER_OK ||
      station_solve (&corner, SENSITIVITY_BUMP, 0.0, &station) != POSE_OK)
    return FALSE;
  *measures = station.measures;
  return TRUE;
}

static gboolean
solve_off (const MeasuredCorner *measured,
           PointName point,
           int axis,
           double error,
           Measures *measures)
{
  MeasuredCorner off = *measured;
  double *const coordinates[] = { &off.at[point].x, &off.at[point].y, &off.at[point].z };

  *coordinates[axis] += error;
  return solve (&off, measures);
}

static void
find_tolerance (PointError *error, int axis)
{
  error->tolerance[axis] = INFINITY;
  error->decides[axis] = SENSITIVE_CAMBER;
  for (Sensitive s = 0; s < N_SENSITIVE; s++) {
    const double per_mm = fabs (error->per_mm[s][axis]);

    if (per_mm > NOTHING && sensitive_limit (s) / per_mm < error->tolerance[axis]) {
      error->tolerance[axis] = sensitive_limit (s) / per_mm;
      error->decides[axis] = s;
    }
  }
}

static gboolean
solve_coordinate (const MeasuredCorner *measured,
                  PointName point,
                  int axis,
                  PointError *error)
{
  Measures less, more;

  if (!solve_off (measured, point, axis, -SENSITIVITY_STEP / 2.0, &less) ||
      !solve_off (measured, point, axis, SENSITIVITY_STEP / 2.0, &more))
    return FALSE;
  for (Sensitive s = 0; s < N_SENSITIVE; s++) {
    const Quantity q = sensitive_quantity (s);

    error->per_mm[s][axis] =
        quantity_edge_value (q, more.value[q] - less.value[q]) / SENSITIVITY_STEP;
  }
  find_tolerance (error, axis);
  return TRUE;
}

gboolean
point_sensitivity_solve (const MeasuredCorner *measured, PointSensitivity *sensitivity)
{
  double squares[N_SENSITIVE] = { 0 };

  for (PointName point = 0; point < N_POINTS; point++) {
    PointError *error = &sensitivity->points[point];

    for (int axis = 0; axis < 3; axis++) {
      if (!solve_coordinate (measured, point, axis, error))
        return FALSE;
      for (Sensitive s = 0; s < N_SENSITIVE; s++)
        squares[s] += error->per_mm[s][axis] * error->per_mm[s][axis];
    }
    error->least_tolerance =
        fmin (fmin (error->tolerance[0], error->tolerance[1]), error->tolerance[2]);
  }
  for (Sensitive s = 0; s < N_SENSITIVE; s++)
    sensitivity->together[s] = sqrt (squares[s]);
  return TRUE;
}
