/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The least that a GTK program can show: what bench-start holds the program against. */

#include "first-paint.h"

static void
on_activate_cb (GtkApplication *application)
{
  GtkWidget *window = gtk_application_window_new (application);

  gtk_window_set_default_size (GTK_WINDOW (window), 1440, 900);
  g_signal_connect (window, "realize", G_CALLBACK (on_realize_cb), NULL);
  gtk_window_present (GTK_WINDOW (window));
}

int
main (int argc, char **argv)
{
  g_autoptr (GtkApplication) application =
                 gtk_application_new ("org.strutwright.EmptyWindow",
                                      G_APPLICATION_NON_UNIQUE);

  g_signal_connect (application, "activate", G_CALLBACK (on_activate_cb), NULL);
  return g_application_run (G_APPLICATION (application), argc, argv);
}
