/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Windows under hard use: opened and closed a hundred times (a thousand with -m
 * thorough), nothing stays behind and memory in use does not grow; files and cars of odd
 * names are shown without a warning. */

#include "car-fixture.h"
#include "demo-window.h"
#include "hard-places.h"

#include "model/car/car-json.h"
#include "model/file/file-replace.h"
#include "window/question.h"
#include "window/window-private.h"

#include <glib/gstdio.h>
#include <malloc.h>

#define WARM_UP 40 /* cycles in which caches of fonts, icons and styles fill */
/* Bytes a cycle; some 700 were measured over 1000 cycles. A menu that each window read
 * anew would be 20 000 (GTK 4.8's builder keeps 1100 of every item), the study alone of a
 * window that stayed half a million. */
#define MOST_GROWTH 4000.0

static GtkApplication *application;

static void
close_window (SwWindow *window)
{
  gpointer weak = window;

  g_object_add_weak_pointer (weak, &weak);
  demo_window_close (window);
  g_assert_null (weak);
  g_assert_cmpuint (g_list_model_get_n_items (gtk_window_get_toplevels ()), ==, 0);
}

static void
show_question (SwWindow *window, guint index)
{
  guint n;
  const Question *all = questions (&n);

  g_action_group_activate_action (G_ACTION_GROUP (window), "question",
                                  g_variant_new_string (all[index % n].name));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
}

static GtkWindow *
other_window (SwWindow *window)
{
  GListModel *all = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (all); i++) {
    g_autoptr (GtkWindow) other = g_list_model_get_item (all, i);

    if (other != GTK_WINDOW (window))
      return other;
  }
  return NULL;
}

/* One of the windows that a window opens. */
static void
open_and_close_another (SwWindow *window, guint index)
{
  static const char *const actions[] = { "export", "restore", "explain",
                                         "measured-points" };
  const char *action = actions[index % G_N_ELEMENTS (actions)];

  g_action_group_activate_action (G_ACTION_GROUP (window), action, NULL);
  GtkWindow *other = other_window (window);
  g_assert_nonnull (other);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (other));
  gtk_window_destroy (other);
  run_idle ();
}

static void
cycle (GFile *file, guint index)
{
  SwWindow *window = demo_window_open_file (application, file);

  show_question (window, index);
  open_and_close_another (window, index / 2);
  close_window (window);
}

static double
bytes_in_use (void)
{
  const struct mallinfo2 info = mallinfo2 ();

  return (double) info.uordblks + (double) info.hblkhd;
}

static void
test_open_and_close (void)
{
  const guint n = g_test_thorough () ? 1000 : 100;
  g_autoptr (GFile) file = demo_file ("wren.swcar");

  if (bytes_in_use () == 0.0) {
    g_test_message ("a sanitizer keeps the account: its leak check decides");
    for (guint i = 0; i < 8; i++)
      cycle (file, i);
    return;
  }
  for (guint i = 0; i < WARM_UP; i++)
    cycle (file, i);
  const double before = bytes_in_use ();
  for (guint i = 0; i < n; i++)
    cycle (file, i);
  const double growth = (bytes_in_use () - before) / n;

  g_test_message ("%u cycles: %+.0f bytes a cycle, %.1f MB in use", n, growth,
                  bytes_in_use () / 1e6);
  g_assert_cmpfloat (growth, <, MOST_GROWTH);
}

/* The wren under that name, changed, saved, changed beside it, and asked about. */
static void
use_file (GFile *file)
{
  g_autoptr (Car) car = fixture_demo ("wren");
  SwWindow *window;

  g_assert_true (car_save (car, file, NULL));
  window = demo_window_open_file (application, file);
  sw_bench_set_mount (sw_window_get_bench (window), (MountOffset){ 3.0, 0.0, 0.0 });
  window_save (window);
  g_assert_false (
      sw_document_is_modified (sw_bench_get_document (sw_window_get_bench (window))));
  window_ask_overwrite (window);
  GtkWindow *question = other_window (window);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (question));
  gtk_window_destroy (question);
  run_idle ();
  close_window (window);
}

/* Neither a file that is no car nor one that is not there changes the car. */
static void
refuse_file (GFile *file, SwWindow *window)
{
  g_autofree char *path = g_file_get_path (file);

  g_assert_true (file_replace (path, "{", 1, NULL));
  g_assert_false (sw_window_open (window, file));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  g_assert_cmpint (g_unlink (path), ==, 0);
  g_assert_false (sw_window_open (window, file));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
}

static void
test_odd_names_of_files (void)
{
  char *folder = fixture_folder_new ();

  for (guint i = 0; i < N_ODD_NAMES; i++) {
    g_autofree char *name = odd_name (i, ".swcar");
    g_autoptr (GFile) file = g_file_new_build_filename (folder, name, NULL);

    use_file (file);
    SwWindow *window = demo_window_open_file (application, file);
    refuse_file (file, window);
    close_window (window);
  }
  fixture_folder_remove (folder);
}

/* From right to left, turned about, with line feeds, and far longer than any window. */
static void
test_odd_names_of_cars (void)
{
  g_autofree char *path = fixture_path ("fuzz", "cars", "names.swcar", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  SwWindow *window = demo_window_open_file (application, file);
  guint n;

  questions (&n);
  for (guint i = 0; i < n; i++)
    show_question (window, i);
  for (guint i = 0; i < 4; i++)
    open_and_close_another (window, i);
  window_ask_close (window);
  GtkWindow *question = other_window (window);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (question));
  gtk_window_destroy (question);
  close_window (window);
}

int
main (int argc, char **argv)
{
  int status;

  application = demo_application (&argc, &argv);
  g_test_add_func ("/endurance/odd-names-of-files", test_odd_names_of_files);
  g_test_add_func ("/endurance/odd-names-of-cars", test_odd_names_of_cars);
  g_test_add_func ("/endurance/open-and-close", test_open_and_close);
  status = g_test_run ();
  g_object_unref (application);
  return status;
}
