/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The spring editor without a window: what a part starts with, alternatives that keep
 * their rate, laws as text, and names for the members of a file. */

#include "model/car/car-json.h"
#include "model/file/data-path.h"
#include "model/spring/spring-law.h"
#include "window/entry/refusal-units.h"
#include "window/springs/springs-panel-rows.h"
#include "window/springs/springs-panel-start.h"
#include "window/springs/springs-panel-table.h"

#include <math.h>
#include <string.h>

#define DEGREE (G_PI / 180.0)

static Car *
demo_car (void)
{
  g_autofree char *path = data_path ("lapwing.swcar");
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  Car *car = car_load (file, &error);

  g_assert_no_error (error);
  return car;
}

static SpringSet
empty_set (void)
{
  return (SpringSet){ .springs = car_springs_none (), .rod = car_rod_none () };
}

static void
assert_sound (const SpringSet *set)
{
  g_autoptr (GError) error = NULL;

  car_check_springs (&set->springs, &error);
  g_assert_no_error (error);
  car_check_rod (&set->rod, &error);
  g_assert_no_error (error);
}

static void
test_a_file_takes_every_part_as_it_starts (void)
{
  for (SpringsGroup group = 0; group < N_SPRINGS_GROUPS; group++) {
    SpringSet set = empty_set ();

    if (group == SPRINGS_DAMPER)
      continue; /* always there */
    g_assert_false (springs_has_group (&set, group));
    springs_start (&set, group);
    g_assert_true (springs_has_group (&set, group));
    assert_sound (&set);
    g_autofree char *sentence = springs_start_sentence (&set, group);
    g_assert_nonnull (sentence);
    springs_end (&set, group);
    g_assert_false (springs_has_group (&set, group));
    g_assert_true (car_springs_is_none (&set.springs));
    assert_sound (&set);
  }
}

static void
test_a_coil_takes_the_helper_on_it_along (void)
{
  SpringSet set = empty_set ();

  springs_start (&set, SPRINGS_COIL);
  springs_start (&set, SPRINGS_HELPER);
  g_assert_cmpuint (set.springs.helper.place, ==, HELPER_IN_SERIES);
  assert_sound (&set);
  springs_end (&set, SPRINGS_COIL);
  g_assert_false (set.springs.helper.is_there);
  assert_sound (&set);
}

/* Within half of the last digit that is written down: 0.01 mm of 22 mm is 0.05 % of the
 * diameter and four times that of the rate; 0.01 coils of three, 0.2 %. */
#define KEPT 0.002

static void
assert_kept (double was, double is)
{
  g_assert_cmpfloat (was, >, 0.0);
  g_assert_cmpfloat (fabs (is / was - 1.0), <, KEPT);
}

static double
bar_rate (const Car *car, const SpringSet *set)
{
  g_autoptr (SpringLaw) law = spring_law_new (car, &set->springs);

  return spring_law_bar_rate (law);
}

static double
coil_rate_of (const Car *car, const SpringSet *set, double squash)
{
  g_autoptr (SpringLaw) law = spring_law_new (car, &set->springs);

  return spring_law_coil_rate (law, squash);
}

static double
link_rate (const Car *car, const SpringSet *set)
{
  g_autoptr (SpringLaw) law = spring_law_new (car, &set->springs);

  return spring_law_link_rate (law);
}

static void
test_a_bar_keeps_its_rate (void)
{
  g_autoptr (Car) car = demo_car ();
  SpringSet set = empty_set ();

  springs_start (&set, SPRINGS_BAR);
  springs_set_bar_kind (&set, car, BAR_BY_RATE);
  assert_sound (&set);
  set.springs.bar.rate_nm_per_deg = 51.0;
  springs_set_bar_kind (&set, car, BAR_BY_SIZES);
  assert_sound (&set);
  assert_kept (51.0 * 1000.0 / DEGREE, bar_rate (car, &set));
  springs_set_bar_kind (&set, car, BAR_BY_RATE);
  assert_sound (&set);
  assert_kept (51.0, set.springs.bar.rate_nm_per_deg);
}

static void
test_a_coil_keeps_its_rate (void)
{
  g_autoptr (Car) car = demo_car ();
  const CoilKind way[] = { COIL_BY_SIZES, COIL_BY_TABLE, COIL_BY_SIZES, COIL_BY_RATE };
  SpringSet set = empty_set ();

  springs_start (&set, SPRINGS_COIL);
  set.springs.coil.rate_n_per_mm = 31.5;
  for (gsize i = 0; i < G_N_ELEMENTS (way); i++) {
    springs_set_coil_kind (&set, car, way[i]);
    assert_sound (&set);
    assert_kept (31.5, coil_rate_of (car, &set, 40.0));
  }
}

static void
test_an_anti_roll_bar_keeps_its_rate (void)
{
  g_autoptr (Car) car = demo_car ();
  SpringSet set = empty_set ();

  springs_start (&set, SPRINGS_ANTI_ROLL);
  const double rate = link_rate (car, &set);
  springs_set_anti_roll_kind (&set, car, BAR_BY_RATE);
  assert_sound (&set);
  assert_kept (rate, link_rate (car, &set));
  springs_set_anti_roll_kind (&set, car, BAR_BY_SIZES);
  assert_sound (&set);
  assert_kept (rate, link_rate (car, &set));
}

static void
test_a_law_is_what_is_typed (void)
{
  const SpringsTableRow *law = &springs_tables[TABLE_BUMP_STOP];
  const SpringTable none = { 0 };
  SpringTable table;
  g_autofree char *refusal =
      springs_table_read (law, "0 0;10.5\t400\n20 1500", &none, &table);

  g_assert_cmpstr (refusal, ==, NULL);
  g_assert_cmpuint (table.n, ==, 3);
  g_assert_cmpfloat (table.x[1], ==, 10.5);
  g_assert_cmpfloat (table.y[2], ==, 1500.0);
  g_autofree char *text = springs_table_text (law, &table);
  g_assert_cmpstr (text, ==, "0 0; 10.5 400; 20 1500");
}

static void
test_what_is_no_law_is_refused_by_name (void)
{
  const char *const wrong[] = { "0 0; 10", "0 0; ten 400", "0 0; 10 400; 10 500",
                                "0 0; 20 400; 10 500" };
  const SpringsTableRow *law = &springs_tables[TABLE_BUMP_STOP];
  const SpringTable none = { 0 };
  GString *long_one = g_string_new ("0 0");
  SpringTable table;

  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++) {
    g_autofree char *refusal = springs_table_read (law, wrong[i], &none, &table);

    g_assert_nonnull (refusal);
    g_assert_nonnull (strstr (refusal, "“Stop’s law”"));
  }
  for (int i = 1; i <= SPRING_TABLE_MOST; i++)
    g_string_append_printf (long_one, "; %d %d", i, i);
  g_autofree char *refusal = springs_table_read (law, long_one->str, &none, &table);
  g_assert_nonnull (refusal);
  g_string_free (long_one, TRUE);
}

/* 8 mm, 25.4 mm and 200 N/mm by hand. */
static void
test_refusals_are_in_the_units_chosen (void)
{
  static const struct {
    const char *metric, *shown;
  } cases[] = {
    { "springs.coil.wire_mm is 25.4, but must be below mean_diameter_mm, which is 8.",
      "springs.coil.wire_mm is 1 in, but must be below mean_diameter_mm, which is 0.315 in." },
    { "springs.torsion_bar.sections[1].outer_mm is 1016, but must be above 0 and not above "
      "254.",
      "springs.torsion_bar.sections[1].outer_mm is 40 in, but must be above 0 in and not "
      "above 10 in." },
    { "springs.damper.table[2] is at 0.254, but must lie beyond the point before it, at 1.",
      "springs.damper.table[2] is at 10 in/s, but must lie beyond the point before it, at "
      "39.37 in/s." },
    { "springs.coil.table[2] gives 0 N, but cannot give less than the point before it, "
      "444.8 N.",
      "springs.coil.table[2] gives 0 lbf, but cannot give less than the point before it, "
      "99.995 lbf." },
    { "springs.coil.table[2][1] is 444.8, but must lie between 0 and 500000.",
      "springs.coil.table[2][1] is 99.995 lbf, but must lie between 0 lbf and 112404.472 "
      "lbf." },
    { "springs.torsion_bar.splines is 1, but must lie between 2 and 1000.",
      "springs.torsion_bar.splines is 1, but must lie between 2 and 1000." },
  };
  const UnitChoice imperial = { .length = LENGTH_INCH, .force = FORCE_LBF };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autofree char *same = refusal_in_units (cases[i].metric);
    g_assert_cmpstr (same, ==, cases[i].metric);
  }
  unit_choice_set (&imperial);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autofree char *shown = refusal_in_units (cases[i].metric);
    g_assert_cmpstr (shown, ==, cases[i].shown);
  }
  unit_choice_set (&unit_choice_stored);
}

/* A law in inches and pounds-force; what is not typed anew keeps its numbers to the bit.
 */
static void
test_a_law_in_other_units (void)
{
  const SpringsTableRow *law = &springs_tables[TABLE_BUMP_STOP];
  const SpringTable before = { .n = 2, .x = { 0.0, 10.0 }, .y = { 0.0, 300.0 } };
  const UnitChoice imperial = { .length = LENGTH_INCH, .force = FORCE_LBF };
  SpringTable table;

  unit_choice_set (&imperial);
  g_autofree char *text = springs_table_text (law, &before);
  g_assert_cmpstr (text, ==, "0 0; 0.394 67.44"); /* 10 / 25.4, 300 / 4.448222 */
  g_autofree char *more = g_strconcat (text, "; 1 100", NULL);
  g_autofree char *refusal = springs_table_read (law, more, &before, &table);
  unit_choice_set (&unit_choice_stored);
  g_assert_cmpstr (refusal, ==, NULL);
  g_assert_cmpuint (table.n, ==, 3);
  g_assert_cmpfloat (table.x[1], ==, 10.0);
  g_assert_cmpfloat (table.y[1], ==, 300.0);
  g_assert_cmpfloat (table.x[2], ==, 25.4);
  g_assert_cmpfloat_with_epsilon (table.y[2], 444.8222, 5e-5); /* NIST SP 811, as
                                                                  remembered */
}

static void
test_members_have_the_names_of_their_entries (void)
{
  static const struct {
    const char *path, *name;
  } cases[] = {
    { "springs.coil.wire_mm", "Coil: Wire" },
    { "mean_diameter_mm", "Coil: Mean diameter" },
    { "springs.helper.rate_n_per_mm", "Helper: Rate" },
    { "springs.torsion_bar.sections[1].inner_mm", "Section 2, bore" },
    { "springs.bump_stop.table[2][0]", "Stop’s law" },
    { "springs.droop_stop_mm", "Droop stop" },
    { "springs.anti_roll_bar.link_point[1]", "Anti-roll bar: Link, y" },
    { "rod.bore_mm", "Rod: Bore" },
    { "diameter_mm", "Rod: Diameter" },
    { "strut.guide_friction", "Rod: Friction" },
    { "strut.rod_diameter_mm", "Rod: Diameter" },
    { "springs.helper", "Helper" },
    { "tyre.loaded_radius_mm", NULL },
  };
  const char *inside = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autofree char *name = springs_name_of_path (cases[i].path, &inside);

    g_assert_cmpstr (name, ==, cases[i].name);
  }
}

static void
test_rows_are_told_apart (void)
{
  g_autoptr (GHashTable) seen =
                 g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (gsize i = 0; i < N_SPRINGS_ROWS; i++) {
    const SpringsRow *row = &springs_rows[i];
    SpringSet set = empty_set ();

    g_assert_nonnull (row->is_asked);
    g_assert_cmpfloat (row->most, >, row->least);
    g_assert_true (g_hash_table_add (seen, springs_row_full_name (row)));
    springs_row_set (row, &set, 7.0);
    g_assert_cmpfloat (springs_row_get (row, &set), ==, 7.0);
    springs_row_set (row, &set, -0.0);
    g_assert_false (signbit (springs_row_get (row, &set)));
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/springs-parts/start", test_a_file_takes_every_part_as_it_starts);
  g_test_add_func ("/springs-parts/helper", test_a_coil_takes_the_helper_on_it_along);
  g_test_add_func ("/springs-parts/bar", test_a_bar_keeps_its_rate);
  g_test_add_func ("/springs-parts/coil", test_a_coil_keeps_its_rate);
  g_test_add_func ("/springs-parts/anti-roll-bar", test_an_anti_roll_bar_keeps_its_rate);
  g_test_add_func ("/springs-parts/law", test_a_law_is_what_is_typed);
  g_test_add_func ("/springs-parts/no-law", test_what_is_no_law_is_refused_by_name);
  g_test_add_func ("/springs-parts/law-in-other-units", test_a_law_in_other_units);
  g_test_add_func ("/springs-parts/refusals", test_refusals_are_in_the_units_chosen);
  g_test_add_func ("/springs-parts/names", test_members_have_the_names_of_their_entries);
  g_test_add_func ("/springs-parts/rows", test_rows_are_told_apart);
  return g_test_run ();
}
