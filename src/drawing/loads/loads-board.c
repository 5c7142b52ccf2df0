/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/loads/loads-board-private.h"
#include "model/spring/spring-caution.h"

#include <glib/gi18n-lib.h>

#define MARGIN 12.0      /* pixels, all round */
#define LEAST_WIDTH 10.0 /* in texts, for anything to be said */

struct LoadsBoard {
  TextCache *texts;
  LoadsBars bars;
  RodCharts rods;
  LoadsView view; /* of the last drawing, for hits */
};

LoadsBoard *
loads_board_new (void)
{
  LoadsBoard *board = g_new0 (LoadsBoard, 1);

  board->texts = text_cache_new ();
  return board;
}

void
loads_board_free (LoadsBoard *board)
{
  if (board == NULL)
    return;
  text_cache_free (board->texts);
  g_free (board);
}

bool
loads_shows (const LoadsView *view, unsigned setup)
{
  return view->loads->springs->study->setups[setup].is_shown;
}

SetupStyle
loads_style (const LoadsView *view, unsigned setup)
{
  return setup == view->loads->springs->study->in_hand
             ? theme_hand_style (&view->theme, setup)
             : theme_setup_style (&view->theme, setup);
}

/* One line, the first words bold, the others where there is room. */
static void
draw_heading (const LoadsPen *pen, const char *text, const char *more, Frame area)
{
  const TextStyle bold = chart_title_style (pen->theme),
                  small = chart_small_style (pen->theme);
  const double y = area.y + pen->theme->text;
  const double past =
      text_measure (pen->texts, bold, text).width + 0.8 * pen->theme->text;

  theme_use (pen->cr, pen->theme->ink);
  text_draw_within (pen->texts, pen->cr, bold, text, area.x, y, area.width);
  theme_use (pen->cr, pen->theme->soft_ink);
  if (past + text_measure (pen->texts, small, more).width <= area.width)
    text_draw (pen->texts, pen->cr, small, more, area.x + past, y,
               (TextAnchor){ 0.0, TEXT_BASELINE });
}

static double
wrapped_height (const LoadsPen *pen, const char *text, double width)
{
  return text == NULL ? 0.0
                      : text_measure_wrapped (pen->texts, chart_small_style (pen->theme),
                                              text, width)
                            .height;
}

static void
draw_wrapped (const LoadsPen *pen, const char *text, Colour colour, Frame at)
{
  theme_use (pen->cr, colour);
  text_draw_wrapped (pen->texts, pen->cr, chart_small_style (pen->theme), text, at.x,
                     at.y, at.width);
}

/* Takes @height off the top of @area. */
static void
move_down (Frame *area, double height)
{
  area->y += height;
  area->height -= height;
}

/* Nothing where there is not room for all of it. */
static void
draw_sentence (const LoadsPen *pen, const char *sentence, Colour colour, Frame *area)
{
  const double high = wrapped_height (pen, sentence, area->width);

  if (sentence[0] == '\0' || high > area->height)
    return;
  draw_wrapped (pen, sentence, colour, *area);
  move_down (area, high + 0.3 * pen->theme->text);
}

static double
heading_height (const Theme *theme)
{
  return round (1.9 * theme->text);
}

static void
draw_bars (LoadsBoard *board, const LoadsPen *pen, Frame *area)
{
  const LoadsView *view = pen->view;
  const double heading = heading_height (pen->theme);
  Frame below = *area;

  move_down (&below, heading);
  const double taken = loads_bars_place (&board->bars, pen, below, view->hold_axes);
  if (taken <= 0.0)
    return;
  g_autofree char *what =
      g_strdup_printf (_ ("vertical load on the body, %s"), unit_symbol (UNIT_FORCE));
  draw_heading (pen, car_load_case_title (view->loads->load_case.name), what, *area);
  loads_bars_draw (&board->bars, pen);
  move_down (area, heading + taken + 0.4 * pen->theme->text);
  draw_sentence (pen, view->loads->sentence, pen->theme->ink, area);
  draw_sentence (pen, view->loads->note, pen->theme->soft_ink, area);
  move_down (area, 0.9 * pen->theme->text);
}

static const char *
rods_wanted (void)
{
  return _ ("Give the damper rod's diameter, where it is guided and where its piston is, "
            "in the panel of springs, to see what its bending costs.");
}

static void
draw_rods (LoadsBoard *board, const LoadsPen *pen, Frame area)
{
  Frame below = area;

  if (!rod_charts_has_rods (pen->view)) {
    draw_sentence (pen, rods_wanted (), pen->theme->soft_ink, &area);
    return;
  }
  move_down (&below, heading_height (pen->theme));
  rod_charts_fit (&board->rods, pen->view, pen->view->hold_axes);
  if (!rod_charts_place (&board->rods, pen, below))
    return;
  draw_heading (pen, _ ("The bent rod"),
                _ ("against lateral acceleration, g; wheel outside positive"), area);
  rod_charts_draw (&board->rods, pen);
}

/* Of the strip of the title block at the foot of exports. */
static double
title_height (const LoadsBoard *board, const LoadsPen *pen, double width)
{
  const LoadsView *view = pen->view;

  return view->title == NULL
             ? 0.0
             : title_block_height (board->texts, pen->theme, view->title,
                                   view->loads->springs->study, width - 2.0 * MARGIN) +
                   MARGIN;
}

static void
draw_title (LoadsBoard *board, const LoadsPen *pen, double width, double height)
{
  const LoadsView *view = pen->view;

  if (view->title != NULL)
    title_block_draw (board->texts, pen->cr, pen->theme, view->title, MARGIN,
                      height - title_height (board, pen, width), width - 2.0 * MARGIN,
                      view->loads->springs->study);
}

static double
caution_height (const LoadsPen *pen, double width)
{
  return pen->view->caution_stands_beside
             ? 0.0
             : wrapped_height (pen, spring_caution (), width) +
                   round (0.8 * pen->theme->text);
}

/* At the foot of @area, which gets less; false where there is no room. */
static bool
draw_caution (const LoadsPen *pen, Frame *area)
{
  const double gap = round (0.8 * pen->theme->text);
  const double high = caution_height (pen, area->width);

  area->height -= high;
  if (area->height < 0.0)
    return false;
  if (high > 0.0)
    draw_wrapped (pen, spring_caution (), pen->theme->soft_ink,
                  (Frame){ area->x, area->y + area->height + gap, area->width,
                           high - gap });
  return true;
}

void
loads_board_draw (
    LoadsBoard *board, cairo_t *cr, const LoadsView *view, double width, double height)
{
  board->view = *view;
  const LoadsPen pen = { cr, board->texts, &board->view, &board->view.theme };
  Frame area = { MARGIN, MARGIN, width - 2.0 * MARGIN, height - 2.0 * MARGIN };

  board->bars.n_rows = 0;
  for (RodChart i = 0; i < N_ROD_CHARTS; i++)
    board->rods.is_drawn[i] = false;
  theme_paint_ground (cr, pen.theme, width, height);
  if (area.width < LEAST_WIDTH * pen.theme->text)
    return;
  draw_title (board, &pen, width, height);
  area.height -= title_height (board, &pen, width);
  /* without it, no figures */
  if (!draw_caution (&pen, &area))
    return;
  draw_bars (board, &pen, &area);
  draw_rods (board, &pen, area);
}

static double
sentence_height (const LoadsPen *pen, const char *sentence, double width)
{
  return sentence[0] == '\0'
             ? 0.0
             : wrapped_height (pen, sentence, width) + 0.3 * pen->theme->text;
}

static double
bars_height (const LoadsBoard *board, const LoadsPen *pen, double width)
{
  const LoadStudy *loads = pen->view->loads;
  const double em = pen->theme->text;
  LoadsBars bars = board->bars;
  const Frame endless = { MARGIN, MARGIN, width, G_MAXINT };

  return heading_height (pen->theme) + loads_bars_place (&bars, pen, endless, false) +
         0.4 * em + sentence_height (pen, loads->sentence, width) +
         sentence_height (pen, loads->note, width) + 0.9 * em;
}

double
loads_board_height (LoadsBoard *board, const LoadsView *view, double width)
{
  const LoadsPen pen = { NULL, board->texts, view, &view->theme };
  const double inner = width - 2.0 * MARGIN;
  const double rods = rod_charts_has_rods (view)
                          ? heading_height (pen.theme) + rod_charts_height (&pen, inner)
                          : sentence_height (&pen, rods_wanted (), inner);

  if (inner < LEAST_WIDTH * view->theme.text)
    return 0.0;
  return ceil (2.0 * MARGIN + bars_height (board, &pen, inner) + rods +
               title_height (board, &pen, width) + caution_height (&pen, inner)) +
         1.0;
}

bool
loads_board_frame (const LoadsBoard *board,
                   RodChart chart,
                   double *x,
                   double *y,
                   double *width,
                   double *height)
{
  const Frame f = board->rods.frame[chart].plot;

  if (!board->rods.is_drawn[chart])
    return false;
  *x = f.x;
  *y = f.y;
  *width = f.width;
  *height = f.height;
  return true;
}

int
loads_board_hit (const LoadsBoard *board, double x, double y)
{
  return loads_bars_hit (&board->bars, x, y);
}
