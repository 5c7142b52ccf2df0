/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/study/travel-table.h"
#include "kernel/sweep.h"
#include "model/json/json-write.h"
#include "model/study/quantity-info.h"
#include "model/study/travel-gap.h"
#include "model/words/csv.h"
#include "model/words/number-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Of a step: a range that is whole steps but for rounding keeps its end. */
#define STEP_TOLERANCE 1e-9

static const Quantity columns[] = {
  QUANTITY_CAMBER,
  QUANTITY_TOE_IN,
  QUANTITY_CASTER,
  QUANTITY_SAI,
  QUANTITY_SCRUB_RADIUS,
  QUANTITY_TRAIL,
  QUANTITY_ROLL_CENTRE_HEIGHT,
  QUANTITY_HALF_TRACK_CHANGE,
  QUANTITY_WHEELBASE_CHANGE,
  QUANTITY_STRUT_LENGTH,
  QUANTITY_STRUT_RATIO,
  QUANTITY_ARM_RATIO,
  QUANTITY_CAMBER_GAIN,
  QUANTITY_BUMP_STEER,
  QUANTITY_SIDE_VIEW_SLOPE,
};

TravelSteps
travel_steps_of_car (const Car *car)
{
  return (TravelSteps){ -car->droop_mm, car->bump_mm, TRAVEL_TABLE_STEP };
}

static double
count_steps (TravelSteps steps)
{
  return floor ((steps.to - steps.from) / steps.step + STEP_TOLERANCE);
}

static gboolean
refuse (GError **error, const char *sentence)
{
  g_set_error_literal (error, G_OPTION_ERROR, G_OPTION_ERROR_BAD_VALUE, sentence);
  return FALSE;
}

gboolean
travel_steps_count (TravelSteps steps, gsize *n_rows, GError **error)
{
  if (!isfinite (steps.from) || !isfinite (steps.to) || !isfinite (steps.step))
    return refuse (error, _ ("The range and the step must be finite numbers."));
  if (steps.from > steps.to)
    return refuse (error, _ ("The range must not end below its start."));
  if (steps.step <= 0.0)
    return refuse (error, _ ("The step must be above zero."));
  if (!(count_steps (steps) < TRAVEL_TABLE_MOST_ROWS)) {
    g_set_error (error, G_OPTION_ERROR, G_OPTION_ERROR_BAD_VALUE,
                 _ ("The table would have more than %d rows: take a larger step."),
                 TRAVEL_TABLE_MOST_ROWS);
    return FALSE;
  }
  *n_rows = (gsize) count_steps (steps) + 1;
  return TRUE;
}

/* From the range's whole length rather than by adding steps, so that rounding does not
 * gather: −79.9 and not −79.90000000000001. */
double
travel_steps_at (TravelSteps steps, gsize i)
{
  const double n_whole = (steps.to - steps.from) / steps.step;
  const double nearest = round (n_whole);

  if (nearest > 0.0 && fabs (n_whole - nearest) < STEP_TOLERANCE)
    return sweep_place ((SweepRange){ steps.from, steps.to, (gsize) nearest + 1 }, i);
  return steps.from + (double) i * steps.step;
}

static double
column_value (const Station *station, gsize column)
{
  const Quantity quantity = columns[column];

  return quantity_edge_value (quantity, station->measures.value[quantity]);
}

static void
write_csv_head (GString *text)
{
  g_string_append (text, "wheel_travel_mm");
  for (gsize i = 0; i < G_N_ELEMENTS (columns); i++)
    g_string_append_printf (text, ",%s", quantity_info (columns[i]).key);
  g_string_append (text, "\r\n");
}

static void
write_csv_row (GString *text, const Station *station)
{
  append_exact_number (text, station->travel);
  for (gsize i = 0; i < G_N_ELEMENTS (columns); i++) {
    g_string_append_c (text, ',');
    csv_append_number (text, column_value (station, i));
  }
  g_string_append (text, "\r\n");
}

static void
write_json_head (GString *text, const Car *car, guint setup)
{
  g_string_append (text, "{\n  \"car\": ");
  json_write_string (text, car->name);
  g_string_append (text, ",\n  \"setup\": ");
  json_write_string (text, car_setup (car, setup)->name);
  g_string_append (text, ",\n  \"stations\": [\n");
}

static void
write_json_row (GString *text, const Station *station, const char *const *keys)
{
  g_string_append (text, "    { \"wheel_travel_mm\": ");
  append_exact_number (text, station->travel);
  for (gsize i = 0; i < G_N_ELEMENTS (columns); i++) {
    g_string_append_printf (text, ", \"%s\": ", keys[i]);
    json_write_number (text, column_value (station, i));
  }
  g_string_append (text, " }");
}

/* Whether the row is a gap. */
static gboolean
solve_row (
    const Corner *corner, double travel, gboolean was_gap, Station *station, GArray *gaps)
{
  if (station_solve (corner, travel, 0.0, station) == POSE_OK)
    return FALSE;
  travel_gaps_add (gaps, travel, station->status, was_gap);
  return TRUE;
}

static void
write_csv (
    const Corner *corner, TravelSteps steps, gsize n_rows, GString *text, GArray *gaps)
{
  gboolean was_gap = FALSE;

  write_csv_head (text);
  for (gsize i = 0; i < n_rows; i++) {
    Station station;

    was_gap = solve_row (corner, travel_steps_at (steps, i), was_gap, &station, gaps);
    write_csv_row (text, &station);
  }
}

static void
write_json (
    const Corner *corner, TravelSteps steps, gsize n_rows, GString *text, GArray *gaps)
{
  const char *keys[G_N_ELEMENTS (columns)];
  gboolean was_gap = FALSE;

  for (gsize i = 0; i < G_N_ELEMENTS (columns); i++)
    keys[i] = quantity_info (columns[i]).key;
  for (gsize i = 0; i < n_rows; i++) {
    Station station;

    was_gap = solve_row (corner, travel_steps_at (steps, i), was_gap, &station, gaps);
    write_json_row (text, &station, keys);
    g_string_append (text, i + 1 < n_rows ? ",\n" : "\n  ]\n}\n");
  }
}

void
travel_table_write (const Car *car,
                    guint setup,
                    TravelSteps steps,
                    TravelTableFormat format,
                    GString *text,
                    GArray *gaps)
{
  const MeasuredCorner measured = car_measured_corner (car);
  const Adjustment adjustment = car_adjustment (car_setup (car, setup));
  Corner corner;
  gsize n_rows;

  if (corner_assemble (&measured, &adjustment, &corner).status != CORNER_OK ||
      !travel_steps_count (steps, &n_rows, NULL))
    g_return_if_reached ();

  if (format == TRAVEL_TABLE_CSV) {
    write_csv (&corner, steps, n_rows, text, gaps);
  } else {
    write_json_head (text, car, setup);
    write_json (&corner, steps, n_rows, text, gaps);
  }
}
