/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/springs/springs-chart.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define N STUDY_STATIONS

/* Room above and below the curves, in parts of their span. */
#define PADDING 0.04

/* A bump stop at its end would flatten all the rest: loads up to so many corner weights
 * are shown, and rates up to so many times the largest where a setup stands. */
#define MOST_WEIGHTS 2.5
#define MOST_RATES 3.0
#define LEAST_RATE_SPAN 5.0 /* N/mm */

bool
springs_shows (const SpringStudy *springs, unsigned setup)
{
  return springs->study->setups[setup].is_shown &&
         springs->setups[setup].stands != STANDS_NOT_GIVEN;
}

const SpringCorner *
springs_reference (const SpringStudy *springs)
{
  const Study *study = springs->study;

  return study->baseline != study->in_hand && springs_shows (springs, study->baseline)
             ? &springs->setups[study->baseline]
             : NULL;
}

static double
solved (double value)
{
  return isfinite (value) ? value : (double) NAN;
}

static void
load_curve (ChartCurve *curve,
            SpringsChart chart,
            const SpringCorner *corner,
            int setup,
            unsigned rank)
{
  const bool is_load = chart == SPRINGS_LOAD;

  curve->setup = setup;
  curve->rank = rank;
  curve->standing = corner->corner->lowering;
  curve->at_standing = solved (is_load ? corner->at_height.load : corner->at_height.rate);
  for (int i = 0; i < N; i++)
    curve->values[i] =
        solved (is_load ? corner->stations[i].load : corner->stations[i].rate);
}

static void
load_chart (Chart *chart, SpringsChart kind, const SpringStudy *springs)
{
  const Study *study = springs->study;
  unsigned rank = 0;

  if (chart->n_allocated < study->n_setups) {
    chart->others = g_renew (ChartCurve, chart->others, study->n_setups);
    chart->n_allocated = study->n_setups;
  }
  chart->info = kind == SPRINGS_LOAD
                    ? (QuantityInfo){ .name = _ ("Wheel load, by what carries it"),
                                      .short_name = _ ("Wheel load"),
                                      .unit = unit_symbol (UNIT_FORCE),
                                      .positive = "",
                                      .negative = "" }
                    : (QuantityInfo){ .name = _ ("Wheel rate"),
                                      .short_name = _ ("Rate"),
                                      .unit = unit_symbol (UNIT_RATE),
                                      .positive = "",
                                      .negative = "" };
  chart->n_others = 0;
  load_curve (&chart->hand, kind, spring_study_in_hand (springs), (int) study->in_hand,
              0);
  for (unsigned i = 0; i < study->n_setups; i++)
    if (i != study->in_hand && springs_shows (springs, i))
      load_curve (&chart->others[chart->n_others++], kind, &springs->setups[i], (int) i,
                  ++rank);
}

static void
load_stack (SpringStack *stack, const SpringCorner *hand)
{
  for (int e = 0; e < N_SPRING_ELEMENTS; e++)
    stack->is_there[e] = false;
  for (int i = 0; i < N; i++) {
    const SpringStation *station = &hand->stations[i];
    const bool is_solved = isfinite (station->load);
    double top = 0.0, bottom = 0.0;

    for (int e = 0; e < N_SPRING_ELEMENTS; e++) {
      const double load = is_solved ? station->element_load[e] : (double) NAN;

      stack->low[e][i] = load < 0.0 ? bottom + load : load >= 0.0 ? top : load;
      stack->high[e][i] = load < 0.0 ? bottom : load >= 0.0 ? top + load : load;
      bottom += load < 0.0 ? load : 0.0;
      top += load > 0.0 ? load : 0.0;
      stack->is_there[e] |= fabs (load) > 0.0;
    }
  }
}

/* A setup without springs has a curve of nothing but its wheel's own weight: left out. */
static void
leave_hand_out (SpringCharts *charts)
{
  for (int c = 0; c < N_SPRINGS_CHARTS; c++) {
    charts->charts[c].hand.at_standing = (double) NAN;
    for (int i = 0; i < N; i++)
      charts->charts[c].hand.values[i] = charts->geometric[i] = (double) NAN;
  }
  for (int e = 0; e < N_SPRING_ELEMENTS; e++)
    charts->stack.is_there[e] = false;
}

void
spring_charts_load (SpringCharts *charts, const SpringStudy *springs)
{
  const SpringCorner *hand = spring_study_in_hand (springs);

  for (int c = 0; c < N_SPRINGS_CHARTS; c++)
    load_chart (&charts->charts[c], (SpringsChart) c, springs);
  load_stack (&charts->stack, hand);
  for (int i = 0; i < N; i++)
    charts->geometric[i] = solved (hand->stations[i].geometric_rate);
  if (hand->stands == STANDS_NOT_GIVEN)
    leave_hand_out (charts);
}

void
spring_charts_clear (SpringCharts *charts)
{
  for (int c = 0; c < N_SPRINGS_CHARTS; c++)
    chart_clear (&charts->charts[c]);
}

typedef struct {
  double low, high;
} Extent;

static void
extend (Extent *extent, double value)
{
  if (!isfinite (value))
    return;
  extent->low = fmin (extent->low, value);
  extent->high = fmax (extent->high, value);
}

static void
extend_by_curves (Extent *extent, const Chart *chart)
{
  for (int i = 0; i < N; i++) {
    extend (extent, chart->hand.values[i]);
    for (unsigned k = 0; k < chart->n_others; k++)
      extend (extent, chart->others[k].values[i]);
  }
}

static Extent
load_extent (const SpringCharts *charts, const SpringStudy *springs)
{
  const double weight = springs->corner_weight;
  Extent extent = { 0.0, 1.15 * weight };

  extend_by_curves (&extent, &charts->charts[SPRINGS_LOAD]);
  for (int e = 0; e < N_SPRING_ELEMENTS; e++)
    for (int i = 0; charts->stack.is_there[e] && i < N; i++) {
      extend (&extent, charts->stack.low[e][i]);
      extend (&extent, charts->stack.high[e][i]);
    }
  return (Extent){ fmax (extent.low, -MOST_WEIGHTS / 2.0 * weight),
                   fmin (extent.high, MOST_WEIGHTS * weight) };
}

/* Of a setup where it stands or half-way through its travel, whichever is less: it may
 * stand on its bump stop. */
static double
ordinary_rate (const SpringCorner *corner)
{
  return fmin (corner->wheel_rate, corner->stations[N / 2].rate);
}

static Extent
rate_extent (const SpringCharts *charts, const SpringStudy *springs)
{
  Extent extent = { 0.0, LEAST_RATE_SPAN }, ordinary = { 0.0, LEAST_RATE_SPAN };

  extend_by_curves (&extent, &charts->charts[SPRINGS_RATE]);
  for (int i = 0; i < N; i++)
    extend (&extent, charts->geometric[i]);
  for (unsigned i = 0; i < springs->n_setups; i++)
    if (springs_shows (springs, i))
      extend (&ordinary, ordinary_rate (&springs->setups[i]));
  return (Extent){ fmax (extent.low, -ordinary.high),
                   fmin (extent.high, MOST_RATES * ordinary.high) };
}

static void
set_range (Chart *chart, UnitKind kind, Extent extent, int most_steps, bool hold)
{
  const double pad = PADDING * (extent.high - extent.low);
  double low = extent.low < -pad ? extent.low : 0.0, high = extent.high + pad;

  if (hold && chart->range.step > 0.0) {
    low = fmin (low, chart->range.low);
    high = fmax (high, chart->range.high);
  }
  chart->range = axis_range_round_in (kind, low, high, most_steps);
  chart->is_clipped = true; /* curves may leave the plot */
}

void
spring_charts_fit (SpringCharts *charts,
                   const SpringStudy *springs,
                   const int most_steps[N_SPRINGS_CHARTS],
                   bool hold)
{
  set_range (&charts->charts[SPRINGS_LOAD], UNIT_FORCE, load_extent (charts, springs),
             most_steps[SPRINGS_LOAD], hold);
  set_range (&charts->charts[SPRINGS_RATE], UNIT_RATE, rate_extent (charts, springs),
             most_steps[SPRINGS_RATE], hold);
}

double
spring_curve_at (const double values[N], SweepRange range, double at)
{
  const double place = (at - range.from) / (range.to - range.from) * (N - 1);

  if (!(place >= 0.0 && place <= N - 1))
    return (double) NAN;
  const int i = MIN ((int) place, N - 2);
  const double part = place - i;

  /* a gap beside a station does not take the station with it */
  if (part <= 0.0)
    return values[i];
  return part >= 1.0 ? values[i + 1] : (1.0 - part) * values[i] + part * values[i + 1];
}

bool
spring_standing_place (const SpringCharts *charts,
                       const SpringStudy *springs,
                       unsigned index,
                       double *x,
                       double *y)
{
  const Chart *chart = &charts->charts[SPRINGS_LOAD];
  const double standing =
      index < springs->n_setups ? springs->setups[index].standing : (double) NAN;

  if (!(standing >= chart->x.low && standing <= chart->x.high) ||
      !springs_shows (springs, index))
    return false;
  *x = axis_to_pixel (chart->x, standing);
  *y = axis_to_pixel (chart->y, springs->corner_weight);
  return true;
}
