/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a fitter reads. */
#include "comma-locale.h"
#include "plate-fixture.h"

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
               "12.5 along, 4.0 across");
  check_words (circle, (PlateSetting){ .along = 135.04 }, "turned to 135°");
  check_words (circle, (PlateSetting){ .along = -22.46 }, "turned to −22.5°");
  check_words (indexed, (PlateSetting){ .place = 1 }, "turned to 22.5°");
  check_words (indexed, (PlateSetting){ .place = 2 }, "turned to 135°");
  check_words (holes, (PlateSetting){ .place = 1 }, "hole B");
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
  g_test_add_func ("/plate-words/swapped", test_swapped_plates_are_said_to_be);
  g_test_add_func ("/plate-words/decimal-mark", test_the_decimal_mark_is_the_locale_s);
  g_test_add_func ("/plate-words/kinds", test_every_kind_has_its_own_words);
  return g_test_run ();
}
