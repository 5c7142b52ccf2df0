/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What an export will look like, drawn to fit the widget. */

#pragma once

#include "drawing/card/card.h"
#include "window/bench/bench.h"
#include "window/canvas/canvas.h"

typedef struct {
  CardSubject subject;
  ExportOptions options;
  gboolean with_date;
} ExportWish;

/* Writes the card that was wished for. */
gboolean export_wish_write (const ExportWish *wish,
                            SwBench *bench,
                            const char *path,
                            GError **error);

#define SW_TYPE_EXPORT_PREVIEW (sw_export_preview_get_type ())
G_DECLARE_FINAL_TYPE (SwExportPreview, sw_export_preview, SW, EXPORT_PREVIEW, SwCanvas)

GtkWidget *sw_export_preview_new (SwBench *bench);
void sw_export_preview_set_wish (SwExportPreview *self, ExportWish wish);
