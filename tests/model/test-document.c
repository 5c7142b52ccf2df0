/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "car-fixture.h"

#include "model/document/document.h"
#include "model/document/history.h"

#include <glib/gstdio.h>

typedef struct {
  SwDocument *document;
  Car *first; /* as it was opened */
  guint n_changed, n_modified, n_can_undo, n_can_redo, n_title;
} Fixture;

static void
count (guint *n)
{
  (*n)++;
}

static void
set_up (Fixture *f, gconstpointer data)
{
  (void) data;
  f->first = fixture_car ("unknown-members");
  f->document = sw_document_new_for_car (car_copy (f->first));
  g_signal_connect_swapped (f->document, "changed", G_CALLBACK (count), &f->n_changed);
  g_signal_connect_swapped (f->document, "notify::modified", G_CALLBACK (count),
                            &f->n_modified);
  g_signal_connect_swapped (f->document, "notify::can-undo", G_CALLBACK (count),
                            &f->n_can_undo);
  g_signal_connect_swapped (f->document, "notify::can-redo", G_CALLBACK (count),
                            &f->n_can_redo);
  g_signal_connect_swapped (f->document, "notify::title", G_CALLBACK (count),
                            &f->n_title);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  g_object_unref (f->document);
  car_free (f->first);
}

static void
move_mount (Fixture *f, double inboard, const char *label)
{
  const Car *car = sw_document_get_car (f->document);
  Adjustment adjustment = car_adjustment (car_setup (car, 1));

  adjustment.mount.inboard = inboard;
  sw_document_set_setup (f->document, 1, &adjustment, label);
}

static double
inboard_now (Fixture *f)
{
  return car_setup (sw_document_get_car (f->document), 1)->mount.inboard;
}

static gboolean
flag (Fixture *f, const char *name)
{
  gboolean value;

  g_object_get (f->document, name, &value, NULL);
  return value;
}

static void
test_an_edit_is_a_step (Fixture *f, gconstpointer data)
{
  (void) data;
  g_assert_false (flag (f, "can-undo"));
  g_assert_null (sw_document_get_undo_label (f->document));

  move_mount (f, 13.37, "Move mount");
  g_assert_cmpfloat (inboard_now (f), ==, 13.37);
  g_assert_cmpuint (f->n_changed, ==, 1);
  g_assert_true (flag (f, "can-undo"));
  g_assert_false (flag (f, "can-redo"));
  g_assert_true (flag (f, "modified"));
  g_assert_cmpstr (sw_document_get_undo_label (f->document), ==, "Move mount");
  g_assert_null (sw_document_get_redo_label (f->document));
}

static void
test_undo_returns_to_the_bit (Fixture *f, gconstpointer data)
{
  (void) data;
  move_mount (f, 1.0 / 3.0, "One");
  g_autoptr (Car) third = car_copy (sw_document_get_car (f->document));
  move_mount (f, 2.0 / 3.0, "Two");

  sw_document_undo (f->document);
  g_assert_true (car_equal (sw_document_get_car (f->document), third));
  g_assert_cmpstr (sw_document_get_undo_label (f->document), ==, "One");
  g_assert_cmpstr (sw_document_get_redo_label (f->document), ==, "Two");
  sw_document_undo (f->document);
  g_assert_true (car_equal (sw_document_get_car (f->document), f->first));
  g_assert_false (flag (f, "modified"));
  g_assert_false (flag (f, "can-undo"));
  sw_document_redo (f->document);
  g_assert_true (car_equal (sw_document_get_car (f->document), third));
  g_assert_cmpuint (f->n_changed, ==, 5);
}

static void
test_undo_at_the_end_does_nothing (Fixture *f, gconstpointer data)
{
  (void) data;
  sw_document_undo (f->document);
  sw_document_redo (f->document);
  g_assert_cmpuint (f->n_changed, ==, 0);
  g_assert_true (car_equal (sw_document_get_car (f->document), f->first));
}

static void
test_setting_what_is_there_is_no_step (Fixture *f, gconstpointer data)
{
  (void) data;
  move_mount (f, 12.0, "Same");
  sw_document_set_name (f->document, f->first->name, "Same");
  g_assert_cmpuint (f->n_changed, ==, 0);
  g_assert_null (sw_document_get_undo_label (f->document));
}

static void
test_a_new_edit_forgets_what_was_undone (Fixture *f, gconstpointer data)
{
  (void) data;
  move_mount (f, 1.0, "One");
  sw_document_undo (f->document);
  move_mount (f, 2.0, "Two");
  g_assert_false (flag (f, "can-redo"));
  sw_document_redo (f->document);
  g_assert_cmpfloat (inboard_now (f), ==, 2.0);
}

static void
test_a_drag_is_one_step (Fixture *f, gconstpointer data)
{
  (void) data;
  sw_document_begin (f->document, "Drag mount");
  g_assert_true (sw_document_is_changing (f->document));
  for (int i = 1; i <= 50; i++)
    move_mount (f, 12.0 + i / 10.0, "not told");
  g_assert_cmpuint (f->n_changed, ==, 50);
  g_assert_false (flag (f, "can-undo"));
  sw_document_end (f->document);

  g_assert_false (sw_document_is_changing (f->document));
  g_assert_cmpstr (sw_document_get_undo_label (f->document), ==, "Drag mount");
  sw_document_undo (f->document);
  g_assert_true (car_equal (sw_document_get_car (f->document), f->first));
  g_assert_false (flag (f, "can-undo"));
  sw_document_redo (f->document);
  g_assert_cmpfloat (inboard_now (f), ==, 17.0);
}

static void
test_a_drag_back_to_its_start_is_no_step (Fixture *f, gconstpointer data)
{
  (void) data;
  sw_document_begin (f->document, "Drag mount");
  move_mount (f, 14.0, "");
  move_mount (f, 12.0, "");
  sw_document_end (f->document);
  g_assert_false (flag (f, "can-undo"));
  g_assert_false (flag (f, "modified"));
}

static void
test_cancel_puts_back_to_the_bit (Fixture *f, gconstpointer data)
{
  (void) data;
  move_mount (f, 0.1, "Before");
  g_autoptr (Car) before = car_copy (sw_document_get_car (f->document));
  sw_document_begin (f->document, "Drag mount");
  move_mount (f, 14.0, "");
  sw_document_cancel (f->document);

  g_assert_false (sw_document_is_changing (f->document));
  g_assert_true (car_equal (sw_document_get_car (f->document), before));
  g_assert_cmpuint (f->n_changed, ==, 3);
  g_assert_cmpstr (sw_document_get_undo_label (f->document), ==, "Before");
  g_assert_null (sw_document_get_redo_label (f->document));
}

static void
test_undo_waits_for_the_drag (Fixture *f, gconstpointer data)
{
  (void) data;
  move_mount (f, 1.0, "Before");
  sw_document_begin (f->document, "Drag mount");
  move_mount (f, 2.0, "");
  sw_document_undo (f->document);
  g_assert_cmpfloat (inboard_now (f), ==, 2.0);
  sw_document_end (f->document);
  sw_document_undo (f->document);
  g_assert_cmpfloat (inboard_now (f), ==, 1.0);
}

static void
test_a_begin_inside_a_change_ends_it (Fixture *f, gconstpointer data)
{
  (void) data;
  sw_document_begin (f->document, "First");
  move_mount (f, 1.0, "");
  sw_document_begin (f->document, "Second");
  move_mount (f, 2.0, "");
  sw_document_end (f->document);
  g_assert_cmpstr (sw_document_get_undo_label (f->document), ==, "Second");
  sw_document_undo (f->document);
  g_assert_cmpstr (sw_document_get_undo_label (f->document), ==, "First");
}

static void
test_properties_tell_only_what_changes (Fixture *f, gconstpointer data)
{
  (void) data;
  move_mount (f, 1.0, "One");
  move_mount (f, 2.0, "Two");
  move_mount (f, 3.0, "Three");
  g_assert_cmpuint (f->n_modified, ==, 1);
  g_assert_cmpuint (f->n_can_undo, ==, 1);
  g_assert_cmpuint (f->n_can_redo, ==, 0);
  sw_document_undo (f->document);
  g_assert_cmpuint (f->n_can_redo, ==, 1);
  g_assert_cmpuint (f->n_title, ==, 0);
  sw_document_set_name (f->document, "Another", "Rename");
  g_assert_cmpuint (f->n_title, ==, 1);
}

static void
test_the_title_is_the_name_or_the_file (Fixture *f, gconstpointer data)
{
  g_autofree char *named = NULL, *unnamed = NULL;
  (void) data;

  sw_document_set_name (f->document, "Reed bunting", "Rename");
  g_object_get (f->document, "title", &named, NULL);
  g_assert_cmpstr (named, ==, "Reed bunting");
  sw_document_set_name (f->document, "", "Rename");
  g_object_get (f->document, "title", &unnamed, NULL);
  g_assert_cmpstr (unnamed, ==, "Unnamed car");
}

static void
test_saved_is_unmodified_and_back_to_saved_too (Fixture *f, gconstpointer data)
{
  g_autofree char *folder = fixture_folder_new ();
  g_autofree char *path = g_build_filename (folder, "car.swcar", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  (void) data;

  g_assert_null (sw_document_get_file (f->document));
  move_mount (f, 1.0, "One");
  g_assert_true (sw_document_save (f->document, file, &error));
  g_assert_no_error (error);
  g_assert_false (flag (f, "modified"));
  g_assert_true (g_file_equal (sw_document_get_file (f->document), file));
  move_mount (f, 2.0, "Two");
  g_assert_true (flag (f, "modified"));
  sw_document_undo (f->document);
  g_assert_false (flag (f, "modified"));
  sw_document_undo (f->document);
  g_assert_true (flag (f, "modified"));
  sw_document_redo (f->document);

  g_autoptr (SwDocument) again = sw_document_load (file, &error);
  g_assert_no_error (error);
  g_assert_true (
      car_equal (sw_document_get_car (again), sw_document_get_car (f->document)));
  g_assert_false (sw_document_is_modified (again));
  fixture_folder_remove (g_steal_pointer (&folder));
}

static void
test_a_failed_save_changes_nothing (Fixture *f, gconstpointer data)
{
  g_autoptr (GFile) file = g_file_new_for_path ("/nowhere/car.swcar");
  g_autoptr (GError) error = NULL;
  (void) data;

  move_mount (f, 1.0, "One");
  g_assert_false (sw_document_save (f->document, file, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND);
  g_assert_true (flag (f, "modified"));
  g_assert_null (sw_document_get_file (f->document));
  g_assert_cmpfloat (inboard_now (f), ==, 1.0);
}

static void
test_a_bad_file_is_no_document (void)
{
  g_autofree char *path = fixture_path ("cars", "bad", "coordinate-text.swcar", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;

  g_assert_null (sw_document_load (file, &error));
  g_assert_cmpstr (error->message, ==, "corner.ball_joint[1] must be a number.");
}

static void
test_old_steps_are_forgotten (Fixture *f, gconstpointer data)
{
  int n = 0;
  (void) data;

  for (int i = 1; i <= HISTORY_MOST_STEPS + 20; i++)
    move_mount (f, i / 1000.0, "Step");
  while (flag (f, "can-undo")) {
    sw_document_undo (f->document);
    n++;
  }
  g_assert_cmpint (n, ==, HISTORY_MOST_STEPS);
  g_assert_cmpfloat (inboard_now (f), ==, 20 / 1000.0);
}

#define ADD(path, test) g_test_add (path, Fixture, NULL, set_up, test, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("/document/edit", test_an_edit_is_a_step);
  ADD ("/document/undo", test_undo_returns_to_the_bit);
  ADD ("/document/undo-at-end", test_undo_at_the_end_does_nothing);
  ADD ("/document/same", test_setting_what_is_there_is_no_step);
  ADD ("/document/new-edit", test_a_new_edit_forgets_what_was_undone);
  ADD ("/document/drag", test_a_drag_is_one_step);
  ADD ("/document/drag-back", test_a_drag_back_to_its_start_is_no_step);
  ADD ("/document/cancel", test_cancel_puts_back_to_the_bit);
  ADD ("/document/undo-in-drag", test_undo_waits_for_the_drag);
  ADD ("/document/begin-twice", test_a_begin_inside_a_change_ends_it);
  ADD ("/document/notify", test_properties_tell_only_what_changes);
  ADD ("/document/title", test_the_title_is_the_name_or_the_file);
  ADD ("/document/save", test_saved_is_unmodified_and_back_to_saved_too);
  ADD ("/document/failed-save", test_a_failed_save_changes_nothing);
  g_test_add_func ("/document/bad-file", test_a_bad_file_is_no_document);
  ADD ("/document/limit", test_old_steps_are_forgotten);
  return g_test_run ();
}
