/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Changes of what was measured, of what is aimed for and of a setup's plate, and undoing
 * them. */

#include "car-fixture.h"

#include "model/car/aim.h"
#include "model/car/car-json.h"
#include "model/document/document.h"

#include <math.h>

typedef struct {
  SwDocument *document;
  Car *first; /* as it was opened */
  guint n_changed;
} Fixture;

static void
on_document_changed_cb (guint *n_changed)
{
  (*n_changed)++;
}

static void
set_up (Fixture *f, gconstpointer data)
{
  (void) data;
  f->first = fixture_car ("choosing");
  f->document = sw_document_new_for_car (car_copy (f->first));
  g_signal_connect_swapped (f->document, "changed", G_CALLBACK (on_document_changed_cb),
                            &f->n_changed);
}

static const Car *
car_now (Fixture *f)
{
  return sw_document_get_car (f->document);
}

/* Every state can be loaded again as it is; undone, all is as it was to the bit. */
static void
tear_down (Fixture *f, gconstpointer data)
{
  g_autoptr (Car) last = car_copy (car_now (f));
  g_autoptr (GError) error = NULL;
  gsize length;
  (void) data;

  g_autofree char *text = car_to_json (last, &length);
  g_autoptr (Car) again = car_from_json (text, length, &error);
  g_assert_no_error (error);
  g_assert_true (car_equal (again, last));
  while (sw_document_get_undo_label (f->document) != NULL)
    sw_document_undo (f->document);
  g_assert_true (car_equal (car_now (f), f->first));
  g_assert_false (sw_document_is_modified (f->document));
  while (sw_document_get_redo_label (f->document) != NULL)
    sw_document_redo (f->document);
  g_assert_true (car_equal (car_now (f), last));
  g_object_unref (f->document);
  car_free (f->first);
}

static const CarTarget *
target (Fixture *f, guint i)
{
  return &g_array_index (car_now (f)->targets, CarTarget, i);
}

static void
check_steps (Fixture *f, guint n)
{
  guint steps = 0;

  g_assert_cmpuint (f->n_changed, ==, n);
  while (sw_document_get_undo_label (f->document) != NULL) {
    sw_document_undo (f->document);
    steps++;
  }
  g_assert_cmpuint (steps, ==, n);
  for (guint i = 0; i < n; i++)
    sw_document_redo (f->document);
}

/* Everything measured is another than that of "choosing". */
static Car *
draft_new (void)
{
  Car *draft = fixture_car ("right-alignment");

  g_free (draft->notes);
  draft->notes = g_strdup ("measured again");
  draft->points[POINT_UPPER_MOUNT].z = 770.25;
  draft->camber_deg = -0.75;
  draft->toe_in_deg = 0.15;
  draft->loaded_radius_mm = 266.0;
  draft->section_width_mm = 175.0;
  draft->bump_mm = 60.0;
  draft->droop_mm = 70.0;
  draft->body.front_mass_kg = 515.0;
  draft->unloaded_radius_mm = 273.0;
  draft->tower.opening_diameter_mm = 88.0;
  draft->strut.tube_diameter_mm = 50.0;
  draft->thread_pitch_mm = 1.75;
  draft->limits.edge_margin_mm = 3.0;
  return draft;
}

static void
test_measured_is_one_step (Fixture *f, gconstpointer data)
{
  g_autoptr (Car) draft = draft_new ();
  g_autoptr (GError) error = NULL;
  const Car *now = car_now (f);
  (void) data;

  g_assert_true (sw_document_set_measured (f->document, draft, "Measure", &error));
  g_assert_no_error (error);
  g_assert_cmpstr (sw_document_get_undo_label (f->document), ==, "Measure");
  g_assert_cmpstr (now->name, ==, "Right alignment alone");
  g_assert_cmpstr (now->notes, ==, "measured again");
  g_assert_cmpfloat (now->points[POINT_UPPER_MOUNT].z, ==, 770.25);
  g_assert_cmpfloat (now->camber_deg, ==, -0.75);
  g_assert_cmpfloat (now->toe_in_deg, ==, 0.15);
  g_assert_cmpfloat (now->loaded_radius_mm, ==, 266.0);
  g_assert_cmpfloat (now->section_width_mm, ==, 175.0);
  g_assert_cmpfloat (now->bump_mm, ==, 60.0);
  g_assert_cmpfloat (now->droop_mm, ==, 70.0);
  g_assert_cmpfloat (now->body.front_mass_kg, ==, 515.0);
  g_assert_cmpfloat (now->unloaded_radius_mm, ==, 273.0);
  g_assert_cmpfloat (now->rim_offset_mm, ==, 0.0);
  g_assert_cmpfloat (now->tower.opening_diameter_mm, ==, 88.0);
  g_assert_cmpfloat (now->strut.tube_diameter_mm, ==, 50.0);
  g_assert_cmpfloat (now->thread_pitch_mm, ==, 1.75);
  g_assert_cmpfloat (now->limits.edge_margin_mm, ==, 3.0);
  g_assert_false (now->right.has_points);
  g_assert_cmpfloat (now->right.camber_deg, ==, -0.9);
  check_steps (f, 1);
}

/* The setups, the targets and what a later version wrote are not the draft's. */
static void
test_measured_leaves_the_rest (Fixture *f, gconstpointer data)
{
  g_autoptr (Car) draft = draft_new ();
  const CarTarget other = { .aim = AIM_SAI, 9.0, 12.0, 1.0, NULL };
  (void) data;

  g_array_append_val (draft->targets, other);
  g_assert_true (sw_document_set_measured (f->document, draft, "Measure", NULL));
  g_assert_cmpuint (car_now (f)->targets->len, ==, 3);
  g_assert_cmpuint (car_now (f)->setups->len, ==, 3);
  g_assert_cmpstr (car_setup (car_now (f), 1)->plate, ==, "Slot 20 “long”");
  g_assert_nonnull (car_now (f)->unknown[CAR_SECTION_TOWER]);
  g_assert_nonnull (car_now (f)->right.unknown);
  g_assert_nonnull (car_now (f)->right.unknown_alignment);
  /* went with the points that it belonged to */
  g_assert_null (car_now (f)->right.unknown_corner);
}

static void
test_measuring_the_same_is_no_step (Fixture *f, gconstpointer data)
{
  g_autoptr (Car) same = car_copy (f->first);
  (void) data;

  g_array_set_size (same->targets, 0);
  g_array_set_size (same->setups, 1);
  g_assert_true (sw_document_set_measured (f->document, same, "Measure", NULL));
  check_steps (f, 0);
}

static void
test_a_draft_that_would_not_load_is_refused (Fixture *f, gconstpointer data)
{
  g_autoptr (Car) draft = draft_new ();
  g_autoptr (GError) error = NULL;
  (void) data;

  draft->points[POINT_BALL_JOINT] = draft->points[POINT_STRUT_FOOT];
  g_assert_false (sw_document_set_measured (f->document, draft, "Measure", &error));
  g_assert_error (error, FILE_REFUSAL, FILE_REFUSAL_GEOMETRY);
  g_assert_cmpstr (error->message, ==,
                   "corner.ball_joint and corner.strut_foot are the same place.");
  g_assert_true (car_equal (car_now (f), f->first));
  check_steps (f, 0);
}

static void
test_a_thread_pitch_is_a_step (Fixture *f, gconstpointer data)
{
  (void) data;
  sw_document_set_thread_pitch (f->document, 1.25, "Same");
  sw_document_set_thread_pitch (f->document, 1.5, "Choose thread");
  sw_document_set_thread_pitch (f->document, 1.5, "Same");
  g_assert_cmpstr (sw_document_get_undo_label (f->document), ==, "Choose thread");
  g_assert_cmpfloat (car_now (f)->thread_pitch_mm, ==, 1.5);
  check_steps (f, 1);
}

static void
test_targets_are_a_step (Fixture *f, gconstpointer data)
{
  const CarTarget targets[] = { { .aim = AIM_CASTER, 5.5, INFINITY, 2.0, NULL },
                                { .aim = AIM_TRAIL, 10.0, 20.0, 1.0, NULL } };
  (void) data;

  sw_document_set_targets (f->document, targets, 2, "Aim");
  g_assert_cmpstr (sw_document_get_undo_label (f->document), ==, "Aim");
  g_assert_cmpuint (car_now (f)->targets->len, ==, 2);
  g_assert_cmpfloat (target (f, 0)->least, ==, 5.5);
  g_assert_cmpfloat (target (f, 0)->weight, ==, 2.0);
  /* "why" of the caster that was aimed for before */
  g_assert_true (json_object_has_member (target (f, 0)->unknown, "why"));
  g_assert_null (target (f, 1)->unknown);
  sw_document_set_targets (f->document, targets, 2, "Same");
  sw_document_set_targets (f->document, NULL, 0, "Aim for nothing");
  sw_document_set_targets (f->document, NULL, 0, "Same");
  g_assert_cmpuint (car_now (f)->targets->len, ==, 0);
  check_steps (f, 2);
}

/* The document's own list may be handed back. */
static void
test_the_same_targets_are_no_step (Fixture *f, gconstpointer data)
{
  const GArray *own = car_now (f)->targets;
  (void) data;

  sw_document_set_targets (f->document, (const CarTarget *) own->data, own->len, "Same");
  check_steps (f, 0);
  sw_document_set_targets (f->document, (const CarTarget *) own->data, 2, "Fewer");
  g_assert_true (json_object_has_member (target (f, 1)->unknown, "why"));
  check_steps (f, 1);
}

static void
test_targets_that_no_file_may_have_are_refused (Fixture *f, gconstpointer data)
{
  static const CarTarget bad[][2] = {
    { { .aim = N_AIMS, 1, 2, 1, NULL } },
    { { .aim = AIM_TRAIL, -INFINITY, INFINITY, 1, NULL } },
    { { .aim = AIM_TRAIL, 2, 1, 1, NULL } },
    { { .aim = AIM_TRAIL, NAN, 1, 1, NULL } },
    { { .aim = AIM_TRAIL, 1, 2, 0, NULL } },
    { { .aim = AIM_TRAIL, 1, 2, NAN, NULL } },
    { { .aim = AIM_TRAIL, 1, 20000, 1, NULL } },
    { { .aim = AIM_TRAIL, INFINITY, INFINITY, 1, NULL } },
    { { .aim = AIM_TRAIL, 1, 2, 1, NULL }, { .aim = AIM_TRAIL, 3, 4, 1, NULL } },
  };
  (void) data;

  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++) {
    g_test_message ("%u", (guint) i);
    g_test_expect_message (G_LOG_DOMAIN, G_LOG_LEVEL_CRITICAL, "*are_sound_targets*");
    sw_document_set_targets (f->document, bad[i], bad[i][1].weight > 0 ? 2 : 1, "Bad");
    g_test_assert_expected_messages ();
  }
  check_steps (f, 0);
}

static void
test_a_plate_is_a_step (Fixture *f, gconstpointer data)
{
  const CarSetup *slot = car_setup (car_now (f), 1);
  (void) data;

  sw_document_set_plate (f->document, 1, "Slot 20 “long”", TRUE, "Same");
  sw_document_set_plate (f->document, 0, NULL, FALSE, "Same");
  sw_document_set_plate (f->document, 0, "", TRUE, "Same");
  g_assert_cmpuint (f->n_changed, ==, 0);

  sw_document_set_plate (f->document, 1, "Slot 20 “long”", FALSE, "Swap plate");
  g_assert_false (slot->is_plate_swapped);
  g_assert_nonnull (slot->unknown_plate);
  sw_document_set_plate (f->document, 1, "Round 6", TRUE, "Choose plate");
  g_assert_cmpstr (slot->plate, ==, "Round 6");
  g_assert_true (slot->is_plate_swapped);
  g_assert_null (slot->unknown_plate); /* it said something of another plate */
  sw_document_set_plate (f->document, 1, NULL, TRUE, "Choose no plate");
  g_assert_null (slot->plate);
  g_assert_false (slot->is_plate_swapped);
  check_steps (f, 3);
}

static void
test_a_mount_moved_by_hand_keeps_plate_and_right_side (Fixture *f, gconstpointer data)
{
  Adjustment by_hand = car_adjustment (car_setup (car_now (f), 1));
  (void) data;

  by_hand.mount.inboard = 19.0;
  sw_document_set_setup (f->document, 1, &by_hand, "Move mount");
  const CarSetup *slot = car_setup (car_now (f), 1);
  g_assert_cmpfloat (slot->mount.inboard, ==, 19.0);
  g_assert_cmpstr (slot->plate, ==, "Slot 20 “long”");
  g_assert_true (slot->is_plate_swapped);
  g_assert_true (slot->right.is_own);
  g_assert_cmpfloat (slot->right.mount.inboard, ==, 10.0);
  g_assert_cmpfloat (slot->right.camber_bolt_deg, ==, -0.75);
}

static void
test_a_setup_of_no_car_is_added (Fixture *f, gconstpointer data)
{
  char name[] = "Slot", plate[] = "Round 6";
  const CarSetup setup = { .name = name,
                           .plate = plate,
                           .is_hidden = TRUE,
                           .mount = { .inboard = 8.5 },
                           .right = { .is_own = TRUE, .mount = { .inboard = 7.5 } } };
  (void) data;

  sw_document_add_setup_like (f->document, &setup);
  g_assert_cmpuint (car_now (f)->setups->len, ==, 4);
  const CarSetup *added = car_setup (car_now (f), 3);
  g_assert_cmpstr (added->name, ==, "Slot (2)");
  g_assert_cmpstr (added->plate, ==, "Round 6");
  g_assert_true (added->plate != plate);
  g_assert_false (added->is_hidden);
  g_assert_cmpfloat (added->mount.inboard, ==, 8.5);
  g_assert_cmpfloat (added->right.mount.inboard, ==, 7.5);
  check_steps (f, 1);
}

static void
test_a_wheel_spacer_is_a_correction (Fixture *f, gconstpointer data)
{
  CarCorrections c = { .wheel_spacer_mm = -0.0 };
  (void) data;

  sw_document_set_corrections (f->document, 0, &c, "Nothing");
  g_assert_cmpuint (f->n_changed, ==, 0);
  c.wheel_spacer_mm = 12.5;
  sw_document_set_corrections (f->document, 0, &c, "Fit spacer");
  g_assert_cmpfloat (car_setup (car_now (f), 0)->corrections.wheel_spacer_mm, ==, 12.5);
  c.wheel_spacer_mm = 201.0;
  g_test_expect_message (G_LOG_DOMAIN, G_LOG_LEVEL_CRITICAL, "*is_sound*");
  sw_document_set_corrections (f->document, 0, &c, "Too far");
  g_test_assert_expected_messages ();
  check_steps (f, 1);
}

#define ADD(path, test) g_test_add (path, Fixture, NULL, set_up, test, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("/document-measured/step", test_measured_is_one_step);
  ADD ("/document-measured/rest", test_measured_leaves_the_rest);
  ADD ("/document-measured/same", test_measuring_the_same_is_no_step);
  ADD ("/document-measured/refused", test_a_draft_that_would_not_load_is_refused);
  ADD ("/document-measured/thread", test_a_thread_pitch_is_a_step);
  ADD ("/document-measured/targets", test_targets_are_a_step);
  ADD ("/document-measured/same-targets", test_the_same_targets_are_no_step);
  ADD ("/document-measured/bad-targets", test_targets_that_no_file_may_have_are_refused);
  ADD ("/document-measured/plate", test_a_plate_is_a_step);
  ADD ("/document-measured/by-hand",
       test_a_mount_moved_by_hand_keeps_plate_and_right_side);
  ADD ("/document-measured/add-like", test_a_setup_of_no_car_is_added);
  ADD ("/document-measured/wheel-spacer", test_a_wheel_spacer_is_a_correction);
  return g_test_run ();
}
