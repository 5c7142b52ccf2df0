/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "comma-locale.h"

#include "model/study/quantity-info.h"

#include <math.h>
#include <string.h>

#define DEGREE (G_PI / 180.0)

static void
check_format (Quantity quantity, double value, gboolean with_sign, const char *expected)
{
  char text[32];

  quantity_format (quantity, value, with_sign, text, sizeof text);
  g_assert_cmpstr (text, ==, expected);
}

static void
test_every_row_is_complete (void)
{
  g_autoptr (GHashTable) keys = g_hash_table_new (g_str_hash, g_str_equal);

  for (Quantity q = 0; q < N_QUANTITIES; q++) {
    const QuantityInfo info = quantity_info (q);

    g_assert_true (g_hash_table_add (keys, (gpointer) info.key));
    g_assert_cmpuint (strlen (info.name), >, 0);
    g_assert_true (g_str_has_suffix (info.meaning, "."));
    g_assert_nonnull (info.unit);
    g_assert_cmpint (info.decimals, >=, 0);
    g_assert_cmpfloat (info.scale, >, 0.0);
    g_assert_true ((info.positive[0] == '\0') == (info.negative[0] == '\0'));
  }
}

/* The dimension that the kernel gives decides the unit, and the unit the key's ending. */
static void
test_units_fit_the_dimensions (void)
{
  static const struct {
    const char *unit, *ending;
    double scale;
  } by_dimension[] = {
    [DIMENSION_ANGLE] = { "°", "_deg", 1.0 / DEGREE },
    [DIMENSION_LENGTH] = { "mm", "_mm", 1.0 },
    [DIMENSION_RATIO] = { "", "", 1.0 },
    [DIMENSION_PERCENT] = { "%", "_percent", 1.0 },
    [DIMENSION_ANGLE_PER_LENGTH] = { "°/mm", "_deg_per_mm", 1.0 / DEGREE },
    [DIMENSION_PER_LENGTH] = { "1/m", "_per_m", 1000.0 },
  };

  for (Quantity q = 0; q < N_QUANTITIES; q++) {
    const QuantityInfo info = quantity_info (q);
    const Dimension d = quantity_dimension (q);

    if (q == QUANTITY_ARM_RATIO) { /* a turn of the bar: stays in radians */
      g_assert_cmpstr (info.unit, ==, "rad/mm");
      g_assert_cmpfloat (info.scale, ==, 1.0);
      continue;
    }
    g_assert_cmpstr (info.unit, ==, by_dimension[d].unit);
    g_assert_true (g_str_has_suffix (info.key, by_dimension[d].ending));
    g_assert_cmpfloat_with_epsilon (info.scale, by_dimension[d].scale, 1e-12);
    g_assert_cmpfloat_with_epsilon (quantity_edge_value (q, 2.0), 2.0 * info.scale,
                                    1e-12);
  }
}

static void
test_keys_are_found_with_and_without_unit (void)
{
  static const struct {
    const char *key;
    Quantity quantity;
  } rows[] = {
    { "camber_deg", QUANTITY_CAMBER },
    { "camber", QUANTITY_CAMBER },
    { "camber_gain", QUANTITY_CAMBER_GAIN },
    { "toe_in", QUANTITY_TOE_IN },
    { "roll_centre_height", QUANTITY_ROLL_CENTRE_HEIGHT },
    { "arm_ratio", QUANTITY_ARM_RATIO },
    { "strut_ratio", QUANTITY_STRUT_RATIO },
    { "anti_dive", QUANTITY_ANTI_DIVE },
    { "swing_arm_curvature", QUANTITY_SWING_ARM_CURVATURE },
  };
  static const char *const none[] = { "",          "camb",   "camber_",
                                      "camber_mm", "Camber", "trail_deg" };
  Quantity quantity;

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_assert_true (quantity_from_key (rows[i].key, &quantity));
    g_assert_cmpint (quantity, ==, rows[i].quantity);
  }
  for (Quantity q = 0; q < N_QUANTITIES; q++) {
    g_assert_true (quantity_from_key (quantity_info (q).key, &quantity));
    g_assert_cmpint (quantity, ==, q);
  }
  for (gsize i = 0; i < G_N_ELEMENTS (none); i++)
    g_assert_false (quantity_from_key (none[i], &quantity));
}

static void
test_numbers_are_written_for_people (void)
{
  check_format (QUANTITY_CAMBER, -1.928 * DEGREE, FALSE, "−1.93");
  check_format (QUANTITY_CAMBER, 0.5 * DEGREE, FALSE, "0.50");
  check_format (QUANTITY_CAMBER, 0.5 * DEGREE, TRUE, "+0.50");
  check_format (QUANTITY_CAMBER, -0.004 * DEGREE, TRUE, "0.00");
  check_format (QUANTITY_CAMBER, 0.004 * DEGREE, TRUE, "0.00");
  check_format (QUANTITY_CAMBER, NAN, TRUE, "–");
  check_format (QUANTITY_SWING_ARM_LENGTH, INFINITY, FALSE, "–");
  check_format (QUANTITY_ROLL_CENTRE_HEIGHT, -161.58, FALSE, "−161.6");
  check_format (QUANTITY_STRUT_RATIO, 0.9528, FALSE, "0.953");
}

static void
test_numbers_follow_the_locale (void)
{
  if (!comma_locale_enter ())
    return;
  check_format (QUANTITY_CAMBER, -1.928 * DEGREE, FALSE, "−1,93");
  comma_locale_leave ();
}

static void
test_sign_words_follow_what_is_shown (void)
{
  g_assert_cmpstr (quantity_sign_words (QUANTITY_CAMBER, -0.5 * DEGREE), ==,
                   "top leans in");
  g_assert_cmpstr (quantity_sign_words (QUANTITY_CAMBER, 0.5 * DEGREE), ==,
                   "top leans out");
  g_assert_cmpstr (quantity_sign_words (QUANTITY_CAMBER, -0.004 * DEGREE), ==, "");
  g_assert_cmpstr (quantity_sign_words (QUANTITY_CAMBER, NAN), ==, "");
  g_assert_cmpstr (quantity_sign_words (QUANTITY_STRUT_LENGTH, 400.0), ==, "");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/quantity-info/rows", test_every_row_is_complete);
  g_test_add_func ("/quantity-info/units", test_units_fit_the_dimensions);
  g_test_add_func ("/quantity-info/keys", test_keys_are_found_with_and_without_unit);
  g_test_add_func ("/quantity-info/format", test_numbers_are_written_for_people);
  g_test_add_func ("/quantity-info/locale", test_numbers_follow_the_locale);
  g_test_add_func ("/quantity-info/sign-words", test_sign_words_follow_what_is_shown);
  return g_test_run ();
}
