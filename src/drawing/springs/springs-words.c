/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/springs/springs-words.h"

#include "model/spring/spring-caution.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define BETWEEN 0.35   /* sentences, of the text */
#define MOST_LINE 52.0 /* longer lines are hard to read, text sizes */

static TextStyle
style_of (const SpringsWords *words, TextWeight weight, bool is_small)
{
  const Theme *t = &words->view->theme;

  return (TextStyle){ t->font, is_small ? t->small_text : t->text, weight };
}

double
spring_verdicts_draw (
    const SpringsWords *words, double x, double y, double width, double room)
{
  const TextStyle style = style_of (words, TEXT_PLAIN, false);
  const double between = BETWEEN * style.size;
  const char *const *verdicts = words->view->verdicts;
  double used = 0.0;

  for (gsize i = 0; verdicts != NULL && verdicts[i] != NULL; i++) {
    const double height =
        text_measure_wrapped (words->texts, style, verdicts[i], width).height;

    if (used + height > room)
      break;
    if (words->cr != NULL) {
      theme_use (words->cr, words->view->theme.ink);
      text_draw_wrapped (words->texts, words->cr, style, verdicts[i], x, y + used, width);
    }
    used += height + between;
  }
  return used;
}

double
spring_caution_draw (const SpringsWords *words, double x, double y, double width)
{
  const TextStyle style = style_of (words, TEXT_PLAIN, true);

  if (words->cr == NULL)
    return text_measure_wrapped (words->texts, style, spring_caution (), width).height;
  theme_use (words->cr, words->view->theme.soft_ink);
  return text_draw_wrapped (words->texts, words->cr, style, spring_caution (), x, y,
                            width)
      .height;
}

/* Paragraphs one below the other from @y on; draws them with a context. */
static double
flow (const SpringsWords *words, double x, double y, double width)
{
  const char *const paragraphs[] = {
    _ ("No spring is entered for this corner."),
    _ ("Enter what the car stands on: a torsion bar by the sizes of its steps and the "
       "angle it is clamped at, a coil by its rate, or its wire and coils, with free "
       "length and perch, or both."),
    _ ("A bump stop, an anti-roll bar and the damper's table say more, where you have "
       "them. A setup may have springs of its own; without, it stands on the car's."),
  };
  double used = 0.0;

  for (gsize i = 0; i < G_N_ELEMENTS (paragraphs); i++) {
    const TextStyle style = style_of (words, i == 0 ? TEXT_BOLD : TEXT_PLAIN, false);

    if (words->cr != NULL) {
      theme_use (words->cr,
                 i == 0 ? words->view->theme.ink : words->view->theme.soft_ink);
      text_draw_wrapped (words->texts, words->cr, style, paragraphs[i], x, y + used,
                         width);
    }
    used += text_measure_wrapped (words->texts, style, paragraphs[i], width).height +
            0.8 * style.size;
  }
  return used;
}

static double
nothing_width (const SpringsWords *words, double width)
{
  return fmin (width, MOST_LINE * words->view->theme.text * 0.6);
}

double
spring_nothing_height (const SpringsWords *words, double width)
{
  const SpringsWords measuring = { words->texts, NULL, words->view };

  return flow (&measuring, 0.0, 0.0, nothing_width (words, width));
}

void
spring_nothing_draw (const SpringsWords *words, Frame frame)
{
  const double width = nothing_width (words, frame.width);
  const double height = spring_nothing_height (words, frame.width);

  flow (words, frame.x + (frame.width - width) / 2.0,
        frame.y + fmax (0.4 * (frame.height - height), 0.0), width);
}
