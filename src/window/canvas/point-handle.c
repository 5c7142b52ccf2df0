/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/canvas/point-handle.h"

#include <glib/gi18n-lib.h>
#include <math.h>

struct _SwPointHandle {
  GtkWidget parent_instance;

  SheetHandle handle;
  SheetViewName view;
};

G_DEFINE_FINAL_TYPE (SwPointHandle, sw_point_handle, GTK_TYPE_WIDGET)

enum {
  NUDGED,
  HOMED,
  CANCELLED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

static void
nudge (SwPointHandle *self, int right, int up, GdkModifierType state)
{
  g_signal_emit (self, signals[NUDGED], 0, right, up, (guint) state);
}

static gboolean
on_key_pressed_cb (SwPointHandle *self, guint key, guint code, GdkModifierType state)
{
  (void) code;
  switch (key) {
  case GDK_KEY_Left:
  case GDK_KEY_KP_Left:
    nudge (self, -1, 0, state);
    return TRUE;
  case GDK_KEY_Right:
  case GDK_KEY_KP_Right:
    nudge (self, 1, 0, state);
    return TRUE;
  case GDK_KEY_Up:
  case GDK_KEY_KP_Up:
    nudge (self, 0, 1, state);
    return TRUE;
  case GDK_KEY_Down:
  case GDK_KEY_KP_Down:
    nudge (self, 0, -1, state);
    return TRUE;
  case GDK_KEY_Home:
  case GDK_KEY_KP_Home:
    g_signal_emit (self, signals[HOMED], 0);
    return TRUE;
  case GDK_KEY_Escape:
    g_signal_emit (self, signals[CANCELLED], 0);
    return TRUE;
  default:
    return FALSE;
  }
}

/* The view takes the pointer. */
static gboolean
sw_point_handle_contains (GtkWidget *widget, double x, double y)
{
  (void) widget;
  (void) x;
  (void) y;
  return FALSE;
}

static void
sw_point_handle_class_init (SwPointHandleClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  widget_class->contains = sw_point_handle_contains;
  signals[NUDGED] =
      g_signal_new ("nudged", SW_TYPE_POINT_HANDLE, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                    NULL, G_TYPE_NONE, 3, G_TYPE_INT, G_TYPE_INT, G_TYPE_UINT);
  signals[HOMED] = g_signal_new ("homed", SW_TYPE_POINT_HANDLE, G_SIGNAL_RUN_LAST, 0,
                                 NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[CANCELLED] = g_signal_new ("cancelled", SW_TYPE_POINT_HANDLE, G_SIGNAL_RUN_LAST,
                                     0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_css_name (widget_class, "pointhandle");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_SLIDER);
}

static void
sw_point_handle_init (SwPointHandle *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (on_key_pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}

static const char *
name_of (SheetHandle handle, SheetViewName view)
{
  if (handle == SHEET_HANDLE_WHEEL)
    return view == SHEET_FRONT ? _ ("Wheel travel, front view")
                               : _ ("Wheel travel, side view");
  if (handle == SHEET_HANDLE_HEIGHT)
    return _ ("Ride height, front view");
  switch (view) {
  case SHEET_FRONT:
    return _ ("Upper mount, front view");
  case SHEET_SIDE:
    return _ ("Upper mount, side view");
  default:
    return _ ("Upper mount, plan view");
  }
}

GtkWidget *
sw_point_handle_new_named (const char *name)
{
  GtkWidget *self = g_object_new (SW_TYPE_POINT_HANDLE, NULL);

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  name, -1);
  return self;
}

GtkWidget *
sw_point_handle_new (SheetHandle handle, SheetViewName view)
{
  GtkWidget *self = sw_point_handle_new_named (name_of (handle, view));

  SW_POINT_HANDLE (self)->handle = handle;
  SW_POINT_HANDLE (self)->view = view;
  return self;
}

SheetHandle
sw_point_handle_get_handle (SwPointHandle *self)
{
  return self->handle;
}

SheetViewName
sw_point_handle_get_view (SwPointHandle *self)
{
  return self->view;
}

void
sw_point_handle_place (SwPointHandle *self, double x, double y)
{
  int size;

  gtk_widget_measure (GTK_WIDGET (self), GTK_ORIENTATION_HORIZONTAL, -1, &size, NULL,
                      NULL, NULL);
  gtk_widget_size_allocate (GTK_WIDGET (self),
                            &(GtkAllocation){ (int) round (x) - size / 2,
                                              (int) round (y) - size / 2, size, size },
                            -1);
}

void
sw_point_handle_set_value (
    SwPointHandle *self, double value, double least, double most, const char *words)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (self),
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_NOW, value,
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_MIN, least,
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_MAX, most,
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT, words,
                                  /* GTK 4.8 passes on the values of its own widgets only
                                   */
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
}
