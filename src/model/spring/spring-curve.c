/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/spring/spring-curve.h"

static void
add_point (SpringCurve *curve, double x, double y)
{
  if (curve->n > 0 && !(x > curve->x[curve->n - 1]))
    return;
  curve->x[curve->n] = x;
  curve->y[curve->n++] = y;
}

SpringCurve
spring_curve_new (const SpringTable *table)
{
  SpringCurve curve = { 0 };
  gboolean has_zero = table->n == 0;

  for (gsize i = 0; i < table->n; i++) {
    if (!has_zero && table->x[i] > 0.0)
      add_point (&curve, 0.0, 0.0);
    has_zero = has_zero || table->x[i] >= 0.0;
    add_point (&curve, table->x[i], table->y[i]);
  }
  if (!has_zero)
    add_point (&curve, 0.0, 0.0);
  if (curve.n < 2)
    return (SpringCurve){ 0 };
  /* Steffen's method asks for three points; two are a line. */
  curve.spline =
      gsl_interp_alloc (curve.n < 3 ? gsl_interp_linear : gsl_interp_steffen, curve.n);
  gsl_interp_init (curve.spline, curve.x, curve.y, curve.n);
  return curve;
}

void
spring_curve_clear (SpringCurve *curve)
{
  g_clear_pointer (&curve->spline, gsl_interp_free);
  curve->n = 0;
}

double
spring_curve_value (const SpringCurve *curve, double x, double *slope)
{
  if (curve->n == 0) {
    *slope = 0.0;
    return 0.0;
  }
  const double inside = CLAMP (x, curve->x[0], curve->x[curve->n - 1]);

  *slope = gsl_interp_eval_deriv (curve->spline, curve->x, curve->y, inside, NULL);
  return gsl_interp_eval (curve->spline, curve->x, curve->y, inside, NULL) +
         *slope * (x - inside);
}
