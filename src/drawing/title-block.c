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
  return _ ("Computed from measured points, each with its error; steel, welds and bearings "
            "are not judged. Check clearances on the car through full travel and lock, and "
            "have the alignment measured before driving.");
}

/* "15.0 mm inboard": the length by the word for its sign. */
static char *
directed (double value, const char *positive, const char *negative)
{
  char number[32];

  axis_format (fabs (value), 1, number, sizeof number);
  return g_strdup_printf (_ ("%s mm %s"), number,
                             round (value * 10.0) < 0.0 ? negative : positive);
}

static char *
lowering_words (double lowering)
{
  char number[32];

  axis_format (fabs (lowering), 1, number, sizeof number);
  return g_strdup_printf (round (lowering * 10.0) < 0.0 ? _ ("raised %s mm")
                                                        : _ ("lowered %s mm"), number);
}

char *
title_block_adjustment (const TitleBlock *title)
{
  g_autofree char *sideways =
      directed (title->mount.inboard, _ ("inboard"), _ ("outboard"));
  g_autofree char *lengthways =
      directed (title->mount.rearward, _ ("rearward"), _ ("forward"));
  g_autofree char *upward = directed (title->mount.up, _ ("up"), _ ("down"));
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

/* A stroke and its name, ending at @right; returns where they begin. */
static double
draw_key (const Pen *pen,
          const char *name,
          LineKind kind,
          Colour colour,
          double right,
          double y)
{
  const TextStyle style = style_of (pen->theme, TEXT_PLAIN);
  const double length = round (2.6 * pen->theme->text), gap = 6.0;
  const double width = text_measure (pen->texts, style, name).width;
  const double start = right - width - gap - length;
  const double middle = floor (y - 0.35 * style.size) + 0.5;

  theme_use (pen->cr, pen->theme->ink);
  text_draw (pen->texts, pen->cr, style, name, right, y,
             (TextAnchor){ 1.0, TEXT_BASELINE });
  theme_use (pen->cr, colour);
  theme_line (pen->cr, kind, kind == LINE_FULL ? pen->theme->line : pen->theme->thin);
  cairo_move_to (pen->cr, start, middle);
  cairo_line_to (pen->cr, start + length, middle);
  cairo_stroke (pen->cr);
  return start;
}

static void
draw_names (const Pen *pen, const TitleBlock *title, double x, double right, double y)
{
  const TextStyle bold = style_of (pen->theme, TEXT_BOLD);
  const TextStyle small = style_of (pen->theme, TEXT_PLAIN);
  const TextAnchor from_left = { 0.0, TEXT_BASELINE },
                   from_right = { 1.0, TEXT_BASELINE };
  g_autofree char *source = title->date != NULL
                                ? g_strdup_printf ("%s · Strutwright", title->date)
                                : g_strdup ("Strutwright");

  theme_use (pen->cr, pen->theme->soft_ink);
  text_draw (pen->texts, pen->cr, small, source, right, y, from_right);
  theme_use (pen->cr, pen->theme->ink);
  if (title->car[0] != '\0')
    x += text_draw (pen->texts, pen->cr, bold, title->car, x, y, from_left).width +
         round (pen->theme->text);
  text_draw (pen->texts, pen->cr, small, title->setup, x, y, from_left);
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

  draw_names (&pen, title, x, x + width, y + line);
  double foot = y + 1.4 * line;
  theme_use (cr, theme->ink);
  foot += text_draw_wrapped (texts, cr, small, adjustment, x, foot, width).height;
  if (has_legend) {
    const double baseline =
        round (y + 1.4 * line + text_measure (texts, small, adjustment).baseline);
    const double left =
        draw_key (&pen, title->setup, LINE_FULL, theme->accent, x + width, baseline);
    draw_key (&pen, _ ("as measured"), LINE_DASHED, theme->reference, left - 18.0,
                       baseline);
  }
  theme_use (cr, theme->soft_ink);
  text_draw_wrapped (texts, cr, small, caution_text (), x, foot + 0.2 * line, width);
}
