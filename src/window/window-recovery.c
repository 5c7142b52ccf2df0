/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/window-private.h"

#include <glib/gi18n-lib.h>

/* The newest of what is left, or NULL. */
static LeftOver *
next_left_over (SwWindow *self)
{
  return self->left_over != NULL && self->left_over->len > 0 ? self->left_over->pdata[0]
                                                             : NULL;
}

static void
show_offer (SwWindow *self)
{
  const LeftOver *left = next_left_over (self);

  if (left != NULL) {
    g_autofree char *text = g_strdup_printf (
        _ ("Strutwright ended before “%s” was saved. The work is still there."),
        left->name);

    gtk_label_set_label (self->offer_label, text);
  }
  gtk_revealer_set_reveal_child (self->offer, left != NULL);
}

static void
answered (SwWindow *self)
{
  g_ptr_array_remove_index (self->left_over, 0);
  show_offer (self);
}

/* Into this window while nothing is lost by it, else into a new one. */
static void
on_recover_clicked_cb (SwWindow *self)
{
  const LeftOver *left = next_left_over (self);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwDocument) document = recovery_open (left, &error);

  if (document == NULL) {
    sw_window_show_message (self, error->message);
    return;
  }
  if (self->bench != NULL &&
      sw_document_is_modified (sw_bench_get_document (self->bench))) {
    SwWindow *window = sw_window_new (gtk_window_get_application (GTK_WINDOW (self)));

    window_take_document (window, document);
    gtk_window_present (GTK_WINDOW (window));
  } else {
    window_take_document (self, document);
  }
  recovery_discard (left);
  answered (self);
}

static void
on_discard_clicked_cb (SwWindow *self)
{
  recovery_discard (next_left_over (self));
  answered (self);
}

void
window_install_recovery (GtkWidgetClass *class)
{
  gtk_widget_class_bind_template_child (class, SwWindow, offer);
  gtk_widget_class_bind_template_child (class, SwWindow, offer_label);
  gtk_widget_class_bind_template_callback (class, on_recover_clicked_cb);
  gtk_widget_class_bind_template_callback (class, on_discard_clicked_cb);
}

void
sw_window_offer_left_over (SwWindow *self)
{
  g_clear_pointer (&self->left_over, g_ptr_array_unref);
  self->left_over = recovery_find_left_over ();
  show_offer (self);
}
