/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/canvas/plot-input.h"
#include "window/canvas/quantity-menu.h"
#include "window/canvas/travel-keys.h"

#include <math.h>

typedef struct {
  GtkWidget *widget;
  SwBench *bench;
  PlotHitFunc hit;
  gboolean is_cursor_held;
} PlotInput;

static void
on_motion_cb (PlotInput *self, double x, double y)
{
  sw_bench_set_lit (self->bench, self->hit (self->widget, x, y).quantity);
}

static void
on_leave_cb (PlotInput *self)
{
  sw_bench_set_lit (self->bench, -1);
}

/* On half millimetres, so that the numbers read clean. */
static void
follow_pointer (PlotInput *self, PlotHit hit)
{
  if (hit.on_plot)
    sw_bench_set_travel (self->bench, round (hit.travel * 2.0) / 2.0);
}

static void
on_drag_begin_cb (PlotInput *self, double x, double y)
{
  const PlotHit hit = self->hit (self->widget, x, y);

  gtk_widget_grab_focus (self->widget);
  self->is_cursor_held = hit.setup < 0;
  if (hit.setup >= 0)
    sw_bench_set_setup_index (self->bench, (guint) hit.setup);
  else
    follow_pointer (self, hit);
}

static void
on_drag_update_cb (PlotInput *self, double dx, double dy, GtkGestureDrag *gesture)
{
  double x, y;

  gtk_gesture_drag_get_start_point (gesture, &x, &y);
  if (self->is_cursor_held)
    follow_pointer (self, self->hit (self->widget, x + dx, y + dy));
}

static gboolean
on_key_pressed_cb (PlotInput *self, guint key, guint code, GdkModifierType state)
{
  (void) code;
  return travel_key (self->bench, key, state);
}

static int
quantity_at (GtkWidget *widget, double x, double y)
{
  const PlotInput *self = g_object_get_data (G_OBJECT (widget), "plot-input");

  return self->hit (widget, x, y).quantity;
}

static void
free_input (gpointer data)
{
  PlotInput *self = data;

  g_object_unref (self->bench);
  g_free (self);
}

void
plot_input_add (GtkWidget *widget, SwBench *bench, PlotHitFunc hit)
{
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkGesture *drag = gtk_gesture_drag_new ();
  PlotInput *self = g_new0 (PlotInput, 1);

  self->widget = widget;
  self->bench = g_object_ref (bench);
  self->hit = hit;
  g_object_set_data_full (G_OBJECT (widget), "plot-input", self, free_input);
  g_signal_connect_swapped (motion, "motion", G_CALLBACK (on_motion_cb), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (on_leave_cb), self);
  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (on_drag_begin_cb), self);
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (on_drag_update_cb), self);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (on_key_pressed_cb), self);
  gtk_widget_add_controller (widget, motion);
  gtk_widget_add_controller (widget, keys);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (drag));
  quantity_menu_add (widget, bench, quantity_at);
}
