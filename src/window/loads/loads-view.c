/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/loads/loads-view.h"
#include "window/bench/loader.h"
#include "window/canvas/plot-input.h"

#include "drawing/loads/loads-board.h"

#include <glib/gi18n-lib.h>

struct _SwLoadsView {
  SwTallCanvas parent_instance;

  SwBench *bench;
  SwLoader *loader;
  LoadsBoard *board;
  gboolean is_held; /* its height, under a hand that drags */
};

G_DEFINE_FINAL_TYPE (SwLoadsView, sw_loads_view, SW_TYPE_TALL_CANVAS)

static LoadsView
view_of (SwLoadsView *self)
{
  return (LoadsView){
    .loads = sw_loader_get_study (self->loader),
    .theme = sw_canvas_get_theme (SW_CANVAS (self)),
    .hold_axes = sw_bench_is_dragging (self->bench),
    .caution_stands_beside = true,
  };
}

static void
sw_loads_view_draw (SwCanvas *canvas, cairo_t *cr, double width, double height)
{
  SwLoadsView *self = SW_LOADS_VIEW (canvas);
  const LoadsView view = view_of (self);

  loads_board_draw (self->board, cr, &view, width, height);
}

static double
sw_loads_view_least_height (SwTallCanvas *canvas, double width)
{
  SwLoadsView *self = SW_LOADS_VIEW (canvas);
  const LoadsView view = view_of (self);

  return loads_board_height (self->board, &view, width);
}

static PlotHit
hit (GtkWidget *widget, double x, double y)
{
  return (PlotHit){ .quantity = -1,
                    .setup = loads_board_hit (SW_LOADS_VIEW (widget)->board, x, y) };
}

/* "Standing: with the coil, …" */
static void
describe (SwLoadsView *self)
{
  const LoadStudy *study = sw_loader_get_study (self->loader);
  g_autofree char *text = g_strdup_printf ("%s %s", study->sentence, study->note);

  gtk_accessible_update_property (GTK_ACCESSIBLE (self),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
}

static void
renew (SwLoadsView *self)
{
  self->is_held = sw_bench_is_dragging (self->bench);
  if (self->is_held)
    sw_canvas_invalidate (SW_CANVAS (self));
  else
    sw_tall_canvas_renew (SW_TALL_CANVAS (self));
}

static void
on_solved_cb (SwLoadsView *self)
{
  if (self->is_held)
    renew (self);
  else
    sw_canvas_invalidate (SW_CANVAS (self));
}

static void
on_changed_cb (SwLoadsView *self)
{
  renew (self);
  describe (self);
}

static void
sw_loads_view_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (sw_loads_view_parent_class)->map (widget);
  sw_loader_watch (SW_LOADS_VIEW (widget)->loader);
}

static void
sw_loads_view_unmap (GtkWidget *widget)
{
  sw_loader_unwatch (SW_LOADS_VIEW (widget)->loader);
  GTK_WIDGET_CLASS (sw_loads_view_parent_class)->unmap (widget);
}

static void
sw_loads_view_dispose (GObject *object)
{
  g_clear_object (&SW_LOADS_VIEW (object)->loader);
  g_clear_object (&SW_LOADS_VIEW (object)->bench);
  G_OBJECT_CLASS (sw_loads_view_parent_class)->dispose (object);
}

static void
sw_loads_view_finalize (GObject *object)
{
  loads_board_free (SW_LOADS_VIEW (object)->board);
  G_OBJECT_CLASS (sw_loads_view_parent_class)->finalize (object);
}

static void
sw_loads_view_class_init (SwLoadsViewClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_loads_view_dispose;
  G_OBJECT_CLASS (class)->finalize = sw_loads_view_finalize;
  SW_CANVAS_CLASS (class)->draw = sw_loads_view_draw;
  SW_CANVAS_CLASS (class)->is_opaque = TRUE;
  SW_TALL_CANVAS_CLASS (class)->least_height = sw_loads_view_least_height;
  widget_class->map = sw_loads_view_map;
  widget_class->unmap = sw_loads_view_unmap;
  gtk_widget_class_set_css_name (widget_class, "board");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
sw_loads_view_init (SwLoadsView *self)
{
  self->board = loads_board_new ();
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Loads on tower and floor, and the rod"), -1);
}

static GtkWidget *
sw_loads_view_new (SwBench *bench)
{
  SwLoadsView *self = g_object_new (SW_TYPE_LOADS_VIEW, NULL);

  self->bench = g_object_ref (bench);
  self->loader = g_object_ref (sw_loader_of (bench));
  plot_input_add (GTK_WIDGET (self), bench, hit);
  g_signal_connect_object (bench, "solved", G_CALLBACK (on_solved_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->loader, "changed", G_CALLBACK (on_changed_cb), self,
                           G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}

GtkWidget *
loads_page_new (SwBench *bench)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_box_append (GTK_BOX (box), loads_bar_new (bench));
  gtk_box_append (GTK_BOX (box), tall_canvas_page_new (sw_loads_view_new (bench)));
  return box;
}
