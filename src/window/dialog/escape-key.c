/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dialog/escape-key.h"

void
escape_key_closes (GtkWidget *window)
{
  GtkEventController *keys = gtk_shortcut_controller_new ();

  gtk_shortcut_controller_add_shortcut (
      GTK_SHORTCUT_CONTROLLER (keys),
      gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                        gtk_named_action_new ("window.close")));
  gtk_widget_add_controller (window, keys);
}
