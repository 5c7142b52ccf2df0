/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/card/fitting-card-pen.h"

#include <math.h>

#define LINE_HEIGHT 1.32 /* of the type's size */
/* Of its size, before a text is cut. */
#define SMALLEST_TYPE 0.78
#define SMALLEST_LARGE 0.45

#define CHECK_BAR_MM 50.0
#define POINTS_PER_MM (72.0 / 25.4)

TextStyle
fitting_style (const FittingPen *pen, FittingStyle style)
{
  const Theme *theme = &pen->theme;

  switch (style) {
  case FITTING_SMALL:
    return (TextStyle){ theme->font, theme->small_text, TEXT_PLAIN };
  case FITTING_TEXT:
    return (TextStyle){ theme->font, theme->text, TEXT_PLAIN };
  case FITTING_TEXT_BOLD:
    return (TextStyle){ theme->font, theme->text, TEXT_BOLD };
  case FITTING_HEADING:
    return (TextStyle){ theme->font, 1.3 * theme->text, TEXT_BOLD };
  case FITTING_LARGE:
    return (TextStyle){ theme->font, 2.2 * theme->text, TEXT_BOLD };
  }
  g_return_val_if_reached ((TextStyle){ 0 });
}

double
fitting_line_height (const FittingPen *pen, FittingStyle style)
{
  return round (LINE_HEIGHT * fitting_style (pen, style).size);
}

void
fitting_ink (const FittingPen *pen, Colour colour)
{
  if (pen->cr != NULL)
    theme_use (pen->cr, colour);
}

double
fitting_text_width (const FittingPen *pen, FittingStyle style, const char *text)
{
  return text_measure (pen->texts, fitting_style (pen, style), text).width;
}

double
fitting_write (const FittingPen *pen,
               FittingStyle style,
               const char *text,
               double x,
               double baseline,
               double width,
               FittingAlign align)
{
  TextStyle type = fitting_style (pen, style);
  double wide = text_measure (pen->texts, type, text).width;

  if (wide > width) {
    type.size *= fmax (0.99 * width / wide,
                       style == FITTING_LARGE ? SMALLEST_LARGE : SMALLEST_TYPE);
    wide = text_measure (pen->texts, type, text).width;
  }
  if (pen->cr == NULL)
    return fmin (wide, width);
  if (wide > width) {
    text_draw_within (pen->texts, pen->cr, type, text, x, baseline, width);
    return width;
  }
  x += align == FITTING_RIGHT    ? width - wide
       : align == FITTING_CENTRE ? (width - wide) / 2
                                 : 0;
  text_draw (pen->texts, pen->cr, type, text, x, baseline,
             (TextAnchor){ 0.0, TEXT_BASELINE });
  return wide;
}

double
fitting_paragraph (const FittingPen *pen,
                   FittingStyle style,
                   const char *text,
                   double x,
                   double y,
                   double width)
{
  const TextStyle type = fitting_style (pen, style);

  if (pen->cr != NULL)
    text_draw_wrapped (pen->texts, pen->cr, type, text, x, y, width);
  return text_measure_wrapped (pen->texts, type, text, width).height;
}

void
fitting_rule (const FittingPen *pen, double x, double y, double width, double pen_width)
{
  if (pen->cr == NULL)
    return;
  theme_line (pen->cr, LINE_FULL, pen_width);
  cairo_move_to (pen->cr, x, y);
  cairo_line_to (pen->cr, x + width, y);
  cairo_stroke (pen->cr);
}

double
fitting_check_bar_length (void)
{
  return CHECK_BAR_MM * POINTS_PER_MM;
}

void
fitting_check_bar (const FittingPen *pen, double x, double y)
{
  const double length = fitting_check_bar_length ();
  cairo_t *cr = pen->cr;

  if (cr == NULL)
    return;
  theme_use (cr, pen->theme.ink);
  theme_line (cr, LINE_FULL, pen->theme.line);
  cairo_move_to (cr, x, y);
  cairo_line_to (cr, x + length, y);
  cairo_stroke (cr);
  theme_line (cr, LINE_FULL, pen->theme.thin);
  for (int i = 0; i <= 5; i++) {
    const double at = x + length * i / 5.0, half = i % 5 == 0 ? 4.0 : 2.5;

    cairo_move_to (cr, at, y - half);
    cairo_line_to (cr, at, y + half);
  }
  cairo_stroke (cr);
}

double
fitting_tick_size (const FittingPen *pen)
{
  return 1.05 * pen->theme.text;
}

void
fitting_tick_box (const FittingPen *pen, double x, double baseline)
{
  const double size = fitting_tick_size (pen);

  if (pen->cr == NULL)
    return;
  theme_use (pen->cr, pen->theme.ink);
  theme_line (pen->cr, LINE_FULL, pen->theme.thin);
  cairo_rectangle (pen->cr, x, baseline - 0.85 * size, size, size);
  cairo_stroke (pen->cr);
}

void
fitting_blank (const FittingPen *pen, double x, double baseline, double width)
{
  if (pen->cr == NULL)
    return;
  theme_use (pen->cr, pen->theme.soft_ink);
  fitting_rule (pen, x, baseline + 0.15 * pen->theme.text, width, 0.7 * pen->theme.thin);
}
