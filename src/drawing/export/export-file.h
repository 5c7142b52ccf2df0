/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the drawing layer: any drawing as a PNG, SVG or PDF file. */

#pragma once

#include "drawing/export/export.h"

typedef void (*ExportDraw) (cairo_t *cr, gconstpointer view, double width, double height);

/* Same drawing, same options: same bytes; no date is written. */
gboolean export_file_write (ExportDraw draw,
                            gconstpointer view,
                            const ExportOptions *options,
                            const char *path,
                            GError **error);

/* A page of @width by @height points of 1/72 inch on white; a PNG has
 * EXPORT_PAGE_DOTS dots to the inch. */
#define EXPORT_PAGE_DOTS 288
gboolean export_file_write_page (ExportDraw draw,
                                 gconstpointer view,
                                 double width,
                                 double height,
                                 const char *path,
                                 GError **error);

/* Several pages as one PDF; @path ends in .pdf. */
typedef struct {
  double width, height; /* points of 1/72 inch */
  const char *title;
  /* A page's line in the outline, or NULL. */
  const char *(*heading) (gpointer pages, guint page);
} ExportPages;
typedef void (*ExportDrawPage) (cairo_t *cr, gpointer pages, guint page);
gboolean export_file_write_pages (ExportDrawPage draw,
                                  gpointer pages,
                                  guint n_pages,
                                  ExportPages paper,
                                  const char *path,
                                  GError **error);
