/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "demo-window.h"

#include "model/file/data-path.h"
#include "window/application.h"

GFile *
demo_file (const char *name)
{
  g_autofree char *path = data_path (name);

  return g_file_new_for_path (path);
}

SwBench *
demo_bench (const char *name)
{
  g_autoptr (GFile) file = demo_file (name);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwDocument) document = sw_document_load (file, &error);

  g_assert_no_error (error);
  return sw_bench_new (document);
}

GtkApplication *
demo_application (int *argc, char ***argv)
{
  gtk_test_init (argc, argv, NULL);

  GtkApplication *application = sw_application_new (G_APPLICATION_NON_UNIQUE);
  g_assert_true (g_application_register (G_APPLICATION (application), NULL, NULL));
  return application;
}

SwWindow *
demo_window_open (GtkApplication *application, const char *name)
{
  g_autoptr (GFile) file = demo_file (name);

  return demo_window_open_file (application, file);
}

SwWindow *
demo_window_open_file (GtkApplication *application, GFile *file)
{
  SwWindow *window = sw_window_new (application);

  g_assert_true (sw_window_open (window, file));
  gtk_window_present (GTK_WINDOW (window));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  return window;
}

void
demo_window_close (SwWindow *window)
{
  gtk_window_destroy (GTK_WINDOW (window));
  run_idle ();
}

void
run_idle (void)
{
  while (g_main_context_iteration (NULL, FALSE))
    ;
}

void
add_one (int *count)
{
  (*count)++;
}
