/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/study/bracketed-root.h"

#include <math.h>
#include <stdbool.h>

#define MOST_STEPS 200
#define LAST_DIGITS 1e-15

static double
first_guess (double low, double value_low, double high, double value_high)
{
  const double secant = low - value_low * (high - low) / (value_high - value_low);

  return secant > low && secant < high ? secant : low + (high - low) / 2.0;
}

double
bracketed_root (RootFunction function, void *data, double low, double high)
{
  double slope, last = high - low;
  const double value_low = function (low, &slope, data);
  const double value_high = function (high, &slope, data);
  double x = first_guess (low, value_low, high, value_high);

  if (value_low == 0.0)
    return low;
  if (value_high == 0.0)
    return high;
  if (!((value_low < 0.0 && value_high > 0.0) || (value_low > 0.0 && value_high < 0.0)))
    return NAN;
  for (int i = 0; i < MOST_STEPS; i++) {
    const double value = function (x, &slope, data);
    double next = x - value / slope;

    if (value == 0.0)
      return x;
    if ((value < 0.0) == (value_low < 0.0))
      low = x;
    else
      high = x;
    if (fabs (next - x) <= LAST_DIGITS * (1.0 + fabs (x)))
      return x;
    if (!(next > low && next < high) || fabs (next - x) > last / 2.0)
      next = low + (high - low) / 2.0;
    last = fabs (next - x);
    if (next == x || !(next > low && next < high))
      return x;
    x = next;
  }
  return x;
}
