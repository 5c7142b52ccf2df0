/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/axis.h"

#include <glib.h>
#include <math.h>

/* So much of a step counts as none: 0.3 / 0.1 is not quite 3. */
#define SLACK 1e-6

/* The steps in rising order: 1, 2, 5, 10 … at rank 0, 1, 2, 3 … */
static double
step_of_rank (int rank)
{
  static const double mantissa[] = { 1.0, 2.0, 5.0 };
  const int decade = rank >= 0 ? rank / 3 : -((2 - rank) / 3);
  const double m = mantissa[rank - 3 * decade];

  /* a division by a whole number is exact where a product with 0.1 is not */
  return decade >= 0 ? m * pow (10.0, decade) : m / pow (10.0, -decade);
}

static int
first_rank (double span, int most_steps)
{
  return 3 * (int) floor (log10 (span / most_steps)) - 1;
}

static double
down_to (double value, double quantum)
{
  return floor (value / quantum + SLACK) * quantum;
}

static double
up_to (double value, double quantum)
{
  return ceil (value / quantum - SLACK) * quantum;
}

static gboolean
has_most_steps (double low, double high, double step, int most_steps)
{
  return high - low <= (most_steps + SLACK) * step;
}

AxisRange
axis_range_exact (double low, double high, int most_steps)
{
  g_return_val_if_fail (high > low && most_steps > 0, ((AxisRange){ low, high, 1.0 }));
  int rank = first_rank (high - low, most_steps);

  while (!has_most_steps (low, high, step_of_rank (rank), most_steps))
    rank++;
  return (AxisRange){ low, high, step_of_rank (rank) };
}

AxisRange
axis_range_round (double low, double high, int most_steps)
{
  g_return_val_if_fail (high > low && most_steps > 0, ((AxisRange){ low, high, 1.0 }));

  for (int rank = first_rank (high - low, most_steps);; rank++) {
    const double step = step_of_rank (rank);
    AxisRange range = { down_to (low, step / 2.0), up_to (high, step / 2.0), step };
    int first;

    if (most_steps < 3 || axis_range_ticks (range, &first) < 3)
      range = (AxisRange){ down_to (low, step), up_to (high, step), step };
    if (has_most_steps (range.low, range.high, step, most_steps))
      return range;
  }
}

int
axis_range_ticks (AxisRange range, int *first)
{
  *first = (int) ceil (range.low / range.step - SLACK);
  return (int) floor (range.high / range.step + SLACK) - *first + 1;
}

int
axis_step_decimals (double step)
{
  return MAX (0, -(int) floor (log10 (step) + SLACK));
}

void
axis_format (double value, int decimals, char *text, size_t size)
{
  const double unit = pow (10.0, decimals);
  const double rounded = round (value * unit) / unit;

  g_snprintf (text, size, "%s%.*f", rounded < 0.0 ? "−" : "", decimals, fabs (rounded));
}

double
axis_to_pixel (Axis axis, double value)
{
  return axis.at_low +
         (value - axis.low) * (axis.at_high - axis.at_low) / (axis.high - axis.low);
}

double
axis_to_data (Axis axis, double pixel)
{
  return axis.low +
         (pixel - axis.at_low) * (axis.high - axis.low) / (axis.at_high - axis.at_low);
}
