/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/export/export-file.h"

static void
draw_sheet (cairo_t *cr, gconstpointer view, double width, double height)
{
  g_autoptr (Sheet) sheet = sheet_new ();

  sheet_draw (sheet, cr, view, width, height);
}

gboolean
export_sheet (const SheetView *view,
              const ExportOptions *options,
              const char *path,
              GError **error)
{
  SheetView drawn = *view;

  drawn.theme = export_theme (options->background);
  drawn.show_handles = false;
  return export_file_write (draw_sheet, &drawn, options, path, error);
}
