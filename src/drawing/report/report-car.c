/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The first page: whose car it is, and every number that was measured on it. */

#include "drawing/card/fitting-card-facts.h"
#include "drawing/report/report-parts.h"
#include "model/study/measure-field.h"
#include "model/words/number-text.h"
#include "model/words/point-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define N_AXES 3
#define NAME_SHARE 0.34 /* of the width, for the points' names */
#define NUMBER_WIDTH 14.0
#define MOST_DECIMALS 3
#define COLUMN_GAP 22.0
/* Of one column of the sizes. */
#define SIZE_NAME 0.66
#define SIZE_VALUE 0.22

static double
row_height (const ReportFlow *flow)
{
  return report_flow_line (flow, FITTING_TEXT) + 2.5;
}

static void
end_row (ReportFlow *flow, double x, double width)
{
  report_flow_skip (flow, row_height (flow));
  fitting_ink (&flow->pen, flow->pen.theme.faint);
  fitting_rule (&flow->pen, x, flow->y, width, 0.7 * flow->pen.theme.thin);
}

static double
baseline (const ReportFlow *flow)
{
  return flow->y + 0.8 * report_flow_line (flow, FITTING_TEXT) + 1.0;
}

static guint
n_sides (const Car *car)
{
  return car->right.has_points ? 2 : 1;
}

static double
coordinate (const Car *car, PointName point, guint side, guint axis)
{
  const MeasureField field =
      measure_field (measure_point_field (point, (CarSide) side) + axis);

  return measure_field_value (&field, car);
}

/* As many as the finest of them was given with, so that they align. */
static int
coordinate_decimals (const Car *car)
{
  int decimals = 0;

  for (guint i = 0; i < N_POINTS * n_sides (car) * N_AXES; i++) {
    const double value =
        coordinate (car, i / N_AXES % N_POINTS, i / N_AXES / N_POINTS, i % N_AXES);

    while (decimals < MOST_DECIMALS &&
           fabs (value * pow (10.0, decimals) - round (value * pow (10.0, decimals))) >
               1e-6 * pow (10.0, decimals))
      decimals++;
  }
  return decimals;
}

static double
axis_width (const ReportFlow *flow)
{
  return (1.0 - NAME_SHARE) * flow->width / (N_AXES * n_sides (flow->report->car));
}

/* Right-aligned in the column of that side and axis. */
static void
write_in_axis (const ReportFlow *flow,
               FittingStyle style,
               guint side,
               guint axis,
               const char *text,
               double y)
{
  const double wide = axis_width (flow), gap = 4.0;
  const double x =
      flow->x + NAME_SHARE * flow->width + (side * N_AXES + axis) * wide + gap;

  fitting_write (&flow->pen, style, text, x, y, wide - gap, FITTING_RIGHT);
}

static void
write_points_head (ReportFlow *flow)
{
  const guint sides = n_sides (flow->report->car);

  if (sides > 1) {
    fitting_ink (&flow->pen, flow->pen.theme.ink);
    for (guint side = 0; side < sides; side++)
      write_in_axis (flow, FITTING_TEXT_BOLD, side, N_AXES - 1,
                     fitting_side_name ((CarSide) side), baseline (flow));
    report_flow_skip (flow, row_height (flow));
  }
  fitting_ink (&flow->pen, flow->pen.theme.soft_ink);
  for (guint i = 0; i < sides * N_AXES; i++)
    write_in_axis (flow, FITTING_SMALL, i / N_AXES, i % N_AXES,
                   point_axis_name (i % N_AXES), baseline (flow));
  end_row (flow, flow->x, flow->width);
}

static void
write_point (ReportFlow *flow, PointName point, int decimals)
{
  const Car *car = flow->report->car;
  const MeasureField field = measure_field (measure_point_field (point, SIDE_LEFT));

  g_autofree char *figure = number_text (point + 1.0, 0);

  fitting_ink (&flow->pen, flow->pen.theme.soft_ink);
  fitting_write (&flow->pen, FITTING_SMALL, figure, flow->x, baseline (flow),
                 NUMBER_WIDTH, FITTING_LEFT);
  fitting_ink (&flow->pen, flow->pen.theme.ink);
  fitting_write (&flow->pen, FITTING_TEXT, field.name, flow->x + NUMBER_WIDTH,
                 baseline (flow), NAME_SHARE * flow->width - NUMBER_WIDTH, FITTING_LEFT);
  for (guint i = 0; i < n_sides (car) * N_AXES; i++) {
    g_autofree char *number =
        number_text (coordinate (car, point, i / N_AXES, i % N_AXES), decimals);

    write_in_axis (flow, FITTING_TEXT, i / N_AXES, i % N_AXES, number, baseline (flow));
  }
  end_row (flow, flow->x, flow->width);
}

static void
write_points (ReportFlow *flow)
{
  const int decimals = coordinate_decimals (flow->report->car);

  report_flow_title (flow, _ ("Measured points, mm"), 4.0 * row_height (flow));
  report_flow_text (
      flow, FITTING_SMALL, flow->pen.theme.soft_ink, 0.0,
      _ ("From the centre plane, the ground and the front axle, at the height at which the "
         "car stood."));
  report_flow_skip (flow, 0.4 * REPORT_GAP);
  write_points_head (flow);
  for (PointName point = 0; point < N_POINTS; point++) {
    if (!report_flow_has_room (flow, row_height (flow))) {
      report_flow_continue (flow);
      write_points_head (flow);
    }
    write_point (flow, point, decimals);
  }
  report_flow_skip (flow, 1.5 * REPORT_GAP);
}

static bool
is_given (const MeasureField *field, const Car *car)
{
  const double value = measure_field_value (field, car);

  switch (field->group) {
  case MEASURE_WHEEL:
  case MEASURE_BODY:
    return field->absent != 0.0 || value != 0.0;
  case MEASURE_TOWER:
    return value != 0.0;
  case MEASURE_RIGHT_WHEEL:
    return car->right.has_alignment;
  default:
    return false;
  }
}

/* Of MeasureField. */
static GArray *
list_sizes (const Car *car)
{
  GArray *sizes = g_array_new (FALSE, FALSE, sizeof (MeasureField));

  for (guint i = 0; i < measure_n_fields (); i++) {
    const MeasureField field = measure_field (i);

    if (is_given (&field, car))
      g_array_append_val (sizes, field);
  }
  return sizes;
}

/* A file does not tell a usual value that was entered from one that was not. */
static bool
is_usual (const MeasureField *field, const Car *car)
{
  return field->absent != 0.0 && measure_field_value (field, car) == field->absent;
}

/* A thread keeps its name. */
static UnitKind
size_kind (const MeasureField *field)
{
  return g_str_has_suffix (field->path, "pitch_mm") ? UNIT_PITCH
                                                    : unit_kind_of (field->unit);
}

static void
write_size (ReportFlow *flow, const MeasureField *field, double x, double width)
{
  const FittingPen *pen = &flow->pen;
  g_autofree char *name = measure_field_name (field);
  const UnitKind kind = size_kind (field);
  g_autofree char *number =
      unit_plain_number (kind, measure_field_value (field, flow->report->car), 2);
  const double value = x + SIZE_NAME * width, unit = value + SIZE_VALUE * width + 4.0;

  fitting_ink (pen, pen->theme.ink);
  fitting_write (pen, FITTING_TEXT, name, x, baseline (flow), SIZE_NAME * width - 4.0,
                 FITTING_LEFT);
  fitting_write (pen, FITTING_TEXT, number, value, baseline (flow), SIZE_VALUE * width,
                 FITTING_RIGHT);
  fitting_ink (pen, pen->theme.soft_ink);
  const double past =
      fitting_write (pen, FITTING_TEXT,
                     kind == UNIT_NONE ? field->unit : unit_symbol (kind), unit,
                     baseline (flow), x + width - unit, FITTING_LEFT);
  if (is_usual (field, flow->report->car))
    fitting_write (pen, FITTING_TEXT, "*", unit + past + 2.0, baseline (flow),
                   x + width - unit - past - 2.0, FITTING_LEFT);
}

/* In two columns, down the first and then down the second. */
static void
write_sizes (ReportFlow *flow)
{
  g_autoptr (GArray) sizes = list_sizes (flow->report->car);
  const guint n_rows = (sizes->len + 1) / 2;
  const double width = (flow->width - COLUMN_GAP) / 2.0;

  report_flow_title (flow, _ ("Alignment and sizes"), 3.0 * row_height (flow));
  for (guint row = 0; row < n_rows; row++) {
    if (!report_flow_has_room (flow, row_height (flow)))
      report_flow_continue (flow);
    const double y = flow->y;
    for (guint i = row; i < sizes->len; i += n_rows) {
      const double x = flow->x + (i < n_rows ? 0.0 : width + COLUMN_GAP);

      flow->y = y;
      write_size (flow, &g_array_index (sizes, MeasureField, i), x, width);
      end_row (flow, x, width);
    }
  }
}

static void
explain_usual (ReportFlow *flow)
{
  g_autoptr (GArray) sizes = list_sizes (flow->report->car);

  for (guint i = 0; i < sizes->len; i++)
    if (is_usual (&g_array_index (sizes, MeasureField, i), flow->report->car)) {
      report_flow_skip (flow, 2.0);
      report_flow_text (flow, FITTING_SMALL, flow->pen.theme.soft_ink, 0.0,
                        _ ("* the usual value, where no other was entered"));
      return;
    }
}

void
report_write_car (ReportFlow *flow)
{
  const Car *car = flow->report->car;
  const Theme *theme = &flow->pen.theme;

  report_flow_text (flow, FITTING_LARGE, theme->ink, 0.0, car->name);
  report_flow_text (flow, FITTING_HEADING, theme->soft_ink, 0.0,
                    report_part_name (REPORT_CAR));
  report_flow_skip (flow, REPORT_GAP);
  if (car->notes != NULL && car->notes[0] != '\0') {
    report_flow_text (flow, FITTING_TEXT, theme->ink, 0.0, car->notes);
    report_flow_skip (flow, 1.5 * REPORT_GAP);
  }
  write_points (flow);
  write_sizes (flow);
  explain_usual (flow);
  report_draw_points (flow);
}
