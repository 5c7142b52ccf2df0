/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dialog/menus.h"

void
menus_put (GtkMenuButton *button, const char *id)
{
  static GtkBuilder *menus;

  if (menus == NULL)
    menus = gtk_builder_new_from_resource ("/org/strutwright/Strutwright/menus.ui");
  gtk_menu_button_set_menu_model (button,
                                  G_MENU_MODEL (gtk_builder_get_object (menus, id)));
}
