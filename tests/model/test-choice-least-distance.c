/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/choice/choice-least-distance.h"

#include <math.h>

#define N_RANDOM 500
#define N_INEQUALITIES 30
#define SAME 1e-9

static double
product (const Inequality *inequality, const double *y, guint n)
{
  double sum = 0.0;

  for (guint i = 0; i < n; i++)
    sum += inequality->row[i] * y[i];
  return sum;
}

/* By hand: the foot of the perpendicular from the origin, and a corner. */
static void
test_lines (void)
{
  Inequality line[] = { { .row = { 3.0, 4.0 }, .level = 10.0 } };
  Inequality corner[] = { { .row = { 1.0, 0.0 }, .level = 2.0 },
                          { .row = { 1.0, 1.0 }, .level = 5.0 },
                          { .row = { 0.0, -1.0 }, .level = -1.0 } };
  double y[LEAST_DISTANCE_MOST_UNKNOWNS];

  g_assert_true (least_distance_solve (line, 1, 2, y));
  g_assert_cmpfloat_with_epsilon (y[0], 1.2, SAME);
  g_assert_cmpfloat_with_epsilon (y[1], 1.6, SAME);
  g_assert_cmpfloat_with_epsilon (line[0].multiplier, 0.4, SAME);
  g_assert_true (least_distance_solve (corner, 3, 2, y));
  g_assert_cmpfloat_with_epsilon (y[0], 4.0, SAME);
  g_assert_cmpfloat_with_epsilon (y[1], 1.0, SAME);
  g_assert_cmpfloat (corner[0].multiplier, ==, 0.0);
}

static void
test_nothing_in_the_way (void)
{
  Inequality far[] = { { .row = { 1.0, 2.0 }, .level = -1.0 } };
  double y[LEAST_DISTANCE_MOST_UNKNOWNS] = { 1.0, 1.0 };

  g_assert_true (least_distance_solve (far, 1, 2, y));
  g_assert_true (y[0] == 0.0 && y[1] == 0.0);
  g_assert_true (least_distance_solve (far, 0, 2, y));
}

static void
test_contradiction (void)
{
  Inequality both[] = { { .row = { 1.0, 1.0 }, .level = 1.0 },
                        { .row = { -1.0, -1.0 }, .level = -0.5 } };
  double y[LEAST_DISTANCE_MOST_UNKNOWNS];

  g_assert_false (least_distance_solve (both, 2, 2, y));
}

/* The conditions of Karush, Kuhn and Tucker: within all, and made up of those that it
 * stands at, each pushing. They say that nothing shorter is within. */
static void
check_conditions (const Inequality *inequalities, const double *y, guint n)
{
  double rest[LEAST_DISTANCE_MOST_UNKNOWNS] = { 0 };

  for (guint j = 0; j < N_INEQUALITIES; j++) {
    const Inequality *here = &inequalities[j];
    const double slack = product (here, y, n) - here->level;

    g_assert_cmpfloat (slack, >, -SAME);
    g_assert_cmpfloat (here->multiplier, >=, 0.0);
    g_assert_cmpfloat (fabs (slack * here->multiplier), <, 1e-7);
    for (guint i = 0; i < n; i++)
      rest[i] += here->multiplier * here->row[i];
  }
  for (guint i = 0; i < n; i++)
    g_assert_cmpfloat_with_epsilon (rest[i], y[i], 1e-8);
}

/* Each lets a given point in, so that all of them have an answer; many meet in it. */
static void
test_random (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (5);

  for (guint k = 0; k < N_RANDOM; k++) {
    const guint n = (guint) g_rand_int_range (rand, 1, LEAST_DISTANCE_MOST_UNKNOWNS + 1);
    Inequality inequalities[N_INEQUALITIES] = { 0 };
    double inside[LEAST_DISTANCE_MOST_UNKNOWNS], y[LEAST_DISTANCE_MOST_UNKNOWNS];

    for (guint i = 0; i < n; i++)
      inside[i] = g_rand_double_range (rand, -3.0, 3.0);
    for (guint j = 0; j < N_INEQUALITIES; j++) {
      for (guint i = 0; i < n; i++)
        inequalities[j].row[i] = g_rand_double_range (rand, -1.0, 1.0);
      inequalities[j].level = product (&inequalities[j], inside, n) -
                              (j % 2 == 0 ? 0.0 : g_rand_double (rand));
    }
    g_assert_true (least_distance_solve (inequalities, N_INEQUALITIES, n, y));
    check_conditions (inequalities, y, n);
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/choice/least-distance/lines", test_lines);
  g_test_add_func ("/choice/least-distance/nothing", test_nothing_in_the_way);
  g_test_add_func ("/choice/least-distance/contradiction", test_contradiction);
  g_test_add_func ("/choice/least-distance/random", test_random);
  return g_test_run ();
}
