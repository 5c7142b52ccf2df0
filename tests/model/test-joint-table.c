/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the table of joint forces lists along the strut adds up to what is along it. */

#include "car-fixture.h"
#include "check-data.h"
#include "spring-fixture.h"

#include "model/load/joint-table.h"

static double
value_of (const JointLoads *loads, const char *key)
{
  double value = NAN;

  for (guint i = 0; i < joint_rows_count (); i++) {
    const JointRow row = joint_row (loads, i);

    if (g_str_equal (row.key, key))
      value = row.value;
  }
  g_assert_false (isnan (value));
  return value;
}

static double
sum_of_shares (const JointLoads *loads)
{
  double sum = value_of (loads, "left_over_n");

  for (guint i = 0; i < joint_rows_count (); i++) {
    const JointRow row = joint_row (loads, i);

    if (row.is_share)
      sum += row.value;
  }
  return sum;
}

static void
check_adds_up (const StandingCar *standing, const CarLoadCase *c, double travel)
{
  for (guint i = 0; i < standing->springs->n_setups; i++)
    for (SpringMode mode = SPRING_AS_SET; mode <= SPRING_BAR_ONLY; mode++) {
      JointLoads loads;

      joint_loads_of_case (standing->springs, i, c, travel, mode, &loads);
      g_assert_true (loads.is_solved);
      check_near (c->name, i, sum_of_shares (&loads), value_of (&loads, "axial_n"), 1e-6);
    }
}

/* Where it settles and with the wheel held. */
static void
test_demo_cars_add_up (void)
{
  static const char *const names[] = { "wren", "fieldfare", "lapwing", "dunnock" };

  for (gsize n = 0; n < G_N_ELEMENTS (names); n++) {
    g_auto (StandingCar) standing = standing_car_new (fixture_demo (names[n]));
    CarLoadCase cases[LOAD_CASES_MOST];
    const gsize n_cases = car_load_cases (standing.car, cases);

    g_assert_cmpuint (n_cases, >, 0);
    for (gsize i = 0; i < n_cases; i++) {
      check_adds_up (&standing, &cases[i], NAN);
      check_adds_up (&standing, &cases[i], 20.0);
    }
  }
}

/* The springs' own numbers stand in the rows, and a coil that leans pushes along the
 * strut by the cosine. */
static void
test_each_has_its_row (void)
{
  Dice dice = { 4711u };

  for (int i = 0; i < 30; i++) {
    g_auto (StandingCar) standing = dice_standing_car (&dice);
    const SpringCorner *corner = standing_corner (&standing);
    const CarLoadCase c = { .name = "Dice", .vertical = dice_between (&dice, 0.7, 2.0) };
    SpringStation s;
    JointLoads loads;

    joint_loads_of_case (standing.springs, 0, &c, NAN, SPRING_AS_SET, &loads);
    g_assert_true (loads.is_solved);
    spring_law_station (corner->law, &corner->corner->corner, &loads.pose, &s);
    const Vec3 up =
        vec3_unit (vec3_sub (corner->corner->corner.upper_mount, loads.pose.strut_foot));

    check_near ("coil", i, value_of (&loads, "coil_along_strut_n"),
                s.coil_force * vec3_dot (s.paths.coil_direction, up), 1e-6);
    check_near ("stop", i, value_of (&loads, "bump_stop_n"), s.stop_force, 0.0);
    check_near ("gas", i, value_of (&loads, "gas_n"),
                standing.car->springs.damper.gas_force_n, 0.0);
    check_near ("helper", i, value_of (&loads, "helper_n"),
                standing.car->springs.helper.place == HELPER_IN_PARALLEL ? s.helper_force
                                                                         : 0.0,
                0.0);
  }
}

/* The rest is where it was missed: a bump stop under a landing, gas and helper beside a
 * bar. What carries nothing has a line in files alone. */
static void
test_text_lists_what_carries (void)
{
  g_auto (StandingCar) standing = standing_car_new (fixture_demo ("dunnock"));
  const CarLoadCase landing = { .name = "Landing", .vertical = 3.0 },
                    stands = { .name = "Standing", .vertical = 1.0 };
  g_autoptr (GString) coil = g_string_new (NULL), bar = g_string_new (NULL),
                      json = g_string_new (NULL);
  JointLoads on_coil, on_bar;
  const JointTable coil_table = { standing.springs, 1,        SPRING_AS_SET,
                                  &landing,         &on_coil, NULL },
                   bar_table = { standing.springs, 2,       SPRING_AS_SET,
                                 &stands,          &on_bar, NULL };

  joint_loads_of_case (standing.springs, 1, &landing, NAN, SPRING_AS_SET, &on_coil);
  joint_loads_of_case (standing.springs, 2, &stands, NAN, SPRING_AS_SET, &on_bar);
  joint_table_write (&coil_table, TABLE_TEXT, coil);
  joint_table_write (&bar_table, TABLE_TEXT, bar);
  joint_table_write (&bar_table, TABLE_JSON, json);
  g_assert_nonnull (strstr (coil->str, "\nBump stop, N "));
  g_assert_null (strstr (coil->str, "\nHelper, N "));
  g_assert_nonnull (strstr (bar->str, "\nHelper, N "));
  g_assert_nonnull (strstr (bar->str, "\nGas force, N "));
  g_assert_null (strstr (bar->str, "\nBump stop, N "));
  g_assert_nonnull (strstr (bar->str, "\nTorsion bar, N·m "));
  g_assert_nonnull (strstr (json->str, "\"bump_stop_n\": 0"));
  g_assert_nonnull (strstr (json->str, "\"torsion_torque_nmm\": "));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/joint-table/demo-cars", test_demo_cars_add_up);
  g_test_add_func ("/joint-table/rows", test_each_has_its_row);
  g_test_add_func ("/joint-table/text", test_text_lists_what_carries);
  return g_test_run ();
}
