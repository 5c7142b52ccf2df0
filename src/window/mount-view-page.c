/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/mount-view-page.h"
#include "window/aims-panel.h"
#include "window/mount-view.h"

GtkWidget *
mount_page_new (SwBench *bench)
{
  SwChooser *chooser = sw_chooser_of (bench);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_box_append (GTK_BOX (box), aims_bar_new (chooser));
  gtk_box_append (GTK_BOX (box), sw_mount_view_new (chooser));
  g_signal_connect_object (box, "map", G_CALLBACK (sw_chooser_watch), chooser,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (box, "unmap", G_CALLBACK (sw_chooser_unwatch), chooser,
                           G_CONNECT_SWAPPED);
  return box;
}
