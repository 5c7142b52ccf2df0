/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the drawing layer: any drawing as a PNG, SVG or PDF file. */

#pragma once

#include "drawing/export.h"

typedef void (*ExportDraw) (cairo_t *cr, gconstpointer view, double width, double height);

/* Same drawing, same options: same bytes; no date is written. */
gboolean export_file_write (ExportDraw draw,
                            gconstpointer view,
                            const ExportOptions *options,
                            const char *path,
                            GError **error);
