/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/pen/axis.h"

#include <glib.h>
#include <locale.h>
#include <math.h>

/* Spans of many sizes and places, as the curves of a corner have them. */
static const struct {
  double low, high;
} spans[] = { { -2.65, 1.5 },   { -0.5, -0.49 },        { 0.1, 0.38 },
              { 8.69, 11.76 },  { -159.7, 292.5 },      { 331, 485 },
              { -20.16, 1.32 }, { 0.003096, 0.003203 }, { -1e6, 3e7 },
              { 0.0, 1.0 },     { -80.0, 80.0 },        { 0.91641, 1.02038 },
              { 99.9, 100.1 },  { -3.0, 0.0 },          { 12345.6, 12345.7 } };

static void
assert_is_nice (double step)
{
  const double mantissa = step / pow (10.0, floor (log10 (step) + 1e-9));
  const double off =
      fmin (fabs (mantissa - 1.0), fmin (fabs (mantissa - 2.0), fabs (mantissa - 5.0)));

  g_assert_cmpfloat (off, <, 1e-9);
}

static void
assert_is_multiple (double value, double quantum)
{
  g_assert_cmpfloat_with_epsilon (value / quantum, round (value / quantum), 1e-5);
}

static void
test_rounded_ranges_hold_the_data (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (spans); i++)
    for (int most = 2; most <= 8; most++) {
      const double low = spans[i].low, high = spans[i].high;
      const AxisRange range = axis_range_round (low, high, most);
      const double slack = 1e-5 * range.step;

      g_assert_cmpfloat (range.low, <=, low + slack);
      g_assert_cmpfloat (range.high, >=, high - slack);
      g_assert_cmpfloat ((range.high - range.low) / range.step, <=, most + 1e-5);
      assert_is_nice (range.step);
      assert_is_multiple (range.low, range.step / 2.0);
      assert_is_multiple (range.high, range.step / 2.0);
    }
}

static void
test_three_labels_at_least (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (spans); i++)
    for (int most = 3; most <= 8; most++) {
      int first;
      const int n =
          axis_range_ticks (axis_range_round (spans[i].low, spans[i].high, most), &first);

      g_assert_cmpint (n, >=, 3);
      g_assert_cmpint (n, <=, most + 1);
    }
}

/* One step of 50 would not hold -20 … 20 with zero a tick; two of 20 do. */
static void
test_round_zero_there_are_two_steps (void)
{
  for (int most = 1; most <= 2; most++) {
    const AxisRange range = axis_range_round (-20.0, 20.0, most);

    g_assert_cmpfloat (range.low, ==, -20.0);
    g_assert_cmpfloat (range.high, ==, 20.0);
    g_assert_cmpfloat (range.step, ==, 20.0);
  }
}

static void
test_rounding_again_changes_nothing (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (spans); i++)
    for (int most = 2; most <= 8; most++) {
      const AxisRange once = axis_range_round (spans[i].low, spans[i].high, most);
      const AxisRange twice = axis_range_round (once.low, once.high, most);

      g_assert_cmpfloat (once.low, ==, twice.low);
      g_assert_cmpfloat (once.high, ==, twice.high);
      g_assert_cmpfloat (once.step, ==, twice.step);
    }
}

/* By hand: 4.15 in at most 5 steps needs more than 0.83 a step, so 1; to half steps
 * outward that is −3 … 1.5, with the labels −3, −2, −1, 0, 1. */
static void
test_a_range_worked_by_hand (void)
{
  const AxisRange range = axis_range_round (-2.65, 1.5, 5);
  int first;

  g_assert_cmpfloat (range.low, ==, -3.0);
  g_assert_cmpfloat (range.high, ==, 1.5);
  g_assert_cmpfloat (range.step, ==, 1.0);
  g_assert_cmpint (axis_range_ticks (range, &first), ==, 5);
  g_assert_cmpint (first, ==, -3);
}

static void
test_exact_ranges_keep_their_ends (void)
{
  const AxisRange range = axis_range_exact (-75.0, 82.0, 8);
  int first;

  g_assert_cmpfloat (range.low, ==, -75.0);
  g_assert_cmpfloat (range.high, ==, 82.0);
  g_assert_cmpfloat (range.step, ==, 20.0);
  g_assert_cmpint (axis_range_ticks (range, &first), ==, 8); /* −60 … 80 */
  g_assert_cmpint (first, ==, -3);
}

static void
test_pixels_invert_to_values (void)
{
  const Axis axis = { -3.0, 2.0, 310.0, 40.0 };

  g_assert_cmpfloat_with_epsilon (axis_to_pixel (axis, -3.0), 310.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (axis_to_pixel (axis, 2.0), 40.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (axis_to_pixel (axis, -0.5), 175.0, 1e-12);
  for (double value = -4.0; value < 4.0; value += 0.37)
    g_assert_cmpfloat_with_epsilon (axis_to_data (axis, axis_to_pixel (axis, value)),
                                    value, 1e-12);
}

static void
assert_label (double value, int decimals, const char *expected)
{
  char text[32];

  axis_format (value, decimals, text, sizeof text);
  g_assert_cmpstr (text, ==, expected);
}

static void
test_labels_have_a_true_minus (void)
{
  assert_label (-1.5, 1, "−1.5");
  assert_label (-0.04, 1, "0.0");
  assert_label (200.0, 0, "200");
  g_assert_cmpint (axis_step_decimals (0.5), ==, 1);
  g_assert_cmpint (axis_step_decimals (0.002), ==, 3);
  g_assert_cmpint (axis_step_decimals (0.1), ==, 1);
  g_assert_cmpint (axis_step_decimals (1.0), ==, 0);
  g_assert_cmpint (axis_step_decimals (500.0), ==, 0);
}

static void
test_labels_follow_the_locale (void)
{
  if (setlocale (LC_NUMERIC, "de_DE.UTF-8") == NULL) {
    g_test_skip ("no locale with a decimal comma is installed");
    return;
  }
  assert_label (-1.5, 1, "−1,5");
  setlocale (LC_NUMERIC, "C");
}

/* Steps that divide a degree into whole minutes, and labels that say so. */
static void
test_minutes_are_round (void)
{
  UnitChoice choice = unit_choice_stored;
  char text[32];

  choice.angle = ANGLE_MINUTES;
  unit_choice_set (&choice);
  for (gsize i = 0; i < G_N_ELEMENTS (spans); i++)
    for (int most = 3; most <= 8; most++) {
      const double low = spans[i].low, high = spans[i].high;
      const AxisRange range = axis_range_round_in (UNIT_ANGLE, low, high, most);
      const double slack = 1e-5 * range.step, minutes = 60.0 * range.step;
      int first;

      g_assert_cmpfloat (range.low, <=, low + slack);
      g_assert_cmpfloat (range.high, >=, high - slack);
      g_assert_cmpint (axis_range_ticks (range, &first), >=, 3);
      if (range.step < 1.0 && minutes >= 1.0)
        assert_is_multiple (60.0, minutes);
    }

  const AxisRange range = axis_range_round_in (UNIT_ANGLE, 3.4, 6.0, 6);
  g_assert_cmpfloat (range.step, ==, 0.5);
  axis_tick_text (range, 7, text, sizeof text);
  g_assert_cmpstr (text, ==, "3°30′");
  axis_tick_text (range, 0, text, sizeof text);
  g_assert_cmpstr (text, ==, "0°");
  axis_tick_text (axis_range_round_in (UNIT_ANGLE, -6.0, 6.0, 6), -2, text, sizeof text);
  g_assert_cmpstr (text, ==, "−4°");
  unit_choice_set (&unit_choice_stored);
}

/* The values stay stored ones; the labels are round in inches. */
static void
test_inches_are_round (void)
{
  UnitChoice choice = unit_choice_stored;
  char text[32];

  choice.length = LENGTH_INCH;
  unit_choice_set (&choice);

  const AxisRange range = axis_range_exact_in (UNIT_LENGTH, -60.0, 60.0, 6);
  int first;
  g_assert_cmpfloat (range.step, ==, 1.0); /* 4.7 in */
  g_assert_cmpint (axis_range_ticks (range, &first), ==, 5);
  g_assert_cmpint (first, ==, -2);
  g_assert_cmpfloat (axis_tick (range, first), ==, -50.8);
  axis_tick_text (range, first, text, sizeof text);
  g_assert_cmpstr (text, ==, "−2");
  unit_choice_set (&unit_choice_stored);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/axis/rounded-ranges-hold-the-data",
                   test_rounded_ranges_hold_the_data);
  g_test_add_func ("/axis/three-labels-at-least", test_three_labels_at_least);
  g_test_add_func ("/axis/round-zero-there-are-two-steps",
                   test_round_zero_there_are_two_steps);
  g_test_add_func ("/axis/rounding-again-changes-nothing",
                   test_rounding_again_changes_nothing);
  g_test_add_func ("/axis/a-range-worked-by-hand", test_a_range_worked_by_hand);
  g_test_add_func ("/axis/exact-ranges-keep-their-ends",
                   test_exact_ranges_keep_their_ends);
  g_test_add_func ("/axis/pixels-invert-to-values", test_pixels_invert_to_values);
  g_test_add_func ("/axis/labels-have-a-true-minus", test_labels_have_a_true_minus);
  g_test_add_func ("/axis/labels-follow-the-locale", test_labels_follow_the_locale);
  g_test_add_func ("/axis/minutes-are-round", test_minutes_are_round);
  g_test_add_func ("/axis/inches-are-round", test_inches_are_round);
  return g_test_run ();
}
