/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/pen/axis.h"

#include <glib.h>
#include <math.h>

/* So much of a step counts as none: 0.3 / 0.1 is not quite 3. */
#define SLACK 1e-6

/* Below all that can do, for either way of dividing. */
static int
first_rank (UnitKind kind, double span, int most_steps)
{
  const int rank = 3 * (int) floor (log10 (span / most_steps)) - 1;

  return unit_is_sexagesimal (kind) ? rank - 9 : rank;
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
axis_range_exact_in (UnitKind kind, double low, double high, int most_steps)
{
  g_return_val_if_fail (high > low && most_steps > 0,
                        ((AxisRange){ low, high, 1.0, kind }));
  const double from = unit_shown (kind, low), to = unit_shown (kind, high);
  int rank = first_rank (kind, to - from, most_steps);

  while (!has_most_steps (from, to, unit_step_of_rank (kind, rank), most_steps))
    rank++;
  return (AxisRange){ low, high, unit_step_of_rank (kind, rank), kind };
}

AxisRange
axis_range_exact (double low, double high, int most_steps)
{
  return axis_range_exact_in (UNIT_NONE, low, high, most_steps);
}

/* Of shown numbers. */
static int
ticks_between (double low, double high, double step, int *first)
{
  *first = (int) ceil (low / step - SLACK);
  return (int) floor (high / step + SLACK) - *first + 1;
}

AxisRange
axis_range_round_in (UnitKind kind, double low, double high, int most_steps)
{
  g_return_val_if_fail (high > low && most_steps > 0,
                        ((AxisRange){ low, high, 1.0, kind }));
  const double from = unit_shown (kind, low), to = unit_shown (kind, high);

  if (from < 0.0 && to > 0.0) /* zero stays a tick, and there is a step on each side */
    most_steps = MAX (most_steps, 2);
  for (int rank = first_rank (kind, to - from, most_steps);; rank++) {
    const double step = unit_step_of_rank (kind, rank);
    double down = down_to (from, step / 2.0), up = up_to (to, step / 2.0);
    int first;

    if (most_steps < 3 || ticks_between (down, up, step, &first) < 3) {
      down = down_to (from, step);
      up = up_to (to, step);
    }
    if (has_most_steps (down, up, step, most_steps))
      return (AxisRange){ unit_stored (kind, down), unit_stored (kind, up), step, kind };
  }
}

AxisRange
axis_range_round (double low, double high, int most_steps)
{
  return axis_range_round_in (UNIT_NONE, low, high, most_steps);
}

int
axis_range_ticks (AxisRange range, int *first)
{
  return ticks_between (unit_shown (range.kind, range.low),
                        unit_shown (range.kind, range.high), range.step, first);
}

double
axis_tick (AxisRange range, int i)
{
  return unit_stored (range.kind, i * range.step);
}

/* Whole degrees have no minutes where all labels are whole. */
void
axis_tick_text (AxisRange range, int i, char *text, size_t size)
{
  const gboolean has_minutes = unit_is_sexagesimal (range.kind);

  if (has_minutes && (range.step >= 1.0 || i == 0)) {
    axis_format (i * range.step, 0, text, size);
    g_strlcat (text, "°", size);
  } else {
    unit_format_shown (range.kind, i * range.step,
                       axis_step_decimals (range.step * (has_minutes ? 60.0 : 1.0)),
                       FALSE, text, size);
  }
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
