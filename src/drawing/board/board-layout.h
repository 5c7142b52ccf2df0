/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where the board's columns, charts and travel axes stand. */

#pragma once

#include "drawing/board/board.h"
#include "drawing/chart/chart.h"

#define BOARD_MOST_CHARTS (BOARD_MOST_LARGE + BOARD_MOST_SMALL)
#define BOARD_MOST_COLUMNS 3
#define BOARD_MARGIN 12.0

typedef struct {
  double x, width;
  double title_height, plot_height, pitch; /* from one chart to the next */
  double axis_y;                           /* of the travel axis: the last plot's foot */
  int first, n;                            /* of the board's charts */
} BoardColumn;

typedef struct {
  BoardColumn columns[BOARD_MOST_COLUMNS];
  int n_columns;
  double bottom;
} BoardLayout;

BoardLayout
board_layout (const BoardChoice *choice, const Theme *theme, double width, double height);

/* The place of chart @i of a column that leaves @left for its labels, and @right for
 * names.
 */
void board_layout_chart (const BoardColumn *column,
                         int i,
                         double left,
                         double right,
                         Frame *slot,
                         Frame *plot);

/* Below a column, what stands still and what moves with the cursor: the caption; the
 * labels of the travel axis, where the setup stands and what travel it has left there,
 * the travel in hand. @chart is any of the column. */
void board_draw_travel_caption (const BoardColumn *column,
                                const Chart *chart,
                                const ChartPen *pen);
void board_draw_travel_axis (const BoardColumn *column,
                             const Chart *chart,
                             const ChartPen *pen);
