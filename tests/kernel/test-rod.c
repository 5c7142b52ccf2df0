/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The rod against beam tables: Budynas & Nisbett, Shigley's Mechanical Engineering
 * Design, Table A-9, case 10 (overhang) and cases 1 and 2 (cantilever), Table A-18
 * (sections). The formulas are published there, the figures were computed from them
 * independently. */

#include "check-data.h"

#include "kernel/rod.h"
#include "kernel/spring.h"

#include <string.h>

static const Rod solid = { .outer = 22, .modulus = 207000 };

static void
check_share (const char *what, double value, double expected, double share)
{
  check_near (what, 0, value, expected, share * fabs (expected));
}

/* BM1 */
static void
test_sections (void)
{
  check_share ("22", bending_moment_of_area (22, 0), 11499.0145, 5e-9);
  check_share ("25", bending_moment_of_area (25, 0), 19174.7598, 5e-9);
  check_share ("22/14", bending_moment_of_area (22, 14), 9613.27352, 5e-9);
}

/* BM2: case 10 */
static void
test_overhang (void)
{
  const RodBending b = rod_bend (&solid, (RodReach){ 180, 150 }, 400);

  check_share ("deflection", b.deflection, 0.598917109, 1e-9);
  check_share ("between", b.between, 0.0436597164, 2e-9);
  check_share ("guide", b.guide, 880, 1e-14);
  check_share ("piston", b.piston, 480, 1e-14);
  check_share ("moment", b.moment, 72000, 1e-14);
  check_share ("stress", b.stress, 68.8754675, 1e-9);
  check_share ("slope", DEGREES (b.slope), 0.242634301, 2e-9);
}

/* BM3: case 1. Guide and piston close together hold the rod as if it were built in. */
static void
test_built_in (void)
{
  const RodBending b = rod_bend (&solid, (RodReach){ 180, 1e-9 }, 400);
  const RodBending apart = rod_bend (&solid, (RodReach){ 180, 150 }, 400);

  check_share ("deflection", b.deflection, 0.326682059, 2e-9);
  /* what a built-in rod leaves out: (a + l)/a */
  check_share ("too stiff", apart.deflection / b.deflection, 330.0 / 180.0, 1e-9);
}

/* BM4: case 2. Beyond its load the beam is straight: it goes on by slope. */
static void
test_load_part_way (void)
{
  const RodBending b = rod_bend (&solid, (RodReach){ 100, 1e-9 }, 500);

  check_share ("at the load", b.deflection, 0.0700193028, 2e-9);
  check_share ("end", b.deflection + b.slope * 150, 0.227562734, 2e-9);
}

/* Set P at 3500 N */
static void
test_set_p_rod (void)
{
  const RodBending b = rod_bend (&solid, (RodReach){ 180, 150 }, 211.509);

  check_near ("deflection", 0, b.deflection, 0.316691, 1e-6);
  check_near ("guide", 0, b.guide, 465.320, 5e-4);
  check_near ("piston", 0, b.piston, 253.811, 5e-4);
  check_near ("moment", 0, b.moment / 1000, 38.0716, 1e-4);
  check_near ("stress", 0, b.stress, 36.4195, 1e-4);
}

/* ∫ m s ds over a span of @length, where the moment grows from 0 to @moment and s is
 * counted from where it is 0: Simpson's rule, exact up to cubes. */
static double
moment_of_area (double moment, double length)
{
  return length / 6 * (4 * (moment / 2) * (length / 2) + moment * length);
}

/* A second way, by the theorems of moment and area instead of the table: the moment falls
 * from F a at the guide to 0 at the piston and at the end. */
static void
test_moment_area (void)
{
  const double F = 300, a = 130, l = 220, EI = 207000 * bending_moment_of_area (25, 12);
  const Rod rod = { .outer = 25, .inner = 12, .modulus = 207000 };
  const RodBending b = rod_bend (&rod, (RodReach){ a, l }, F);
  const double at_guide = moment_of_area (F * a, l) / l / EI;

  check_share ("slope", b.slope, at_guide + F * a * a / 2 / EI, 1e-13);
  check_share ("deflection", b.deflection, at_guide * a + moment_of_area (F * a, a) / EI,
               1e-13);
}

static void
test_sizes (void)
{
  const Rod hollow = { .outer = 22, .inner = 14, .modulus = 207000 };
  const Rod twice = { .outer = 44, .modulus = 207000 };
  const Rod filled = { .outer = 22, .inner = 0, .modulus = 207000 };
  const RodReach reach = { 180, 150 };
  const RodBending b = rod_bend (&solid, reach, 400), t = rod_bend (&twice, reach, 400);
  const RodBending h = rod_bend (&hollow, reach, 400), f = rod_bend (&filled, reach, 400);

  check_share ("double diameter", b.deflection / t.deflection, 16, 1e-14);
  check_share ("its stress", b.stress / t.stress, 8, 1e-14);
  /* 1 − (14/22)⁴ of the solid rod's stiffness is left */
  check_share ("hollow", b.deflection / h.deflection, 1 - pow (14.0 / 22.0, 4), 1e-14);
  check_share ("its stress", b.stress / h.stress, 1 - pow (14.0 / 22.0, 4), 1e-14);
  g_assert_true (h.guide == b.guide && h.piston == b.piston && h.moment == b.moment);
  g_assert_true (memcmp (&f, &b, sizeof f) == 0);
}

/* With the mount down at the guide the guide takes all, and nothing bends. */
static void
test_no_overhang (void)
{
  const RodBending b = rod_bend (&solid, (RodReach){ 1e-9, 150 }, 400);
  const RodBending none = rod_bend (&solid, (RodReach){ 0, 150 }, 400);

  check_share ("guide", b.guide, 400, 1e-10);
  check_near ("piston", 0, b.piston, 0, 1e-8);
  check_near ("deflection", 0, b.deflection, 0, 1e-20);
  g_assert_true (isnan (none.guide) && isnan (none.deflection) && isnan (none.breakaway));
}

static void
test_reach (void)
{
  const Rod rod = {
    .outer = 22, .modulus = 207000, .guide_height = 250, .piston_drop = 330
  };
  Rod inverted = rod;

  inverted.bush_spacing = 120;
  /* as the strut closes the piston leaves the guide */
  g_assert_cmpfloat (rod_reach (&rod, 430).overhang, ==, 180);
  g_assert_cmpfloat (rod_reach (&rod, 430).spacing, ==, 150);
  g_assert_cmpfloat (rod_reach (&rod, 350).overhang, ==, 100);
  g_assert_cmpfloat (rod_reach (&rod, 350).spacing, ==, 230);
  /* both bushes stay in the housing */
  g_assert_cmpfloat (rod_reach (&inverted, 430).overhang, ==, 180);
  g_assert_cmpfloat (rod_reach (&inverted, 350).overhang, ==, 100);
  g_assert_cmpfloat (rod_reach (&inverted, 430).spacing, ==, 120);
  g_assert_cmpfloat (rod_reach (&inverted, 350).spacing, ==, 120);
}

static bool
bends (Rod rod, RodReach reach)
{
  const RodBending b = rod_bend (&rod, reach, 100);

  g_assert_true (isfinite (b.deflection) == isfinite (b.guide));
  return isfinite (b.deflection);
}

static void
test_what_does_not_fit (void)
{
  const RodReach reach = { 180, 150 };

  g_assert_true (bends (solid, reach));
  g_assert_false (bends (solid, (RodReach){ -1, 331 }));
  g_assert_false (bends (solid, (RodReach){ 180, 0 }));
  g_assert_false (bends (solid, (RodReach){ 340, -10 }));
  g_assert_false (bends (solid, (RodReach){ NAN, 150 }));
  g_assert_false (bends ((Rod){ .modulus = 207000 }, reach));
  g_assert_false (bends ((Rod){ .outer = 22 }, reach));
  g_assert_false (bends ((Rod){ .outer = 22, .inner = 22, .modulus = 207000 }, reach));
  g_assert_false (bends ((Rod){ .outer = 22, .inner = -1, .modulus = 207000 }, reach));
}

/* Guide and piston press with 880 and 480 N. */
static void
test_friction (void)
{
  Rod greasy = solid;

  g_assert_true (rod_bend (&solid, (RodReach){ 180, 150 }, 400).breakaway == 0.0);
  greasy.friction = 0.05;
  check_share ("breakaway", rod_bend (&greasy, (RodReach){ 180, 150 }, 400).breakaway, 68,
               1e-14);
  check_share ("from the other side",
               rod_bend (&greasy, (RodReach){ 180, 150 }, -400).breakaway, 68, 1e-14);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/kernel/rod/sections", test_sections);
  g_test_add_func ("/kernel/rod/overhang", test_overhang);
  g_test_add_func ("/kernel/rod/built-in", test_built_in);
  g_test_add_func ("/kernel/rod/load-part-way", test_load_part_way);
  g_test_add_func ("/kernel/rod/set-p", test_set_p_rod);
  g_test_add_func ("/kernel/rod/moment-area", test_moment_area);
  g_test_add_func ("/kernel/rod/sizes", test_sizes);
  g_test_add_func ("/kernel/rod/no-overhang", test_no_overhang);
  g_test_add_func ("/kernel/rod/reach", test_reach);
  g_test_add_func ("/kernel/rod/what-does-not-fit", test_what_does_not_fit);
  g_test_add_func ("/kernel/rod/friction", test_friction);
  return g_test_run ();
}
