/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/canvas/canvas.h"

/* "Sans 10", the desktop's own default. */
#define USUAL_TEXT_PIXELS (10.0 * 96.0 / 72.0)
#define STRONG_BORDERS 2.0

typedef struct {
  cairo_surface_t *picture, *spare; /* NULL before the first frame, and the second */
  int width, height, scale;         /* of both, in widget pixels */
  gboolean is_stale;                /* the picture */
} SwCanvasPrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (SwCanvas, sw_canvas, GTK_TYPE_WIDGET)

static SwCanvasPrivate *
get_private (SwCanvas *self)
{
  return sw_canvas_get_instance_private (self);
}

static void
drop_pictures (SwCanvas *self)
{
  SwCanvasPrivate *p = get_private (self);

  g_clear_pointer (&p->picture, cairo_surface_destroy);
  g_clear_pointer (&p->spare, cairo_surface_destroy);
  p->is_stale = TRUE;
}

static void
fit_pictures (SwCanvas *self, int width, int height)
{
  SwCanvasPrivate *p = get_private (self);
  const int scale = gtk_widget_get_scale_factor (GTK_WIDGET (self));

  if (p->width != width || p->height != height || p->scale != scale)
    drop_pictures (self);
  p->width = width;
  p->height = height;
  p->scale = scale;
}

/* What the toolkit still holds stays as it is: two pictures take turns. */
static void
turn_pictures (SwCanvasPrivate *p)
{
  cairo_surface_t *next = p->spare;

  p->spare = p->picture;
  p->picture = next;
  if (next != NULL && cairo_surface_get_reference_count (next) == 1)
    return;
  g_clear_pointer (&p->picture, cairo_surface_destroy);
  p->picture = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, p->width * p->scale,
                                           p->height * p->scale);
  cairo_surface_set_device_scale (p->picture, p->scale, p->scale);
}

static void
draw_picture (SwCanvas *self)
{
  SwCanvasPrivate *p = get_private (self);
  cairo_t *cr = cairo_create (p->picture);

  if (!SW_CANVAS_GET_CLASS (self)->is_opaque) {
    cairo_set_operator (cr, CAIRO_OPERATOR_CLEAR);
    cairo_paint (cr);
    cairo_set_operator (cr, CAIRO_OPERATOR_OVER);
  }
  SW_CANVAS_GET_CLASS (self)->draw (self, cr, p->width, p->height);
  cairo_destroy (cr);
  cairo_surface_flush (p->picture);
  p->is_stale = FALSE;
}

static cairo_surface_t *
on_acquire_cb (cairo_pattern_t *pattern,
               void *picture,
               cairo_surface_t *target,
               const cairo_rectangle_int_t *extents)
{
  (void) pattern;
  (void) target;
  (void) extents;
  return cairo_surface_reference (picture);
}

static void
on_release_cb (cairo_pattern_t *pattern, void *picture, cairo_surface_t *surface)
{
  (void) pattern;
  (void) picture;
  cairo_surface_destroy (surface);
}

static cairo_status_t
on_copy_cb (cairo_pattern_t *pattern, void *picture, const cairo_pattern_t *other)
{
  (void) pattern;
  (void) other;
  cairo_surface_reference (picture);
  return CAIRO_STATUS_SUCCESS;
}

static void
on_finish_cb (cairo_pattern_t *pattern, void *picture)
{
  (void) pattern;
  cairo_surface_destroy (picture);
}

/* Holds the picture. A surface as the source of a frame's node would be copied as soon
 * as it is drawn over, whether or not that frame is still of use. */
static cairo_pattern_t *
pattern_of (cairo_surface_t *picture, int scale)
{
  cairo_pattern_t *pattern =
      cairo_pattern_create_raster_source (cairo_surface_reference (picture),
                                          CAIRO_CONTENT_COLOR_ALPHA,
                                          cairo_image_surface_get_width (picture),
                                          cairo_image_surface_get_height (picture));
  cairo_matrix_t to_pixels;

  cairo_raster_source_pattern_set_acquire (pattern, on_acquire_cb, on_release_cb);
  cairo_raster_source_pattern_set_copy (pattern, on_copy_cb);
  cairo_raster_source_pattern_set_finish (pattern, on_finish_cb);
  cairo_matrix_init_scale (&to_pixels, scale, scale);
  cairo_pattern_set_matrix (pattern, &to_pixels);
  cairo_pattern_set_filter (pattern, CAIRO_FILTER_NEAREST);
  return pattern;
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
  fit_pictures (self, width, height);
  if (p->is_stale) {
    turn_pictures (p);
    draw_picture (self);
  }

  const graphene_rect_t bounds = GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &bounds);
  cairo_pattern_t *pattern = pattern_of (p->picture, p->scale);
  cairo_set_source (cr, pattern);
  cairo_paint (cr);
  cairo_pattern_destroy (pattern);
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
  drop_pictures (SW_CANVAS (widget));
  GTK_WIDGET_CLASS (sw_canvas_parent_class)->unmap (widget);
}

static void
sw_canvas_finalize (GObject *object)
{
  drop_pictures (SW_CANVAS (object));
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
