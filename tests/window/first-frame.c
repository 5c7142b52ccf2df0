/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The program on the demo car until its first frame is painted: the other half of
 * bench-start. Everything but main () is the program's own. */

#include "first-paint.h"
#include "window/application.h"

static void
on_window_added_cb (GtkApplication *application, GtkWindow *window)
{
  (void) application;
  g_signal_connect (window, "realize", G_CALLBACK (on_realize_cb), NULL);
}

int
main (int argc, char **argv)
{
  g_autoptr (GtkApplication) application = sw_application_new (G_APPLICATION_NON_UNIQUE);

  g_signal_connect (application, "window-added", G_CALLBACK (on_window_added_cb), NULL);
  return g_application_run (G_APPLICATION (application), argc, argv);
}
