/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The board: curves of one study against wheel travel, in two columns of charts that
 * share the travel axis and the cursor. Large charts stand left, small ones right.
 *
 * The board keeps what does not change between frames (text layouts, axes, grid); drawing
 * the same charts again with another study allocates nothing. */

#pragma once

#include "drawing/chart/title-block.h"
#include "drawing/pen/theme.h"
#include "model/study/study.h"

#define BOARD_MOST_LARGE 4
#define BOARD_MOST_SMALL 12

typedef struct {
  Quantity large[BOARD_MOST_LARGE], small[BOARD_MOST_SMALL];
  unsigned n_large, n_small;
} BoardChoice;

/* Camber, caster, roll centre; toe-in, SAI, scrub radius, trail, half-track change. */
BoardChoice board_choice_default (void);

typedef struct {
  const Study *study;
  BoardChoice choice;
  Theme theme;
  int lit;                 /* the Quantity that is lit up, or -1 */
  bool show_cursor;        /* at study->travel, with the values there */
  bool hold_axes;          /* axes may grow but not shrink: while something is dragged */
  const TitleBlock *title; /* for exports: title block and caution; NULL in a window */
  /* Device pixels per unit where the drawing ends up as pixels: what stands still is then
   * kept as an image. 0 for files and paper: everything stays lines and letters. */
  double pixel_scale;
} BoardView;

typedef struct Board Board;
Board *board_new (void);
void board_free (Board *board);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Board, board_free)

/* The least in which each plot of that width is of use. Where the text is so large that a
 * column of small charts would have no width, all stand in one. */
double board_height (const BoardChoice *choice, const Theme *theme, double width);

void board_draw (
    Board *board, cairo_t *cr, const BoardView *view, double width, double height);

/* What lies under a pixel of the last drawing. */
typedef struct {
  int quantity;  /* of the chart, or -1 */
  double travel; /* under the pixel, held inside the axis */
  bool on_plot;  /* inside the axes' frame */
} BoardHit;
BoardHit board_hit (const Board *board, double x, double y);

/* The frame of a quantity's plot in the last drawing; false when it was not drawn. */
bool board_frame (const Board *board,
                  Quantity quantity,
                  double *x,
                  double *y,
                  double *width,
                  double *height);
