/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "comma-locale.h"
#include "model/words/typed-expression.h"
#include "model/words/unit.h"

#include <locale.h>
#include <math.h>

static const UnitChoice imperial = { .length = LENGTH_INCH,
                                     .angle = ANGLE_MINUTES,
                                     .toe = TOE_TOTAL,
                                     .mass = MASS_LB,
                                     .force = FORCE_LBF,
                                     .rate = RATE_LBF_PER_INCH,
                                     .toe_diameter_mm = 400.0 };

static void
choose_stored (void)
{
  unit_choice_set (&unit_choice_stored);
}

/* NIST Special Publication 811 (2008), appendix B.8, as remembered, to its seven digits:
 * pound 4.535924 E-01 kg, pound-force 4.448222 E+00 N, pound-force per inch
 * 1.751268 E+02 N/m, inch 2.54 E-02 m, ksi 6.894757 E+06 Pa, pound-force foot
 * 1.355818 E+00 N·m. */
static void
test_factors_are_those_published (void)
{
  unit_choice_set (&imperial);
  g_assert_cmpfloat (unit_stored (UNIT_LENGTH, 1.0), ==, 25.4);
  g_assert_cmpfloat_with_epsilon (unit_stored (UNIT_MASS, 1.0), 0.4535924, 5e-8);
  g_assert_cmpfloat_with_epsilon (unit_stored (UNIT_FORCE, 1.0), 4.448222, 5e-7);
  g_assert_cmpfloat_with_epsilon (unit_stored (UNIT_RATE, 1.0), 0.1751268, 5e-8);
  g_assert_cmpfloat_with_epsilon (unit_stored (UNIT_STRESS, 1.0), 6.894757, 5e-7);
  g_assert_cmpfloat_with_epsilon (unit_stored (UNIT_MODULUS, 1.0), 6.894757, 5e-7);
  g_assert_cmpfloat_with_epsilon (unit_stored (UNIT_TORQUE, 1.0), 1355.818, 5e-4);
  g_assert_cmpfloat_with_epsilon (unit_stored (UNIT_TWIST_RATE, 1.0), 1.355818, 5e-7);
  g_assert_cmpfloat_with_epsilon (unit_stored (UNIT_SPEED, 1.0), 0.0254, 1e-15);
  choose_stored ();
}

static void
test_stored_units_change_nothing (void)
{
  choose_stored ();
  for (UnitKind kind = 0; kind < N_UNIT_KINDS; kind++) {
    if (kind == UNIT_TORQUE)
      continue; /* stored in N·mm, shown in N·m */
    g_assert_cmpfloat (unit_shown (kind, 12.345), ==, 12.345);
    g_assert_cmpfloat (unit_stored (kind, 12.345), ==, 12.345);
    g_assert_cmpint (unit_decimals (kind, 2), ==, 2);
    g_assert_cmpfloat (unit_round_step (kind, 0.5), ==, 0.5);
  }
  g_assert_cmpfloat (unit_shown (UNIT_TORQUE, 12500.0), ==, 12.5);
  g_assert_cmpfloat (unit_stored (UNIT_TORQUE, 12.5), ==, 12500.0);
}

static void
set_choice (guint number)
{
  const UnitChoice choice = { .length = number % 2,
                              .angle = number / 2 % 2,
                              .toe = number / 4 % 3,
                              .mass = number / 12 % 2,
                              .force = number / 24 % 2,
                              .rate = number / 48 % 2,
                              .toe_diameter_mm = 300.0 + number };

  unit_choice_set (&choice);
}

static void
test_shown_and_back (void)
{
  for (guint i = 0; i < 9600; i++) {
    const UnitKind kind = i % N_UNIT_KINDS;
    const double value = g_test_rand_double_range (-20.0, 20.0);

    set_choice (i % 96);
    g_assert_cmpfloat_with_epsilon (unit_stored (kind, unit_shown (kind, value)), value,
                                    1e-12);
  }
  choose_stored ();
}

/* Half a unit in the last place of what is shown, as far as the way back takes it. */
static double
half_a_place (UnitKind kind, int decimals)
{
  const double place =
      pow (10.0, -unit_decimals (kind, decimals)) *
      (unit_has_minutes (kind) && kind != UNIT_ANGLE_PER_LENGTH ? 1.0 / 60.0 : 1.0);

  return 0.5 * fabs (unit_stored (kind, place)) * 1.05 + 1e-9;
}

/* The text of every choice reads back to the number it was rounded from. */
static void
test_texts_read_back (void)
{
  static const UnitKind kinds[] = { UNIT_LENGTH,     UNIT_ANGLE,   UNIT_TOE,
                                    UNIT_MASS,       UNIT_FORCE,   UNIT_RATE,
                                    UNIT_STRESS,     UNIT_MODULUS, UNIT_TORQUE,
                                    UNIT_TWIST_RATE, UNIT_SPEED };

  for (guint i = 0; i < 9600; i++) {
    const UnitKind kind = kinds[i % G_N_ELEMENTS (kinds)];
    const int decimals = g_test_rand_int_range (0, 4);
    const double value = g_test_rand_double_range (-15.0, 15.0);
    double again;

    set_choice (i / G_N_ELEMENTS (kinds) % 96);
    g_autofree char *text = unit_text (kind, value, decimals);
    g_autofree char *refusal = NULL;
    g_test_message ("%s", text);
    g_assert_cmpint (typed_expression_read (text, kind, &again, &refusal), ==,
                     EXPRESSION_VALUE);
    g_assert_cmpfloat_with_epsilon (again, value, half_a_place (kind, decimals));
  }
  choose_stored ();
}

static void
assert_text (UnitKind kind, double value, int decimals, const char *wanted)
{
  g_autofree char *text = unit_text (kind, value, decimals);

  g_assert_cmpstr (text, ==, wanted);
}

static void
test_texts (void)
{
  choose_stored ();
  assert_text (UNIT_LENGTH, -12.34, 1, "−12.3 mm");
  assert_text (UNIT_ANGLE, -0.001, 2, "0.00°");
  assert_text (UNIT_RATE, 28.0, 1, "28.0 N/mm");
  assert_text (UNIT_TORQUE, 722898.0, 0, "722.9 N·m");
  unit_choice_set (&imperial);
  assert_text (UNIT_LENGTH, -12.7, 1, "−0.500 in");
  assert_text (UNIT_LENGTH, 3127.0, 0, "123.11 in");
  assert_text (UNIT_ANGLE, -1.93, 2, "−1°56′"); /* 1.93 · 60 = 115.8 */
  assert_text (UNIT_ANGLE, 0.9999, 2, "1°00′"); /* and not 0°60′ */
  assert_text (UNIT_ANGLE, -0.005, 2, "0°00′"); /* 0.3′ */
  assert_text (UNIT_ANGLE, 5.125, 3, "5°07.5′");
  assert_text (UNIT_TOE, 0.25, 2, "0°30′");                  /* in total */
  assert_text (UNIT_MASS, 100.0, 0, "220 lb");               /* 220.46 */
  assert_text (UNIT_RATE, 28.0, 1, "160 lbf/in");            /* 28 / 0.1751268 = 159.88 */
  assert_text (UNIT_ANGLE_PER_LENGTH, 0.01, 4, "15.2 ′/in"); /* 0.6 · 25.4 = 15.24 */
  assert_text (UNIT_STRESS, 900.0, 0, "130.5 ksi");          /* 900 / 6.894757 = 130.53 */
  assert_text (UNIT_MODULUS, 79.3, 1, "11.50 Mpsi");        /* 79.3 / 6.894757 = 11.501 */
  assert_text (UNIT_TORQUE, 1e6, 0, "737.6 lbf·ft");        /* 1e6 / 1355.818 = 737.56 */
  assert_text (UNIT_TWIST_RATE, 38.0, 2, "28.03 lbf·ft/°"); /* 38 / 1.355818 = 28.027 */
  assert_text (UNIT_SPEED, 0.1, 1, "3.9 in/s");             /* 0.1 / 0.0254 = 3.937 */
  assert_text (UNIT_LENGTH, (double) INFINITY, 1, "– in");
  choose_stored ();
}

/* Toe of 0.5° each at 400 mm: 2 · 400 · sin 0.5° = 6.981 mm, by hand. */
static void
test_toe_at_a_diameter (void)
{
  UnitChoice choice = unit_choice_stored;

  choice.toe = TOE_AT_DIAMETER;
  choice.toe_diameter_mm = 400.0;
  unit_choice_set (&choice);
  g_assert_cmpfloat_with_epsilon (unit_shown (UNIT_TOE, 0.5), 6.9812, 5e-5);
  assert_text (UNIT_TOE, 0.5, 2, "7.0 mm");
  g_assert_true (isnan (unit_stored (UNIT_TOE, 801.0)));
  choice.length = LENGTH_INCH;
  unit_choice_set (&choice);
  assert_text (UNIT_TOE, 0.5, 2, "0.275 in");
  choose_stored ();
}

static void
test_comma_locale (void)
{
  if (!comma_locale_enter ())
    return;
  unit_choice_set (&imperial);
  assert_text (UNIT_LENGTH, 12.7, 1, "0,500 in");
  assert_text (UNIT_ANGLE, 5.125, 3, "5°07,5′");
  choose_stored ();
  comma_locale_leave ();
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "C");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/unit/factors-are-those-published", test_factors_are_those_published);
  g_test_add_func ("/unit/stored-units-change-nothing", test_stored_units_change_nothing);
  g_test_add_func ("/unit/shown-and-back", test_shown_and_back);
  g_test_add_func ("/unit/texts-read-back", test_texts_read_back);
  g_test_add_func ("/unit/texts", test_texts);
  g_test_add_func ("/unit/toe-at-a-diameter", test_toe_at_a_diameter);
  g_test_add_func ("/unit/comma-locale", test_comma_locale);
  return g_test_run ();
}
