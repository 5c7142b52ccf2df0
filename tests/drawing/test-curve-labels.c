/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/chart/curve-labels.h"

#include <glib.h>
#include <math.h>

static void
assert_places (CurveLabel *labels, unsigned n, const double *expected)
{
  for (unsigned i = 0; i < n; i++) {
    g_assert_true (labels[i].is_kept);
    g_assert_cmpfloat_with_epsilon (labels[i].place, expected[i], 1e-9);
  }
}

static void
test_far_ones_stay_where_they_want (void)
{
  CurveLabel labels[] = { { 80, 0, 0 }, { 20, 0, 0 }, { 50, 0, 0 } };

  curve_labels_place (labels, 3, 0, 12.0, 0.0, 100.0);
  assert_places (labels, 3, (double[]){ 80, 20, 50 });
}

/* Two that want one place share the way: half each. */
static void
test_equals_part_evenly (void)
{
  CurveLabel labels[] = { { 50, 0, 0 }, { 50, 0, 0 }, { 90, 0, 0 } };

  curve_labels_place (labels, 3, 0, 12.0, 0.0, 100.0);
  assert_places (labels, 3, (double[]){ 44, 56, 90 });
}

/* Three that want 50, 52, 51: the mean of 50 − 0, 51 − 12, 52 − 24 is 39. */
static void
test_a_group_stands_about_its_middle (void)
{
  CurveLabel labels[] = { { 50, 0, 0 }, { 52, 0, 0 }, { 51, 0, 0 } };

  curve_labels_place (labels, 3, 0, 12.0, 0.0, 100.0);
  assert_places (labels, 3, (double[]){ 39, 63, 51 });
}

static void
test_borders_hold (void)
{
  CurveLabel labels[] = { { 99, 0, 0 }, { 100, 0, 0 }, { 1, 0, 0 } };

  curve_labels_place (labels, 3, 0, 12.0, 0.0, 100.0);
  assert_places (labels, 3, (double[]){ 82, 94, 6 });
}

/* Room for three of five: the two farthest from the first go, and the one without an end.
 */
static void
test_the_farthest_go_first (void)
{
  CurveLabel labels[] = { { 50, 0, 0 }, { 0, 0, 0 },  { 60, 0, 0 },
                          { 90, 0, 0 }, { 45, 0, 0 }, { NAN, 0, 0 } };

  curve_labels_place (labels, 6, 0, 30.0, 0.0, 100.0);
  g_assert_true (labels[0].is_kept && labels[2].is_kept && labels[4].is_kept);
  g_assert_false (labels[1].is_kept || labels[3].is_kept || labels[5].is_kept);
}

static void
test_random_stacks_never_touch (void)
{
  for (int round = 0; round < 2000; round++) {
    const unsigned n = (unsigned) g_test_rand_int_range (1, 12);
    CurveLabel labels[12];

    for (unsigned i = 0; i < n; i++)
      labels[i].wanted = g_test_rand_double_range (10.0, 110.0);
    curve_labels_place (labels, n, 0, 13.0, 10.0, 110.0);
    g_assert_true (labels[0].is_kept);
    for (unsigned i = 0; i < n; i++) {
      if (!labels[i].is_kept)
        continue;
      g_assert_cmpfloat (labels[i].place, >=, 16.5 - 1e-9);
      g_assert_cmpfloat (labels[i].place, <=, 103.5 + 1e-9);
      for (unsigned j = 0; j < i; j++)
        if (labels[j].is_kept) {
          const double way = labels[i].place - labels[j].place;
          g_assert_cmpfloat (fabs (way), >=, 13.0 - 1e-9);
          g_assert_cmpint (way > 0.0, ==, labels[i].wanted >= labels[j].wanted);
        }
    }
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/curve-labels/far-ones-stay", test_far_ones_stay_where_they_want);
  g_test_add_func ("/curve-labels/equals-part-evenly", test_equals_part_evenly);
  g_test_add_func ("/curve-labels/group-middle", test_a_group_stands_about_its_middle);
  g_test_add_func ("/curve-labels/borders-hold", test_borders_hold);
  g_test_add_func ("/curve-labels/farthest-go-first", test_the_farthest_go_first);
  g_test_add_func ("/curve-labels/random-stacks", test_random_stacks_never_touch);
  return g_test_run ();
}
