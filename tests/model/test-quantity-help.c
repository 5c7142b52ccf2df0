/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The pages on the quantities: all parts are there, their ranges are the bands that the
 * warnings watch, and what they claim of the reference corners is what comes out there.
 * Those corners were solved outside the project: tests/kernel/check-data.c. */
#include "check-data.h"

#include "model/advice/plausibility.h"
#include "model/advice/quantity-help.h"
#include "model/study/quantity-info.h"

#include <math.h>
#include <string.h>

static void
check_sentences (const char *what, Quantity quantity, const char *text)
{
  g_test_message ("%s of %s: %s", what, quantity_info (quantity).key, text);
  g_assert_nonnull (text);
  g_assert_cmpuint (strlen (text), >, 20);
  g_assert_true (g_str_has_suffix (text, "."));
  g_assert_true (g_utf8_validate (text, -1, NULL));
  g_assert_null (strstr (text, "  "));
}

static void
test_every_quantity_has_all_parts (void)
{
  for (Quantity q = 0; q < N_QUANTITIES; q++) {
    g_auto (QuantityHelp) help = quantity_help (q);

    check_sentences ("what", q, help.what);
    check_sentences ("sign", q, help.sign);
    check_sentences ("changes", q, help.changes);
    check_sentences ("range", q, help.range);
    check_sentences ("folklore", q, help.folklore);
    g_assert_cmpuint (help.n_related, >, 0);
    for (guint i = 0; i < help.n_related; i++) {
      g_assert_cmpint (help.related[i], !=, q);
      for (guint j = 0; j < i; j++)
        g_assert_cmpint (help.related[i], !=, help.related[j]);
    }
  }
}

static void
test_no_page_is_anothers (void)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (Quantity q = 0; q < N_QUANTITIES; q++) {
    g_auto (QuantityHelp) help = quantity_help (q);

    g_assert_true (g_hash_table_add (seen, (gpointer) help.what));
    g_assert_true (g_hash_table_add (seen, (gpointer) help.folklore));
  }
}

/* The sign words of the table are those of the page. */
static void
test_signs_are_those_of_the_table (void)
{
  for (Quantity q = 0; q < N_QUANTITIES; q++) {
    const QuantityInfo info = quantity_info (q);
    g_auto (QuantityHelp) help = quantity_help (q);

    g_assert_nonnull (strstr (help.sign, info.positive));
    g_assert_nonnull (strstr (help.sign, info.negative));
  }
  g_auto (QuantityHelp) camber = quantity_help (QUANTITY_CAMBER);
  g_assert_cmpstr (camber.sign, ==, "Positive: top leans out. Negative: top leans in.");
}

static void
test_ranges_are_the_bands_of_the_warnings (void)
{
  guint n_watched = 0;

  for (Quantity q = 0; q < N_QUANTITIES; q++) {
    PlausibilityBand bands[PLAUSIBILITY_MOST_BANDS];
    const guint n = plausibility_bands (q, bands);
    g_auto (QuantityHelp) help = quantity_help (q);

    for (guint i = 0; i < n; i++) {
      g_assert_nonnull (strstr (help.range, bands[i].name));
      g_assert_nonnull (strstr (help.range, bands[i].source));
      g_assert_cmpfloat (bands[i].least, <, bands[i].most);
    }
    n_watched += n;
  }
  g_assert_cmpuint (n_watched, ==, 12);

  g_auto (QuantityHelp) caster = quantity_help (QUANTITY_CASTER);
  g_assert_true (g_str_has_prefix (caster.range, "Caster: 1.5 to 7.5° is usual"));
  g_auto (QuantityHelp) toe = quantity_help (QUANTITY_TOE_IN);
  g_assert_true (g_str_has_prefix (toe.range, "Total toe-in: −0.2 to 0.3° is usual"));
}

/* 57.2958 · 25 mm over 0.9 and 0.2°: 1591.5 and 7162.0 mm. By hand. */
static void
test_the_swing_arms_range_is_that_of_camber_gain (void)
{
  g_auto (QuantityHelp) length = quantity_help (QUANTITY_SWING_ARM_LENGTH);
  g_auto (QuantityHelp) curvature = quantity_help (QUANTITY_SWING_ARM_CURVATURE);

  g_assert_true (g_str_has_prefix (length.range, "1590 to 7160 mm "));
  g_assert_true (g_str_has_prefix (curvature.range, "0.14 to 0.63 1/m "));
}

static double
change (const Measures *was, const Measures *is, Quantity quantity)
{
  return check_shown (is, quantity) - check_shown (was, quantity);
}

static void
test_what_the_mount_is_said_to_do (void)
{
  const Corner as_measured = check_assemble_moved (&set_m, 0, 0, 0);
  const Corner inboard = check_assemble_moved (&set_m, 10, 0, 0);
  const Corner rearward = check_assemble_moved (&set_m, 0, 10, 0);
  const Measures was = check_solve (&as_measured, 0, 0);
  const Measures in = check_solve (&inboard, 0, 0), back = check_solve (&rearward, 0, 0);

  check_near ("camber", 0, change (&was, &in, QUANTITY_CAMBER), -0.86, 0.005);
  check_near ("toe-in", 0, change (&was, &in, QUANTITY_TOE_IN), 0.36, 0.005);
  check_near ("SAI", 0, change (&was, &in, QUANTITY_SAI), 0.86, 0.05);
  check_near ("included", 0, change (&was, &in, QUANTITY_INCLUDED_ANGLE), 0, 0.03);
  check_near ("caster", 0, change (&was, &back, QUANTITY_CASTER), 0.88, 0.005);
  check_near ("camber", 0, change (&was, &back, QUANTITY_CAMBER), 0.01, 0.005);
  /* "goes back a little": the knuckle tips about the ball joint */
  g_assert_cmpfloat (change (&was, &back, QUANTITY_WHEELBASE_CHANGE), <, -0.5);
  g_assert_cmpfloat (change (&was, &back, QUANTITY_WHEELBASE_CHANGE), >, -3.0);
}

static void
test_what_travel_is_said_to_do (void)
{
  const Corner corner = check_assemble_moved (&set_m, 0, 0, 0);
  const Measures low = check_solve (&corner, 30, 0), at = check_solve (&corner, 0, 0);
  double most_track = -INFINITY, least_track = INFINITY, most_wheelbase = 0;

  for (int z = -80; z <= 80; z++) {
    const Measures m = check_solve (&corner, z, 0);

    most_track = fmax (most_track, check_shown (&m, QUANTITY_HALF_TRACK_CHANGE));
    least_track = fmin (least_track, check_shown (&m, QUANTITY_HALF_TRACK_CHANGE));
    most_wheelbase =
        fmax (most_wheelbase, fabs (check_shown (&m, QUANTITY_WHEELBASE_CHANGE)));
  }
  check_near ("track", 0, most_track, 1.4, 0.05);
  check_near ("track", -80, least_track, -20, 0.5);
  g_assert_cmpfloat (most_wheelbase, <, 2.0);
  check_near ("gain", 0, check_shown (&at, QUANTITY_CAMBER_GAIN), -0.0175, 5e-5);
  check_near ("gain", 30, check_shown (&low, QUANTITY_CAMBER_GAIN), -0.0109, 5e-5);
  check_near ("slope", 0, check_shown (&at, QUANTITY_SIDE_VIEW_SLOPE), 0.059, 5e-4);
  check_near ("arm ratio", 0, check_shown (&at, QUANTITY_ARM_RATIO), 0.0031, 5e-5);
  check_near ("lever", 0,
              check_shown (&at, QUANTITY_SCRUB_AT_CENTRE) -
                  check_shown (&at, QUANTITY_SCRUB_RADIUS),
              55, 0.5);
}

/* Arm level at 15.195 mm, turning point at 80.903 mm: the exact answers of the flat
 * corner, tests/kernel/test-flat-corners.c. */
static void
test_where_camber_is_said_to_turn (void)
{
  const Corner corner = check_assemble_moved (&set_p, 0, 0, 0);
  const Measures level = check_solve (&corner, 15.2, 0);
  const Measures before = check_solve (&corner, 80.4, 0);
  const Measures after = check_solve (&corner, 81.4, 0);

  g_assert_cmpfloat (check_shown (&level, QUANTITY_CAMBER_GAIN), <, -0.01);
  g_assert_cmpfloat (check_shown (&before, QUANTITY_CAMBER_GAIN), <, 0.0);
  g_assert_cmpfloat (check_shown (&after, QUANTITY_CAMBER_GAIN), >, 0.0);
}

static void
test_what_steering_is_said_to_do (void)
{
  const Corner corner = check_assemble_moved (&set_m, 0, 0, 0);
  const Measures at = check_solve (&corner, 0, 0);
  const Measures inner = check_solve (&corner, 0, -75);
  const Measures outer = check_solve (&corner, 0, 75);

  /* the gauge's and ISO's camber at 36°; held by the strut they are 3.68 and 4.55 */
  g_assert_cmpfloat (check_shown (&inner, QUANTITY_CAMBER_ISO) -
                         check_shown (&inner, QUANTITY_CAMBER),
                     >, 0.7);
  check_near ("trail", 0, check_shown (&at, QUANTITY_TRAIL_IN_TYRE), 16, 0.5);
  g_assert_cmpfloat (check_shown (&inner, QUANTITY_TRAIL_IN_TYRE), >, 40.0);
  g_assert_cmpfloat (check_shown (&outer, QUANTITY_TRAIL_IN_TYRE), <, 0.0);
}

static void
test_words_find_their_pages (void)
{
  g_assert_true (quantity_help_mentions (QUANTITY_CAMBER, ""));
  g_assert_true (quantity_help_mentions (QUANTITY_CAMBER, "CAMBER gauge"));
  g_assert_true (quantity_help_mentions (QUANTITY_SAI, "sai"));
  g_assert_true (quantity_help_mentions (QUANTITY_ARM_RATIO, "torsion bar"));
  g_assert_false (quantity_help_mentions (QUANTITY_CAMBER, "camber torsion"));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/quantity-help/parts", test_every_quantity_has_all_parts);
  g_test_add_func ("/quantity-help/own", test_no_page_is_anothers);
  g_test_add_func ("/quantity-help/signs", test_signs_are_those_of_the_table);
  g_test_add_func ("/quantity-help/ranges", test_ranges_are_the_bands_of_the_warnings);
  g_test_add_func ("/quantity-help/swing-arm",
                   test_the_swing_arms_range_is_that_of_camber_gain);
  g_test_add_func ("/quantity-help/mount", test_what_the_mount_is_said_to_do);
  g_test_add_func ("/quantity-help/travel", test_what_travel_is_said_to_do);
  g_test_add_func ("/quantity-help/turning-point", test_where_camber_is_said_to_turn);
  g_test_add_func ("/quantity-help/steering", test_what_steering_is_said_to_do);
  g_test_add_func ("/quantity-help/search", test_words_find_their_pages);
  return g_test_run ();
}
