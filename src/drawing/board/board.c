/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/board/board.h"

#include "drawing/board/board-layout.h"
#include "drawing/chart/chart.h"

#include <math.h>
#include <string.h>

/* Room for the names of setups: text sizes, the share of a column, text sizes that a
 * named column has at least, and pixels between curve and name. */
#define MOST_NAME 10.0
#define MOST_NAME_SHARE 0.25
#define LEAST_NAMED 24.0
#define NAME_GAP 8.0

struct Board {
  TextCache *texts;
  Chart charts[BOARD_MOST_CHARTS];
  int n_charts;
  BoardLayout layout;
  AxisRange travel[BOARD_MOST_COLUMNS]; /* of the x axes */
  double gutter[BOARD_MOST_COLUMNS];    /* for the labels of the y axes */
  double names[BOARD_MOST_COLUMNS];     /* room for the names at the curves' ends */

  /* what the still part was drawn for */
  cairo_surface_t *still;
  BoardChoice choice;
  Theme theme;
  UnitChoice units;
  SweepRange range;
  double width, height, pixel_scale;
  int lit;
  bool has_reference, is_stale;
};

BoardChoice
board_choice_default (void)
{
  return (BoardChoice){
    .large = { QUANTITY_CAMBER, QUANTITY_CASTER, QUANTITY_ROLL_CENTRE_HEIGHT },
    .n_large = 3,
    .small = { QUANTITY_TOE_IN, QUANTITY_SAI, QUANTITY_SCRUB_RADIUS, QUANTITY_TRAIL,
               QUANTITY_HALF_TRACK_CHANGE },
    .n_small = 5,
  };
}

Board *
board_new (void)
{
  Board *board = g_new0 (Board, 1);

  board->texts = text_cache_new ();
  return board;
}

void
board_free (Board *board)
{
  if (board == NULL)
    return;
  text_cache_free (board->texts);
  g_clear_pointer (&board->still, cairo_surface_destroy);
  for (int i = 0; i < BOARD_MOST_CHARTS; i++)
    chart_clear (&board->charts[i]);
  g_free (board);
}

static bool
is_same_choice (const BoardChoice *a, const BoardChoice *b)
{
  return a->n_large == b->n_large && a->n_small == b->n_small &&
         memcmp (a->large, b->large, a->n_large * sizeof *a->large) == 0 &&
         memcmp (a->small, b->small, a->n_small * sizeof *a->small) == 0;
}

static bool
is_same_theme (const Theme *a, const Theme *b)
{
  return memcmp (a, b, offsetof (Theme, font)) == 0 && a->is_dark == b->is_dark &&
         (a->font == b->font || g_str_equal (a->font, b->font));
}

static void
take_choice (Board *board, const BoardChoice *choice)
{
  const int n_large = (int) MIN (choice->n_large, BOARD_MOST_LARGE);
  const int n_small = (int) MIN (choice->n_small, BOARD_MOST_SMALL);

  if (board->n_charts > 0 && is_same_choice (&board->choice, choice) &&
      unit_choice_equal (&board->units, unit_choice ()))
    return;
  for (int i = 0; i < BOARD_MOST_CHARTS; i++)
    chart_clear (&board->charts[i]);
  for (int i = 0; i < n_large; i++)
    chart_init (&board->charts[i], choice->large[i]);
  for (int i = 0; i < n_small; i++)
    chart_init (&board->charts[n_large + i], choice->small[i]);
  board->n_charts = n_large + n_small;
  board->choice = *choice;
  board->units = *unit_choice ();
  board->is_stale = true;
}

static void
take_study (Board *board, const Study *study)
{
  for (int i = 0; i < board->n_charts; i++)
    board->is_stale |= chart_load (&board->charts[i], study);

  const bool has_reference = study_has_reference (study);
  board->is_stale |= has_reference != board->has_reference ||
                     study->range.from != board->range.from ||
                     study->range.to != board->range.to;
  board->has_reference = has_reference;
  board->range = study->range;
}

static void
take_view (Board *board, const BoardView *view, double width, double height)
{
  board->is_stale |= width != board->width || height != board->height ||
                     view->lit != board->lit || view->pixel_scale != board->pixel_scale ||
                     !is_same_theme (&view->theme, &board->theme);
  board->width = width;
  board->height = height;
  board->lit = view->lit;
  board->pixel_scale = view->pixel_scale;
  board->theme = view->theme;
}

static int
most_y_steps (const Theme *theme, double plot_height)
{
  const double labels = plot_height / theme->small_text;

  return labels < 2.6 ? 1 : CLAMP ((int) (labels / 2.2), 2, 6);
}

/* Widths of the labels change in steps, lest the plots shiver in a drag. */
static double
column_gutter (Board *board, const BoardColumn *column)
{
  const double step = board->theme.small_text / 2.0;
  double width = 0.0;

  for (int i = column->first; i < column->first + column->n; i++)
    width =
        fmax (width, chart_label_width (&board->charts[i], board->texts, &board->theme));
  return step * ceil ((width + 8.0) / step);
}

/* Names stand at the curves' ends beside large charts, where there are several and the
 * plot stays wide enough. The room follows from the names alone, so that it keeps still.
 */
static double
room_for_names (Board *board, const BoardColumn *column, const Study *study)
{
  const TextStyle bold = { board->theme.font, board->theme.small_text, TEXT_BOLD };
  const double most =
      fmin (MOST_NAME * board->theme.text, MOST_NAME_SHARE * column->width);
  double width = 0.0;
  int n_shown = 0;

  for (guint i = 0; i < study->n_setups; i++)
    if (study->setups[i].is_shown) {
      width =
          fmax (width, text_measure (board->texts, bold, study->setups[i].name).width);
      n_shown++;
    }
  if (column->first >= (int) board->choice.n_large || n_shown < 2 ||
      column->width < LEAST_NAMED * board->theme.text)
    return 0.0;
  return ceil (fmin (width, most)) + NAME_GAP;
}

static void
place_column (Board *board, int c, const Study *study, bool hold)
{
  const BoardColumn *column = &board->layout.columns[c];
  const int most_steps = most_y_steps (&board->theme, column->plot_height);

  for (int i = column->first; i < column->first + column->n; i++)
    board->is_stale |= chart_fit (&board->charts[i], most_steps, hold);

  const double gutter = column_gutter (board, column);
  board->gutter[c] = hold ? fmax (gutter, board->gutter[c]) : gutter;
  board->names[c] = room_for_names (board, column, study);
  for (int i = 0; i < column->n; i++) {
    Frame slot, plot;
    board_layout_chart (column, i, board->gutter[c], board->names[c], &slot, &plot);
    Chart *chart = &board->charts[column->first + i];
    board->is_stale |= plot.x != chart->plot.x || plot.width != chart->plot.width;
    chart_place (chart, slot, plot, board->range);
    board->is_stale |= chart_place_words (chart, board->texts, &board->theme);
  }
  const int most = (int) ((column->width - board->gutter[c] - board->names[c]) /
                          (2.9 * board->theme.small_text));
  board->travel[c] = axis_range_exact_in (UNIT_LENGTH, board->range.from, board->range.to,
                                          CLAMP (most, 2, 10));
}

static void
prepare (Board *board, const BoardView *view, double width, double height)
{
  const double foot = view->title == NULL
                          ? 0.0
                          : title_block_height (board->texts, &view->theme, view->title,
                                                view->study, width - 2.0 * BOARD_MARGIN) +
                                2.0 * BOARD_MARGIN;

  take_view (board, view, width, height);
  take_choice (board, &view->choice);
  take_study (board, view->study);
  board->layout = board_layout (&board->choice, &board->theme, width, height - foot);
  for (int c = 0; c < board->layout.n_columns; c++)
    place_column (board, c, view->study, view->hold_axes);
}

static ChartPen
pen_for (const Board *board, cairo_t *cr, const BoardView *view, int column, int chart)
{
  return (ChartPen){ .cr = cr,
                     .texts = board->texts,
                     .theme = &board->theme,
                     .study = view->study,
                     .travel = board->travel[column],
                     .has_reference = board->has_reference,
                     .show_cursor = view->show_cursor,
                     .is_lit = (int) board->charts[chart].quantity == view->lit,
                     .names_gaps = chart == 0,
                     .says_way_left = true,
                     .label_room = board->names[column] };
}

static void
draw_still (Board *board, cairo_t *cr, const BoardView *view)
{
  for (int c = 0; c < board->layout.n_columns; c++) {
    const BoardColumn *column = &board->layout.columns[c];
    for (int i = column->first; i < column->first + column->n; i++) {
      const ChartPen pen = pen_for (board, cr, view, c, i);
      chart_draw_still (&board->charts[i], &pen);
    }
    const ChartPen pen = pen_for (board, cr, view, c, column->first);
    board_draw_travel_caption (column, &board->charts[column->first], &pen);
  }
}

static void
draw_moving (Board *board, cairo_t *cr, const BoardView *view)
{
  for (int c = 0; c < board->layout.n_columns; c++) {
    const BoardColumn *column = &board->layout.columns[c];
    for (int i = column->first; i < column->first + column->n; i++) {
      const ChartPen pen = pen_for (board, cr, view, c, i);
      chart_draw_moving (&board->charts[i], &pen);
    }
    const ChartPen pen = pen_for (board, cr, view, c, column->first);
    board_draw_travel_axis (column, &board->charts[column->first], &pen);
  }
}

static void
renew_still (Board *board, const BoardView *view)
{
  const double scale = view->pixel_scale;

  g_clear_pointer (&board->still, cairo_surface_destroy);
  board->still =
      cairo_image_surface_create (CAIRO_FORMAT_ARGB32, (int) ceil (board->width * scale),
                                  (int) ceil (board->height * scale));
  cairo_surface_set_device_scale (board->still, scale, scale);

  cairo_t *cr = cairo_create (board->still);
  theme_paint_ground (cr, &board->theme, board->width, board->height);
  draw_still (board, cr, view);
  cairo_destroy (cr);
}

/* What is opaque need not be blended. */
static void
show_still (Board *board, cairo_t *cr, const BoardView *view)
{
  if (board->still == NULL || board->is_stale)
    renew_still (board, view);
  cairo_set_source_surface (cr, board->still, 0.0, 0.0);
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_NEAREST);
  if (board->theme.ground.alpha >= 1.0)
    cairo_set_operator (cr, CAIRO_OPERATOR_SOURCE);
  cairo_rectangle (cr, 0.0, 0.0, board->width, board->height);
  cairo_fill (cr);
  cairo_set_operator (cr, CAIRO_OPERATOR_OVER);
  board->is_stale = false;
}

void
board_draw (Board *board, cairo_t *cr, const BoardView *view, double width, double height)
{
  g_return_if_fail (view->study != NULL && width > 0.0 && height > 0.0);

  cairo_save (cr);
  prepare (board, view, width, height);
  if (view->pixel_scale > 0.0 && view->title == NULL)
    show_still (board, cr, view);
  else {
    theme_paint_ground (cr, &board->theme, width, height);
    draw_still (board, cr, view);
  }
  draw_moving (board, cr, view);
  if (view->title != NULL)
    title_block_draw (board->texts, cr, &board->theme, view->title, BOARD_MARGIN,
                      board->layout.bottom + BOARD_MARGIN, width - 2.0 * BOARD_MARGIN,
                      view->study);
  cairo_restore (cr);
}

static bool
is_inside (Frame frame, double x, double y)
{
  return x >= frame.x && x <= frame.x + frame.width && y >= frame.y &&
         y <= frame.y + frame.height;
}

BoardHit
board_hit (const Board *board, double x, double y)
{
  BoardHit hit = { .quantity = -1 };

  for (int i = 0; i < board->n_charts; i++) {
    const Chart *chart = &board->charts[i];
    const bool is_column = x >= chart->slot.x && x <= chart->slot.x + chart->slot.width;
    if (is_column || i == 0)
      hit.travel = CLAMP (axis_to_data (chart->x, x), board->range.from, board->range.to);
    if (!is_inside (chart->slot, x, y))
      continue;
    hit.quantity = (int) chart->quantity;
    hit.on_plot = is_inside (chart->plot, x, y);
    break;
  }
  return hit;
}

bool
board_frame (const Board *board,
             Quantity quantity,
             double *x,
             double *y,
             double *width,
             double *height)
{
  for (int i = 0; i < board->n_charts; i++)
    if (board->charts[i].quantity == quantity) {
      const Frame plot = board->charts[i].plot;
      *x = plot.x;
      *y = plot.y;
      *width = plot.width;
      *height = plot.height;
      return true;
    }
  return false;
}
