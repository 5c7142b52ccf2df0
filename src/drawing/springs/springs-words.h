/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What stands beside the charts of the springs: the numbers, the sentences, the caution,
 * and the page where nothing is entered yet. */

#pragma once

#include "drawing/chart/chart.h"
#include "drawing/springs/springs-board.h"

/* What they share with the view they are for. */
typedef struct {
  TextCache *texts;
  cairo_t *cr; /* NULL to measure only */
  const SpringsView *view;
} SpringsWords;

/* In as many blocks of rows as the width holds, the first ones where @room is short; 0
 * where it is too short for any. */
double spring_numbers_height (const SpringsWords *words, double width, double room);
void spring_numbers_draw (const SpringsWords *words, Frame frame);

/* As many of the sentences as @room is high; returns what they take. */
double spring_verdicts_draw (
    const SpringsWords *words, double x, double y, double width, double room);

/* Returns its height. */
double spring_caution_draw (const SpringsWords *words, double x, double y, double width);

double spring_nothing_height (const SpringsWords *words, double width);
void spring_nothing_draw (const SpringsWords *words, Frame frame);
