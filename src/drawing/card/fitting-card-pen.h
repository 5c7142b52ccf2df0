/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the fitting card and the report: texts that keep to the room they are given.
 * Every function draws only where the pen has a context, and says what room it takes
 * either way. */

#pragma once

#include "drawing/pen/text.h"

typedef struct {
  TextCache *texts;
  cairo_t *cr; /* or NULL, to measure */
  Theme theme; /* sized for this page */
} FittingPen;

typedef enum {
  FITTING_LEFT,
  FITTING_CENTRE,
  FITTING_RIGHT
} FittingAlign;

typedef enum {
  FITTING_SMALL, /* captions, sign words, cautions */
  FITTING_TEXT,
  FITTING_TEXT_BOLD,
  FITTING_HEADING, /* bold */
  FITTING_LARGE    /* bold: the setting */
} FittingStyle;

TextStyle fitting_style (const FittingPen *pen, FittingStyle style);
/* From one baseline to the next, in whole points. */
double fitting_line_height (const FittingPen *pen, FittingStyle style);

void fitting_ink (const FittingPen *pen, Colour colour);

/* One line on its baseline, @width at most: made a little smaller where it is too long,
 * then cut with "…". Returns its width. */
double fitting_write (const FittingPen *pen,
                      FittingStyle style,
                      const char *text,
                      double x,
                      double baseline,
                      double width,
                      FittingAlign align);
double fitting_text_width (const FittingPen *pen, FittingStyle style, const char *text);

/* Wrapped, its top at @y. Returns its height. */
double fitting_paragraph (const FittingPen *pen,
                          FittingStyle style,
                          const char *text,
                          double x,
                          double y,
                          double width);

void
fitting_rule (const FittingPen *pen, double x, double y, double width, double pen_width);
/* Against which a printer is checked: 50 mm on paper, with its middle at @y. */
void fitting_check_bar (const FittingPen *pen, double x, double y);
double fitting_check_bar_length (void);
/* To be ticked or written in by hand: a box, a line to write on. */
void fitting_tick_box (const FittingPen *pen, double x, double baseline);
double fitting_tick_size (const FittingPen *pen);
void fitting_blank (const FittingPen *pen, double x, double baseline, double width);
