/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/words/near-word.h"

static const char *const kinds[] = { "fixed",     "slot",  "crossed-slots",
                                     "eccentric", "holes", NULL };

/* Changed, swapped, left out, put in; in capitals. */
static void
test_slips_are_understood (void)
{
  g_assert_cmpstr (near_word ("slit", kinds), ==, "slot");
  g_assert_cmpstr (near_word ("slto", kinds), ==, "slot");
  g_assert_cmpstr (near_word ("hole", kinds), ==, "holes");
  g_assert_cmpstr (near_word ("ecccentrik", kinds), ==, "eccentric");
  g_assert_cmpstr (near_word ("crossed_slot", kinds), ==, "crossed-slots");
  g_assert_cmpstr (near_word ("Slot", kinds), ==, "slot");
  g_assert_cmpstr (near_word ("fixed", kinds), ==, "fixed");
}

static void
test_other_words_are_none (void)
{
  g_assert_null (near_word ("", kinds));
  g_assert_null (near_word ("s", kinds));
  g_assert_null (near_word ("plate", kinds));
  g_assert_null (near_word ("spots on it", kinds));
  g_assert_null (
      near_word ("a word that is longer than any member has ever been", kinds));
  g_assert_null (near_word ("slot", kinds + 5));
}

static void
test_a_member_may_lack_its_unit (void)
{
  static const char *const names[] = { "along_mm", "section_width_mm", "mass_kg", NULL };

  g_assert_cmpstr (near_member ("along", names), ==, "along_mm");
  g_assert_cmpstr (near_member ("section_width", names), ==, "section_width_mm");
  g_assert_cmpstr (near_member ("section_widht_mm", names), ==, "section_width_mm");
  g_assert_null (near_member ("", names));
  g_assert_null (near_member ("sect", names));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/near-word/slips", test_slips_are_understood);
  g_test_add_func ("/near-word/others", test_other_words_are_none);
  g_test_add_func ("/near-word/unit", test_a_member_may_lack_its_unit);
  return g_test_run ();
}
