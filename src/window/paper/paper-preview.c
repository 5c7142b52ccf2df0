/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/paper/paper-preview.h"

#include <math.h>

struct _SwPaperPreview {
  SwCanvas parent_instance;

  PaperPage page;
  TextCache *texts;
};

G_DEFINE_FINAL_TYPE (SwPaperPreview, sw_paper_preview, SW_TYPE_CANVAS)

static void
sw_paper_preview_draw (SwCanvas *canvas, cairo_t *cr, double width, double height)
{
  SwPaperPreview *self = SW_PAPER_PREVIEW (canvas);
  const PaperPage *page = &self->page;
  const double scale = MIN (width / page->width, height / page->height);

  cairo_set_operator (cr, CAIRO_OPERATOR_CLEAR);
  cairo_paint (cr);
  cairo_set_operator (cr, CAIRO_OPERATOR_OVER);
  cairo_translate (cr, (width - page->width * scale) / 2.0, 0.0);
  cairo_scale (cr, scale, scale);
  cairo_rectangle (cr, 0, 0, page->width, page->height);
  cairo_clip (cr);
  page->draw (page->paper, page->page, self->texts, cr, page->width, page->height);
}

static GtkSizeRequestMode
sw_paper_preview_get_request_mode (GtkWidget *widget)
{
  (void) widget;
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
sw_paper_preview_measure (GtkWidget *widget,
                          GtkOrientation orientation,
                          int for_size,
                          int *minimum,
                          int *natural,
                          int *minimum_baseline,
                          int *natural_baseline)
{
  const PaperPage *page = &SW_PAPER_PREVIEW (widget)->page;
  const double width = for_size > 0 ? for_size : page->width;

  *minimum_baseline = *natural_baseline = -1;
  if (orientation == GTK_ORIENTATION_HORIZONTAL) {
    *minimum = 320;
    *natural = (int) page->width;
  } else {
    *minimum = *natural = (int) ceil (width * page->height / page->width);
  }
}

static void
sw_paper_preview_finalize (GObject *object)
{
  text_cache_free (SW_PAPER_PREVIEW (object)->texts);
  G_OBJECT_CLASS (sw_paper_preview_parent_class)->finalize (object);
}

static void
sw_paper_preview_class_init (SwPaperPreviewClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->finalize = sw_paper_preview_finalize;
  SW_CANVAS_CLASS (class)->draw = sw_paper_preview_draw;
  widget_class->measure = sw_paper_preview_measure;
  widget_class->get_request_mode = sw_paper_preview_get_request_mode;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
sw_paper_preview_init (SwPaperPreview *self)
{
  self->texts = text_cache_new ();
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
}

GtkWidget *
sw_paper_preview_new (PaperPage page)
{
  SwPaperPreview *self = g_object_new (SW_TYPE_PAPER_PREVIEW, NULL);

  self->page = page;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  page.name, -1);
  return GTK_WIDGET (self);
}
