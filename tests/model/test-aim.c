/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/choice/choice-table.h"

#include <string.h>

static void
test_every_aim_is_found_by_its_key (void)
{
  for (Aim i = 0; i < N_AIMS; i++) {
    const AimInfo info = aim_info (i);
    Aim found = N_AIMS;

    g_assert_true (aim_from_key (info.key, &found));
    g_assert_cmpint (found, ==, i);
    g_assert_cmpint ((int) strspn (info.key, "abcdefghijklmnopqrstuvwxyz_"), ==,
                     (int) strlen (info.key));
  }
}

static void
test_other_words_are_none (void)
{
  static const char *const words[] = { "", "Camber", "camber ", "castor", "toe-change" };
  Aim found = AIM_TRAIL;

  for (gsize i = 0; i < G_N_ELEMENTS (words); i++)
    g_assert_false (aim_from_key (words[i], &found));
  g_assert_false (aim_from_key (NULL, &found));
  g_assert_cmpint (found, ==, AIM_TRAIL);
}

/* A unit must show: no smaller than the last digit. */
static void
test_every_aim_can_be_shown (void)
{
  for (Aim i = 0; i < N_AIMS; i++) {
    const AimInfo info = aim_info (i);
    double digit = 1.0;

    for (int d = 0; d < info.decimals; d++)
      digit /= 10.0;
    g_assert_cmpstr (info.name, !=, "");
    g_assert_true (g_str_equal (info.unit, "°") || g_str_equal (info.unit, "mm"));
    g_assert_cmpfloat (info.unit_size, >=, digit);
  }
}

static gboolean
has_all_words (const char *text, const char *words)
{
  g_autofree char *plain_text = g_utf8_casefold (text, -1);
  g_autofree char *plain_words = g_utf8_casefold (words, -1);
  g_auto (GStrv) list = g_strsplit (plain_words, " ", -1);

  for (char **word = list; *word != NULL; word++)
    if (strstr (plain_text, *word) == NULL)
      return FALSE;
  return TRUE;
}

/* What counts from the baseline is not read as the column of the toe itself. */
static void
test_a_change_of_toe_is_told_from_the_toe (void)
{
  g_assert_false (has_all_words (aim_info (AIM_TOE_CHANGE).name,
                                 choice_number_info (CHOICE_TOE_BEFORE_RESET).head));
}

static void
test_nouns_are_names_within_a_sentence (void)
{
  for (Aim aim = 0; aim < N_AIMS; aim++)
    g_assert_true (g_str_has_suffix (aim_info (aim).name, aim_info (aim).noun + 1));
}

/* What a bench can tell apart: common practice, no published source. */
static void
test_units_are_those_of_the_bench (void)
{
  static const struct {
    Aim aim;
    double unit_size;
  } units[] = { { AIM_CAMBER, 0.1 },      { AIM_CASTER, 0.1 },
                { AIM_SAI, 0.1 },         { AIM_SCRUB_RADIUS, 1.0 },
                { AIM_TRAIL, 1.0 },       { AIM_ROLL_CENTRE_HEIGHT, 5.0 },
                { AIM_TOE_CHANGE, 0.05 }, { AIM_SCRUB_CHANGE, 1.0 },
                { AIM_BUMP_STEER, 0.05 } };

  g_assert_cmpuint (G_N_ELEMENTS (units), ==, N_AIMS);
  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    g_assert_cmpfloat (aim_info (units[i].aim).unit_size, ==, units[i].unit_size);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/aim/keys", test_every_aim_is_found_by_its_key);
  g_test_add_func ("/aim/other-words", test_other_words_are_none);
  g_test_add_func ("/aim/shown", test_every_aim_can_be_shown);
  g_test_add_func ("/aim/change-of-toe", test_a_change_of_toe_is_told_from_the_toe);
  g_test_add_func ("/aim/nouns", test_nouns_are_names_within_a_sentence);
  g_test_add_func ("/aim/units", test_units_are_those_of_the_bench);
  return g_test_run ();
}
