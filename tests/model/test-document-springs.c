/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Springs, rods and cases of load of a document, in drags, and undoing all of it. */

#include "car-fixture.h"

#include "model/car/car-json.h"
#include "model/document/document.h"

#include <math.h>
#include <string.h>

typedef struct {
  SwDocument *document;
  Car *first; /* as it was opened */
  int n_changed;
} Fixture;

static void
on_changed_cb (SwDocument *document, gpointer data)
{
  (void) document;
  ((Fixture *) data)->n_changed++;
}

static void
set_up (Fixture *f, gconstpointer data)
{
  f->first = fixture_car (data);
  f->document = sw_document_new_for_car (car_copy (f->first));
  f->n_changed = 0;
  g_signal_connect (f->document, "changed", G_CALLBACK (on_changed_cb), f);
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
  g_autoptr (Car) last = car_copy (car_now (f));
  (void) data;

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

static CarSprings
soft_coil (void)
{
  CarSprings springs = car_springs_none ();

  springs.coil.is_there = TRUE;
  springs.coil.rate_n_per_mm = 18.0;
  springs.coil.free_length_mm = 330.0;
  springs.coil.perch_mm = 140.0;
  return springs;
}

static void
test_a_setup_gets_springs_of_its_own (Fixture *f, gconstpointer data)
{
  const CarSprings coil = soft_coil ();
  (void) data;

  g_assert_true (sw_document_set_springs (f->document, 1, &coil, "Coil"));
  g_assert_true (car_setup (car_now (f), 1)->has_springs);
  g_assert_cmpmem (car_setup_springs (car_now (f), 1), sizeof coil, &coil, sizeof coil);
  g_assert_cmpstr (sw_document_get_undo_label (f->document), ==, "Coil");
  g_assert_cmpint (f->n_changed, ==, 1);

  g_assert_true (sw_document_set_springs (f->document, 1, &coil, "Again"));
  g_assert_cmpint (f->n_changed, ==, 1);

  g_assert_true (sw_document_set_springs (f->document, 1, NULL, "As the car"));
  g_assert_false (car_setup (car_now (f), 1)->has_springs);
  g_assert_true (car_equal (car_now (f), f->first));
  g_assert_true (sw_document_set_springs (f->document, 1, NULL, "Again"));
  g_assert_cmpint (f->n_changed, ==, 2);
}

static void
test_no_spring_at_all_can_be_its_own (Fixture *f, gconstpointer data)
{
  const CarSprings none = car_springs_none ();
  (void) data;

  g_assert_true (sw_document_set_springs (f->document, 0, &none, "None"));
  g_assert_true (car_setup (car_now (f), 0)->has_springs);
  g_assert_cmpint (f->n_changed, ==, 1);
}

static void
test_the_car_gets_springs_and_rod (Fixture *f, gconstpointer data)
{
  const CarSprings coil = soft_coil ();
  CarRod rod = car_rod_none ();
  (void) data;

  rod.diameter_mm = 25.0;
  g_assert_true (sw_document_set_car_springs (f->document, &coil, "Coil"));
  g_assert_true (sw_document_set_car_springs (f->document, &coil, "Again"));
  g_assert_true (sw_document_set_car_rod (f->document, &rod, "Rod"));
  g_assert_true (sw_document_set_car_rod (f->document, &rod, "Again"));
  g_assert_cmpint (f->n_changed, ==, 2);
  g_assert_cmpfloat (car_setup_springs (car_now (f), 0)->coil.perch_mm, ==, 140.0);
  g_assert_cmpfloat (car_setup_rod (car_now (f), 0).diameter_mm, ==, 25.0);
}

static void
test_a_setup_gets_a_rod_of_its_own (Fixture *f, gconstpointer data)
{
  CarRod rod = car_rod_none ();
  (void) data;

  rod.diameter_mm = 40.0;
  rod.bush_spacing_mm = 150.0;
  g_assert_true (sw_document_set_rod (f->document, 2, &rod, "Inverted"));
  g_assert_true (sw_document_set_rod (f->document, 2, &rod, "Again"));
  g_assert_cmpfloat (car_setup_rod (car_now (f), 2).bush_spacing_mm, ==, 150.0);
  g_assert_cmpint (f->n_changed, ==, 1);
  g_assert_true (sw_document_set_rod (f->document, 2, NULL, "As the car"));
  g_assert_false (car_setup (car_now (f), 2)->has_rod);
  g_assert_true (sw_document_set_rod (f->document, 2, NULL, "Again"));
  g_assert_cmpint (f->n_changed, ==, 2);
}

static void
test_a_drag_is_one_step (Fixture *f, gconstpointer data)
{
  CarSprings springs = soft_coil ();
  (void) data;

  sw_document_begin (f->document, "Move perch");
  for (int i = 0; i < 40; i++) {
    springs.coil.perch_mm = 140.0 + i / 7.0;
    g_assert_true (sw_document_set_springs (f->document, 0, &springs, "ignored"));
  }
  sw_document_end (f->document);
  g_assert_cmpstr (sw_document_get_undo_label (f->document), ==, "Move perch");
  g_assert_cmpint (f->n_changed, ==, 40);
  sw_document_undo (f->document);
  g_assert_true (car_equal (car_now (f), f->first));
  g_assert_null (sw_document_get_undo_label (f->document));
  sw_document_redo (f->document);

  sw_document_begin (f->document, "Move perch");
  springs.coil.perch_mm = 170.0;
  g_assert_true (sw_document_set_springs (f->document, 0, &springs, "ignored"));
  sw_document_cancel (f->document);
  g_assert_cmpfloat (car_setup_springs (car_now (f), 0)->coil.perch_mm, ==,
                     140.0 + 39 / 7.0);
}

static void
test_what_no_file_holds_is_refused (Fixture *f, gconstpointer data)
{
  CarSprings springs = soft_coil ();
  CarRod rod = car_rod_none ();
  CarLoadCase cases[2] = { { "Bump", 0.0, 0.0, 2.0, 0.0 },
                           { "Bump", 0.0, 0.0, 3.0, 0.0 } };
  (void) data;

  springs.coil.rate_n_per_mm = -1.0;
  rod.modulus_gpa = NAN;
  g_assert_false (sw_document_set_springs (f->document, 0, &springs, "Coil"));
  g_assert_false (sw_document_set_car_springs (f->document, &springs, "Coil"));
  g_assert_false (sw_document_set_rod (f->document, 0, &rod, "Rod"));
  g_assert_false (sw_document_set_car_rod (f->document, &rod, "Rod"));
  g_assert_false (sw_document_set_load_cases (f->document, cases, 2, "Cases"));
  g_assert_cmpint (f->n_changed, ==, 0);
  g_assert_true (car_equal (car_now (f), f->first));
}

/* So that what is in hand is what the file will have. */
static void
test_what_is_not_there_loses_its_numbers (Fixture *f, gconstpointer data)
{
  CarSprings springs = soft_coil ();
  const CarSprings none = car_springs_none ();
  (void) data;

  springs.helper.rate_n_per_mm = 9.0;
  springs.bar.sections[3].outer_mm = 22.0;
  springs.coil.table.x[5] = 22.0;
  springs.coil.lower_outboard_mm = -0.0;
  g_assert_true (sw_document_set_springs (f->document, 0, &springs, "Coil"));

  const CarSprings *now = car_setup_springs (car_now (f), 0);
  g_assert_cmpmem (&now->helper, sizeof now->helper, &none.helper, sizeof none.helper);
  g_assert_cmpmem (&now->bar, sizeof now->bar, &none.bar, sizeof none.bar);
  g_assert_cmpfloat (now->coil.table.x[5], ==, 0.0);
  g_assert_false (signbit (now->coil.lower_outboard_mm));
}

static void
test_cases_are_set_and_left_to_the_usual_ones (Fixture *f, gconstpointer data)
{
  CarLoadCase cases[LOAD_CASES_MOST];
  const gsize n = car_load_cases_usual (cases);
  (void) data;

  cases[1].lateral_g = 0.95;
  g_assert_true (sw_document_set_load_cases (f->document, cases, n, "Cases"));
  g_assert_true (sw_document_set_load_cases (f->document, cases, n, "Again"));
  g_assert_cmpint (f->n_changed, ==, 1);
  g_assert_cmpuint (car_now (f)->n_load_cases, ==, n);
  g_assert_cmpfloat (car_now (f)->load_cases[1].lateral_g, ==, 0.95);
  fixture_check_saves (car_now (f));
  g_assert_true (sw_document_set_load_cases (f->document, NULL, 0, "Usual"));
  g_assert_cmpuint (car_now (f)->n_load_cases, ==, 0);
}

static gboolean
writes (Fixture *f, const char *member)
{
  g_autofree char *text = car_to_json (car_now (f), NULL);

  return strstr (text, member) != NULL;
}

/* What would lie past the mount, and a mount that would come down to a perch: neither
 * car could be loaded again. */
static void
test_seats_stay_below_the_mount (Fixture *f, gconstpointer data)
{
  const Car *car = car_now (f);
  CarSprings high = car->springs;
  g_autoptr (Car) low = car_copy (car);
  g_autoptr (GError) error = NULL;
  (void) data;

  high.coil.perch_mm = 415.0;
  g_assert_false (sw_document_set_car_springs (f->document, &high, "High"));
  g_assert_false (sw_document_set_springs (f->document, 0, &high, "High"));
  low->points[POINT_STRUT_FOOT] = vec3_along (low->points[POINT_UPPER_MOUNT], 0.3,
                                              vec3_sub (low->points[POINT_STRUT_FOOT],
                                                        low->points[POINT_UPPER_MOUNT]));
  g_assert_false (sw_document_set_measured (f->document, low, "Low", &error));
  g_assert_nonnull (strstr (error->message, "perch_mm is 150, but must be below"));
  high.coil.perch_mm = 400.0;
  g_assert_true (sw_document_set_car_springs (f->document, &high, "High"));
}

static void
test_unknown_members_go_with_their_part (Fixture *f, gconstpointer data)
{
  CarSprings springs = car_now (f)->springs;
  (void) data;

  springs.coil.perch_mm = 151.0;
  g_assert_true (sw_document_set_car_springs (f->document, &springs, "Perch"));
  g_assert_true (writes (f, "\"paint\"") && writes (f, "\"rubber\"") &&
                 writes (f, "\"make\"") && writes (f, "\"shot_peened\""));
  springs.helper.is_there = springs.coil.is_there = FALSE;
  g_assert_true (sw_document_set_car_springs (f->document, &springs, "No coil"));
  g_assert_false (writes (f, "\"paint\""));
  g_assert_true (writes (f, "\"rubber\"") && writes (f, "\"make\""));

  g_assert_true (sw_document_set_springs (f->document, 2, NULL, "As the car"));
  g_assert_false (writes (f, "\"later\": 1"));
  g_assert_true (sw_document_set_rod (f->document, 2, NULL, "As the car"));
  g_assert_false (writes (f, "\"later\": 2"));
}

static void
test_unknown_members_stay_with_their_case (Fixture *f, gconstpointer data)
{
  const Car *car = car_now (f);
  CarLoadCase cases[2] = { car->load_cases[1], car->load_cases[0] };
  (void) data;

  cases[0].vertical = 2.25;
  g_assert_true (sw_document_set_load_cases (f->document, cases, 2, "Cases"));
  g_assert_true (writes (f, "\"road\": \"cobbles\"") && writes (f, "\"by\": \"hand\""));
  g_assert_true (sw_document_set_load_cases (f->document, &cases[1], 1, "Cases"));
  g_assert_false (writes (f, "\"road\": \"cobbles\""));
  g_assert_true (writes (f, "\"by\": \"hand\""));
}

static void
test_copies_of_a_setup_keep_its_springs (Fixture *f, gconstpointer data)
{
  (void) data;
  sw_document_add_setup (f->document, 1, "Copy");

  const guint last = car_now (f)->setups->len - 1;
  g_assert_true (car_setup_springs (car_now (f), last) ==
                 &car_setup (car_now (f), last)->springs);
  g_assert_cmpfloat (car_setup_springs (car_now (f), last)->bar.rate_nm_per_deg, ==,
                     14.5);
  g_assert_cmpfloat (car_setup_rod (car_now (f), last).diameter_mm, ==, 22.0);
  g_assert_true (writes (f, "\"batch\": 7.0"));
  sw_document_remove_setup (f->document, 1);
  g_assert_true (writes (f, "\"batch\": 7.0"));
}

#define ADD(path, car, test)                                                             \
  g_test_add ("/document-springs/" path, Fixture, car, set_up, test, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("own", "plain", test_a_setup_gets_springs_of_its_own);
  ADD ("none", "plain", test_no_spring_at_all_can_be_its_own);
  ADD ("car", "plain", test_the_car_gets_springs_and_rod);
  ADD ("rod", "plain", test_a_setup_gets_a_rod_of_its_own);
  ADD ("drag", "plain", test_a_drag_is_one_step);
  ADD ("refused", "plain", test_what_no_file_holds_is_refused);
  ADD ("not-there", "plain", test_what_is_not_there_loses_its_numbers);
  ADD ("cases", "plain", test_cases_are_set_and_left_to_the_usual_ones);
  ADD ("seats", "springs-unknown", test_seats_stay_below_the_mount);
  ADD ("unknown", "springs-unknown", test_unknown_members_go_with_their_part);
  ADD ("unknown-case", "springs-unknown", test_unknown_members_stay_with_their_case);
  ADD ("copy", "springs-unknown", test_copies_of_a_setup_keep_its_springs);
  return g_test_run ();
}
