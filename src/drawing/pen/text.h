/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Short texts on a drawing, laid out once and kept: a drag that redraws the same captions
 * shapes nothing. */

#pragma once

#include "drawing/pen/theme.h"

#include <pango/pangocairo.h>

typedef enum {
  TEXT_PLAIN,
  TEXT_BOLD
} TextWeight;

typedef struct {
  const char *font;
  double size;
  TextWeight weight;
} TextStyle;

/* Where (x, y) lies in the text: fractions of its width and height, (0, 0) top left.
 * y = TEXT_BASELINE puts the baseline there instead. */
typedef struct {
  double x, y;
} TextAnchor;
#define TEXT_BASELINE (-1.0)

typedef struct {
  double width, height, baseline;
} TextSize;

typedef struct TextCache TextCache;
TextCache *text_cache_new (void);
void text_cache_free (TextCache *cache);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TextCache, text_cache_free)

TextSize text_measure (TextCache *cache, TextStyle style, const char *text);
/* In the current source; leaves no current point. */
TextSize text_draw (TextCache *cache,
                    cairo_t *cr,
                    TextStyle style,
                    const char *text,
                    double x,
                    double y,
                    TextAnchor anchor);

/* One line from (x, y) on its baseline that ends in "…" where @width is not enough. */
TextSize text_draw_within (TextCache *cache,
                           cairo_t *cr,
                           TextStyle style,
                           const char *text,
                           double x,
                           double y,
                           double width);

/* Wrapped between words to @width, a word that is longer within itself; (x, y) is the top
 * left. */
TextSize
text_measure_wrapped (TextCache *cache, TextStyle style, const char *text, double width);
TextSize text_draw_wrapped (TextCache *cache,
                            cairo_t *cr,
                            TextStyle style,
                            const char *text,
                            double x,
                            double y,
                            double width);
