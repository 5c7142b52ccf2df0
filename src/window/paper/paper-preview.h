/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A page of paper on the screen, as wide as there is room. */

#pragma once

#include "drawing/pen/text.h"
#include "window/canvas/canvas.h"

#define SW_TYPE_PAPER_PREVIEW (sw_paper_preview_get_type ())
G_DECLARE_FINAL_TYPE (SwPaperPreview, sw_paper_preview, SW, PAPER_PREVIEW, SwCanvas)

/* Draws a page of that many points from the origin. */
typedef void (*PaperDrawFunc) (gconstpointer paper,
                               guint page,
                               TextCache *texts,
                               cairo_t *cr,
                               double width,
                               double height);

typedef struct {
  const char *name;     /* translated, for screen readers */
  double width, height; /* points of 1/72 inch */
  PaperDrawFunc draw;
  gconstpointer paper; /* outlives the preview */
  guint page;
} PaperPage;

GtkWidget *sw_paper_preview_new (PaperPage page);
