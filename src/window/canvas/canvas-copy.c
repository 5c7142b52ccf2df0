/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/canvas/canvas-copy.h"
#include "window/canvas/quantity-menu.h"

#define DOTS 2 /* a pixel, either way */

typedef struct {
  GtkWidget *widget;
  GMenuModel *menu;
  CanvasAsked asked;  /* or NULL */
  GtkWidget *popover; /* while it is open */
} Copier;

static GdkTexture *
texture_of (cairo_surface_t *surface)
{
  const gsize stride = (gsize) cairo_image_surface_get_stride (surface);
  const int width = cairo_image_surface_get_width (surface),
            height = cairo_image_surface_get_height (surface);
  g_autoptr (GBytes) bytes = NULL;

  cairo_surface_flush (surface);
  bytes = g_bytes_new (cairo_image_surface_get_data (surface), stride * (gsize) height);
  return gdk_memory_texture_new (width, height, GDK_MEMORY_DEFAULT, bytes, stride);
}

void
canvas_copy_picture (
    SwCanvas *canvas, CanvasPaint paint, gpointer part, double width, double height)
{
  cairo_surface_t *surface =
      cairo_image_surface_create (CAIRO_FORMAT_ARGB32, (int) (width * DOTS),
                                  (int) (height * DOTS));

  if (cairo_surface_status (surface) == CAIRO_STATUS_SUCCESS && width >= 1.0 &&
      height >= 1.0) {
    cairo_t *cr = cairo_create (surface);

    cairo_scale (cr, DOTS, DOTS);
    paint (canvas, part, cr, width, height);
    cairo_destroy (cr);

    g_autoptr (GdkTexture) texture = texture_of (surface);
    gdk_clipboard_set_texture (gtk_widget_get_clipboard (GTK_WIDGET (canvas)), texture);
  }
  cairo_surface_destroy (surface);
}

static void
paint_whole (SwCanvas *canvas, gpointer part, cairo_t *cr, double width, double height)
{
  (void) part;
  theme_use (cr, sw_canvas_get_theme (canvas).ground);
  cairo_paint (cr);
  SW_CANVAS_GET_CLASS (canvas)->draw (canvas, cr, width, height);
}

void
canvas_copy_whole (SwCanvas *canvas)
{
  GtkWidget *widget = GTK_WIDGET (canvas);

  canvas_copy_picture (canvas, paint_whole, NULL, gtk_widget_get_width (widget),
                       gtk_widget_get_height (widget));
}

static void
close_menu (Copier *self)
{
  if (self->popover != NULL)
    gtk_widget_unparent (g_steal_pointer (&self->popover));
}

/* After the entry that was chosen has been heard. */
static gboolean
close_menu_later (gpointer data)
{
  Copier *self = g_object_get_data (data, "copier");

  if (self != NULL && self->popover != NULL && !gtk_widget_get_visible (self->popover))
    close_menu (self);
  return G_SOURCE_REMOVE;
}

static void
on_closed_cb (Copier *self)
{
  g_idle_add_full (G_PRIORITY_DEFAULT_IDLE, close_menu_later, g_object_ref (self->widget),
                   g_object_unref);
}

static void
tell_asked (Copier *self)
{
  if (self->asked != NULL)
    self->asked (SW_CANVAS (self->widget));
}

/* What is asked about there comes first, by keys what is lit. */
static GMenuModel *
menu_at (Copier *self, int x, int y, gboolean by_keys)
{
  g_autoptr (GMenuModel) quantity =
                 quantity_menu_at (self->widget, by_keys ? -1.0 : x, by_keys ? -1.0 : y);
  GMenu *menu = g_menu_new ();

  if (quantity != NULL)
    g_menu_append_section (menu, NULL, quantity);
  g_menu_append_section (menu, NULL, self->menu);
  return G_MENU_MODEL (menu);
}

static void
open_menu (Copier *self, int x, int y, gboolean by_keys)
{
  g_autoptr (GMenuModel) menu = menu_at (self, x, y, by_keys);

  close_menu (self);
  tell_asked (self);
  self->popover = gtk_popover_menu_new_from_model (menu);
  gtk_popover_set_has_arrow (GTK_POPOVER (self->popover), FALSE);
  gtk_popover_set_pointing_to (GTK_POPOVER (self->popover),
                               &(GdkRectangle){ x, y, 1, 1 });
  gtk_widget_set_parent (self->popover, self->widget);
  g_signal_connect_swapped (self->popover, "closed", G_CALLBACK (on_closed_cb), self);
  gtk_popover_popup (GTK_POPOVER (self->popover));
}

static void
on_pressed_cb (Copier *self, int n_press, double x, double y)
{
  (void) n_press;
  gtk_widget_grab_focus (self->widget);
  open_menu (self, (int) x, (int) y, FALSE);
}

static gboolean
run_first (Copier *self)
{
  g_autofree char *action = NULL;

  tell_asked (self);
  return g_menu_model_get_item_attribute (self->menu, 0, G_MENU_ATTRIBUTE_ACTION, "s",
                                          &action) &&
         gtk_widget_activate_action (self->widget, action, NULL);
}

static gboolean
on_key_pressed_cb (Copier *self, guint key, guint code, GdkModifierType state)
{
  const gboolean is_control = (state & GDK_CONTROL_MASK) != 0,
                 is_shift = (state & GDK_SHIFT_MASK) != 0;

  (void) code;
  if (is_control && (key == GDK_KEY_c || key == GDK_KEY_Insert))
    return run_first (self);
  if (key != GDK_KEY_Menu && !(is_shift && key == GDK_KEY_F10))
    return FALSE;
  open_menu (self, gtk_widget_get_width (self->widget) / 2,
             gtk_widget_get_height (self->widget) / 2, TRUE);
  return TRUE;
}

static void
free_copier (gpointer data)
{
  Copier *self = data;

  g_object_unref (self->menu);
  g_free (self);
}

void
canvas_copy_add (SwCanvas *canvas,
                 GMenuModel *menu,
                 GActionGroup *actions,
                 CanvasAsked asked)
{
  Copier *self = g_new0 (Copier, 1);
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  self->widget = GTK_WIDGET (canvas);
  self->menu = g_object_ref (menu);
  g_object_set_data_full (G_OBJECT (canvas), "copier", self, free_copier);
  g_object_set_data (G_OBJECT (canvas), QUANTITY_MENU_IS_PART, self);
  self->asked = asked;
  gtk_widget_insert_action_group (self->widget, "copy", actions);
  g_object_unref (actions);
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (click), GDK_BUTTON_SECONDARY);
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (on_pressed_cb), self);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (on_key_pressed_cb), self);
  g_signal_connect_swapped (canvas, "destroy", G_CALLBACK (close_menu), self);
  gtk_widget_add_controller (self->widget, GTK_EVENT_CONTROLLER (click));
  gtk_widget_add_controller (self->widget, keys);
}
