/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/canvas/tall-canvas.h"

#include "model/spring/spring-caution.h"

#include <math.h>

typedef struct {
  int height; /* that it asked for when it got its place */
} SwTallCanvasPrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (SwTallCanvas, sw_tall_canvas, SW_TYPE_CANVAS)

static SwTallCanvasPrivate *
get_private (SwTallCanvas *self)
{
  return sw_tall_canvas_get_instance_private (self);
}

static int
least_height (SwTallCanvas *self, int width)
{
  return width > 0
             ? (int) ceil (SW_TALL_CANVAS_GET_CLASS (self)->least_height (self, width))
             : 0;
}

static GtkSizeRequestMode
sw_tall_canvas_get_request_mode (GtkWidget *widget)
{
  (void) widget;
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
sw_tall_canvas_measure (GtkWidget *widget,
                        GtkOrientation orientation,
                        int for_size,
                        int *minimum,
                        int *natural,
                        int *minimum_baseline,
                        int *natural_baseline)
{
  *minimum_baseline = *natural_baseline = -1;
  *minimum = *natural = orientation == GTK_ORIENTATION_VERTICAL
                            ? least_height (SW_TALL_CANVAS (widget), for_size)
                            : 0;
}

static void
sw_tall_canvas_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  SwTallCanvas *self = SW_TALL_CANVAS (widget);

  (void) height;
  (void) baseline;
  get_private (self)->height = least_height (self, width);
}

static void
sw_tall_canvas_class_init (SwTallCanvasClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  widget_class->get_request_mode = sw_tall_canvas_get_request_mode;
  widget_class->measure = sw_tall_canvas_measure;
  widget_class->size_allocate = sw_tall_canvas_size_allocate;
}

static void
sw_tall_canvas_init (SwTallCanvas *self)
{
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
}

void
sw_tall_canvas_renew (SwTallCanvas *self)
{
  GtkWidget *widget = GTK_WIDGET (self);

  sw_canvas_invalidate (SW_CANVAS (self));
  if (gtk_widget_get_mapped (widget) &&
      least_height (self, gtk_widget_get_width (widget)) != get_private (self)->height)
    gtk_widget_queue_resize (widget);
}

static GtkWidget *
new_caution (void)
{
  GtkWidget *label = gtk_label_new (spring_caution ());

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_widget_add_css_class (label, "board-caution");
  return label;
}

static int
least_of (GtkWidget *widget, GtkOrientation orientation, int for_size)
{
  int least = 0;

  gtk_widget_measure (widget, orientation, for_size, &least, NULL, NULL, NULL);
  return least;
}

/* A page has a width whatever height it is asked for: a label in it that has to be low
 * must not make the window as wide as its text. */
static void
measure_page (GtkWidget *page,
              GtkOrientation orientation,
              int for_size,
              int *minimum,
              int *natural,
              int *minimum_baseline,
              int *natural_baseline)
{
  const gboolean is_width = orientation == GTK_ORIENTATION_HORIZONTAL;
  const int size = is_width ? -1 : for_size;
  const int first = least_of (gtk_widget_get_first_child (page), orientation, size),
            last = least_of (gtk_widget_get_last_child (page), orientation, size);

  *minimum_baseline = *natural_baseline = -1;
  *minimum = *natural = is_width ? MAX (first, last) : first + last;
}

static void
allocate_page (GtkWidget *page, int width, int height, int baseline)
{
  GtkWidget *first = gtk_widget_get_first_child (page),
            *last = gtk_widget_get_last_child (page);
  const int foot = least_of (last, GTK_ORIENTATION_VERTICAL, width);
  const int top = MAX (height - foot, 0);

  (void) baseline;
  gtk_widget_size_allocate (first, &(GtkAllocation){ 0, 0, width, top }, -1);
  gtk_widget_size_allocate (last, &(GtkAllocation){ 0, top, width, foot }, -1);
}

static GtkSizeRequestMode
request_mode_of_page (GtkWidget *page)
{
  (void) page;
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

GtkWidget *
tall_canvas_scrolled_new (GtkWidget *canvas)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  /* a bar that stays says that there is more below */
  gtk_scrolled_window_set_overlay_scrolling (GTK_SCROLLED_WINDOW (scrolled), FALSE);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), canvas);
  /* the canvas is all there is, and stays where it is when it gets the focus */
  gtk_viewport_set_scroll_to_focus (GTK_VIEWPORT (gtk_scrolled_window_get_child (
                                        GTK_SCROLLED_WINDOW (scrolled))),
                                    FALSE);
  return scrolled;
}

GtkWidget *
tall_canvas_page_new (GtkWidget *canvas)
{
  GtkWidget *page = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  GtkWidget *scrolled = tall_canvas_scrolled_new (canvas);

  gtk_widget_add_css_class (scrolled, "tall-board");
  gtk_box_append (GTK_BOX (page), scrolled);
  gtk_box_append (GTK_BOX (page), new_caution ());
  gtk_widget_set_hexpand (page, TRUE);
  gtk_widget_set_vexpand (page, TRUE);
  gtk_widget_set_layout_manager (page,
                                 gtk_custom_layout_new (request_mode_of_page,
                                                        measure_page, allocate_page));
  return page;
}
