/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/canvas.h"

/* "Sans 10", the desktop's own default. */
#define USUAL_TEXT_PIXELS (10.0 * 96.0 / 72.0)
#define STRONG_BORDERS 2.0

typedef struct {
  cairo_surface_t *surface;
  int width, height, scale; /* of the surface, in widget pixels */
  gboolean is_stale;
} SwCanvasPrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (SwCanvas, sw_canvas, GTK_TYPE_WIDGET)

static SwCanvasPrivate *
get_private (SwCanvas *self)
{
  return sw_canvas_get_instance_private (self);
}

static void
fit_surface (SwCanvas *self, int width, int height)
{
  SwCanvasPrivate *p = get_private (self);
  const int scale = gtk_widget_get_scale_factor (GTK_WIDGET (self));

  if (p->surface != NULL && p->width == width && p->height == height && p->scale == scale)
    return;
  g_clear_pointer (&p->surface, cairo_surface_destroy);
  p->surface = cairo_image_surface_create (SW_CANVAS_GET_CLASS (self)->is_opaque
                                               ? CAIRO_FORMAT_RGB24
                                               : CAIRO_FORMAT_ARGB32,
                                           width * scale, height * scale);
  cairo_surface_set_device_scale (p->surface, scale, scale);
  p->width = width;
  p->height = height;
  p->scale = scale;
  p->is_stale = TRUE;
}

static void
draw_surface (SwCanvas *self)
{
  SwCanvasPrivate *p = get_private (self);
  cairo_t *cr = cairo_create (p->surface);

  SW_CANVAS_GET_CLASS (self)->draw (self, cr, p->width, p->height);
  cairo_destroy (cr);
  cairo_surface_flush (p->surface);
  p->is_stale = FALSE;
}

static void
sw_canvas_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SwCanvas *self = SW_CANVAS (widget);
  SwCanvasPrivate *p = get_private (self);
  const int width = gtk_widget_get_width (widget),
            height = gtk_widget_get_height (widget);

  if (width <= 0 || height <= 0)
    return;
  fit_surface (self, width, height);
  if (p->is_stale)
    draw_surface (self);

  const graphene_rect_t bounds = GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &bounds);
  cairo_set_source_surface (cr, p->surface, 0, 0);
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_NEAREST);
  cairo_paint (cr);
  cairo_destroy (cr);
  GTK_WIDGET_CLASS (sw_canvas_parent_class)->snapshot (widget, snapshot);
}

static void
sw_canvas_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (sw_canvas_parent_class)->css_changed (widget, change);
  sw_canvas_invalidate (SW_CANVAS (widget));
}

static void
sw_canvas_unmap (GtkWidget *widget)
{
  SwCanvasPrivate *p = get_private (SW_CANVAS (widget));

  g_clear_pointer (&p->surface, cairo_surface_destroy);
  GTK_WIDGET_CLASS (sw_canvas_parent_class)->unmap (widget);
}

static void
sw_canvas_finalize (GObject *object)
{
  SwCanvasPrivate *p = get_private (SW_CANVAS (object));

  g_clear_pointer (&p->surface, cairo_surface_destroy);
  G_OBJECT_CLASS (sw_canvas_parent_class)->finalize (object);
}

static void
sw_canvas_class_init (SwCanvasClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->finalize = sw_canvas_finalize;
  widget_class->snapshot = sw_canvas_snapshot;
  widget_class->css_changed = sw_canvas_css_changed;
  widget_class->unmap = sw_canvas_unmap;
}

static void
sw_canvas_init (SwCanvas *self)
{
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
}

void
sw_canvas_invalidate (SwCanvas *self)
{
  get_private (self)->is_stale = TRUE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static gboolean
is_dark (GtkWidget *widget)
{
  GdkRGBA c;

  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &c);
  return 0.299f * c.red + 0.587f * c.green + 0.114f * c.blue > 0.5f;
}

static Colour
named_colour (GtkWidget *widget, const char *name)
{
  GdkRGBA c = { 0 };

  gtk_style_context_lookup_color (gtk_widget_get_style_context (widget), name, &c);
  return (Colour){ c.red, c.green, c.blue, 1.0 };
}

/* By what the toolkit's theme shows, whoever chose it: only one for high contrast has
 * borders that stand out so from what they are on. */
static gboolean
is_high_contrast (GtkWidget *widget)
{
  return colour_contrast (named_colour (widget, "borders"),
                          named_colour (widget, "theme_bg_color")) >= STRONG_BORDERS;
}

static double
text_pixels (GtkWidget *widget)
{
  const PangoContext *context = gtk_widget_get_pango_context (widget);
  const PangoFontDescription *font =
      pango_context_get_font_description ((PangoContext *) context);
  const double size = pango_font_description_get_size (font) / (double) PANGO_SCALE;
  const double dpi = pango_cairo_context_get_resolution ((PangoContext *) context);

  if (pango_font_description_get_size_is_absolute (font))
    return size;
  return size * (dpi > 0.0 ? dpi : 96.0) / 72.0;
}

Theme
sw_canvas_get_theme (SwCanvas *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  const Theme theme = is_dark (widget) ? theme_dark () : theme_light ();

  return theme_scaled (is_high_contrast (widget) ? theme_high_contrast (theme) : theme,
                       text_pixels (widget) / USUAL_TEXT_PIXELS);
}
