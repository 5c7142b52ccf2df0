/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/export/export-file.h"

G_DEFINE_QUARK (strutwright - export - error, export_error)

Theme
export_theme (ExportBackground background)
{
  Theme theme = background == EXPORT_BACKGROUND_DARK ? theme_dark () : theme_paper ();

  if (background == EXPORT_BACKGROUND_NONE)
    theme.ground.alpha = 0.0;
  return theme;
}

static void
draw_board (cairo_t *cr, gconstpointer view, double width, double height)
{
  g_autoptr (Board) board = board_new ();

  board_draw (board, cr, view, width, height);
}

gboolean
export_board (const BoardView *view,
              const ExportOptions *options,
              const char *path,
              GError **error)
{
  BoardView drawn = *view;

  drawn.theme = export_theme (options->background);
  drawn.pixel_scale = 0.0;
  return export_file_write (draw_board, &drawn, options, path, error);
}

static void
draw_lowering (cairo_t *cr, gconstpointer view, double width, double height)
{
  g_autoptr (Lowering) lowering = lowering_new ();

  lowering_draw (lowering, cr, view, width, height);
}

gboolean
export_lowering (const LoweringView *view,
                 const ExportOptions *options,
                 const char *path,
                 GError **error)
{
  LoweringView drawn = *view;

  drawn.theme = export_theme (options->background);
  return export_file_write (draw_lowering, &drawn, options, path, error);
}

static void
draw_loads (cairo_t *cr, gconstpointer view, double width, double height)
{
  g_autoptr (LoadsBoard) board = loads_board_new ();

  loads_board_draw (board, cr, view, width, height);
}

gboolean
export_loads (const LoadsView *view,
              const ExportOptions *options,
              const char *path,
              GError **error)
{
  LoadsView drawn = *view;

  drawn.theme = export_theme (options->background);
  return export_file_write (draw_loads, &drawn, options, path, error);
}

static void
draw_springs (cairo_t *cr, gconstpointer view, double width, double height)
{
  g_autoptr (SpringsBoard) board = springs_board_new ();

  springs_draw (board, cr, view, width, height);
}

gboolean
export_springs (const SpringsView *view,
                const ExportOptions *options,
                const char *path,
                GError **error)
{
  SpringsView drawn = *view;

  drawn.theme = export_theme (options->background);
  return export_file_write (draw_springs, &drawn, options, path, error);
}
