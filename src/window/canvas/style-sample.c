/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/canvas/style-sample.h"

struct _SwStyleSample {
  SwCanvas parent_instance;

  guint index;
};

G_DEFINE_FINAL_TYPE (SwStyleSample, sw_style_sample, SW_TYPE_CANVAS)

static void
sw_style_sample_draw (SwCanvas *canvas, cairo_t *cr, double width, double height)
{
  const Theme theme = sw_canvas_get_theme (canvas);
  const SetupStyle style = theme_setup_style (&theme, SW_STYLE_SAMPLE (canvas)->index);
  const double pen = 1.1 * theme.line, marker = 0.67 * theme.text;

  cairo_set_operator (cr, CAIRO_OPERATOR_CLEAR);
  cairo_paint (cr);
  cairo_set_operator (cr, CAIRO_OPERATOR_OVER);
  theme_use_style (cr, &style, pen);
  cairo_move_to (cr, 0.0, height / 2.0);
  cairo_line_to (cr, width, height / 2.0);
  cairo_stroke (cr);
  theme_marker (cr, style.marker, width / 2.0, height / 2.0, marker);
}

static void
sw_style_sample_class_init (SwStyleSampleClass *class)
{
  SW_CANVAS_CLASS (class)->draw = sw_style_sample_draw;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "sample");
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (class),
                                        GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
sw_style_sample_init (SwStyleSample *self)
{
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_CENTER);
}

GtkWidget *
sw_style_sample_new (guint setup_index)
{
  SwStyleSample *self = g_object_new (SW_TYPE_STYLE_SAMPLE, NULL);

  self->index = setup_index;
  return GTK_WIDGET (self);
}
