/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The question "what does this corner stand on?": against wheel travel, the wheel's load
 * as the stack of what carries it, with the weight it meets and what happens on the way;
 * the wheel rate; and the numbers that answer, with sentences and the caution below.
 *
 * The setup in hand is drawn as areas, every other one shown as a line. Where nothing
 * shown has springs, a page says what to enter. */

#pragma once

#include "drawing/chart/title-block.h"
#include "model/spring/spring-study.h"

typedef struct {
  const SpringStudy *springs; /* solved, and its study with it */
  Theme theme;
  int lit;                     /* the SpringElement that is lit up, or -1 */
  bool show_cursor;            /* at the study's travel, with the values there */
  bool hold_axes;              /* axes may grow but not shrink: in a drag */
  bool caution_stands_beside;  /* who shows this says it himself */
  const char *const *verdicts; /* translated sentences, closed by NULL; or NULL */
  const TitleBlock *title;     /* for exports; NULL in a window */
} SpringsView;

typedef struct SpringsBoard SpringsBoard;
SpringsBoard *springs_board_new (void);
void springs_board_free (SpringsBoard *board);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SpringsBoard, springs_board_free)

void springs_draw (SpringsBoard *board,
                   cairo_t *cr,
                   const SpringsView *view,
                   double width,
                   double height);

/* The height from which on everything finds room at that width. */
double springs_height (SpringsBoard *board, const SpringsView *view, double width);

/* What lies under a pixel of the last drawing. */
typedef struct {
  bool on_plot;  /* inside the axes of a chart */
  double travel; /* under the pixel, held inside the axis, mm */
  int setup;     /* the one whose curve is there, or -1 */
  int element;   /* the SpringElement whose area is there, or -1 */
} SpringsHit;
SpringsHit springs_hit (const SpringsBoard *board, double x, double y);

typedef enum {
  SPRINGS_LOAD,
  SPRINGS_RATE,
  N_SPRINGS_CHARTS
} SpringsChart;

/* The frame of a chart's plot in the last drawing; false when it was not drawn. */
bool springs_frame (const SpringsBoard *board,
                    SpringsChart chart,
                    double *x,
                    double *y,
                    double *width,
                    double *height);
