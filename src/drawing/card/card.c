/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/card/card.h"

struct CardPress {
  Board *board;
  Sheet *sheet;
  Lowering *lowering;
  MountMap *map;
  LoadsBoard *loads;
  SpringsBoard *springs;
};

CardPress *
card_press_new (void)
{
  CardPress *press = g_new0 (CardPress, 1);

  press->board = board_new ();
  press->sheet = sheet_new ();
  press->lowering = lowering_new ();
  press->map = mount_map_new ();
  press->loads = loads_board_new ();
  press->springs = springs_board_new ();
  return press;
}

void
card_press_free (CardPress *press)
{
  board_free (press->board);
  sheet_free (press->sheet);
  lowering_free (press->lowering);
  mount_map_free (press->map);
  loads_board_free (press->loads);
  springs_board_free (press->springs);
  g_free (press);
}

static BoardView
board_view (const Card *card, const TitleBlock *title)
{
  return (BoardView){ .study = card->study,
                      .choice = card->choice,
                      .theme = export_theme (card->options.background),
                      .lit = -1,
                      .show_cursor = true,
                      .title = title };
}

static SheetView
sheet_view (const Card *card, const TitleBlock *title)
{
  return (SheetView){ .study = card->study,
                      .section_width = card->car->section_width_mm,
                      .theme = export_theme (card->options.background),
                      .zoom = 1.0,
                      .lit = -1,
                      .title = title,
                      .loads =
                          card->loads != NULL ? load_study_in_hand (card->loads) : NULL };
}

static LoweringView
lowering_view (const Card *card, const TitleBlock *title)
{
  return (LoweringView){ .study = card->study,
                         .theme = export_theme (card->options.background),
                         .lit = -1,
                         .title = title };
}

static MountMapView
map_view (const Card *card, const TitleBlock *title)
{
  MountMapView view = card->map;

  view.car = card->car;
  view.setup = card->study->in_hand;
  view.theme = export_theme (card->options.background);
  view.lit_place = MOUNT_MAP_NONE;
  view.title = title;
  return view;
}

static LoadsView
loads_view (const Card *card, const TitleBlock *title)
{
  return (LoadsView){ .loads = card->loads,
                      .theme = export_theme (card->options.background),
                      .title = title };
}

static SpringsView
springs_view (const Card *card, const TitleBlock *title)
{
  return (SpringsView){ .springs = card->springs,
                        .theme = export_theme (card->options.background),
                        .lit = -1,
                        .verdicts = card->verdicts,
                        .title = title };
}

void
card_draw (CardPress *press, cairo_t *cr, const Card *card)
{
  const TitleBlock title = title_block_for (card->car, card->setup, card->date);
  const double width = card->options.width, height = card->options.height;

  switch (card->subject) {
  case CARD_CURVES: {
    const BoardView view = board_view (card, &title);
    board_draw (press->board, cr, &view, width, height);
    break;
  }
  case CARD_SHEET: {
    const SheetView view = sheet_view (card, &title);
    sheet_draw (press->sheet, cr, &view, width, height);
    break;
  }
  case CARD_LOWERING: {
    const LoweringView view = lowering_view (card, &title);
    lowering_draw (press->lowering, cr, &view, width, height);
    break;
  }
  case CARD_MOUNT_MAP: {
    const MountMapView view = map_view (card, &title);
    mount_map_draw (press->map, cr, &view, width, height);
    break;
  }
  case CARD_LOADS: {
    const LoadsView view = loads_view (card, &title);
    loads_board_draw (press->loads, cr, &view, width, height);
    break;
  }
  case CARD_SPRINGS: {
    const SpringsView view = springs_view (card, &title);
    springs_draw (press->springs, cr, &view, width, height);
    break;
  }
  }
}

gboolean
card_write (const Card *card, const char *path, GError **error)
{
  const TitleBlock title = title_block_for (card->car, card->setup, card->date);

  switch (card->subject) {
  case CARD_CURVES: {
    const BoardView view = board_view (card, &title);
    return export_board (&view, &card->options, path, error);
  }
  case CARD_SHEET: {
    const SheetView view = sheet_view (card, &title);
    return export_sheet (&view, &card->options, path, error);
  }
  case CARD_LOWERING: {
    const LoweringView view = lowering_view (card, &title);
    return export_lowering (&view, &card->options, path, error);
  }
  case CARD_MOUNT_MAP: {
    const MountMapView view = map_view (card, &title);
    return export_mount_map (&view, &card->options, path, error);
  }
  case CARD_LOADS: {
    const LoadsView view = loads_view (card, &title);
    return export_loads (&view, &card->options, path, error);
  }
  case CARD_SPRINGS: {
    const SpringsView view = springs_view (card, &title);
    return export_springs (&view, &card->options, path, error);
  }
  }
  g_return_val_if_reached (FALSE);
}
