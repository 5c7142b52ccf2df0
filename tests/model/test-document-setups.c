/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The setups of a document as a list: names, order, baseline, and undoing all of it. */

#include "car-fixture.h"

#include "model/car/car-json.h"
#include "model/document/document.h"

#include <math.h>

typedef struct {
  SwDocument *document;
  Car *first; /* as it was opened: "As measured", "12 in", "Low" */
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  static const char *const names[] = { "As measured", "12 in", "Low" };
  (void) data;

  f->first = fixture_car ("plain");
  for (guint i = 0; i < 3; i++) {
    g_free (car_setup (f->first, i)->name);
    car_setup (f->first, i)->name = g_strdup (names[i]);
  }
  f->first->baseline = 1;
  f->document = sw_document_new_for_car (car_copy (f->first));
}

static const Car *
car_now (Fixture *f)
{
  return sw_document_get_car (f->document);
}

/* Undone and done again, everything is what it was to the bit. */
static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  while (sw_document_get_redo_label (f->document) != NULL)
    sw_document_redo (f->document);

  g_autoptr (Car) last = car_copy (car_now (f));
  fixture_check_saves (car_now (f));
  while (sw_document_get_undo_label (f->document) != NULL) {
    sw_document_undo (f->document);
    fixture_check_saves (car_now (f));
  }
  g_assert_true (car_equal (car_now (f), f->first));
  g_assert_false (sw_document_is_modified (f->document));
  while (sw_document_get_redo_label (f->document) != NULL)
    sw_document_redo (f->document);
  g_assert_true (car_equal (car_now (f), last));
  g_object_unref (f->document);
  car_free (f->first);
}

static void
check_names (Fixture *f, const char *expected)
{
  GString *names = g_string_new (NULL);

  for (guint i = 0; i < car_now (f)->setups->len; i++)
    g_string_append_printf (names, "%s%s", i > 0 ? "|" : "",
                            car_setup (car_now (f), i)->name);
  g_assert_cmpstr (names->str, ==, expected);
  g_string_free (names, TRUE);
}

static const char *
baseline_name (Fixture *f)
{
  return car_setup (car_now (f), car_now (f)->baseline)->name;
}

static void
test_an_added_setup_is_a_copy_at_the_end (Fixture *f, gconstpointer data)
{
  (void) data;
  sw_document_show_setup (f->document, 1, FALSE);
  sw_document_add_setup (f->document, 1, "15 in");
  check_names (f, "As measured|12 in|Low|15 in");
  g_assert_cmpfloat (car_setup (car_now (f), 3)->mount.inboard, ==,
                     car_setup (f->first, 1)->mount.inboard);
  g_assert_false (car_setup (car_now (f), 3)->is_hidden);
  g_assert_cmpstr (sw_document_get_undo_label (f->document), ==, "Add setup");
  g_assert_cmpuint (car_now (f)->baseline, ==, 1);
}

static void
test_names_become_unique (Fixture *f, gconstpointer data)
{
  (void) data;
  sw_document_add_setup (f->document, 1, "12 in");
  sw_document_add_setup (f->document, 3, NULL);
  sw_document_add_setup (f->document, 0, "12 in (7)");
  sw_document_add_setup (f->document, 0, "12 in (7)");
  sw_document_add_setup (f->document, 0, "(2)");
  sw_document_add_setup (f->document, 0, "(2)");
  check_names (f, "As measured|12 in|Low|12 in (2)|12 in (3)|12 in (7)|12 in (4)|(2)|"
                  "(2) (2)");
}

static void
test_renaming (Fixture *f, gconstpointer data)
{
  (void) data;
  sw_document_rename_setup (f->document, 2, "Low");
  sw_document_rename_setup (f->document, 2, "");
  g_assert_null (sw_document_get_undo_label (f->document));
  sw_document_rename_setup (f->document, 2, "12 in");
  check_names (f, "As measured|12 in|12 in (2)");
  g_assert_cmpstr (sw_document_get_undo_label (f->document), ==, "Rename setup");
  sw_document_rename_setup (f->document, 1, "Gravel");
  g_assert_cmpstr (baseline_name (f), ==, "Gravel");
}

static void
test_the_baseline_moves_along (Fixture *f, gconstpointer data)
{
  (void) data;
  for (guint from = 0; from < 3; from++)
    for (guint to = 0; to < 3; to++) {
      sw_document_move_setup (f->document, from, to);
      g_assert_cmpstr (baseline_name (f), ==, "12 in");
    }
  sw_document_move_setup (f->document, 0, 0);
  while (sw_document_get_undo_label (f->document) != NULL)
    sw_document_undo (f->document);
  sw_document_move_setup (f->document, 0, 2);
  check_names (f, "12 in|Low|As measured");
  g_assert_cmpuint (car_now (f)->baseline, ==, 0);
  sw_document_move_setup (f->document, 2, 1);
  check_names (f, "12 in|As measured|Low");
}

static void
test_removing (Fixture *f, gconstpointer data)
{
  (void) data;
  g_assert_true (sw_document_remove_setup (f->document, 0));
  g_assert_cmpstr (baseline_name (f), ==, "12 in");
  g_assert_true (sw_document_remove_setup (f->document, 0));
  g_assert_cmpstr (baseline_name (f), ==, "Low");
  g_assert_cmpuint (car_now (f)->baseline, ==, 0);
  g_assert_false (sw_document_remove_setup (f->document, 0));
  check_names (f, "Low");
}

static void
test_showing (Fixture *f, gconstpointer data)
{
  (void) data;
  sw_document_show_setup (f->document, 2, TRUE);
  g_assert_null (sw_document_get_undo_label (f->document));
  sw_document_show_setup (f->document, 2, FALSE);
  g_assert_true (car_setup (car_now (f), 2)->is_hidden);
  g_assert_cmpstr (sw_document_get_undo_label (f->document), ==, "Hide setup");
  sw_document_show_setup (f->document, 2, 17);
  g_assert_false (car_setup (car_now (f), 2)->is_hidden);
  g_assert_cmpstr (sw_document_get_undo_label (f->document), ==, "Show setup");
}

static void
test_choosing_the_baseline (Fixture *f, gconstpointer data)
{
  (void) data;
  sw_document_set_baseline (f->document, 1);
  g_assert_null (sw_document_get_undo_label (f->document));
  sw_document_set_baseline (f->document, 2);
  g_assert_cmpstr (baseline_name (f), ==, "Low");
}

/* A file may hold them; the baseline must still be the one that was chosen when the file
 * is read again, which tear_down sees to. */
static void
test_a_baseline_of_a_shared_name_gets_a_number (Fixture *f, gconstpointer data)
{
  (void) data;
  g_free (car_setup (f->first, 2)->name);
  car_setup (f->first, 2)->name = g_strdup ("12 in");
  g_object_unref (f->document);
  f->document = sw_document_new_for_car (car_copy (f->first));

  sw_document_set_baseline (f->document, 2);
  check_names (f, "As measured|12 in|12 in (2)");
  g_assert_cmpuint (car_now (f)->baseline, ==, 2);
  sw_document_undo (f->document);
  check_names (f, "As measured|12 in|12 in");
  sw_document_move_setup (f->document, 2, 0);
  check_names (f, "12 in|As measured|12 in (2)");
  g_assert_cmpuint (car_now (f)->baseline, ==, 2);
}

static void
test_taking_from_another_car (Fixture *f, gconstpointer data)
{
  g_autoptr (Car) other = fixture_car ("corrections");
  const guint indices[] = { 2, 0, 1 };
  const guint own[] = { 1, 1 };
  (void) data;

  sw_document_take_setups (f->document, other, indices, 0);
  g_assert_null (sw_document_get_undo_label (f->document));
  sw_document_take_setups (f->document, other, indices, 3);
  g_assert_cmpuint (car_now (f)->setups->len, ==, 6);
  g_assert_cmpstr (car_setup (car_now (f), 4)->name, ==, "As measured (2)");
  g_assert_false (car_setup (car_now (f), 3)->is_hidden);
  g_assert_cmpfloat (car_setup (car_now (f), 5)->corrections.ball_joint_spacer_mm, ==,
                     20.0);
  g_assert_nonnull (car_setup (car_now (f), 5)->unknown_corrections);
  g_assert_cmpuint (car_now (f)->baseline, ==, 1);
  sw_document_take_setups (f->document, car_now (f), own, 2);
  g_assert_cmpstr (car_setup (car_now (f), 7)->name, ==, "12 in (3)");
}

static void
test_corrections_are_a_step (Fixture *f, gconstpointer data)
{
  CarCorrections c = { .ball_joint_spacer_mm = 20.0, .camber_bolt_deg = -1.0 / 3.0 };
  (void) data;

  sw_document_set_corrections (f->document, 2, &c, "Correct hardware");
  sw_document_set_corrections (f->document, 2, &c, "Same");
  g_assert_cmpstr (sw_document_get_undo_label (f->document), ==, "Correct hardware");
  g_assert_cmpfloat (car_setup (car_now (f), 2)->corrections.camber_bolt_deg, ==,
                     -1.0 / 3.0);

  sw_document_begin (f->document, "Drag spacer");
  for (int i = 0; i <= 20; i++) {
    c.ball_joint_spacer_mm = 20.0 + i;
    sw_document_set_corrections (f->document, 2, &c, "");
  }
  sw_document_end (f->document);
  sw_document_undo (f->document);
  g_assert_cmpfloat (car_setup (car_now (f), 2)->corrections.ball_joint_spacer_mm, ==,
                     20.0);
}

static void
test_minus_zero_is_no_correction (Fixture *f, gconstpointer data)
{
  const CarCorrections c = { .rack_raise_mm = -0.0 };
  (void) data;

  sw_document_set_corrections (f->document, 2, &c, "Nothing");
  g_assert_null (sw_document_get_undo_label (f->document));
  g_assert_false (signbit (car_setup (car_now (f), 2)->corrections.rack_raise_mm));
}

static void
test_moving_the_mount_leaves_the_corrections (Fixture *f, gconstpointer data)
{
  const CarCorrections c = { .rack_raise_mm = 3.0 };
  const Adjustment bare = { .lowering = 11.0 };
  (void) data;

  sw_document_set_corrections (f->document, 2, &c, "Raise rack");
  sw_document_set_setup (f->document, 2, &bare, "Lower");
  g_assert_cmpfloat (car_setup (car_now (f), 2)->corrections.rack_raise_mm, ==, 3.0);
  g_assert_cmpfloat (car_setup (car_now (f), 2)->lowering_mm, ==, 11.0);
}

static void
test_no_more_than_a_file_may_have (Fixture *f, gconstpointer data)
{
  const guint two[] = { 0, 1 };
  (void) data;

  sw_document_begin (f->document, "Add many");
  while (car_now (f)->setups->len < CAR_MOST_SETUPS - 1)
    sw_document_add_setup_like (f->document, car_setup (car_now (f), 0));
  sw_document_end (f->document);
  sw_document_take_setups (f->document, f->first, two, 2);
  g_assert_cmpuint (car_now (f)->setups->len, ==, CAR_MOST_SETUPS);
  fixture_check_saves (car_now (f));

  sw_document_add_setup (f->document, 0, NULL);
  sw_document_take_setups (f->document, f->first, two, 2);
  g_assert_cmpuint (car_now (f)->setups->len, ==, CAR_MOST_SETUPS);
  g_assert_cmpstr (sw_document_get_undo_label (f->document), ==,
                   "Take setups of another car");
  sw_document_undo (f->document);
  g_assert_cmpuint (car_now (f)->setups->len, ==, CAR_MOST_SETUPS - 1);
}

#define ADD(path, test) g_test_add (path, Fixture, NULL, set_up, test, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("/document-setups/add", test_an_added_setup_is_a_copy_at_the_end);
  ADD ("/document-setups/names", test_names_become_unique);
  ADD ("/document-setups/rename", test_renaming);
  ADD ("/document-setups/move", test_the_baseline_moves_along);
  ADD ("/document-setups/remove", test_removing);
  ADD ("/document-setups/show", test_showing);
  ADD ("/document-setups/baseline", test_choosing_the_baseline);
  ADD ("/document-setups/shared-name", test_a_baseline_of_a_shared_name_gets_a_number);
  ADD ("/document-setups/most", test_no_more_than_a_file_may_have);
  ADD ("/document-setups/take", test_taking_from_another_car);
  ADD ("/document-setups/corrections", test_corrections_are_a_step);
  ADD ("/document-setups/minus-zero", test_minus_zero_is_no_correction);
  ADD ("/document-setups/mount", test_moving_the_mount_leaves_the_corrections);
  return g_test_run ();
}
