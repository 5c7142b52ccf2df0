/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "car-fixture.h"

#include "model/study/setup-title.h"
#include "model/study/study.h"

typedef void (*Change) (CarSetup *setup);

static void
move_mount (CarSetup *setup)
{
  setup->mount.inboard = 5.0;
}

static void
lower (CarSetup *setup)
{
  setup->lowering_mm = 10.0;
}

static void
fit_spacer (CarSetup *setup)
{
  setup->corrections.ball_joint_spacer_mm = 20.0;
}

static void
set_right_side (CarSetup *setup)
{
  setup->right = (CarRightSide){ .is_own = TRUE, .mount = { .rearward = 4.0 } };
}

static void
test_a_changed_one_says_so (void)
{
  const Change changes[] = { move_mount, lower, fit_spacer, set_right_side };

  for (gsize i = 0; i < G_N_ELEMENTS (changes); i++) {
    g_autoptr (Car) car = fixture_demo ("wren");
    CarSetup *setup = car_setup (car, 0);

    g_assert_cmpstr (setup_title (setup), ==, "As measured");
    changes[i](setup);
    g_assert_cmpstr (setup_title (setup), ==, "As measured (changed)");
    g_assert_cmpstr (setup->name, ==, "As measured");
  }
}

/* Toe cannot be set back where nothing changed it. */
static void
test_what_changes_nothing_says_nothing (void)
{
  g_autoptr (Car) car = fixture_demo ("wren");
  CarSetup *setup = car_setup (car, 0);

  setup->toe = TOE_RESET;
  setup->right = (CarRightSide){ .is_own = TRUE };
  setup->is_hidden = TRUE;
  g_assert_true (setup_title (setup) == setup->name);
}

static void
test_other_names_stay (void)
{
  g_autoptr (Car) car = fixture_demo ("wren");

  g_assert_cmpstr (setup_title (car_setup (car, 1)), ==, "12 in, 6 back");
}

/* The setup in hand and what it is compared with, on every drawing. */
static void
test_a_study_never_says_the_same_of_both (void)
{
  g_autoptr (Car) car = fixture_demo ("wren");
  g_autoptr (Study) study = study_new ();

  lower (car_setup (car, 0));
  study_solve (study, car, 0, 0.0);
  g_assert_cmpstr (study_in_hand (study)->title, ==, "As measured (changed)");
  g_assert_cmpstr (study_in_hand (study)->name, ==, "As measured");
  g_assert_cmpstr (study_reference (study)->title, ==, measured_car_title ());
  g_assert_cmpstr (measured_car_title (), ==, "measured car");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/setup-title/changed", test_a_changed_one_says_so);
  g_test_add_func ("/setup-title/unchanged", test_what_changes_nothing_says_nothing);
  g_test_add_func ("/setup-title/others", test_other_names_stay);
  g_test_add_func ("/setup-title/study", test_a_study_never_says_the_same_of_both);
  return g_test_run ();
}
