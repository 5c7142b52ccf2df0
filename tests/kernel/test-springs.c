/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Rates and stresses of springs against worked figures of handbooks, named beside each,
 * and against one another: a coil is a torsion bar wound up. */

#include "check-data.h"
#include "random-corner.h"

#include "kernel/spring.h"

#define N_CASES 200

static void
check_share (const char *what, double place, double value, double expected, double share)
{
  check_near (what, place, value, expected, share * fabs (expected));
}

/* Shigley's Mechanical Engineering Design, 10th and 11th ed., solution of problem
 * 10-3 (a), N and mm; and example 10-1, lbf and inches (from memory). The digits beyond
 * the printed ones were computed independently. */
static void
test_coil_rates (void)
{
  const double first = coil_rate ((CoilSize){ 2.5, 28.5, 13, 14 }, 81000);
  const double second = coil_rate ((CoilSize){ 0.037, 0.4, 10.5, 12.5 }, 11.85e6);

  check_near ("10-3 (a) as printed", 0, first, 1.314, 5e-4);
  check_share ("10-3 (a)", 0, first, 1.31424742, 1e-8);
  check_near ("example 10-1 as printed", 0, second, 4.13, 5e-3);
  check_share ("example 10-1", 0, second, 4.13110265, 1e-8);
}

/* Data and method: companion to an open textbook on the strength of materials, solution
 * 8.8: 100 N on two coils, the outer one squeezed by 20 mm, the inner, 10 mm shorter, by
 * 10. The outer carries 60 N; the inner must be of 4 N/mm. Of the same diameter and
 * number of coils as the outer, its wire would be thicker by the fourth root of 4/3. */
static void
test_nested_coils (void)
{
  const CoilSize outer = { 3, 30, 10, 12 };
  const CoilSize inner = { 3 * pow (4.0 / 3.0, 0.25), 30, 10, 12 };
  const double outer_rate = coil_rate (outer, 80000);
  const double inner_rate = coil_rate (inner, 80000);

  check_share ("outer", 0, outer_rate, 3.0, 1e-12);
  check_share ("outer force", 0, outer_rate * 20, 60, 1e-12);
  check_share ("both", 0, outer_rate * 20 + inner_rate * 10, 100, 1e-12);
}

/* Shigley's example 10-1 goes on (from memory): yield at 6.46 lbf, where the shear stress
 * is 146 kpsi with Bergsträsser's factor, which is within 1 % of Wahl's. Wahl's chart
 * (from memory): 1.58 at an index of 3, 1.14 at 10. */
static void
test_coil_stress (void)
{
  const CoilSize example = { 0.037, 0.4, 10.5, 12.5 };
  static const struct {
    double index, factor;
  } chart[] = { { 3, 1.58 }, { 10, 1.14 } };

  check_share ("example 10-1", 0, coil_stress (example, 6.46), 146e3, 0.01);
  for (size_t i = 0; i < G_N_ELEMENTS (chart); i++) {
    const double c = chart[i].index, d = 12, force = 3000;
    const double plain = 8 * force * c * d / (G_PI * d * d * d);

    check_near ("Wahl", c, coil_stress ((CoilSize){ d, c * d, 6, 8 }, force) / plain,
                chart[i].factor, 5e-3);
  }
}

/* A coil of many small turns is a straight bar of length πDn, twisted by F·D/2: rates
 * agree at every size, stresses where the wire is thin for its diameter. */
static void
test_coil_is_a_wound_bar (void)
{
  Dice dice = { 71 };

  for (int i = 0; i < N_CASES; i++) {
    const double d = dice_between (&dice, 2, 20), n = dice_between (&dice, 3, 15);
    const double D = d * dice_between (&dice, 3, 20), G = dice_between (&dice, 7e4, 9e4);
    const BarSection wire = { d, 0, G_PI * D * n };
    const BarSection thin = { 1e-6 * D, 0, 1 };
    const double lever = D / 2, force = 2000;

    check_share ("rate", i, coil_rate ((CoilSize){ d, D, n, n + 2 }, G),
                 torsion_bar_rate (&wire, 1, G) / (lever * lever), 1e-12);
    check_share ("stress", i, coil_stress ((CoilSize){ 1e-6 * D, D, n, n + 2 }, force),
                 torsion_bar_stress (&thin, 1, force * lever), 2e-6);
  }
}

/* Shigley's Mechanical Engineering Design, 9th ed., problem 4-3 (b), lbf and inches
 * (answers from memory): held at both ends, twisted in the middle. */
static void
test_bar_held_at_both_ends (void)
{
  const BarSection half = { 0.5, 0, 5 };
  const double rate = 2 * torsion_bar_rate (&half, 1, 11.5e6);
  const double stress = torsion_bar_stress (&half, 1, 1500 / 2.0);

  check_near ("rate as printed", 0, rate, 28.2e3, 50);
  check_share ("rate", 0, rate, 28225.2465, 1e-8);
  check_near ("stress as printed", 0, stress, 30.6e3, 50);
  check_share ("stress", 0, stress, 30557.7491, 1e-8);
}

/* Gere & Goodno, Mechanics of Materials, 7th ed., solution 3.8-11, lbf and inches. */
static void
test_bar_in_tube (void)
{
  const BarSection bar = { 1.5, 0, 30 }, tube = { 2.25, 1.75, 30 };
  const double bar_rate = torsion_bar_rate (&bar, 1, 11.6e6);
  const double tube_rate = torsion_bar_rate (&tube, 1, 11.6e6);
  const double twist = 5000 / (bar_rate + tube_rate);

  check_near ("moment of the bar", 0, polar_moment (1.5, 0), 0.49701, 5e-6);
  check_near ("moment of the tube", 0, polar_moment (2.25, 1.75), 1.59534, 5e-6);
  check_near ("rate", 0, bar_rate + tube_rate, 809e3, 500);
  check_near ("twist", 0, DEGREES (twist), 0.354, 5e-4);
  check_near ("in the bar", 0, bar_rate * twist, 1187.68, 5e-3);
  check_near ("in the tube", 0, tube_rate * twist, 3812.32, 5e-3);
}

/* A rule of the trade, seen on an owners' forum: the rate in lbf/in at a lever's end is
 * 1 120 000 d⁴/(L l²), inches. Its modulus is 11.408 Mpsi, 78.66 GPa (computed
 * independently); 79.3 GPa give 0.8 % more. */
static void
test_trade_rule (void)
{
  const double psi =
      4.4482216152605 / (25.4 * 25.4); /* N/mm², as the units are defined */
  const double d = 0.9, length = 42, lever = 12;
  const BarSection bar = { d, 0, length };
  const double rule = 1120000 * pow (d, 4) / (length * lever * lever);
  const double own = torsion_bar_rate (&bar, 1, 11408226.3) / (lever * lever);
  const double metric = torsion_bar_rate (&bar, 1, 78.66e3 / psi) / (lever * lever);
  const double stiffer = torsion_bar_rate (&bar, 1, 79.3e3 / psi) / (lever * lever);

  check_share ("rule", 0, own, rule, 1e-8);
  check_share ("rule, 78.66 GPa", 0, metric, rule, 5e-3 / 78.66);
  check_near ("modulus of 79.3 GPa, per cent", 0, 100 * (stiffer / rule - 1), 0.8, 0.05);
}

/* π (D⁴ − d⁴) G/(32 L), computed independently; N·m/rad. */
static void
test_bar_rates (void)
{
  const BarSection solid = { 20, 0, 600 }, hollow = { 26, 14, 600 };
  const double rate = torsion_bar_rate (&solid, 1, 80000) / 1000;

  check_share ("solid", 0, rate, 2094.3951, 1e-8);
  check_share ("solid, per degree", 0, RADIANS (rate), 36.5540904, 1e-8);
  check_share ("hollow", 0, torsion_bar_rate (&hollow, 1, 80000) / 1000, 5478.93759,
               1e-8);
}

/* Twice as thick is 16 times as stiff and an eighth of the stress; 5 % more diameter are
 * 21.55 % more rate. */
static void
test_fourth_power (void)
{
  const BarSection one = { 20, 0, 600 }, two = { 40, 0, 600 }, more = { 21, 0, 600 };
  const double rate = torsion_bar_rate (&one, 1, 80000);

  check_share ("rate", 0, torsion_bar_rate (&two, 1, 80000), 16 * rate, 1e-14);
  check_share ("stress", 0, torsion_bar_stress (&two, 1, 9e5),
               torsion_bar_stress (&one, 1, 9e5) / 8, 1e-14);
  check_near ("5 %", 0, 100 * (torsion_bar_rate (&more, 1, 80000) / rate - 1), 21.55,
              5e-3);
}

static void
test_stepped_bar (void)
{
  Dice dice = { 72 };

  for (int i = 0; i < N_CASES; i++) {
    BarSection row[4];
    double series = INFINITY, largest = 0, torque = dice_between (&dice, -2e6, 2e6);

    for (int k = 0; k < 4; k++) {
      row[k].outer = dice_between (&dice, 15, 40);
      row[k].inner = row[k].outer * dice_between (&dice, 0, 0.9);
      row[k].length = dice_between (&dice, 20, 900);
      series = springs_in_series (series, torsion_bar_rate (&row[k], 1, 79300));
      largest = fmax (largest, torsion_bar_stress (&row[k], 1, torque));
    }
    check_share ("rate", i, torsion_bar_rate (row, 4, 79300), series, 1e-13);
    check_share ("stress", i, torsion_bar_stress (row, 4, torque), largest, 1e-15);
    /* cut anywhere, a bar stays the same bar */
    const double part = dice_between (&dice, 0.1, 0.9);
    const BarSection cut[2] = {
      { row[0].outer, row[0].inner, row[0].length * part },
      { row[0].outer, row[0].inner, row[0].length * (1 - part) },
    };

    check_share ("cut", i, torsion_bar_rate (cut, 2, 79300),
                 torsion_bar_rate (row, 1, 79300), 1e-14);
  }
}

/* A thin wall by Bredt: J = 2π r³ t, and a stress of T/(2π r² t); a full bore leaves
 * nothing; and the polar moment is that about both diameters together. */
static void
test_hollow_limit (void)
{
  const double r = 20, t = 1e-5, torque = 1e3;
  const BarSection thin = { 2 * r + t, 2 * r - t, 100 };

  check_share ("moment", 0, polar_moment (thin.outer, thin.inner),
               2 * G_PI * r * r * r * t, 1e-8);
  check_share ("stress", 0, torsion_bar_stress (&thin, 1, torque),
               torque / (2 * G_PI * r * r * t), 1e-6);
  g_assert_true (polar_moment (26, 26) == 0.0);
  g_assert_true (bending_moment_of_area (26, 26) == 0.0);
  g_assert_cmpfloat (polar_moment (26, 14), ==, 2 * bending_moment_of_area (26, 14));
}

/* Shigley Table A-18 or Roark's Formulas for Stress and Strain; computed independently.
 */
static void
test_bending_moments (void)
{
  check_share ("22 solid", 0, bending_moment_of_area (22, 0), 11499.0145, 1e-8);
  check_share ("25 solid", 0, bending_moment_of_area (25, 0), 19174.7598, 1e-8);
  check_share ("22/14", 0, bending_moment_of_area (22, 14), 9613.27352, 1e-8);
}

/* 20 and 15 N/mm one on the other: 60/7. By definition they share their force, and the
 * lower of the two rules. */
static void
test_series (void)
{
  Dice dice = { 73 };

  check_near ("20 and 15", 0, springs_in_series (20, 15), 8.571429, 5e-7);
  check_share ("and none", 0, springs_in_series (20, INFINITY), 20, 1e-15);
  for (int i = 0; i < N_CASES; i++) {
    const double a = dice_between (&dice, 1, 300), b = dice_between (&dice, 1, 300);
    const double both = springs_in_series (a, b), force = 1000;

    check_share ("squeeze", i, force / both, force / a + force / b, 1e-13);
    g_assert_cmpfloat (both, <, fmin (a, b));
  }
}

static void
test_solid_length (void)
{
  g_assert_cmpfloat (coil_solid_length ((CoilSize){ 12.5, 110, 5, 6.5 }), ==, 81.25);
}

static void
test_no_size (void)
{
  const BarSection good = { 20, 0, 600 };
  const BarSection bad[] = { { 0, 0, 600 }, { 20, 0, 0 }, { 20, 20, 600 } };
  const CoilSize coils[] = { { 0, 100, 5, 7 }, { 12, 0, 5, 7 }, { 12, 12, 5, 7 } };

  for (size_t i = 0; i < G_N_ELEMENTS (bad); i++) {
    const BarSection row[2] = { good, bad[i] };

    g_assert_true (torsion_bar_rate (row, 2, 80000) == 0.0);
    g_assert_true (torsion_bar_stress (row, 2, 1e6) == 0.0);
  }
  for (size_t i = 0; i < G_N_ELEMENTS (coils); i++) {
    g_assert_true (coil_rate (coils[i], 80000) == 0.0);
    g_assert_true (coil_stress (coils[i], 3000) == 0.0);
  }
  g_assert_true (torsion_bar_rate (NULL, 0, 80000) == 0.0);
  g_assert_true (coil_rate ((CoilSize){ 12, 100, 0, 0 }, 80000) == 0.0);
  g_assert_true (coil_solid_length ((CoilSize){ 12, 100, 5, 0 }) == 0.0);
  g_assert_true (springs_in_series (0, 20) == 0.0 && springs_in_series (20, 0) == 0.0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/kernel/springs/coil-rates", test_coil_rates);
  g_test_add_func ("/kernel/springs/nested-coils", test_nested_coils);
  g_test_add_func ("/kernel/springs/coil-stress", test_coil_stress);
  g_test_add_func ("/kernel/springs/coil-is-a-wound-bar", test_coil_is_a_wound_bar);
  g_test_add_func ("/kernel/springs/bar-held-at-both-ends", test_bar_held_at_both_ends);
  g_test_add_func ("/kernel/springs/bar-in-tube", test_bar_in_tube);
  g_test_add_func ("/kernel/springs/trade-rule", test_trade_rule);
  g_test_add_func ("/kernel/springs/bar-rates", test_bar_rates);
  g_test_add_func ("/kernel/springs/fourth-power", test_fourth_power);
  g_test_add_func ("/kernel/springs/stepped-bar", test_stepped_bar);
  g_test_add_func ("/kernel/springs/hollow-limit", test_hollow_limit);
  g_test_add_func ("/kernel/springs/bending-moments", test_bending_moments);
  g_test_add_func ("/kernel/springs/series", test_series);
  g_test_add_func ("/kernel/springs/solid-length", test_solid_length);
  g_test_add_func ("/kernel/springs/no-size", test_no_size);
  return g_test_run ();
}
