/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What stands round the strut beside the tyre, by the sizes that a car and its setups
 * give of it, and one coil by hand. */
#include "car-fixture.h"

#include "model/choice/choice.h"

#include <math.h>

static CarSetup *
on_own_coil (Car *car, double wire, double mean, double perch)
{
  CarSetup *setup = car_setup (car, 1);

  setup->has_springs = TRUE;
  setup->springs = car_springs_none ();
  setup->springs.coil = (CarCoil){ .is_there = TRUE,
                                   .rate_n_per_mm = 25,
                                   .wire_mm = wire,
                                   .mean_diameter_mm = mean,
                                   .free_length_mm = 250,
                                   .perch_mm = perch,
                                   .upper_drop_mm = 22,
                                   .lower_outboard_mm = 1,
                                   .lower_forward_mm = 2,
                                   .upper_outboard_mm = 3,
                                   .upper_forward_mm = 4 };
  return setup;
}

/* A coil without its wire, mean diameter or perch, a helper beside it, no coil: to the
 * bit what the car has. */
static void
test_springs_that_say_nothing_of_room (void)
{
  static const double said[][3] = {
    { 0, 0, 0 }, { 12, 0, 188 }, { 0, 130, 188 }, { 12, 130, 0 }
  };
  g_autoptr (Car) car = fixture_demo ("fieldfare");
  const StrutShape as_measured = car_strut_shape (car);

  for (gsize i = 0; i < G_N_ELEMENTS (said); i++) {
    CarSetup *setup = on_own_coil (car, said[i][0], said[i][1], said[i][2]);

    setup->springs.helper =
        (CarHelper){ .is_there = TRUE, .place = HELPER_IN_PARALLEL, .perch_mm = 120 };
    for (setup->springs.coil.is_there = FALSE; setup->springs.coil.is_there < 2;
         setup->springs.coil.is_there++) {
      const StrutShape shape = car_setup_strut_shape (car, 1);

      g_assert_cmpmem (&shape, sizeof shape, &as_measured, sizeof as_measured);
    }
  }
}

/* Of the Fieldfare's seat, made for a spring of 112 mm, only such a coil makes use. */
static void
test_own_coil_replaces_the_spring (void)
{
  g_autoptr (Car) car = fixture_demo ("fieldfare");
  const StrutShape as_measured = car_strut_shape (car);
  CarSetup *setup = on_own_coil (car, 11.5, 100.5, 195);
  StrutShape shape = car_setup_strut_shape (car, 1);

  g_assert_cmpfloat (shape.tube_radius, ==, as_measured.tube_radius);
  g_assert_cmpfloat (shape.seat_radius, ==, 66.0);
  g_assert_cmpfloat (shape.seat_height, ==, 195.0);
  g_assert_cmpfloat (shape.spring_radius, ==, 56.0);
  g_assert_cmpfloat (shape.spring_drop, ==, 22.0);
  g_assert_cmpfloat (shape.spring_free, ==, 250.0);
  g_assert_cmpfloat (shape.lower_outboard, ==, 1.0);
  g_assert_cmpfloat (shape.lower_forward, ==, 2.0);
  g_assert_cmpfloat (shape.upper_outboard, ==, 3.0);
  g_assert_cmpfloat (shape.upper_forward, ==, 4.0);
  setup->springs.helper =
      (CarHelper){ .is_there = TRUE, .place = HELPER_IN_SERIES, .free_length_mm = 60 };
  g_assert_cmpfloat (car_setup_strut_shape (car, 1).spring_free, ==, 310.0);
  setup->springs.coil.mean_diameter_mm = 60;
  shape = car_setup_strut_shape (car, 1);
  g_assert_cmpfloat (shape.seat_radius, ==, 0.0);
  g_assert_cmpfloat (shape.spring_radius, ==, 35.75);
  setup->has_springs = FALSE;
  g_assert_cmpfloat (car_setup_strut_shape (car, 1).seat_radius, ==, 66.0);
}

/* What the car is built with stands in for sizes that `strut` does not give. */
static void
test_coil_of_the_car (void)
{
  g_autoptr (Car) car = fixture_demo ("wren");

  car->springs.coil = on_own_coil (car, 12, 128, 170)->springs.coil;
  car_setup (car, 1)->has_springs = FALSE;
  car->strut = (CarStrut){ 0 };
  g_assert_true (car_has_strut_shape (car));
  g_assert_cmpfloat (car_strut_shape (car).spring_radius, ==, 70.0);
  g_assert_cmpfloat (car_setup_strut_shape (car, 1).seat_height, ==, 170.0);
  car->strut.spring_diameter_mm = 110;
  car->strut.seat_height_mm = 165;
  g_assert_cmpfloat (car_strut_shape (car).spring_radius, ==, 55.0);
  g_assert_cmpfloat (car_strut_shape (car).spring_drop, ==, 0.0);
}

/* Nearest to the tyre's inner face is the lower end's edge: 150 mm up the strut, and from
 * there 76.5 mm towards the wheel, square to the strut. */
static void
test_wide_coil_of_the_dunnock (void)
{
  g_autoptr (Car) car = fixture_demo ("dunnock");
  CarCoil *coil = &car_setup (car, 1)->springs.coil;
  const ChoiceQuestion question = { .setup = 1 };
  const double camber = -0.5 * G_PI / 180.0, toe = 0.05 * G_PI / 180.0;
  const Vec3 n = { cos (camber) * sin (toe), cos (camber) * cos (toe), -sin (camber) };
  const Vec3 u = vec3_unit ((Vec3){ -40 + 10, 541 - 606, 778 - 336 });
  const Vec3 perch = vec3_along ((Vec3){ -10, 606, 336 }, 150, u);
  const Vec3 edge = vec3_along (perch, 153 / 2.0, vec3_unit (vec3_reject (n, u)));
  const Vec3 off = vec3_sub (edge, (Vec3){ 0, 706, 276 });

  const ChoicePlace as_it_is = choice_place_of_mount (car, &question, SIDE_LEFT, NULL);
  coil->wire_mm = 13;
  coil->mean_diameter_mm = 140;
  coil->perch_mm = 150;
  const ChoicePlace place = choice_place_of_mount (car, &question, SIDE_LEFT, NULL);

  const double room = -vec3_dot (off, n) - 85.0;

  /* the tread is further away than the face */
  g_assert_cmpfloat (vec3_length (vec3_reject (off, n)) - 285.0, <, room);
  g_assert_cmpfloat_with_epsilon (place.clearance.room[STRUT_SPRING], room, 1e-9);
  g_assert_cmpfloat_with_epsilon (place.clearance.least, -40.0, 3.0);
  g_assert_cmpint (place.clearance.nearest, ==, STRUT_SPRING);
  g_assert_cmpuint (place.faults & CHOICE_TYRE_TOO_NEAR, !=, 0);
  g_assert_true (place.clearance.room[STRUT_TUBE] == as_it_is.clearance.room[STRUT_TUBE]);
  g_assert_cmpuint (as_it_is.faults & CHOICE_TYRE_TOO_NEAR, ==, 0);
}

/* What an outline keeps is all that the room needs. */
static void
test_outline_has_the_same_room (void)
{
  g_autoptr (Car) car = fixture_demo ("dunnock");
  CarSetup *setup = car_setup (car, 1);
  const StrutShape shape = car_setup_strut_shape (car, 1);

  setup->springs = car_springs_outline (&setup->springs);
  const StrutShape same = car_setup_strut_shape (car, 1);

  g_assert_cmpmem (&shape, sizeof shape, &same, sizeof same);
  g_assert_cmpfloat (setup->springs.coil.rate_n_per_mm, ==, 0.0);
  g_assert_false (setup->springs.bump_stop.is_there);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/car-strut-shape/nothing", test_springs_that_say_nothing_of_room);
  g_test_add_func ("/car-strut-shape/own-coil", test_own_coil_replaces_the_spring);
  g_test_add_func ("/car-strut-shape/coil-of-the-car", test_coil_of_the_car);
  g_test_add_func ("/car-strut-shape/dunnock", test_wide_coil_of_the_dunnock);
  g_test_add_func ("/car-strut-shape/outline", test_outline_has_the_same_room);
  return g_test_run ();
}
