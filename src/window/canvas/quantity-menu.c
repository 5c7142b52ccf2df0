/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/canvas/quantity-menu.h"

#include "model/study/quantity-info.h"

#include <glib/gi18n-lib.h>

typedef struct {
  GtkWidget *widget;
  SwBench *bench;
  QuantityAtFunc at;
  GtkWidget *popover; /* NULL until it is wanted */
} QuantityMenu;

static GMenuModel *
new_model (Quantity quantity)
{
  const QuantityInfo info = quantity_info (quantity);
  g_autoptr (GMenu) section = g_menu_new ();
  g_autofree char *action = g_strdup_printf ("win.what-is::%s", info.key);
  GMenu *menu = g_menu_new ();

  g_menu_append (section, _ ("What is this?"), action);
  g_menu_append_section (menu, info.name, G_MENU_MODEL (section));
  return G_MENU_MODEL (menu);
}

static void
pop_up (QuantityMenu *self, int quantity, double x, double y)
{
  const GdkRectangle at = { (int) x, (int) y, 1, 1 };
  g_autoptr (GMenuModel) model = NULL;

  if (quantity < 0)
    return;
  model = new_model ((Quantity) quantity);
  if (self->popover == NULL) {
    g_set_weak_pointer (&self->popover, gtk_popover_menu_new_from_model (NULL));
    gtk_popover_set_has_arrow (GTK_POPOVER (self->popover), FALSE);
    gtk_widget_set_halign (self->popover, GTK_ALIGN_START);
    gtk_widget_set_parent (self->popover, self->widget);
  }
  gtk_popover_menu_set_menu_model (GTK_POPOVER_MENU (self->popover), model);
  gtk_popover_set_pointing_to (GTK_POPOVER (self->popover), &at);
  gtk_popover_popup (GTK_POPOVER (self->popover));
}

static void
on_destroy_cb (QuantityMenu *self)
{
  if (self->popover != NULL)
    gtk_widget_unparent (self->popover);
}

/* A widget with a menu of its own asks for the entry itself. */
static gboolean
has_own_menu (QuantityMenu *self)
{
  return g_object_get_data (G_OBJECT (self->widget), QUANTITY_MENU_IS_PART) != NULL;
}

static void
on_pressed_cb (QuantityMenu *self, int n_press, double x, double y)
{
  (void) n_press;
  if (!has_own_menu (self))
    pop_up (self, self->at (self->widget, x, y), x, y);
}

static gboolean
on_key_pressed_cb (QuantityMenu *self, guint key, guint code, GdkModifierType state)
{
  const int lit = sw_bench_get_lit (self->bench);

  (void) code;
  if (lit < 0 || has_own_menu (self) ||
      (key != GDK_KEY_Menu && (key != GDK_KEY_F10 || (state & GDK_SHIFT_MASK) == 0)))
    return FALSE;
  pop_up (self, lit, gtk_widget_get_width (self->widget) / 2.0,
          gtk_widget_get_height (self->widget) / 2.0);
  return TRUE;
}

GMenuModel *
quantity_menu_at (GtkWidget *widget, double x, double y)
{
  QuantityMenu *self = g_object_get_data (G_OBJECT (widget), "quantity-menu");
  int quantity = self != NULL ? self->at (widget, x, y) : -1;

  if (self != NULL && quantity < 0)
    quantity = sw_bench_get_lit (self->bench);
  return quantity >= 0 ? new_model ((Quantity) quantity) : NULL;
}

static void
free_menu (gpointer data)
{
  QuantityMenu *self = data;

  g_clear_weak_pointer (&self->popover);
  g_object_unref (self->bench);
  g_free (self);
}

void
quantity_menu_add (GtkWidget *widget, SwBench *bench, QuantityAtFunc at)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkGesture *click = gtk_gesture_click_new ();
  QuantityMenu *self = g_new0 (QuantityMenu, 1);

  self->widget = widget;
  self->bench = g_object_ref (bench);
  self->at = at;
  g_object_set_data_full (G_OBJECT (widget), "quantity-menu", self, free_menu);
  g_signal_connect_swapped (widget, "destroy", G_CALLBACK (on_destroy_cb), self);
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (click), GDK_BUTTON_SECONDARY);
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (on_pressed_cb), self);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (on_key_pressed_cb), self);
  gtk_widget_add_controller (widget, keys);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (click));
}
