/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/springs/springs-board.h"

#include "drawing/board/board-layout.h"
#include "drawing/springs/springs-chart.h"
#include "drawing/springs/springs-words.h"

#include <math.h>

#define MARGIN BOARD_MARGIN

/* Numbers and sentences stand beside the charts where the page is so much wider than
 * high, else below. */
#define WIDE 1.5
#define LEAST_WIDE 62.0 /* text sizes */
#define BESIDE 27.0     /* text sizes */

/* What a chart has at least, text sizes, and the share of the rate. */
#define LEAST_LOAD 13.0
#define LEAST_RATE 6.0
#define CHARTS_FOOT 4.0
#define RATE_TITLE 2.5
#define RATE_SHARE 0.32
#define NAMES_SHARE 0.26 /* of the width, at most */

#define CURVE_REACH 6.0

struct SpringsBoard {
  TextCache *texts;
  SpringCharts charts;
  MapClaims claims, leaders;
  AxisRange travel;
  double gutter, names, words_height, foot;
  bool has_charts, has_rate;
  Frame charts_frame, numbers, verdicts, caution;

  /* for hits */
  SweepRange range;
  unsigned in_hand;
};

SpringsBoard *
springs_board_new (void)
{
  SpringsBoard *board = g_new0 (SpringsBoard, 1);

  board->texts = text_cache_new ();
  return board;
}

void
springs_board_free (SpringsBoard *board)
{
  if (board == NULL)
    return;
  text_cache_free (board->texts);
  spring_charts_clear (&board->charts);
  g_free (board);
}

static bool
has_anything (const SpringStudy *springs)
{
  for (unsigned i = 0; i < springs->n_setups; i++)
    if (springs_shows (springs, i))
      return true;
  return false;
}

/* Springs are solved for setups only. */
static TitleBlock
title_of (const SpringsView *view)
{
  TitleBlock title = *view->title;

  title.omits_measured = true;
  return title;
}

static double
title_height (const SpringsBoard *board, const SpringsView *view, double width)
{
  if (view->title == NULL)
    return 0.0;

  const TitleBlock title = title_of (view);
  return title_block_height (board->texts, &view->theme, &title, view->springs->study,
                             width - 2.0 * MARGIN) +
         2.0 * MARGIN;
}

static SpringsWords
words_for (const SpringsBoard *board, cairo_t *cr, const SpringsView *view)
{
  return (SpringsWords){ board->texts, cr, view };
}

static double
least_charts (const Theme *theme)
{
  return (LEAST_LOAD + CHARTS_FOOT + LEAST_RATE + RATE_TITLE) * theme->text;
}

/* From which on all finds room, numbers and sentences beside the charts; INFINITY where
 * the width is too short for that. */
static double
height_beside (const SpringsWords *words, double width)
{
  const Theme *theme = &words->view->theme;
  const double beside = BESIDE * theme->text;

  if (width <= LEAST_WIDE * theme->text)
    return INFINITY;
  return fmax (spring_numbers_height (words, beside, G_MAXINT) + MARGIN +
                   spring_verdicts_draw (words, 0.0, 0.0, beside, G_MAXINT),
               least_charts (theme));
}

/* Likewise below them. */
static double
height_below (const SpringsWords *words, double width)
{
  return least_charts (&words->view->theme) + MARGIN +
         spring_numbers_height (words, width, G_MAXINT) + MARGIN +
         spring_verdicts_draw (words, 0.0, 0.0, width, G_MAXINT) + MARGIN;
}

/* Numbers over sentences to the right of the charts. */
static void
split_beside (SpringsBoard *board, const SpringsView *view, Frame page)
{
  const SpringsWords words = words_for (board, NULL, view);
  const double width = BESIDE * view->theme.text, gap = 2.0 * MARGIN;
  const double x = page.x + page.width - width;

  board->numbers =
      (Frame){ x, page.y, width, spring_numbers_height (&words, width, page.height) };
  board->verdicts = (Frame){ x, page.y + board->numbers.height + MARGIN, width,
                             fmax (page.height - board->numbers.height - MARGIN, 0.0) };
  board->charts_frame = (Frame){ page.x, page.y, page.width - width - gap, page.height };
}

/* Numbers, then sentences below the charts, in what these can spare: the load comes
 * first, then the numbers, the rate, the sentences. */
static void
split_below (SpringsBoard *board, const SpringsView *view, Frame page, bool hold)
{
  const SpringsWords words = words_for (board, NULL, view);
  const double em = view->theme.text, foot = CHARTS_FOOT * em;
  double room = page.height - LEAST_LOAD * em - foot;
  const double high = spring_numbers_height (&words, page.width, room - MARGIN);
  const double numbers = high > 0.0 ? high + MARGIN : 0.0;

  room -= numbers + (LEAST_RATE + RATE_TITLE) * em;
  const double verdicts =
      spring_verdicts_draw (&words, 0.0, 0.0, page.width, fmax (room - MARGIN, 0.0));
  const double wanted = verdicts > 0.0 ? verdicts + 0.6 * MARGIN : 0.0;

  board->words_height =
      hold ? fmin (fmax (wanted, board->words_height), fmax (room, 0)) : wanted;
  const double below = page.y + page.height - board->words_height;
  board->verdicts = (Frame){ page.x, below + 0.6 * MARGIN, page.width,
                             fmax (board->words_height - 0.6 * MARGIN + 0.1, 0.0) };
  board->numbers = (Frame){ page.x, below - high, page.width, high };
  board->charts_frame =
      (Frame){ page.x, page.y, page.width, fmax (below - numbers - page.y, 1.0) };
}

/* What stands above and below charts, numbers and sentences. */
typedef struct {
  double top, caution, title;
} Edges;

static Edges
edges_of (const SpringsBoard *board, const SpringsView *view, double width)
{
  const SpringsWords words = words_for (board, NULL, view);
  const double caution =
      view->caution_stands_beside
          ? 0.0
          : spring_caution_draw (&words, 0.0, 0.0, width - 2.0 * MARGIN) + 0.75 * MARGIN;

  return (Edges){ round (0.75 * MARGIN), caution, title_height (board, view, width) };
}

static bool
is_beside (const SpringsWords *words, const Frame *page, double width)
{
  if (width <= LEAST_WIDE * words->view->theme.text)
    return false;
  return width > WIDE * page->height ||
         (height_below (words, page->width) > page->height &&
          height_beside (words, width) <= page->height);
}

static void
split_page (SpringsBoard *board, const SpringsView *view, double width, double height)
{
  const SpringsWords words = words_for (board, NULL, view);
  const Edges edges = edges_of (board, view, width);
  const double bottom = height - edges.title, foot = bottom - edges.caution;
  const Frame page = { MARGIN, edges.top, fmax (width - 2.0 * MARGIN, 1.0),
                       fmax (foot - 0.75 * MARGIN - edges.top, 1.0) };

  board->foot = bottom;
  board->caution = (Frame){ MARGIN, foot, page.width, edges.caution };
  if (!has_anything (view->springs)) {
    board->charts_frame = page;
    return;
  }
  if (is_beside (&words, &page, width))
    split_beside (board, view, page);
  else
    split_below (board, view, page, view->hold_axes);
}

double
springs_height (SpringsBoard *board, const SpringsView *view, double width)
{
  const SpringsWords words = words_for (board, NULL, view);
  const Edges edges = edges_of (board, view, width);
  const double wide = fmax (width - 2.0 * MARGIN, 1.0);
  const double page = has_anything (view->springs) ? fmin (height_beside (&words, width),
                                                           height_below (&words, wide))
                                                   : spring_nothing_height (&words, wide);

  return ceil (edges.top + page + 0.75 * MARGIN + edges.caution + edges.title);
}

/* Widths change in steps, lest the plots shiver in a drag. */
static double
stepped (double width, double step)
{
  return step * ceil (width / step);
}

static int
most_steps (const Theme *theme, double height)
{
  return CLAMP ((int) (height / (2.2 * theme->small_text)), 2, 8);
}

typedef struct {
  double y, height;
} Strip;

/* The plots' heights and places in the frame of the charts. */
static void
split_charts (SpringsBoard *board, const Theme *theme, Strip plots[N_SPRINGS_CHARTS])
{
  const Frame frame = board->charts_frame;
  const double title = chart_title_height (theme), axis = round (3.7 * theme->small_text);
  const double gap = round (0.9 * theme->text);
  const double both = frame.height - axis - 2.0 * title - gap;
  const double rate = round (RATE_SHARE * both);

  board->has_rate =
      rate >= 0.6 * LEAST_RATE * theme->text && both - rate >= 6.0 * theme->text;
  plots[SPRINGS_RATE] =
      (Strip){ frame.y + frame.height - axis - rate, board->has_rate ? rate : 0.0 };
  plots[SPRINGS_LOAD] =
      (Strip){ frame.y + title,
               fmax (board->has_rate ? floor (both - rate) : frame.height - axis - title,
                     8.0) };
}

static void
place_chart (SpringsBoard *board, int c, Strip strip, const Theme *theme)
{
  const Frame frame = board->charts_frame;
  const double title = chart_title_height (theme), air = 4.0;
  const double width = fmax (frame.width - board->gutter - board->names, 8.0);
  const Frame plot = { frame.x + board->gutter, round (strip.y), width, strip.height };
  const Frame slot = { frame.x - air, plot.y - title, frame.width + 2.0 * air,
                       plot.height + title + air };

  chart_place (&board->charts.charts[c], slot, plot, board->range);
}

/* A car without any travel still has an axis. */
static SweepRange
range_of (const Study *study)
{
  SweepRange range = study->range;

  if (range.to > range.from)
    return range;
  range.from -= 1.0;
  range.to += 1.0;
  return range;
}

static void
place_charts (SpringsBoard *board, const SpringsView *view)
{
  const Theme *theme = &view->theme;
  const double step = theme->small_text / 2.0;
  Strip plots[N_SPRINGS_CHARTS];
  double gutter = 0.0;

  spring_charts_load (&board->charts, view->springs);
  split_charts (board, theme, plots);
  const int steps[] = { most_steps (theme, plots[SPRINGS_LOAD].height),
                        most_steps (theme, plots[SPRINGS_RATE].height) };
  spring_charts_fit (&board->charts, view->springs, steps, view->hold_axes);

  for (int c = 0; c < N_SPRINGS_CHARTS; c++)
    gutter =
        fmax (gutter, chart_label_width (&board->charts.charts[c], board->texts, theme));
  gutter = stepped (gutter + 8.0, step);
  board->gutter = view->hold_axes ? fmax (gutter, board->gutter) : gutter;
  board->names = fmin (stepped (spring_edge_names_width (&board->charts, board->texts,
                                                         theme, view->springs->study),
                                step),
                       floor (NAMES_SHARE * board->charts_frame.width));
  place_chart (board, SPRINGS_LOAD, plots[SPRINGS_LOAD], theme);
  if (board->has_rate)
    place_chart (board, SPRINGS_RATE, plots[SPRINGS_RATE], theme);
  else
    board->charts.charts[SPRINGS_RATE].plot = (Frame){ 0 };
  const double wide = board->charts.charts[SPRINGS_LOAD].plot.width;
  board->travel =
      axis_range_exact_in (UNIT_LENGTH, board->range.from, board->range.to,
                           CLAMP ((int) (wide / (2.9 * theme->small_text)), 2, 10));
}

static SpringsPen
pen_for (SpringsBoard *board, cairo_t *cr, const SpringsView *view, int chart)
{
  const Study *study = view->springs->study;

  return (SpringsPen){ .chart = { .cr = cr,
                                  .texts = board->texts,
                                  .theme = &view->theme,
                                  .study = study,
                                  .travel = board->travel,
                                  .show_cursor = view->show_cursor,
                                  .names_gaps = chart == SPRINGS_LOAD,
                                  .label_room = board->names },
                       .springs = view->springs,
                       .lit = view->lit,
                       .claims = &board->claims,
                       .leaders = &board->leaders };
}

/* The part of the rate that is change of ratio. */
static void
draw_geometric (const SpringsBoard *board, const SpringsPen *pen)
{
  const Chart *chart = &board->charts.charts[SPRINGS_RATE];
  cairo_t *cr = pen->chart.cr;

  cairo_save (cr);
  cairo_rectangle (cr, chart->plot.x, chart->plot.y, chart->plot.width,
                   chart->plot.height);
  cairo_clip (cr);
  cairo_new_path (cr);
  chart_trace (chart, cr, board->charts.geometric);
  theme_use (cr, pen->chart.theme->soft_ink);
  theme_line (cr, LINE_FULL, pen->chart.theme->thin);
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
draw_travel_axis (const SpringsBoard *board, const SpringsPen *pen)
{
  const Chart *lowest =
      &board->charts.charts[board->has_rate ? SPRINGS_RATE : SPRINGS_LOAD];
  const BoardColumn column = { .x = board->charts_frame.x,
                               .width = board->charts_frame.width,
                               .axis_y = lowest->plot.y + lowest->plot.height,
                               .first = 0,
                               .n = 1 };

  board_draw_travel_caption (&column, lowest, &pen->chart);
  board_draw_travel_axis (&column, lowest, &pen->chart);
}

static void
draw_charts (SpringsBoard *board, cairo_t *cr, const SpringsView *view)
{
  const SpringCharts *charts = &board->charts;
  const SpringsPen load = pen_for (board, cr, view, SPRINGS_LOAD),
                   rate = pen_for (board, cr, view, SPRINGS_RATE);
  const bool has_gaps = study_in_hand (load.chart.study)->n_assembled < STUDY_STATIONS;
  SpringNamed named;

  board->claims.n = board->leaders.n = 0;
  spring_areas_draw (charts, &load);
  chart_draw_still (&charts->charts[SPRINGS_LOAD], &load.chart);
  if (has_gaps)
    chart_draw_gaps (&charts->charts[SPRINGS_LOAD], &load.chart);
  spring_weight_draw (charts, &load, &named);
  spring_areas_name (charts, &load, &named);
  chart_draw_hand (&charts->charts[SPRINGS_LOAD], &load.chart);
  if (board->has_rate) {
    chart_draw_still (&charts->charts[SPRINGS_RATE], &rate.chart);
    if (has_gaps)
      chart_draw_gaps (&charts->charts[SPRINGS_RATE], &rate.chart);
    draw_geometric (board, &rate);
    chart_draw_hand (&charts->charts[SPRINGS_RATE], &rate.chart);
  }
  if (view->show_cursor)
    spring_cursor_draw (charts, &load);
  spring_edge_names_draw (charts, &load, &named);
  spring_marks_draw (charts, &load);
  draw_travel_axis (board, &load);
}

static void
draw_title (const SpringsBoard *board, cairo_t *cr, const SpringsView *view, double width)
{
  if (view->title == NULL)
    return;

  const TitleBlock title = title_of (view);
  title_block_draw (board->texts, cr, &view->theme, &title, MARGIN, board->foot + MARGIN,
                    width - 2.0 * MARGIN, view->springs->study);
}

void
springs_draw (SpringsBoard *board,
              cairo_t *cr,
              const SpringsView *view,
              double width,
              double height)
{
  g_return_if_fail (view->springs != NULL && width > 0.0 && height > 0.0);

  const SpringsWords words = words_for (board, cr, view);

  board->range = range_of (view->springs->study);
  board->in_hand = view->springs->study->in_hand;
  board->has_charts = has_anything (view->springs);
  split_page (board, view, width, height);
  if (board->has_charts)
    place_charts (board, view);

  cairo_save (cr);
  /* half the time of cairo's own choice, and no difference to the eye */
  cairo_set_antialias (cr, CAIRO_ANTIALIAS_FAST);
  theme_paint_ground (cr, &view->theme, width, height);
  if (!board->has_charts)
    spring_nothing_draw (&words, board->charts_frame);
  else {
    draw_charts (board, cr, view);
    if (board->numbers.height > 0.0)
      spring_numbers_draw (&words, board->numbers);
    spring_verdicts_draw (&words, board->verdicts.x, board->verdicts.y,
                          board->verdicts.width, board->verdicts.height);
  }
  if (!view->caution_stands_beside)
    spring_caution_draw (&words, board->caution.x, board->caution.y,
                         board->caution.width);
  draw_title (board, cr, view, width);
  cairo_restore (cr);
}

static bool
is_inside (Frame frame, double x, double y)
{
  return x >= frame.x && x <= frame.x + frame.width && y >= frame.y &&
         y <= frame.y + frame.height;
}

static void
try_curve (const SpringsBoard *board,
           const Chart *chart,
           const ChartCurve *curve,
           SpringsHit *hit,
           double y,
           double *nearest)
{
  const double value = spring_curve_at (curve->values, board->range, hit->travel);
  const double distance = fabs (axis_to_pixel (chart->y, value) - y);

  if (!(distance <= *nearest))
    return;
  *nearest = distance;
  hit->setup = curve->setup;
}

static int
element_at (const SpringsBoard *board, const Chart *chart, double travel, double y)
{
  const SpringStack *stack = &board->charts.stack;
  const double load = axis_to_data (chart->y, y);

  for (int e = 0; e < N_SPRING_ELEMENTS; e++)
    if (stack->is_there[e] &&
        load >= spring_curve_at (stack->low[e], board->range, travel) &&
        load < spring_curve_at (stack->high[e], board->range, travel))
      return e;
  return -1;
}

SpringsHit
springs_hit (const SpringsBoard *board, double x, double y)
{
  SpringsHit hit = { .setup = -1, .element = -1 };
  const Chart *charts = board->charts.charts;

  if (!board->has_charts)
    return hit;
  hit.travel = CLAMP (axis_to_data (charts[SPRINGS_LOAD].x, x), board->range.from,
                      board->range.to);
  for (int c = 0; c < N_SPRINGS_CHARTS; c++) {
    double nearest = CURVE_REACH;

    if (charts[c].plot.width <= 0.0 || !is_inside (charts[c].plot, x, y))
      continue;
    hit.on_plot = true;
    try_curve (board, &charts[c], &charts[c].hand, &hit, y, &nearest);
    for (unsigned i = 0; i < charts[c].n_others; i++)
      try_curve (board, &charts[c], &charts[c].others[i], &hit, y, &nearest);
    if (c == SPRINGS_LOAD)
      hit.element = element_at (board, &charts[c], hit.travel, y);
  }
  return hit;
}

bool
springs_frame (const SpringsBoard *board,
               SpringsChart chart,
               double *x,
               double *y,
               double *width,
               double *height)
{
  const Frame plot = board->charts.charts[chart].plot;

  if (!board->has_charts || plot.width <= 0.0)
    return false;
  *x = plot.x;
  *y = plot.y;
  *width = plot.width;
  *height = plot.height;
  return true;
}
