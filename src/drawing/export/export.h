/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Board, sheet, lowering, mount map, springs or loads as a file: PNG, SVG or
 * PDF by suffix, from the same drawing code as the window. Needs no display. */

#pragma once

#include "drawing/board/board.h"
#include "drawing/board/lowering.h"
#include "drawing/loads/loads-board.h"
#include "drawing/mount-map/mount-map.h"
#include "drawing/sheet/sheet.h"
#include "drawing/springs/springs-board.h"

#include <gio/gio.h>

#define EXPORT_LEAST_PIXELS 200
#define EXPORT_MOST_PIXELS 16384

#define EXPORT_ERROR (export_error_quark ())
typedef enum {
  EXPORT_ERROR_SUFFIX, /* not .png, .svg or .pdf */
  EXPORT_ERROR_SIZE,   /* outside least … most */
  EXPORT_ERROR_DRAWING /* cairo's word for it */
} ExportError;
GQuark export_error_quark (void);

typedef enum {
  EXPORT_BACKGROUND_WHITE,
  EXPORT_BACKGROUND_DARK,
  EXPORT_BACKGROUND_NONE
} ExportBackground;

typedef struct {
  int width, height; /* pixels; in SVG and PDF points of 1/96 inch */
  ExportBackground background;
} ExportOptions;

/* The theme that goes with a background. */
Theme export_theme (ExportBackground background);

/* All write with file_replace (): a failure leaves the old file. */
gboolean export_board (const BoardView *view,
                       const ExportOptions *options,
                       const char *path,
                       GError **error);
gboolean export_sheet (const SheetView *view,
                       const ExportOptions *options,
                       const char *path,
                       GError **error);
gboolean export_lowering (const LoweringView *view,
                          const ExportOptions *options,
                          const char *path,
                          GError **error);
gboolean export_loads (const LoadsView *view,
                       const ExportOptions *options,
                       const char *path,
                       GError **error);
gboolean export_mount_map (const MountMapView *view,
                           const ExportOptions *options,
                           const char *path,
                           GError **error);
gboolean export_springs (const SpringsView *view,
                         const ExportOptions *options,
                         const char *path,
                         GError **error);
