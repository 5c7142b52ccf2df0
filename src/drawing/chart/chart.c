/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/chart/chart.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#define N STUDY_STATIONS

/* Room above and below the curves, in parts of their span. */
#define PADDING 0.04

/* A step between neighbours that is this many times the mean step is no smooth curve. */
#define SUDDEN 10.0

/* How far from a station its curve may be drawn, pixels: a fifth of what cairo allows
 * itself for an arc. */
#define NEAR 0.02

void
chart_init (Chart *chart, Quantity quantity)
{
  *chart = (Chart){ .quantity = quantity, .info = quantity_info (quantity) };
  chart->info.unit = quantity_caption (quantity); /* a heading says what is drawn */
}

void
chart_clear (Chart *chart)
{
  g_clear_pointer (&chart->others, g_free);
  g_clear_pointer (&chart->sorted, g_free);
  chart->n_others = chart->n_allocated = 0;
}

static double
edge_value (const Chart *chart, const Station *station)
{
  const double value = station->status == POSE_OK
                           ? station->measures.value[chart->quantity] *
                                 quantity_edge_value (chart->quantity, 1.0)
                           : (double) NAN;

  return isfinite (value) ? value : (double) NAN;
}

static void
load_values (const Chart *chart, const StudyCorner *corner, double values[N])
{
  const double scale = quantity_edge_value (chart->quantity, 1.0);

  for (int i = 0; i < N; i++) {
    const Station *station = &corner->stations[i];
    const double value = station->status == POSE_OK
                             ? station->measures.value[chart->quantity] * scale
                             : (double) NAN;
    values[i] = isfinite (value) ? value : (double) NAN;
  }
}

/* True when the curve is another than the one held. */
static bool
load (const Chart *chart,
      ChartCurve *curve,
      int setup,
      unsigned rank,
      const StudyCorner *corner)
{
  ChartCurve fresh;

  memset (&fresh, 0, sizeof fresh);
  fresh.setup = setup;
  fresh.rank = rank;
  fresh.standing = corner->lowering;
  fresh.at_standing = edge_value (chart, &corner->at_height);
  load_values (chart, corner, fresh.values);
  if (memcmp (curve, &fresh, sizeof fresh) == 0)
    return false;
  memcpy (curve, &fresh, sizeof fresh);
  return true;
}

/* For all setups and the corner as measured. */
static void
make_room (Chart *chart, const Study *study)
{
  const unsigned n = study->n_setups + 1;

  if (n <= chart->n_allocated)
    return;
  chart->others = g_renew (ChartCurve, chart->others, n);
  memset (chart->others + chart->n_allocated, 0,
          (n - chart->n_allocated) * sizeof *chart->others);
  chart->sorted = g_renew (double, chart->sorted, (n + 1) * N);
  chart->n_allocated = n;
}

bool
chart_shows_measured (const Study *study)
{
  if (study->baseline != study->in_hand || !study_has_reference (study))
    return false;
  for (unsigned i = 0; i < study->n_setups; i++)
    if (study->setups[i].is_shown && !study->setups[i].is_moved &&
        study->setups[i].lowering == study->measured.lowering)
      return false;
  return true;
}

bool
chart_load (Chart *chart, const Study *study)
{
  const unsigned had = chart->n_others;
  bool has_changed = false;
  unsigned rank = 0, n = 0;

  make_room (chart, study);
  if (chart_shows_measured (study))
    has_changed |=
        load (chart, &chart->others[n++], CHART_MEASURED, rank++, &study->measured);
  for (unsigned i = 0; i < study->n_setups; i++)
    if (i == study->in_hand)
      load (chart, &chart->hand, (int) i, rank++, &study->setups[i]);
    else if (study->setups[i].is_shown)
      has_changed |=
          load (chart, &chart->others[n++], (int) i, rank++, &study->setups[i]);
  chart->n_others = n;
  return has_changed || n != had;
}

/* The least span of an axis in the units of the screen: less than this is of no concern
 * on a car, and a curve that hardly moves shall not look dramatic. */
static double
least_span (Quantity quantity)
{
  if (quantity == QUANTITY_TOE_IN)
    return 0.2;
  if (quantity == QUANTITY_ARM_RATIO)
    return 0.0001;

  switch (quantity_dimension (quantity)) {
  case DIMENSION_ANGLE:
    return 1.0;
  case DIMENSION_LENGTH:
    return 2.0;
  case DIMENSION_RATIO:
    return 0.02;
  case DIMENSION_PERCENT:
    return 5.0;
  case DIMENSION_ANGLE_PER_LENGTH:
    return 0.005;
  case DIMENSION_PER_LENGTH:
    return 0.1;
  }
  g_return_val_if_reached (1.0);
}

typedef struct {
  double low, high, steepest; /* the largest step between neighbours */
} Extent;

static void
extend (Extent *extent, const double values[N])
{
  for (int i = 0; i < N; i++) {
    if (isnan (values[i]))
      continue;
    extent->low = fmin (extent->low, values[i]);
    extent->high = fmax (extent->high, values[i]);
    if (i > 0)
      extent->steepest = fmax (extent->steepest, fabs (values[i] - values[i - 1]));
  }
}

static int
compare_doubles (const void *a, const void *b)
{
  const double left = *(const double *) a, right = *(const double *) b;

  return (left > right) - (left < right);
}

static int
add_values (const double values[N], double *all, int n)
{
  for (int i = 0; i < N; i++)
    if (!isnan (values[i]))
      all[n++] = values[i];
  return n;
}

/* A quantity that passes through infinity would flatten all the rest: the axis then shows
 * the middle eight tenths of the values and as much again on either side. */
static bool
clip_to_the_many (const Chart *chart, Extent *extent)
{
  double *sorted = chart->sorted;
  int n = add_values (chart->hand.values, sorted, 0);

  for (unsigned i = 0; i < chart->n_others; i++)
    n = add_values (chart->others[i].values, sorted, n);
  qsort (sorted, (size_t) n, sizeof *sorted, compare_doubles);

  const double tenth = sorted[n / 10], nine_tenths = sorted[n - 1 - n / 10];
  const double reach = nine_tenths - tenth;
  const Extent all = *extent;
  extent->low = fmax (all.low, tenth - reach);
  extent->high = fmin (all.high, nine_tenths + reach);
  return extent->low > all.low || extent->high < all.high;
}

bool
chart_fit (Chart *chart, int most_steps, bool hold)
{
  Extent extent = { INFINITY, -INFINITY, 0.0 };
  const AxisRange old = chart->range;
  const bool was_clipped = chart->is_clipped;

  extend (&extent, chart->hand.values);
  for (unsigned i = 0; i < chart->n_others; i++)
    extend (&extent, chart->others[i].values);
  if (extent.low > extent.high)
    extent.low = extent.high = 0.0;
  chart->is_clipped = extent.steepest > SUDDEN * (extent.high - extent.low) / N &&
                      clip_to_the_many (chart, &extent);

  const double span = (extent.high - extent.low) * (1.0 + 2.0 * PADDING);
  const double middle = (extent.high + extent.low) / 2.0;
  const double reach = fmax (span, least_span (chart->quantity)) / 2.0;
  double low = middle - reach, high = middle + reach;
  if (hold && old.step > 0.0) {
    low = fmin (low, old.low);
    high = fmax (high, old.high);
  }
  chart->range =
      axis_range_round_in (quantity_unit_kind (chart->quantity), low, high, most_steps);
  return chart->range.low != old.low || chart->range.high != old.high ||
         chart->range.step != old.step || chart->range.kind != old.kind ||
         chart->is_clipped != was_clipped;
}

void
chart_place (Chart *chart, Frame slot, Frame plot, SweepRange travel)
{
  chart->slot = slot;
  chart->plot = plot;
  chart->x = (Axis){ travel.from, travel.to, plot.x, plot.x + plot.width };
  chart->y = (Axis){ chart->range.low, chart->range.high, plot.y + plot.height, plot.y };
}

static double
station_x (const Chart *chart, int i)
{
  return chart->plot.x + chart->plot.width * i / (N - 1);
}

/* Whether the curve passes through the box; a steep piece may do so between stations. */
bool
chart_runs_through (const Chart *chart, const ChartCurve *curve, Frame box)
{
  const double *values = curve->values;
  const double pitch = chart->plot.width / (N - 1);
  const int first = MAX (0, (int) floor ((box.x - chart->plot.x) / pitch));
  const int last = MIN (N - 1, (int) ceil ((box.x + box.width - chart->plot.x) / pitch));

  for (int i = first; i < last; i++) {
    const double y = axis_to_pixel (chart->y, values[i]);
    const double next = axis_to_pixel (chart->y, values[i + 1]);
    if (fmin (y, next) <= box.y + box.height && fmax (y, next) >= box.y)
      return true;
  }
  return false;
}

bool
chart_is_free (const Chart *chart, Frame box)
{
  for (unsigned i = 0; i < chart->n_others; i++)
    if (chart_runs_through (chart, &chart->others[i], box))
      return false;
  return !chart_runs_through (chart, &chart->hand, box);
}

static bool
is_free (const Chart *chart, TextSize size, WordsPlace place, bool above)
{
  const Frame plot = chart->plot;
  const double margin = 4.0;
  const double width = size.width + 2.0 * margin, height = size.height + margin;
  const Frame box = { place == WORDS_RIGHT ? plot.x + plot.width - width : plot.x,
                      above ? plot.y : plot.y + plot.height - height, width, height };

  return width <= plot.width && 2.0 * height <= plot.height && chart_is_free (chart, box);
}

static WordsPlace
choose_place (const Chart *chart, TextSize size, WordsPlace old, bool above)
{
  if (old != WORDS_NOWHERE && is_free (chart, size, old, above))
    return old;
  if (is_free (chart, size, WORDS_RIGHT, above))
    return WORDS_RIGHT;
  return is_free (chart, size, WORDS_LEFT, above) ? WORDS_LEFT : WORDS_NOWHERE;
}

static WordsPlace
place_words (const Chart *chart, TextCache *texts, const Theme *theme, bool above)
{
  const char *words = above ? chart->info.positive : chart->info.negative;
  const bool has_side = above ? chart->range.high > 0.0 : chart->range.low < 0.0;
  const WordsPlace old = above ? chart->words_above : chart->words_below;
  char text[128];

  if (words[0] == '\0' || !has_side)
    return WORDS_NOWHERE;
  g_snprintf (text, sizeof text, above ? "+ %s" : "− %s", words);
  return choose_place (chart, text_measure (texts, chart_small_style (theme), text), old,
                       above);
}

bool
chart_place_words (Chart *chart, TextCache *texts, const Theme *theme)
{
  const WordsPlace above = place_words (chart, texts, theme, true);
  const WordsPlace below = place_words (chart, texts, theme, false);
  const bool has_changed = above != chart->words_above || below != chart->words_below;

  chart->words_above = above;
  chart->words_below = below;
  return has_changed;
}

double
chart_label_width (const Chart *chart, TextCache *texts, const Theme *theme)
{
  int first, n = axis_range_ticks (chart->range, &first);
  double width = 0.0;
  char text[32];

  for (int i = first; i < first + n; i++) {
    axis_tick_text (chart->range, i, text, sizeof text);
    width = fmax (width, text_measure (texts, chart_small_style (theme), text).width);
  }
  return width;
}

/* Pieces of a curve in few lines: a station is held back as long as one line from where
 * the last one ended passes all stations since within NEAR, up or down. */
typedef struct {
  cairo_t *cr;
  bool is_drawing;
  int n_pieces;
  double from_x, from_y; /* where the line begins */
  double low, high;      /* slopes that pass all stations since */
  double x, y;           /* held back */
} Pieces;

static void
begin_line (Pieces *pieces, double x, double y)
{
  pieces->from_x = x;
  pieces->from_y = y;
  pieces->low = -INFINITY;
  pieces->high = INFINITY;
}

static void
end_piece (Pieces *pieces)
{
  if (pieces->is_drawing && pieces->x > pieces->from_x)
    cairo_line_to (pieces->cr, pieces->x, pieces->y);
  pieces->is_drawing = false;
}

static void
begin_piece (Pieces *pieces, double x, double y)
{
  cairo_move_to (pieces->cr, x, y);
  begin_line (pieces, x, y);
  pieces->is_drawing = true;
  pieces->n_pieces++;
}

static void
extend_piece (Pieces *pieces, double x, double y)
{
  const double slope = (y - pieces->from_y) / (x - pieces->from_x);

  if (slope < pieces->low || slope > pieces->high) {
    cairo_line_to (pieces->cr, pieces->x, pieces->y);
    begin_line (pieces, pieces->x, pieces->y);
  }

  const double run = x - pieces->from_x, rise = y - pieces->from_y;
  pieces->low = fmax (pieces->low, (rise - NEAR) / run);
  pieces->high = fmin (pieces->high, (rise + NEAR) / run);
}

static void
pass_station (Pieces *pieces, double x, double y)
{
  if (pieces->is_drawing)
    extend_piece (pieces, x, y);
  else
    begin_piece (pieces, x, y);
  pieces->x = x;
  pieces->y = y;
}

int
chart_trace (const Chart *chart, cairo_t *cr, const double values[N])
{
  const Frame plot = chart->plot;
  const double top = plot.y, bottom = plot.y + plot.height;
  const double per_unit =
      (chart->y.at_high - chart->y.at_low) / (chart->y.high - chart->y.low);
  Pieces pieces = { .cr = cr };
  double last = 0.0;

  for (int i = 0; i < N; i++) {
    const double y = chart->y.at_low + (values[i] - chart->y.low) * per_unit;
    if (isnan (y) || (y < top && last > bottom) || (y > bottom && last < top))
      end_piece (&pieces);
    if (isnan (y))
      continue;

    /* cairo counts in 24.8 fixed point: what lies far outside is brought nearer */
    pass_station (&pieces, station_x (chart, i),
                  fmin (fmax (y, top - 1000.0), bottom + 1000.0));
    last = y;
  }
  end_piece (&pieces);
  return pieces.n_pieces;
}

int
chart_find_gaps (const StudyCorner *corner, ChartGap gaps[CHART_MOST_GAPS])
{
  int n = 0;

  for (int i = 0; i < N; i++) {
    const PoseStatus status = corner->stations[i].status;
    if (status == POSE_OK)
      continue;
    if (n > 0 && gaps[n - 1].last == i - 1 && gaps[n - 1].status == status)
      gaps[n - 1].last = i;
    else if (n < CHART_MOST_GAPS)
      gaps[n++] = (ChartGap){ i, i, status };
  }
  return n;
}

TextStyle
chart_title_style (const Theme *theme)
{
  return (TextStyle){ theme->font, theme->text, TEXT_BOLD };
}

TextStyle
chart_small_style (const Theme *theme)
{
  return (TextStyle){ theme->font, theme->small_text, TEXT_PLAIN };
}

double
chart_title_height (const Theme *theme)
{
  return round (1.6 * theme->text);
}
