/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Springs, rods and cases of load in the car file and on the way to the kernel. */

#include "car-fixture.h"
#include "comma-locale.h"

#include "model/car/car-json.h"
#include "model/spring/spring-study.h"

#include <math.h>
#include <string.h>

static Car *
there_and_back (const Car *car)
{
  g_autoptr (GError) error = NULL;
  gsize length;
  g_autofree char *text = car_to_json (car, &length);
  Car *again = car_from_json (text, length, &error);

  g_assert_no_error (error);
  return again;
}

static void
test_a_car_without_springs_has_none (void)
{
  g_autoptr (Car) car = fixture_car ("plain");
  const CarSprings none = car_springs_none ();
  g_autofree char *text = car_to_json (car, NULL);

  g_assert_true (car_springs_is_none (&car->springs));
  g_assert_cmpmem (&car->springs, sizeof none, &none, sizeof none);
  g_assert_cmpfloat (none.bar.shear_modulus_gpa, ==, 79.3);
  g_assert_cmpfloat (none.coil.shear_modulus_gpa, ==, 79.3);
  g_assert_cmpfloat (none.anti_roll_bar.shear_modulus_gpa, ==, 79.3);
  g_assert_cmpfloat (none.tyre_rate_n_per_mm, ==, 180.0);
  g_assert_cmpfloat (car->strut.rod.modulus_gpa, ==, 207.0);
  g_assert_cmpfloat (car->strut.rod.friction, ==, 0.05);
  g_assert_cmpfloat (car->strut.rod.diameter_mm, ==, 0.0);
  g_assert_null (strstr (text, "springs"));
  g_assert_null (strstr (text, "\"rod_"));
  g_assert_null (strstr (text, "loads"));
  g_assert_null (strstr (text, "rear_mass_kg"));
}

static void
check_bar_and_coil (const CarSprings *s)
{
  g_assert_true (s->bar.is_there && s->coil.is_there && s->helper.is_there);
  g_assert_cmpuint (s->bar.n_sections, ==, 2);
  g_assert_cmpfloat (s->bar.sections[0].outer_mm, ==, 26.0);
  g_assert_cmpfloat (s->bar.sections[0].inner_mm, ==, 0.0);
  g_assert_cmpfloat (s->bar.sections[1].inner_mm, ==, 6.0);
  g_assert_cmpfloat (s->bar.sections[1].length_mm, ==, 880.0);
  g_assert_cmpuint (s->bar.n_splines, ==, 48);
  g_assert_cmpfloat (s->bar.shear_modulus_gpa, ==, 78.5);
  g_assert_cmpfloat (s->bar.clamp_angle_deg, ==, 18.25);
  g_assert_cmpfloat (s->bar.lever_mm, ==, 120.0);
  g_assert_cmpfloat (s->coil.rate_n_per_mm, ==, 20.0);
  g_assert_cmpfloat (s->coil.wire_mm, ==, 11.5);
  g_assert_cmpfloat (s->coil.mean_diameter_mm, ==, 110.0);
  g_assert_cmpfloat (s->coil.active_coils, ==, 6.5);
  g_assert_cmpfloat (s->coil.total_coils, ==, 8.0);
  g_assert_cmpfloat (s->coil.free_length_mm, ==, 320.0);
  g_assert_cmpfloat (s->coil.solid_length_mm, ==, 95.0);
  g_assert_cmpfloat (s->coil.perch_mm, ==, 150.0);
  g_assert_cmpfloat (s->coil.upper_drop_mm, ==, 18.0);
  g_assert_cmpfloat (s->coil.lower_outboard_mm, ==, 6.0);
  g_assert_cmpfloat (s->coil.lower_forward_mm, ==, -1.5);
  g_assert_cmpfloat (s->coil.upper_outboard_mm, ==, 3.0);
  g_assert_cmpfloat (s->coil.upper_forward_mm, ==, 0.5);
}

static void
check_stops_and_roll_bar (const CarSprings *s)
{
  g_assert_cmpuint (s->helper.place, ==, HELPER_IN_SERIES);
  g_assert_cmpfloat (s->helper.rate_n_per_mm, ==, 6.0);
  g_assert_cmpfloat (s->helper.solid_length_mm, ==, 12.0);
  g_assert_cmpfloat (s->helper.upper_drop_mm, ==, 20.0);
  g_assert_true (s->bump_stop.is_there);
  g_assert_cmpfloat (s->bump_stop.gap_mm, ==, 35.0);
  g_assert_cmpuint (s->bump_stop.table.n, ==, 4);
  g_assert_cmpfloat (s->bump_stop.table.x[2], ==, 20.0);
  g_assert_cmpfloat (s->bump_stop.table.y[2], ==, 1200.0);
  g_assert_cmpfloat (s->droop_stop_mm, ==, 70.0);
  g_assert_true (s->anti_roll_bar.is_there && s->anti_roll_bar.has_link_point);
  g_assert_cmpuint (s->anti_roll_bar.link_carrier, ==, LINK_ON_STRUT);
  g_assert_cmpfloat (s->anti_roll_bar.link_point.y, ==, 590.0);
  g_assert_cmpfloat (s->anti_roll_bar.bore_mm, ==, 4.0);
  g_assert_cmpfloat (s->anti_roll_bar.arm_mm, ==, 240.0);
  g_assert_cmpfloat (s->damper.gas_force_n, ==, 150.0);
  g_assert_cmpuint (s->damper.table.n, ==, 5);
  g_assert_cmpfloat (s->damper.table.x[0], ==, -0.5);
  g_assert_cmpfloat (s->damper.table.y[4], ==, 700.0);
  g_assert_cmpfloat (s->tyre_rate_n_per_mm, ==, 190.0);
}

static void
test_springs_are_read_to_their_places (void)
{
  g_autoptr (Car) car = fixture_car ("springs");

  check_bar_and_coil (&car->springs);
  check_stops_and_roll_bar (&car->springs);
}

static void
test_a_setup_stands_on_its_own_or_on_the_cars (void)
{
  g_autoptr (Car) car = fixture_car ("springs");
  const CarSprings *own = car_setup_springs (car, 1);

  g_assert_true (car_setup_springs (car, 0) == &car->springs);
  g_assert_true (own == &car_setup (car, 1)->springs);
  g_assert_cmpfloat (own->bar.rate_nm_per_deg, ==, 14.5);
  g_assert_cmpuint (own->bar.n_sections, ==, 0);
  g_assert_cmpuint (own->coil.table.n, ==, 3);
  g_assert_cmpuint (own->helper.place, ==, HELPER_IN_PARALLEL);
  g_assert_false (own->bump_stop.is_there);
  g_assert_cmpfloat (own->tyre_rate_n_per_mm, ==, TYRE_DEFAULT_RATE);
  g_assert_true (car_setup (car, 2)->has_springs);
  g_assert_true (car_springs_is_none (car_setup_springs (car, 2)));
  g_assert_cmpfloat (car_setup_rod (car, 0).diameter_mm, ==, 20.0);
  g_assert_cmpfloat (car_setup_rod (car, 0).friction, ==, 0.06);
  g_assert_cmpfloat (car_setup_rod (car, 1).diameter_mm, ==, 22.0);
  g_assert_cmpfloat (car_setup_rod (car, 1).bush_spacing_mm, ==, 120.0);
  g_assert_cmpfloat (car_setup_rod (car, 2).diameter_mm, ==, 0.0);
  g_assert_cmpfloat (car_setup_rod (car, 2).modulus_gpa, ==, ROD_DEFAULT_MODULUS);
}

static void
test_load_cases_are_those_of_the_file_or_the_usual_ones (void)
{
  g_autoptr (Car) car = fixture_car ("springs");
  g_autoptr (Car) plain = fixture_car ("plain");
  CarLoadCase cases[LOAD_CASES_MOST];
  gsize n = car_load_cases (car, cases);

  g_assert_cmpuint (n, ==, 2);
  g_assert_cmpstr (cases[0].name, ==, "Standing");
  g_assert_cmpfloat (cases[0].vertical, ==, 1.0);
  g_assert_cmpstr (cases[1].name, ==, "Kerb, braking");
  g_assert_cmpfloat (cases[1].lateral_g, ==, 0.4);
  g_assert_cmpfloat (cases[1].braking_g, ==, 0.6);
  g_assert_cmpfloat (cases[1].vertical, ==, 1.8);
  g_assert_cmpfloat (cases[1].rearward, ==, 0.5);

  n = car_load_cases (plain, cases);
  g_assert_cmpuint (n, >=, 7);
  g_assert_cmpstr (cases[0].name, ==, "Standing");
  g_assert_true (car_check_load_cases (cases, n, NULL));
}

static void
test_only_usual_load_cases_have_a_title_of_their_own (void)
{
  CarLoadCase cases[LOAD_CASES_MOST];
  const gsize n = car_load_cases_usual (cases);

  for (gsize i = 0; i < n; i++)
    g_assert_cmpstr (car_load_case_name (car_load_case_title (cases[i].name)), ==,
                     cases[i].name);
  g_assert_cmpstr (car_load_case_title ("Kerb, braking"), ==, "Kerb, braking");
  g_assert_cmpstr (car_load_case_name ("Kerb, braking"), ==, "Kerb, braking");
}

static void
test_rear_mass_is_given_or_a_share (void)
{
  g_autoptr (Car) car = fixture_car ("springs");
  g_autoptr (Car) plain = fixture_car ("plain");

  g_assert_cmpfloat (car_rear_mass (car), ==, 340.0);
  g_assert_cmpfloat_with_epsilon (car_rear_mass (plain), 0.67 * 520.0, 1e-9);
}

/* Half-way from (the hinge at the ball joint's height along it) to the ball joint: a
 * right angle at the hinge, by hand for a hinge along x. */
static void
test_the_link_stands_on_arm_or_strut (void)
{
  g_autoptr (Car) car = fixture_car ("plain");
  CarSprings springs = car_springs_none ();

  car->points[POINT_ARM_FRONT_PIVOT] = (Vec3){ 100.0, 340.0, 210.0 };
  car->points[POINT_ARM_REAR_PIVOT] = (Vec3){ -200.0, 340.0, 210.0 };
  car->points[POINT_BALL_JOINT] = (Vec3){ 4.0, 652.0, 194.0 };
  Vec3 link = car_spring_places (car, &springs).link_point;
  g_assert_cmpfloat_with_epsilon (link.x, 4.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (link.y, 496.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (link.z, 202.0, 1e-9);

  springs.anti_roll_bar.link_carrier = LINK_ON_STRUT;
  link = car_spring_places (car, &springs).link_point;
  g_assert_cmpmem (&link, sizeof link, &car->points[POINT_STRUT_FOOT], sizeof link);

  springs.anti_roll_bar.has_link_point = TRUE;
  springs.anti_roll_bar.link_point = (Vec3){ 1.0, 2.0, 3.0 };
  link = car_spring_places (car, &springs).link_point;
  g_assert_cmpfloat (link.y, ==, 2.0);
  g_assert_cmpint (car_spring_places (car, &springs).link_carrier, ==, LINK_ON_STRUT);
}

static void
test_seats_and_rod_go_to_the_kernel (void)
{
  g_autoptr (Car) car = fixture_car ("springs");
  const CoilSeats seats = car_spring_places (car, &car->springs).seats;
  const CarRod own = car_setup_rod (car, 1), none = car_rod_none ();
  const Rod rod = car_rod (car, &own);

  g_assert_cmpfloat (seats.perch, ==, 150.0);
  g_assert_cmpfloat (seats.upper_drop, ==, 18.0);
  g_assert_cmpfloat (seats.lower_outboard, ==, 6.0);
  g_assert_cmpfloat (seats.lower_forward, ==, -1.5);
  g_assert_cmpfloat (seats.upper_outboard, ==, 3.0);
  g_assert_cmpfloat (seats.upper_forward, ==, 0.5);
  g_assert_cmpfloat (rod.outer, ==, 22.0);
  g_assert_cmpfloat (rod.inner, ==, 10.0);
  g_assert_cmpfloat_with_epsilon (rod.modulus, 205000.0, 1e-6);
  g_assert_cmpfloat (rod.guide_height, ==, 300.0);
  g_assert_cmpfloat (rod.piston_drop, ==, 260.0);
  g_assert_cmpfloat (rod.bush_spacing, ==, 120.0);
  g_assert_cmpfloat (rod.friction, ==, 0.08);
  g_assert_cmpfloat (car_rod (car, &none).guide_height, ==, 330.0); /* the tube's top */
}

/* Every object has members of a later version. */
static void
test_unknown_members_are_written_back (void)
{
  static const char *const lines[] = {
    "\"make\": \"Hedge & Son\"",
    "\"heat\": 3.0",
    "\"shot_peened\": true",
    "\"colour\": \"green\"",
    "\"note\": null",
    "\"rubber\": \"soft\"",
    "\"bushes\": [1, 2]",
    "\"oil\": -0.0",
    "\"tested\": false",
    "\"batch\": 7.0",
    "\"coating\": \"chrome\"",
    "\"later\": 1",
    "\"later\": 2",
    "\"by\": \"hand\"",
    "\"road\": \"cobbles\"",
    "\"thread\": \"M22\"",
  };
  g_autoptr (Car) car = fixture_car ("springs-unknown");
  g_autoptr (Car) known = fixture_car ("springs");
  g_autoptr (Car) copy = car_copy (car);
  g_autofree char *text = car_to_json (copy, NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (lines); i++) {
    const char *found = strstr (text, lines[i]);

    g_test_message ("%s", lines[i]);
    g_assert_nonnull (found);
    g_assert_null (strstr (found + 1, lines[i]));
  }
  g_assert_cmpmem (&car->springs, sizeof car->springs, &known->springs,
                   sizeof known->springs);
  g_assert_false (car_equal (car, known));
}

/* Where it came from: behind the known members of the second section. */
static void
test_unknown_members_stay_in_their_object (void)
{
  g_autoptr (Car) car = fixture_car ("springs-unknown");
  g_autofree char *text = car_to_json (car, NULL);
  const char *first = strstr (text, "\"outer_mm\": 26");
  const char *second = strstr (text, "\"outer_mm\": 22.5");
  const char *member = strstr (text, "\"shot_peened\"");

  g_assert_true (first < second && second < member);
  g_assert_true (member < strstr (member, "}"));
  g_assert_true (strchr (second, '}') > member);
}

static void
test_what_an_older_program_left_stays_behind_the_setups (void)
{
  g_autoptr (Car) car = fixture_car ("springs");
  g_autofree char *text = car_to_json (car, NULL);
  const char *setups = strstr (text, "\n  \"setups\"");
  const char *springs = strstr (text, "\n  \"springs\"");
  const char *loads = strstr (text, "\n  \"loads\"");

  g_assert_true (setups < springs && springs < loads);
}

static void
test_numbers_at_their_default_are_not_written (void)
{
  g_autoptr (Car) car = fixture_car ("springs");
  CarSprings *s = &car->springs;

  s->bar.shear_modulus_gpa = SPRING_DEFAULT_SHEAR_MODULUS;
  s->coil = (CarCoil){ .is_there = TRUE,
                       .rate_n_per_mm = 20.0,
                       .free_length_mm = 300.0,
                       .shear_modulus_gpa = SPRING_DEFAULT_SHEAR_MODULUS };
  s->anti_roll_bar.is_there = FALSE;
  s->helper.is_there = FALSE;
  s->tyre_rate_n_per_mm = TYRE_DEFAULT_RATE;
  g_array_set_size (car->setups, 1);

  g_autofree char *text = car_to_json (car, NULL);
  g_assert_null (strstr (text, "shear_modulus_gpa"));
  g_assert_null (strstr (text, "wire_mm"));
  g_assert_null (strstr (text, "tyre_rate"));
  g_assert_null (strstr (text, "anti_roll_bar"));
  g_assert_nonnull (strstr (text, "\"perch_mm\": 0"));
}

/* Random sets: all 53 bits in use, and each part there or not. */
static gboolean
coin (GRand *rand)
{
  return g_rand_boolean (rand);
}

static double
within (GRand *rand, double least, double most)
{
  return g_rand_double_range (rand, least, most) / 3.0 * 3.0;
}

static void
random_table (GRand *rand, SpringTable *table, double start, double x_step, double y_step)
{
  table->n = (gsize) g_rand_int_range (rand, 2, SPRING_TABLE_MOST + 1);
  table->x[0] = start;
  table->y[0] = start * 100.0;
  for (gsize i = 1; i < table->n; i++) {
    table->x[i] = table->x[i - 1] + within (rand, 0.01, x_step);
    table->y[i] = table->y[i - 1] + within (rand, 0.0, y_step);
  }
}

static void
random_bar (GRand *rand, CarTorsionBar *bar)
{
  bar->is_there = TRUE;
  if (coin (rand))
    bar->rate_nm_per_deg = within (rand, 1, 90);
  else
    bar->n_sections = (gsize) g_rand_int_range (rand, 1, BAR_SECTIONS_MOST + 1);
  for (gsize i = 0; i < bar->n_sections; i++) {
    bar->sections[i].outer_mm = within (rand, 15, 40);
    bar->sections[i].inner_mm = coin (rand) ? within (rand, 1, 14) : 0.0;
    bar->sections[i].length_mm = within (rand, 10, 900);
  }
  bar->shear_modulus_gpa = coin (rand) ? within (rand, 60, 90) : 79.3;
  bar->clamp_angle_deg = coin (rand) ? within (rand, -60, 60) : -0.0;
  bar->lever_mm = coin (rand) ? within (rand, 50, 300) : 0.0;
  bar->n_splines = coin (rand) ? (gsize) g_rand_int_range (rand, 2, 1000) : 0;
}

static void
random_coil (GRand *rand, CarCoil *coil)
{
  coil->is_there = TRUE;
  coil->wire_mm = within (rand, 5, 20);
  coil->mean_diameter_mm = within (rand, 60, 200);
  coil->active_coils = within (rand, 3, 6);
  coil->total_coils = coin (rand) ? coil->active_coils + 1.5 : 0.0;
  coil->free_length_mm = within (rand, 200, 500);
  coil->solid_length_mm = coin (rand) ? within (rand, 20, 199) : 0.0;
  if (coin (rand))
    coil->rate_n_per_mm = within (rand, 5, 200);
  else if (coin (rand))
    random_table (rand, &coil->table, 0.0, 20.0, 900.0);
  coil->perch_mm = within (rand, 0, 250);
  coil->upper_drop_mm = within (rand, -50, 100);
  coil->lower_outboard_mm = coin (rand) ? within (rand, -30, 30) : -0.0;
  coil->upper_forward_mm = within (rand, -30, 30);
}

static void
random_others (GRand *rand, CarSprings *s)
{
  CarAntiRollBar *roll = &s->anti_roll_bar;

  s->helper = (CarHelper){ .is_there = coin (rand) };
  if (s->helper.is_there) {
    s->helper.place =
        s->coil.is_there && coin (rand) ? HELPER_IN_SERIES : HELPER_IN_PARALLEL;
    s->helper.rate_n_per_mm = within (rand, 1, 50);
    s->helper.free_length_mm = within (rand, 50, 300);
    s->helper.perch_mm = within (rand, 0, 300);
  }
  if (coin (rand)) {
    s->bump_stop.is_there = TRUE;
    random_table (rand, &s->bump_stop.table, 0.0, 9.0, 2000.0);
    s->bump_stop.gap_mm =
        within (rand, -s->bump_stop.table.x[s->bump_stop.table.n - 1], 80);
  }
  if (coin (rand)) {
    roll->is_there = TRUE;
    roll->link_carrier = coin (rand) ? LINK_ON_ARM : LINK_ON_STRUT;
    roll->has_link_point = coin (rand);
    if (roll->has_link_point)
      roll->link_point = (Vec3){ within (rand, -90, 90), within (rand, 300, 600), -0.0 };
    roll->rate_n_per_mm = within (rand, 1, 40);
  }
  if (coin (rand))
    random_table (rand, &s->damper.table, -1.0, 0.3, 900.0);
  s->damper.gas_force_n = coin (rand) ? within (rand, 0, 400) : 0.0;
  s->droop_stop_mm = coin (rand) ? within (rand, 1, 150) : 0.0;
  s->tyre_rate_n_per_mm = coin (rand) ? within (rand, 100, 300) : 180.0;
}

static CarSprings
random_springs (GRand *rand)
{
  CarSprings springs = car_springs_none ();

  if (coin (rand))
    random_bar (rand, &springs.bar);
  if (coin (rand))
    random_coil (rand, &springs.coil);
  random_others (rand, &springs);
  return springs;
}

static void
random_loads (GRand *rand, Car *car)
{
  car->n_load_cases = (gsize) g_rand_int_range (rand, 0, LOAD_CASES_MOST + 1);
  for (gsize i = 0; i < car->n_load_cases; i++) {
    CarLoadCase *c = &car->load_cases[i];

    g_snprintf (c->name, sizeof c->name, "Fall %u ü", (guint) i);
    c->lateral_g = coin (rand) ? within (rand, -2, 2) : -0.0;
    c->vertical = coin (rand) ? within (rand, -2, 5) : 1.0;
    c->rearward = within (rand, -2, 2);
  }
}

static void
check_random_sets (void)
{
  GRand *rand = g_rand_new_with_seed (20260511);
  g_autoptr (Car) car = fixture_car ("plain");

  for (int i = 0; i < (g_test_thorough () ? 1000 : 250); i++) {
    CarSetup *setup = car_setup (car, 1);

    car->springs = random_springs (rand);
    setup->has_springs = coin (rand);
    setup->springs = random_springs (rand);
    setup->has_rod = coin (rand);
    setup->rod = (CarRod){ .diameter_mm = within (rand, 12, 40),
                           .bore_mm = coin (rand) ? within (rand, 1, 11) : 0.0,
                           .guide_height_mm = within (rand, -9, 400),
                           .modulus_gpa = within (rand, 60, 220),
                           .friction = g_rand_double (rand) };
    car->strut.rod = setup->rod;
    car->strut.rod.friction = coin (rand) ? 0.05 : 0.0;
    random_loads (rand, car);

    g_autoptr (Car) again = there_and_back (car);
    g_assert_true (car_equal (car, again));
    g_assert_cmpmem (&car->springs, sizeof car->springs, &again->springs,
                     sizeof again->springs);
  }
  g_rand_free (rand);
}

/* Two thousand sets: the car's and a setup's each time. */
static void
test_every_bit_of_random_sets_is_kept (void)
{
  check_random_sets ();
}

static void
test_a_decimal_comma_changes_nothing (void)
{
  g_autoptr (Car) car = fixture_car ("springs-unknown");
  g_autofree char *plain = car_to_json (car, NULL);

  if (!comma_locale_enter ())
    return;
  g_autofree char *text = car_to_json (car, NULL);
  check_random_sets ();
  comma_locale_leave ();
  g_assert_cmpstr (text, ==, plain);
}

static void
check_differs (Car *changed, const Car *car)
{
  g_assert_false (car_equal (changed, car));
  car_free (changed);
}

static void
test_equal_minds_springs (void)
{
  g_autoptr (Car) car = fixture_car ("springs");
  g_autoptr (Car) same = car_copy (car);
  Car *other;

  g_assert_true (car_equal (car, same));
  other = car_copy (car), other->springs.coil.perch_mm += 1e-12,
  check_differs (other, car);
  other = car_copy (car), other->springs.damper.table.n = 4, check_differs (other, car);
  other = car_copy (car), other->strut.rod.bore_mm = 9.0, check_differs (other, car);
  other = car_copy (car), other->body.rear_mass_kg = 0.0, check_differs (other, car);
  other = car_copy (car), car_setup (other, 1)->rod.friction = 0.0,
  check_differs (other, car);
  other = car_copy (car), car_setup (other, 1)->has_rod = FALSE,
  check_differs (other, car);
  other = car_copy (car), car_setup (other, 2)->has_springs = FALSE,
  check_differs (other, car);
  other = car_copy (car), car_setup (other, 1)->springs.bar.rate_nm_per_deg = -14.5,
  check_differs (other, car);
  other = car_copy (car), other->n_load_cases = 1, check_differs (other, car);
  other = car_copy (car), other->load_cases[1].vertical = 2.0, check_differs (other, car);
  other = car_copy (car), other->load_cases[1].name[0] = 'C', check_differs (other, car);
  other = car_copy (car), other->unknown_springs = json_object_new (),
  check_differs (other, car);
}

/* What no file keeps is not looked at. */
static void
test_equal_overlooks_what_is_not_its_own (void)
{
  g_autoptr (Car) car = fixture_car ("springs");
  g_autoptr (Car) other = car_copy (car);

  car_setup (other, 0)->springs.coil.perch_mm = 5.0;
  car_setup (other, 0)->rod.diameter_mm = 5.0;
  other->load_cases[1].name[40] = 'x'; /* behind the closing zero */
  other->load_cases[7].vertical = 3.0;
  g_assert_true (car_equal (car, other));
}

static void
test_sentences_for_sets_in_hand (void)
{
  CarSprings springs = car_springs_none ();
  CarRod rod = car_rod_none ();
  g_autoptr (GError) error = NULL, bore = NULL, infinite = NULL;

  g_assert_true (car_check_springs (&springs, NULL));
  g_assert_true (car_check_rod (&rod, NULL));
  springs.coil.is_there = TRUE;
  springs.coil.rate_n_per_mm = 20.0;
  g_assert_false (car_check_springs (&springs, &error));
  g_assert_cmpstr (
      error->message, ==,
      "springs.coil.free_length_mm is 0, but must be above 0 and not above 2000.");
  springs.coil.free_length_mm = NAN;
  g_assert_false (car_check_springs (&springs, &infinite));
  g_assert_cmpstr (infinite->message, ==,
                   "springs.coil.free_length_mm must be a number.");
  rod.bore_mm = 5.0;
  g_assert_false (car_check_rod (&rod, &bore));
  g_assert_cmpstr (bore->message, ==,
                   "rod.bore_mm is 5, but must be below diameter_mm, which is 0.");
}

/* Every setup whose mount is where it was when measured, or that has springs of its own,
 * stands by its springs where it says that it stands. */
static void
check_stands (const char *name)
{
  g_autoptr (Car) car = fixture_demo (name);
  g_autoptr (Study) study = study_new ();
  g_autoptr (SpringStudy) springs = spring_study_new ();

  study_solve (study, car, 0, 0.0);
  spring_study_solve (springs, study, car);
  for (guint i = 0; i < car->setups->len; i++) {
    const CarSetup *setup = car_setup (car, i);
    const gboolean is_moved = setup->mount.inboard != 0.0;

    g_test_message ("%s: %s stands at %g", name, setup->name,
                    springs->setups[i].standing);
    g_assert_cmpint (springs->setups[i].stands, ==, STANDS_BY_SPRINGS);
    if (!is_moved || setup->has_springs)
      g_assert_cmpfloat_with_epsilon (springs->setups[i].standing, setup->lowering_mm,
                                      1.0);
  }
}

static void
test_demo_cars_stand_where_they_should (void)
{
  static const char *const names[] = { "wren", "fieldfare", "lapwing", "dunnock" };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++) {
    g_autoptr (Car) car = fixture_demo (names[i]);

    check_stands (names[i]);
    g_assert_cmpfloat (car->strut.rod.diameter_mm, >, 0.0);
    for (guint k = 0; k < car->setups->len; k++) {
      const CarRod own = car_setup_rod (car, k);
      const Rod rod = car_rod (car, &own);
      const double length =
          vec3_distance (car->points[POINT_UPPER_MOUNT], car->points[POINT_STRUT_FOOT]);

      /* It fits all the way, as the strut moves no more than the wheel does. */
      for (double travel = -car->droop_mm; travel <= car->bump_mm; travel += 10.0) {
        const RodReach reach = rod_reach (&rod, length - travel);

        g_assert_cmpfloat (reach.overhang, >, 0.0);
        g_assert_cmpfloat (reach.spacing, >, 0.0);
      }
    }
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/car-springs/none", test_a_car_without_springs_has_none);
  g_test_add_func ("/car-springs/members", test_springs_are_read_to_their_places);
  g_test_add_func ("/car-springs/own", test_a_setup_stands_on_its_own_or_on_the_cars);
  g_test_add_func ("/car-springs/load-cases",
                   test_load_cases_are_those_of_the_file_or_the_usual_ones);
  g_test_add_func ("/car-springs/load-case-titles",
                   test_only_usual_load_cases_have_a_title_of_their_own);
  g_test_add_func ("/car-springs/rear-mass", test_rear_mass_is_given_or_a_share);
  g_test_add_func ("/car-springs/link", test_the_link_stands_on_arm_or_strut);
  g_test_add_func ("/car-springs/kernel", test_seats_and_rod_go_to_the_kernel);
  g_test_add_func ("/car-springs/unknown", test_unknown_members_are_written_back);
  g_test_add_func ("/car-springs/unknown-places",
                   test_unknown_members_stay_in_their_object);
  g_test_add_func ("/car-springs/order",
                   test_what_an_older_program_left_stays_behind_the_setups);
  g_test_add_func ("/car-springs/defaults",
                   test_numbers_at_their_default_are_not_written);
  g_test_add_func ("/car-springs/every-bit", test_every_bit_of_random_sets_is_kept);
  g_test_add_func ("/car-springs/decimal-comma", test_a_decimal_comma_changes_nothing);
  g_test_add_func ("/car-springs/equal", test_equal_minds_springs);
  g_test_add_func ("/car-springs/equal-own", test_equal_overlooks_what_is_not_its_own);
  g_test_add_func ("/car-springs/demo-cars", test_demo_cars_stand_where_they_should);
  g_test_add_func ("/car-springs/sentences", test_sentences_for_sets_in_hand);
  return g_test_run ();
}
