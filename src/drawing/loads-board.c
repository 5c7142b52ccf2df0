/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/loads-board-private.h"
#include "model/spring-caution.h"

#include <glib/gi18n-lib.h>

#define MARGIN 12.0 /* pixels, all round */

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
  return view->springs->study->setups[setup].is_shown;
}

unsigned
loads_count_shown (const LoadsView *view)
{
  unsigned n = 0;

  for (unsigned i = 0; i < view->springs->n_setups; i++)
    n += loads_shows (view, i) ? 1 : 0;
  return n;
}

SetupStyle
loads_style (const LoadsView *view, unsigned setup)
{
  return setup == view->springs->study->in_hand ? theme_hand_style (&view->theme, setup)
                                                : theme_setup_style (&view->theme, setup);
}

/* One bold line; returns what it took. */
static double
draw_heading (const LoadsPen *pen, const char *text, Frame area)
{
  theme_use (pen->cr, pen->theme->ink);
  text_draw_within (pen->texts, pen->cr, chart_title_style (pen->theme), text, area.x,
                    area.y + pen->theme->text, area.width);
  return round (1.9 * pen->theme->text);
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

static void
draw_bars (LoadsBoard *board, const LoadsPen *pen, Frame *area)
{
  const LoadsView *view = pen->view;
  g_autofree char *heading =
      g_strdup_printf (_ ("Vertical load on the body: %s"), view->case_name);

  move_down (area, draw_heading (pen, heading, *area));
  board->bars.frame = *area;
  board->bars.frame.height = loads_bars_height (view);
  loads_bars_fit (&board->bars, view, view->hold_axes);
  loads_bars_draw (&board->bars, pen);
  move_down (area, board->bars.frame.height + 0.6 * pen->theme->text);
  if (view->sentence == NULL)
    return;
  draw_wrapped (pen, view->sentence, pen->theme->ink, *area);
  move_down (area,
             wrapped_height (pen, view->sentence, area->width) + 1.2 * pen->theme->text);
}

static void
draw_rods (LoadsBoard *board, const LoadsPen *pen, Frame area)
{
  for (RodChart i = 0; i < N_ROD_CHARTS; i++)
    board->rods.is_drawn[i] = false;
  if (!rod_charts_has_rods (pen->view)) {
    draw_wrapped (
        pen,
        _ ("Give the damper rod's diameter, where it is guided and where its "
           "piston is, in the panel of springs, to see what its bending costs."),
        pen->theme->soft_ink, area);
    return;
  }
  move_down (&area, draw_heading (pen, _ ("The rod under lateral acceleration"), area));
  rod_charts_fit (&board->rods, pen->view, pen->view->hold_axes);
  rod_charts_place (&board->rods, pen, area);
  rod_charts_draw (&board->rods, pen);
}

/* The strip of the title block at the foot of exports; returns its height. */
static double
draw_title (LoadsBoard *board, const LoadsPen *pen, double width, double height)
{
  const LoadsView *view = pen->view;
  const Study *study = view->springs->study;

  if (view->title == NULL)
    return 0.0;
  const double strip =
      title_block_height (board->texts, pen->theme, view->title, study, width);
  title_block_draw (board->texts, pen->cr, pen->theme, view->title, 0.0, height - strip,
                    width, study);
  return strip;
}

void
loads_board_draw (
    LoadsBoard *board, cairo_t *cr, const LoadsView *view, double width, double height)
{
  board->view = *view;
  const LoadsPen pen = { cr, board->texts, &board->view, &board->view.theme };
  Frame area = { MARGIN, MARGIN, width - 2.0 * MARGIN, height - 2.0 * MARGIN };
  const char *caution = spring_caution ();

  theme_paint_ground (cr, pen.theme, width, height);
  area.height -= draw_title (board, &pen, width, height);
  if (area.width < 1.0)
    return;
  const double foot = wrapped_height (&pen, caution, area.width);
  area.height -= foot + 0.8 * pen.theme->text;
  draw_wrapped (&pen, caution, pen.theme->warning,
                (Frame){ area.x, area.y + area.height + 0.8 * pen.theme->text, area.width,
                         foot });
  draw_bars (board, &pen, &area);
  draw_rods (board, &pen, area);
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
  return board->view.springs != NULL ? loads_bars_hit (&board->bars, &board->view, x, y)
                                     : -1;
}
