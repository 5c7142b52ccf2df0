/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a fitter reads. */
#include "comma-locale.h"
#include "plate-fixture.h"

#include <math.h>

static void
check_words (const Plate *plate, PlateSetting setting, const char *expected)
{
  g_autofree char *words = plate_describe_setting (plate, setting);

  g_assert_cmpstr (words, ==, expected);
}

static Plate *
new_plate (PlateKind kind)
{
  Plate *plate = plate_new ();

  plate->kind = kind;
  plate->along = (PlateScale){ -5.0, 25.0 };
  plate->across = (PlateScale){ -8.0, 8.0 };
  plate->radius_mm = 6.0;
  return plate;
}

static void
test_settings_are_said_in_the_kind_s_own_terms (void)
{
  static const double turns[] = { 0.0, 22.5, 135.0 };
  g_autoptr (Plate) fixed = new_plate (PLATE_FIXED), slot = new_plate (PLATE_SLOT);
  g_autoptr (Plate) crossed = new_plate (PLATE_CROSSED_SLOTS);
  g_autoptr (Plate) circle = new_plate (PLATE_ECCENTRIC), indexed = plate_copy (circle);
  g_autoptr (Plate) holes = new_plate (PLATE_HOLES);

  g_array_append_vals (indexed->turns_deg, turns, G_N_ELEMENTS (turns));
  fixture_add_hole (holes, "A", 0.0, 0.0);
  fixture_add_hole (holes, "B", 7.0, 0.0);
  check_words (fixed, (PlateSetting){ 0 }, "as it is");
  check_words (slot, (PlateSetting){ .along = 12.5 }, "12.5 mm on the scale");
  check_words (slot, (PlateSetting){ .along = -3.04 }, "−3.0 mm on the scale");
  check_words (slot, (PlateSetting){ .along = -0.04 }, "0.0 mm on the scale");
  check_words (crossed, (PlateSetting){ .along = 12.5, .across = 4.0 },
               "12.5 inboard scale, 4.0 rearward scale");
  check_words (circle, (PlateSetting){ .along = 135.04 }, "turned to 135°");
  check_words (circle, (PlateSetting){ .along = -22.46 }, "turned to −22.5°");
  check_words (indexed, (PlateSetting){ .place = 1 }, "turned to 22.5°");
  check_words (indexed, (PlateSetting){ .place = 2 }, "turned to 135°");
  check_words (holes, (PlateSetting){ .place = 1 }, "hole B");
}

/* Within a degree of an axis a scale has its name. */
static void
test_scales_are_named_by_where_they_point (void)
{
  static const struct {
    double direction;
    const char *words;
  } cases[] = {
    { 89.1, "3.0 rearward scale, 4.0 outboard scale" },
    { 180.0, "3.0 outboard scale, 4.0 forward scale" },
    { -90.0, "3.0 forward scale, 4.0 inboard scale" },
    { 359.5, "3.0 inboard scale, 4.0 rearward scale" },
    { 1.1, "3.0 first scale, 4.0 second scale" },
    { -45.0, "3.0 first scale, 4.0 second scale" },
  };
  g_autoptr (Plate) plate = new_plate (PLATE_CROSSED_SLOTS);

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    plate->direction_deg = cases[i].direction;
    check_words (plate, (PlateSetting){ .along = 3.0, .across = 4.0 }, cases[i].words);
  }
}

/* Against where a bearing goes that is moved by 1 mm on one scale alone. */
static void
test_a_scale_points_where_it_takes_the_bearing (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (41);

  for (guint i = 0; i < 200; i++) {
    g_autoptr (Plate) plate = fixture_random_plate (rand, PLATE_CROSSED_SLOTS);
    const gboolean is_swapped = i % 2, is_second = i / 2 % 2;
    PlateSetting setting = { .along = plate->along.least,
                             .across = plate->across.least,
                             .is_swapped = is_swapped };
    const MountOffset from = plate_place (plate, setting);
    *(is_second ? &setting.across : &setting.along) += 0.05;
    const MountOffset to = plate_place (plate, setting);
    const double direction =
        G_PI / 180.0 *
        plate_scale_direction (plate, is_second ? PLATE_SECOND_SCALE : PLATE_FIRST_SCALE,
                               is_swapped);

    g_assert_cmpfloat_with_epsilon (to.inboard - from.inboard, 0.05 * cos (direction),
                                    1e-12);
    g_assert_cmpfloat_with_epsilon (to.rearward - from.rearward, 0.05 * sin (direction),
                                    1e-12);
  }
}

static void
test_swapped_plates_are_said_to_be (void)
{
  g_autoptr (Plate) slot = new_plate (PLATE_SLOT), fixed = new_plate (PLATE_FIXED);

  check_words (slot, (PlateSetting){ .along = 12.5, .is_swapped = TRUE },
               "12.5 mm on the scale, left and right plates swapped");
  check_words (fixed, (PlateSetting){ .is_swapped = TRUE },
               "as it is, left and right plates swapped");
}

/* Turned by −90° the two scales change places, and by 0° inboard and outboard do. */
static void
test_swapped_scales_are_named_anew (void)
{
  const PlateSetting setting = { .along = 3.0, .across = 4.0, .is_swapped = TRUE };
  g_autoptr (Plate) plate = new_plate (PLATE_CROSSED_SLOTS);

  plate->swap_turn_deg = -90.0;
  check_words (plate, setting,
               "3.0 rearward scale, 4.0 inboard scale, left and right "
               "plates swapped");
  plate->swap_turn_deg = 0.0;
  g_autofree char *dials = plate_describe_dials (plate, setting);
  g_assert_cmpstr (dials, ==, "3.0 outboard scale, 4.0 rearward scale");
}

static void
test_the_decimal_mark_is_the_locale_s (void)
{
  g_autoptr (Plate) slot = new_plate (PLATE_SLOT), circle = new_plate (PLATE_ECCENTRIC);

  if (!comma_locale_enter ())
    return;
  check_words (slot, (PlateSetting){ .along = 12.5 }, "12,5 mm on the scale");
  check_words (circle, (PlateSetting){ .along = 22.5 }, "turned to 22,5°");
  comma_locale_leave ();
}

static void
test_every_kind_has_its_own_words (void)
{
  for (PlateKind i = 0; i < N_PLATE_KINDS; i++) {
    g_assert_cmpstr (plate_kind_name (i), !=, "");
    g_assert_true (g_str_has_suffix (plate_kind_meaning (i), "."));
    for (PlateKind j = 0; j < i; j++) {
      g_assert_cmpstr (plate_kind_name (i), !=, plate_kind_name (j));
      g_assert_cmpstr (plate_kind_meaning (i), !=, plate_kind_meaning (j));
    }
  }
  g_assert_cmpstr (plate_kind_name (PLATE_CROSSED_SLOTS), ==, "Crossed slots");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plate-words/settings",
                   test_settings_are_said_in_the_kind_s_own_terms);
  g_test_add_func ("/plate-words/scales", test_scales_are_named_by_where_they_point);
  g_test_add_func ("/plate-words/scale-directions",
                   test_a_scale_points_where_it_takes_the_bearing);
  g_test_add_func ("/plate-words/swapped-scales", test_swapped_scales_are_named_anew);
  g_test_add_func ("/plate-words/swapped", test_swapped_plates_are_said_to_be);
  g_test_add_func ("/plate-words/decimal-mark", test_the_decimal_mark_is_the_locale_s);
  g_test_add_func ("/plate-words/kinds", test_every_kind_has_its_own_words);
  return g_test_run ();
}
