/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/mount-field/mount-field-lines.h"

#include "model/mount-field/mount-field-trace.h"
#include "model/study/quantity-info.h"

#include <math.h>
#include <stdlib.h>

/* The step is chosen by the values between these parts of all, in rising order. */
#define SAMPLES 160
#define GOLDEN_PART 0.6180339887498949 /* steps of it never come to lie in rows */
#define LOW_PART 0.04
#define HIGH_PART 0.96
/* So much more than between them is counted as the whole, at most. */
#define RUN_AWAY 3.0
/* As many as the step of a single line is chosen for. */
#define ORDINARY_LEVELS 10
#define SAME_LEVEL 1e-6 /* steps */

FieldLines *
field_lines_new (void)
{
  FieldLines *lines = g_new0 (FieldLines, 1);

  lines->points = g_array_new (FALSE, FALSE, sizeof (MountOffset));
  lines->lines = g_array_new (FALSE, FALSE, sizeof (FieldLine));
  lines->scratch = field_scratch_new ();
  return lines;
}

void
field_lines_free (FieldLines *lines)
{
  if (lines == NULL)
    return;
  g_array_unref (lines->points);
  g_array_unref (lines->lines);
  field_scratch_free (lines->scratch);
  g_free (lines);
}

static size_t
n_places (const MountField *field)
{
  return field->grid.n_inboard * field->grid.n_rearward;
}

static void
read_values (FieldLines *lines, const MountField *field, FieldSubject subject)
{
  double *values = field_scratch_values (lines->scratch, n_places (field));

  for (size_t i = 0; i < n_places (field); i++)
    values[i] = mount_place_value (&field->places[i], subject);
}

static int
compare_values (const void *a, const void *b)
{
  const double left = *(const double *) a, right = *(const double *) b;

  return (left > right) - (left < right);
}

typedef struct {
  double least, low, middle, high, most;
} Spread;

/* FALSE where nothing assembles. The ends are those of all values, the parts between of
 * some that are spread over the whole grid. */
static gboolean
find_spread (const double *values, size_t n, Spread *spread)
{
  double sample[SAMPLES], least = INFINITY, most = -INFINITY;
  size_t n_sample = 0;

  for (size_t i = 0; i < n; i++)
    if (isfinite (values[i])) {
      least = fmin (least, values[i]);
      most = fmax (most, values[i]);
    }
  for (size_t k = 0; k < SAMPLES; k++) {
    const double part = (double) k * GOLDEN_PART;
    const double value = values[(size_t) ((part - floor (part)) * (double) n)];

    if (isfinite (value))
      sample[n_sample++] = value;
  }
  if (n_sample == 0)
    return FALSE;
  qsort (sample, n_sample, sizeof *sample, compare_values);

  const double last = (double) (n_sample - 1);
  *spread =
      (Spread){ least, sample[(size_t) (LOW_PART * last)], sample[(size_t) (0.5 * last)],
                sample[(size_t) (HIGH_PART * last)], most };
  return TRUE;
}

/* The smallest round step in the unit shown, not finer than the digits that a bench can
 * answer for, that makes at most @most_levels of @span. */
static double
round_step (FieldSubject subject, double span, int most_levels)
{
  const Quantity quantity = field_subject_quantity (subject);
  const QuantityInfo info = quantity_info (quantity);
  const UnitKind kind = quantity_unit_kind (quantity);
  const double scale = info.scale * unit_shown (kind, 1.0);
  const double most = fabs (scale) * span / MAX (most_levels, 1);
  int rank = unit_is_sexagesimal (kind) ? UNIT_RANK_OF_A_MINUTE
                                        : -3 * unit_decimals (kind, info.decimals);

  while (unit_step_of_rank (kind, rank) < most)
    rank++;
  return unit_step_of_rank (kind, rank) / scale;
}

/* Where values run away, most of them lie in a part of the whole span. */
static double
plain_span (const Spread *spread)
{
  const double span = spread->most - spread->least;

  return fmin (span, RUN_AWAY * (spread->high - spread->low));
}

typedef struct {
  const MountField *field;
  FieldSubject subject;
} Source;

static double
exact_value (gconstpointer data, MountOffset mount)
{
  const Source *source = data;

  return mount_field_exact (source->field, source->subject, mount);
}

/* The scratch holds the values. */
static void
trace_level (FieldLines *lines,
             const MountField *field,
             FieldSubject subject,
             double level)
{
  const Source source = { field, subject };
  const FieldSurface surface = { &field->grid,
                                 field_scratch_values (lines->scratch, n_places (field)),
                                 exact_value, &source };

  field_lines_trace_surface (lines, &surface, level);
}

/* FALSE where nothing assembles. Leaves the values in the scratch. */
static gboolean
prepare (FieldLines *lines,
         const MountField *field,
         FieldSubject subject,
         int most_levels,
         Spread *spread)
{
  double *values = field_scratch_values (lines->scratch, n_places (field));

  read_values (lines, field, subject);
  if (!find_spread (values, n_places (field), spread))
    return FALSE;
  lines->step = round_step (subject, plain_span (spread), MAX (most_levels - 1, 1));
  return TRUE;
}

void
field_lines_trace (FieldLines *lines,
                   const MountField *field,
                   FieldSubject subject,
                   int most_levels)
{
  const double most = MAX (most_levels, 2);
  Spread spread;

  g_array_set_size (lines->points, 0);
  g_array_set_size (lines->lines, 0);
  if (!prepare (lines, field, subject, most_levels, &spread))
    return;

  const double step = lines->step;
  double first = ceil (spread.least / step), last = floor (spread.most / step);
  if (last - first + 1.0 > most) {
    first = CLAMP (round (spread.middle / step) - floor (most / 2.0), first,
                   last - most + 1.0);
    last = first + most - 1.0;
  }
  for (double i = first; i <= last; i++)
    trace_level (lines, field, subject, i * step);
}

static gboolean
has_level (const FieldLines *lines, double level)
{
  for (guint i = 0; i < lines->lines->len; i++)
    if (fabs (g_array_index (lines->lines, FieldLine, i).level - level) <
        SAME_LEVEL * lines->step)
      return TRUE;
  return FALSE;
}

void
field_lines_trace_level (FieldLines *lines,
                         const MountField *field,
                         FieldSubject subject,
                         double level)
{
  Spread spread;

  if (has_level (lines, level))
    return;
  if (lines->step > 0.0)
    read_values (lines, field, subject);
  else if (!prepare (lines, field, subject, ORDINARY_LEVELS, &spread))
    return;
  trace_level (lines, field, subject, level);
}
