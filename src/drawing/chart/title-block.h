/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The block that says what a drawing shows and whose numbers they are, and the caution
 * that leaves the program with every export. */

#pragma once

#include "drawing/pen/text.h"
#include "model/study/study.h"

typedef struct {
  const char *car;   /* its name */
  const char *setup; /* its name */
  MountOffset mount; /* mm */
  double lowering;   /* mm */
  ToeMode toe;
  const char *date;    /* or NULL: left out, for output that repeats to the byte */
  bool omits_measured; /* the drawing has no curve of the corner as measured */
} TitleBlock;

TitleBlock title_block_for (const Car *car, const CarSetup *setup, const char *date);

/* "mount 15.0 mm inboard, 10.0 mm rearward, 0.0 mm up · lowered 0.0 mm · toe as moved" */
char *title_block_adjustment (const TitleBlock *title);

/* Which line is which setup's, in as many lines as @width asks for; of a single curve
 * nothing. */
double legend_height (TextCache *texts,
                      const Theme *theme,
                      const Study *study,
                      bool omits_measured,
                      double width);
/* (x, y) is its top left. */
void legend_draw (TextCache *texts,
                  cairo_t *cr,
                  const Theme *theme,
                  const Study *study,
                  bool omits_measured,
                  double x,
                  double y,
                  double width);

/* Draws the block as a strip @width wide with (x, y) at its top left; where the curves of
 * @study are more than one, it says which is which. */
double title_block_height (TextCache *texts,
                           const Theme *theme,
                           const TitleBlock *title,
                           const Study *study,
                           double width);
void title_block_draw (TextCache *texts,
                       cairo_t *cr,
                       const Theme *theme,
                       const TitleBlock *title,
                       double x,
                       double y,
                       double width,
                       const Study *study);

/* Translated: the cautions in one or two sentences. */
const char *caution_text (void);
