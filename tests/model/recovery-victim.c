/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A program that is killed while it holds unsaved work: opens the file named by its first
 * argument, if there is one, moves the mount 7.25 mm inboard, waits until the copy is
 * there as a program with a main loop does, says so and stays. */

#include "car-fixture.h"

#include "model/document/document.h"
#include "model/document/recovery.h"

#include <stdio.h>

static gboolean
on_later_cb (gpointer data)
{
  (void) data;
  puts ("kept");
  fflush (stdout);
  return G_SOURCE_REMOVE;
}

static SwDocument *
open_document (int argc, char **argv)
{
  if (argc < 2)
    return sw_document_new_for_car (fixture_car ("plain"));

  g_autoptr (GFile) file = g_file_new_for_path (argv[1]);
  g_autoptr (GError) error = NULL;
  SwDocument *document = sw_document_load (file, &error);

  g_assert_no_error (error);
  return document;
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_autoptr (SwDocument) document = open_document (argc, argv);
  g_autoptr (Recovery) recovery = recovery_watch (document, 0);
  g_autoptr (GMainLoop) loop = g_main_loop_new (NULL, FALSE);
  Adjustment adjustment = car_adjustment (car_setup (sw_document_get_car (document), 0));

  adjustment.mount.inboard = 7.25;
  sw_document_set_setup (document, 0, &adjustment, "Move mount");
  g_timeout_add_full (G_PRIORITY_LOW, 50, on_later_cb, NULL, NULL);
  g_main_loop_run (loop);
  return 0;
}
