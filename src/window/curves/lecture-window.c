/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/curves/lecture-window.h"
#include "window/curves/lecture-view.h"
#include "window/curves/lowering-play.h"

#include <glib/gi18n-lib.h>

struct _SwLectureWindow {
  GtkWindow parent_instance;

  SwBench *bench;
  SwLectureView *view;
};

G_DEFINE_FINAL_TYPE (SwLectureWindow, sw_lecture_window, GTK_TYPE_WINDOW)

static void
lower (SwLectureWindow *self, double by)
{
  sw_bench_set_travel (self->bench, sw_bench_get_study (self->bench)->travel + by);
}

static void
fill_screen (SwLectureWindow *self, gboolean fill)
{
  if (fill)
    gtk_window_fullscreen (GTK_WINDOW (self));
  else
    gtk_window_unfullscreen (GTK_WINDOW (self));
}

static gboolean
on_key_pressed_cb (SwLectureWindow *self, guint key, guint code, GdkModifierType state)
{
  const double step = state & GDK_SHIFT_MASK ? 5.0 : 1.0;

  (void) code;
  switch (key) {
  case GDK_KEY_Right:
  case GDK_KEY_Page_Down:
  case GDK_KEY_space:
    sw_lecture_view_walk (self->view, 1);
    return TRUE;
  case GDK_KEY_Left:
  case GDK_KEY_Page_Up:
  case GDK_KEY_BackSpace:
    sw_lecture_view_walk (self->view, -1);
    return TRUE;
  case GDK_KEY_Down:
    lower (self, step);
    return TRUE;
  case GDK_KEY_Up:
    lower (self, -step);
    return TRUE;
  case GDK_KEY_p:
  case GDK_KEY_P:
    lowering_play (GTK_WIDGET (self->view), self->bench);
    return TRUE;
  case GDK_KEY_F11:
    fill_screen (self, !gtk_window_is_fullscreen (GTK_WINDOW (self)));
    return TRUE;
  case GDK_KEY_Escape:
    gtk_window_close (GTK_WINDOW (self));
    return TRUE;
  default:
    return FALSE;
  }
}

/* The right half of the picture goes on, the left half back. */
static void
on_pressed_cb (SwLectureWindow *self, int n_press, double x)
{
  (void) n_press;
  sw_lecture_view_walk (self->view,
                        x > gtk_widget_get_width (GTK_WIDGET (self)) / 2.0 ? 1 : -1);
}

static void
sw_lecture_window_dispose (GObject *object)
{
  g_clear_object (&SW_LECTURE_WINDOW (object)->bench);
  G_OBJECT_CLASS (sw_lecture_window_parent_class)->dispose (object);
}

/* Only a window on the screen can be asked to fill it. */
static void
sw_lecture_window_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (sw_lecture_window_parent_class)->map (widget);
  fill_screen (SW_LECTURE_WINDOW (widget), TRUE);
}

static void
sw_lecture_window_class_init (SwLectureWindowClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sw_lecture_window_dispose;
  GTK_WIDGET_CLASS (class)->map = sw_lecture_window_map;
}

static void
sw_lecture_window_init (SwLectureWindow *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (on_key_pressed_cb), self);
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (on_pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  gtk_window_set_title (GTK_WINDOW (self), _ ("Where the roll centre goes"));
  gtk_window_set_default_size (GTK_WINDOW (self), 1280, 720);
}

GtkWidget *
sw_lecture_window_new (GtkWindow *parent, SwBench *bench)
{
  /* not transient: a window manager makes no dialog fill the screen */
  SwLectureWindow *self = g_object_new (SW_TYPE_LECTURE_WINDOW, "application",
                                        gtk_window_get_application (parent), NULL);

  self->bench = g_object_ref (bench);
  self->view = SW_LECTURE_VIEW (sw_lecture_view_new (bench));
  gtk_window_set_child (GTK_WINDOW (self), GTK_WIDGET (self->view));
  return GTK_WIDGET (self);
}
