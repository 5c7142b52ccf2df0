/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/title-block.h"

#include "drawing/axis.h"

#include <glib/gi18n-lib.h>
#include <math.h>

TitleBlock
title_block_for (const Car *car, const CarSetup *setup, const char *date)
{
  return (TitleBlock){ .car = car->name,
                       .setup = setup->name,
                       .mount = setup->mount,
                       .lowering = setup->lowering_mm,
                       .toe = setup->toe,
                       .date = date };
}

const char *
caution_text (void)
{
  return _ (
      "Estimates from the points entered: check on an alignment rack. Support the car "
      "on stands; springs and torsion bars under preload store dangerous energy. Check "
      "tyre, brake and steering clearances on the car through full travel and lock. "
      "Changes to ride height, track and mounts may need approval: local rules and "
      "licensed practice come first.");
}

/* "15.0 mm inboard": @positive or @negative with the length in it. */
static char *
directed (double value, const char *positive, const char *negative)
{
  char number[32];

  axis_format (fabs (value), 1, number, sizeof number);
  return g_strdup_printf (round (value * 10.0) < 0.0 ? negative : positive, number);
}

static char *
lowering_words (double lowering)
{
  char number[32];

  axis_format (fabs (lowering), 1, number, sizeof number);
  return g_strdup_printf (round (lowering * 10.0) < 0.0 ? _ ("raised %s mm")
                                                        : _ ("lowered %s mm"),
                          number);
}

char *
title_block_adjustment (const TitleBlock *title)
{
  g_autofree char *sideways =
      directed (title->mount.inboard, C_ ("mount", "%s mm inboard"),
                C_ ("mount", "%s mm outboard"));
  g_autofree char *lengthways =
      directed (title->mount.rearward, C_ ("mount", "%s mm rearward"),
                C_ ("mount", "%s mm forward"));
  g_autofree char *upward =
      directed (title->mount.up, C_ ("mount", "%s mm up"), C_ ("mount", "%s mm down"));
  g_autofree char *height = lowering_words (title->lowering);
  const char *toe =
      title->toe == TOE_RESET ? _ ("toe reset by the tie rod") : _ ("toe as moved");

  return g_strdup_printf (_ ("mount %s, %s, %s · %s · %s"), sideways, lengthways, upward,
                          height, toe);
}

static TextStyle
style_of (const Theme *theme, TextWeight weight)
{
  return (TextStyle){ theme->font, weight == TEXT_BOLD ? theme->text : theme->small_text,
                      weight };
}

static double
line_height (const Theme *theme)
{
  return round (1.5 * theme->text);
}

double
title_block_height (TextCache *texts,
                    const Theme *theme,
                    const TitleBlock *title,
                    double width)
{
  const TextStyle small = style_of (theme, TEXT_PLAIN);
  g_autofree char *adjustment = title_block_adjustment (title);

  return 2.0 * line_height (theme) +
         text_measure_wrapped (texts, small, adjustment, width).height +
         text_measure_wrapped (texts, small, caution_text (), width).height;
}

typedef struct {
  TextCache *texts;
  cairo_t *cr;
  const Theme *theme;
} Pen;

/* Draws a name that may take the line up to @right; returns where it ends. */
static double
draw_name (
    const Pen *pen, TextWeight weight, const char *name, double x, double y, double right)
{
  if (name[0] == '\0' || right - x < 2.0 * pen->theme->text)
    return x;
  theme_use (pen->cr, pen->theme->ink);
  return x + text_draw_within (pen->texts, pen->cr, style_of (pen->theme, weight), name,
                               x, y, right - x)
                 .width;
}

/* A stroke of a board's curves; returns where its name begins. */
static double
draw_stroke (const Pen *pen, LineKind kind, double x, double y)
{
  const Theme *theme = pen->theme;
  const bool is_setup = kind == LINE_FULL;
  const double length = round (2.6 * theme->text);
  const double middle = floor (y - 0.35 * theme->small_text) + 0.5;

  theme_use (pen->cr, is_setup ? theme->accent : theme->reference);
  theme_line (pen->cr, kind, is_setup ? theme->line : theme->thin);
  cairo_move_to (pen->cr, x, middle);
  cairo_line_to (pen->cr, x + length, middle);
  cairo_stroke (pen->cr);
  return x + length + 6.0;
}

/* The car, its setup with the legend, and from the right where the drawing comes from. */
static void
draw_names (const Pen *pen,
            const TitleBlock *title,
            double x,
            double right,
            double y,
            bool has_legend)
{
  const Theme *theme = pen->theme;
  const TextStyle small = style_of (theme, TEXT_PLAIN);
  const double gap = round (1.5 * theme->text);
  const char *measured = _ ("as measured");
  const double for_measured =
      has_legend ? text_measure (pen->texts, small, measured).width + 4.5 * theme->text
                 : 0.0;
  g_autofree char *source = title->date != NULL
                                ? g_strdup_printf ("%s · Strutwright", title->date)
                                : g_strdup ("Strutwright");

  theme_use (pen->cr, theme->soft_ink);
  right -= text_draw (pen->texts, pen->cr, small, source, right, y,
                      (TextAnchor){ 1.0, TEXT_BASELINE })
               .width +
           gap;
  x = draw_name (pen, TEXT_BOLD, title->car, x, y, x + 0.6 * (right - for_measured - x)) +
      gap;
  if (has_legend)
    x = draw_stroke (pen, LINE_FULL, x, y);
  x = draw_name (pen, TEXT_PLAIN, title->setup, x, y, right - for_measured) + gap;
  if (has_legend)
    draw_name (pen, TEXT_PLAIN, measured, draw_stroke (pen, LINE_DASHED, x, y), y, right);
}

void
title_block_draw (TextCache *texts,
                  cairo_t *cr,
                  const Theme *theme,
                  const TitleBlock *title,
                  double x,
                  double y,
                  double width,
                  bool has_legend)
{
  const Pen pen = { texts, cr, theme };
  const TextStyle small = style_of (theme, TEXT_PLAIN);
  const double line = line_height (theme);
  g_autofree char *adjustment = title_block_adjustment (title);

  theme_use (cr, theme->body);
  theme_line (cr, LINE_FULL, theme->thin);
  cairo_move_to (cr, x, floor (y) + 0.5);
  cairo_line_to (cr, x + width, floor (y) + 0.5);
  cairo_stroke (cr);

  draw_names (&pen, title, x, x + width, y + line, has_legend);
  const double below = y + 1.4 * line;
  theme_use (cr, theme->ink);
  const TextSize size = text_draw_wrapped (texts, cr, small, adjustment, x, below, width);
  theme_use (cr, theme->soft_ink);
  text_draw_wrapped (texts, cr, small, caution_text (), x,
                     below + size.height + 0.2 * line, width);
}
