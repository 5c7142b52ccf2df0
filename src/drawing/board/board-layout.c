/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/board/board-layout.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* The share of the width that the large charts take beside one column of small ones, and
 * beside two. */
#define LARGE_SHARE 0.6
#define LARGE_SHARE_OF_THREE 0.44

/* More small charts than this stand in two columns where each is wide enough. */
#define MOST_IN_A_COLUMN 6
#define LEAST_COLUMN 200.0

/* In sizes of the text: a column of small charts that would be narrower joins the large
 * ones; a plot that would be lower is no use, and one that needs no neighbour's room is
 * higher. */
#define LEAST_SMALL 9.0
#define LEAST_PLOT 2.0
#define LEAST_PLOT_JOINED 5.0

#define COLUMN_GAP 18.0
#define CAPTION_SIZE 160

static BoardColumn
column_at (double x, double width, int first, int n)
{
  return (BoardColumn){ .x = x, .width = width, .first = first, .n = n };
}

static void
split_width (
    BoardLayout *layout, const Theme *theme, int n_large, int n_small, double width)
{
  const double room = width - 2.0 * BOARD_MARGIN;
  const double third = (room * (1.0 - LARGE_SHARE_OF_THREE) - 2.0 * COLUMN_GAP) / 2.0;
  const bool is_split = n_small > MOST_IN_A_COLUMN && third >= LEAST_COLUMN;
  BoardColumn *columns = layout->columns;
  double x = BOARD_MARGIN;

  if (n_large > 0 &&
      (1.0 - LARGE_SHARE) * room - COLUMN_GAP < LEAST_SMALL * theme->text) {
    columns[layout->n_columns++] = column_at (x, room, 0, n_large + n_small);
    return;
  }
  if (n_large > 0) {
    const double share = n_small == 0 ? 1.0
                         : is_split   ? LARGE_SHARE_OF_THREE
                                      : LARGE_SHARE;
    columns[layout->n_columns++] = column_at (x, round (share * room), 0, n_large);
    x += round (share * room) + COLUMN_GAP;
  }
  if (n_small == 0)
    return;

  const double rest = width - BOARD_MARGIN - x;
  const int n_left = is_split ? (n_small + 1) / 2 : n_small;
  const double each = is_split ? floor ((rest - COLUMN_GAP) / 2.0) : rest;
  columns[layout->n_columns++] = column_at (x, each, n_large, n_left);
  if (is_split)
    columns[layout->n_columns++] =
        column_at (x + each + COLUMN_GAP, each, n_large + n_left, n_small - n_left);
}

static double
top_margin (void)
{
  return round (0.75 * BOARD_MARGIN);
}

static double
chart_gap (const Theme *theme)
{
  return round (0.9 * theme->text);
}

/* The travel axis and what is below it. */
static double
foot_height (const Theme *theme)
{
  return round (3.7 * theme->small_text) + 0.5 * BOARD_MARGIN;
}

/* Charts of one column are equally high, and the last plot of every column ends at the
 * same height. */
static void
split_height (BoardColumn *column, const Theme *theme, double height)
{
  const double gap = chart_gap (theme), top = top_margin ();

  column->axis_y = floor (height - foot_height (theme));
  column->title_height = chart_title_height (theme);
  column->plot_height = fmax (8.0, floor ((column->axis_y - top + gap) / column->n) -
                                       gap - column->title_height);
  /* the first plot starts at the top to the pixel and the last ends at the foot: what is
   * left over goes into the gaps */
  column->pitch =
      column->n == 1
          ? 0.0
          : (column->axis_y - column->plot_height - top - column->title_height) /
                (column->n - 1);
}

BoardLayout
board_layout (const BoardChoice *choice, const Theme *theme, double width, double height)
{
  BoardLayout layout = { .bottom = height };

  split_width (&layout, theme, (int) choice->n_large, (int) choice->n_small, width);
  for (int c = 0; c < layout.n_columns; c++)
    split_height (&layout.columns[c], theme, height);
  return layout;
}

double
board_height (const BoardChoice *choice, const Theme *theme, double width)
{
  BoardLayout layout = { 0 };
  int most = 0;

  split_width (&layout, theme, (int) choice->n_large, (int) choice->n_small, width);
  for (int c = 0; c < layout.n_columns; c++)
    most = MAX (most, layout.columns[c].n);

  const bool is_joined = choice->n_small > 0 && layout.n_columns == 1;
  const double plot = (is_joined ? LEAST_PLOT_JOINED : LEAST_PLOT) * theme->text;
  const double each = chart_title_height (theme) + plot + chart_gap (theme);
  return ceil (top_margin () + most * each + foot_height (theme));
}

void
board_layout_chart (
    const BoardColumn *column, int i, double left, double right, Frame *slot, Frame *plot)
{
  const double foot = round (column->axis_y - (column->n - 1 - i) * column->pitch);

  *plot = (Frame){ column->x + left, foot - column->plot_height,
                   fmax (8.0, column->width - left - right), column->plot_height };
  /* a little air round what is lit up; the slots of neighbours do not meet */
  const double air = 4.0;
  *slot = (Frame){ column->x - air, plot->y - column->title_height,
                   column->width + 2.0 * air, plot->height + column->title_height + air };
}

static double
label_y (const BoardColumn *column, const Theme *theme)
{
  return column->axis_y + round (1.75 * theme->small_text);
}

/* What is left of the travel where the setup in hand stands. */
typedef struct {
  char droop[64], bump[64];
} TravelLeft;

static TravelLeft
travel_left (SweepRange range, double standing)
{
  TravelLeft left;
  char number[48];

  unit_format_whole (UNIT_LENGTH, fmax (standing - range.from, 0.0), 0, FALSE, number,
                     sizeof number);
  g_snprintf (left.droop, sizeof left.droop, _ ("◂ %s droop to go"), number);
  unit_format_whole (UNIT_LENGTH, fmax (range.to - standing, 0.0), 0, FALSE, number,
                     sizeof number);
  g_snprintf (left.bump, sizeof left.bump, _ ("%s bump to go ▸"), number);
  return left;
}

/* "wheel travel, mm", with the two ways where @with_ways. */
static void
caption_text (bool with_ways, char *text, size_t size)
{
  g_snprintf (text, size,
              with_ways ? _ ("wheel travel, %s · droop − | bump +")
                        : _ ("wheel travel, %s"),
              unit_symbol (UNIT_LENGTH));
}

static double
caption_width (const ChartPen *pen, bool with_ways)
{
  char text[CAPTION_SIZE];

  caption_text (with_ways, text, sizeof text);
  return text_measure (pen->texts, chart_small_style (pen->theme), text).width;
}

/* Whether caption and travel left find room side by side, wherever the setup stands. */
static bool
has_room_for_left (const BoardColumn *column, const Chart *chart, const ChartPen *pen)
{
  const TextStyle style = chart_small_style (pen->theme);
  const SweepRange range = pen->study->range;
  const TravelLeft droop = travel_left (range, range.to),
                   bump = travel_left (range, range.from);

  return pen->says_way_left && column->first == 0 &&
         2.0 * fmax (text_measure (pen->texts, style, droop.droop).width,
                     text_measure (pen->texts, style, bump.bump).width) +
                 caption_width (pen, false) + 2.0 * style.size <=
             chart->plot.width;
}

static bool
has_room_for_ways (const BoardColumn *column, const Chart *chart, const ChartPen *pen)
{
  return !has_room_for_left (column, chart, pen) &&
         caption_width (pen, true) <= chart->plot.width;
}

static double
caption_y (const BoardColumn *column, const Theme *theme)
{
  return label_y (column, theme) + round (1.4 * theme->small_text);
}

void
board_draw_travel_caption (const BoardColumn *column,
                           const Chart *chart,
                           const ChartPen *pen)
{
  const bool with_ways = has_room_for_ways (column, chart, pen);
  /* under the middle of the plot, unless it would run out of its column there */
  const double half = caption_width (pen, with_ways) / 2.0,
               most = column->x + column->width - half;
  const double middle = fmin (chart->plot.x + chart->plot.width / 2.0, most);
  char text[CAPTION_SIZE];

  caption_text (with_ways, text, sizeof text);
  theme_use (pen->cr, pen->theme->soft_ink);
  text_draw (pen->texts, pen->cr, chart_small_style (pen->theme), text, middle,
             caption_y (column, pen->theme), (TextAnchor){ 0.5, TEXT_BASELINE });
}

static void
draw_travel_left (const BoardColumn *column, const Chart *chart, const ChartPen *pen)
{
  const TextStyle style = chart_small_style (pen->theme);
  const TravelLeft left =
      travel_left (pen->study->range, study_in_hand (pen->study)->lowering);
  const double y = caption_y (column, pen->theme);

  if (!has_room_for_left (column, chart, pen))
    return;
  theme_use (pen->cr, pen->theme->ink);
  text_draw (pen->texts, pen->cr, style, left.droop, chart->plot.x, y,
             (TextAnchor){ 0.0, TEXT_BASELINE });
  text_draw (pen->texts, pen->cr, style, left.bump, chart->plot.x + chart->plot.width, y,
             (TextAnchor){ 1.0, TEXT_BASELINE });
}

/* The labels of the axis but those that would touch @taken. */
static void
draw_travel_labels (const BoardColumn *column,
                    const Chart *chart,
                    const ChartPen *pen,
                    Frame taken)
{
  const TextStyle style = chart_small_style (pen->theme);
  const double air = 3.0;
  int first, n = axis_range_ticks (pen->travel, &first);
  char text[32];

  theme_use (pen->cr, pen->theme->soft_ink);
  for (int i = first; i < first + n; i++) {
    const double x = axis_to_pixel (chart->x, axis_tick (pen->travel, i));
    axis_tick_text (pen->travel, i, text, sizeof text);
    const double half = text_measure (pen->texts, style, text).width / 2.0 + air;
    if (x + half < taken.x || x - half > taken.x + taken.width)
      text_draw (pen->texts, pen->cr, style, text, x, label_y (column, pen->theme),
                 (TextAnchor){ 0.5, TEXT_BASELINE });
  }
}

static void
draw_standing_mark (const BoardColumn *column, const Chart *chart, const ChartPen *pen)
{
  const double standing = study_in_hand (pen->study)->lowering, half = 3.5;
  const double x = axis_to_pixel (chart->x, standing), y = column->axis_y + 1.0;
  cairo_t *cr = pen->cr;

  if (standing < chart->x.low || standing > chart->x.high)
    return;
  cairo_move_to (cr, x, y);
  cairo_line_to (cr, x + half, y + 1.5 * half);
  cairo_line_to (cr, x - half, y + 1.5 * half);
  cairo_close_path (cr);
  theme_use (cr, chart_curve_style (chart, &chart->hand, pen->theme).colour);
  cairo_fill (cr);
}

static Frame
draw_travel_tag (const BoardColumn *column, const Chart *chart, const ChartPen *pen)
{
  const TextStyle style = { pen->theme->font, pen->theme->small_text, TEXT_BOLD };
  const double travel = pen->study->travel, pad = 4.0;
  const double y = label_y (column, pen->theme);
  const Frame slot = chart->slot;
  char text[48];

  unit_format_whole (UNIT_LENGTH, travel, 1, TRUE, text, sizeof text);
  const TextSize size = text_measure (pen->texts, style, text);
  const double half = size.width / 2.0 + pad;
  const double x =
      CLAMP (axis_to_pixel (chart->x, travel), slot.x + half, slot.x + slot.width - half);
  const Frame tag = { round (x - half), round (y - size.baseline) - 1.0,
                      round (2.0 * half), round (size.height) + 2.0 };

  theme_use (pen->cr, pen->theme->accent);
  cairo_rectangle (pen->cr, tag.x, tag.y, tag.width, tag.height);
  cairo_fill (pen->cr);
  theme_use (pen->cr, colour_with_alpha (pen->theme->ground, 1.0));
  text_draw (pen->texts, pen->cr, style, text, tag.x + tag.width / 2.0, y,
             (TextAnchor){ 0.5, TEXT_BASELINE });
  return tag;
}

void
board_draw_travel_axis (const BoardColumn *column,
                        const Chart *chart,
                        const ChartPen *pen)
{
  Frame tag = { -1e6, 0.0, 0.0, 0.0 };

  draw_standing_mark (column, chart, pen);
  draw_travel_left (column, chart, pen);
  if (pen->show_cursor)
    tag = draw_travel_tag (column, chart, pen);
  draw_travel_labels (column, chart, pen, tag);
}
