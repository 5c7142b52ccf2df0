/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The report's pages in process: what a printer gets, and that their window lets go. */

#include "demo-window.h"

#include "window/paper/paper-print.h"
#include "window/paper/report-pages.h"
#include "window/paper/report-window.h"

#include <glib/gstdio.h>
#include <string.h>

static guint
count (const char *data, gsize length, const char *text)
{
  const gsize n = strlen (text);
  guint found = 0;

  for (gsize i = 0; i + n <= length; i++)
    found += memcmp (data + i, text, n) == 0;
  return found;
}

/* The bytes that a printer to a file gets. */
static char *
print (ReportPages *pages, gsize *length)
{
  g_autofree char *folder = g_dir_make_tmp ("strutwright-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "report.pdf", NULL);
  g_autoptr (GtkPrintOperation) operation =
                 paper_print_operation_new (&report_paper, pages);
  g_autoptr (GError) error = NULL;
  char *printed = NULL;

  report_paper.free (pages); /* it has a copy */
  gtk_print_operation_set_export_filename (operation, path);
  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_EXPORT, NULL, &error);
  g_assert_no_error (error);
  g_assert_true (g_file_get_contents (path, &printed, length, NULL));
  g_unlink (path);
  g_rmdir (folder);
  return printed;
}

/* A4, ISO 216: 210 by 297 mm are 595.276 by 841.890 points; Letter: 8.5 by 11 inches of
 * 72, which GTK keeps as mm. */
static void
test_all_pages_are_printed_on_their_paper (void)
{
  g_autoptr (SwBench) bench = demo_bench ("wren.swcar");
  ReportPages *pages = report_pages_new (bench);
  gsize length;

  pages->report.paper = paper_a4 ();
  g_autofree char *a4 = print (pages, &length);
  g_assert_cmpuint (count (a4, length, "/MediaBox [ 0 0 595.27"), ==, 8);
  g_assert_cmpuint (count (a4, length, "/Subtype /Image"), ==, 0);

  pages = report_pages_new (bench);
  pages->report.paper = paper_letter ();
  pages->report.has[REPORT_HEIGHT] = false;
  g_autofree char *letter = print (pages, &length);
  g_assert_cmpuint (count (letter, length, "/MediaBox [ 0 0 611.99998"), ==, 8);
}

/* What is looked at stays as it was when the window behind goes on. */
static void
test_pages_hold_their_own_car (void)
{
  g_autoptr (SwBench) bench = demo_bench ("wren.swcar");
  ReportPages *pages = report_pages_new (bench);
  g_autofree char *name = report_paper.name (pages);

  sw_bench_set_lowering (bench, 33.0);
  g_assert_false (
      car_equal (pages->car, sw_document_get_car (sw_bench_get_document (bench))));
  g_assert_cmpstr (name, ==, "Wren 1.3 hill-climb hatch – report");
  report_pages_lay_out (pages);
  g_assert_cmpuint (report_n_pages (pages->press), ==, N_REPORT_PARTS + 1);
  report_paper.free (pages);
}

static void
test_the_window_dies_when_closed (void)
{
  SwBench *bench = demo_bench ("wren.swcar");

  for (int i = 0; i < 5; i++) {
    report_window_open (NULL, bench);
    g_autoptr (GtkWindow) window = g_list_model_get_item (gtk_window_get_toplevels (), 0);
    GtkWindow *alive = window;

    gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
    g_object_add_weak_pointer (G_OBJECT (window), (gpointer *) &alive);
    g_clear_object (&window);
    gtk_window_close (alive);
    run_idle ();
    g_assert_null (alive);
  }
  g_object_add_weak_pointer (G_OBJECT (bench), (gpointer *) &bench);
  g_object_unref (bench);
  g_assert_null (bench);
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/report-pages/print", test_all_pages_are_printed_on_their_paper);
  g_test_add_func ("/report-pages/own-car", test_pages_hold_their_own_car);
  g_test_add_func ("/report-pages/dies", test_the_window_dies_when_closed);
  return g_test_run ();
}
