/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/export/export-file.h"

static void
draw_map (cairo_t *cr, gconstpointer view, double width, double height)
{
  g_autoptr (MountMap) map = mount_map_new ();

  mount_map_draw (map, cr, view, width, height);
}

gboolean
export_mount_map (const MountMapView *view,
                  const ExportOptions *options,
                  const char *path,
                  GError **error)
{
  MountMapView drawn = *view;

  drawn.theme = export_theme (options->background);
  drawn.pixel_scale = 0.0;
  return export_file_write (draw_map, &drawn, options, path, error);
}
