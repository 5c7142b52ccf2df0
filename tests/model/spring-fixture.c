/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "spring-fixture.h"

#include "check-data.h"

Car *
fixture_car_of (const MeasuredCorner *measured)
{
  Car *car = car_new ();

  for (PointName i = 0; i < N_POINTS; i++)
    car->points[i] = measured->at[i];
  car->camber_deg = DEGREES (measured->camber);
  car->toe_in_deg = DEGREES (measured->toe_in);
  car->loaded_radius_mm = measured->loaded_radius;
  car->body.unsprung_corner_kg = 0.0;
  return car;
}

void
standing_car_solve (StandingCar *self)
{
  study_solve (self->study, self->car, 0, 0.0);
  spring_study_solve (self->springs, self->study, self->car);
}

StandingCar
standing_car_new (Car *car)
{
  StandingCar self = { car, study_new (), spring_study_new () };

  standing_car_solve (&self);
  return self;
}

void
standing_car_clear (StandingCar *self)
{
  spring_study_free (self->springs);
  study_free (self->study);
  car_free (self->car);
}

SpringTable
fixture_table (gsize n, const double points[][2])
{
  SpringTable table = { .n = n };

  for (gsize i = 0; i < n; i++) {
    table.x[i] = points[i][0];
    table.y[i] = points[i][1];
  }
  return table;
}

static gboolean
falls (Dice *dice)
{
  return dice_between (dice, 0.0, 1.0) < 0.6;
}

static CarCoil
dice_coil (Dice *dice, double strut_length)
{
  const double length = strut_length - 120.0;
  const double load = dice_between (dice, 400.0, 2500.0);
  const double rate = dice_between (dice, 8.0, 30.0);
  CarCoil coil = { .is_there = TRUE,
                   .rate_n_per_mm = rate,
                   .free_length_mm = length + load / rate,
                   .solid_length_mm = length - dice_between (dice, 60.0, 140.0),
                   .perch_mm = 60.0,
                   .upper_drop_mm = 60.0,
                   .lower_outboard_mm = dice_between (dice, -25.0, 25.0),
                   .lower_forward_mm = dice_between (dice, -15.0, 15.0),
                   .upper_outboard_mm = dice_between (dice, -25.0, 25.0),
                   .upper_forward_mm = dice_between (dice, -15.0, 15.0) };

  if (falls (dice)) {
    const double points[][2] = { { 50, 0.8 * rate * 50 },
                                 { 120, rate * 120 },
                                 { 200, 1.4 * rate * 200 } };

    coil.table = fixture_table (3, points);
    coil.rate_n_per_mm = 0.0;
  }
  return coil;
}

static CarHelper
dice_helper (Dice *dice, double strut_length)
{
  return (CarHelper){ .is_there = TRUE,
                      .place = falls (dice) ? HELPER_IN_SERIES : HELPER_IN_PARALLEL,
                      .rate_n_per_mm = dice_between (dice, 2.0, 10.0),
                      .free_length_mm =
                          strut_length - 100.0 + dice_between (dice, -40.0, 40.0),
                      .solid_length_mm = 50.0,
                      .perch_mm = 50.0,
                      .upper_drop_mm = 50.0 };
}

static void
add_strut_parts (Dice *dice, CarSprings *springs)
{
  const double stop[][2] = { { 10, 300 }, { 30, 1500 }, { 60, 6000 } };
  const double damper[][2] = {
    { -0.5, -1800 }, { -0.1, -700 }, { 0.1, 300 }, { 0.5, 900 }
  };

  if (falls (dice)) {
    springs->bump_stop.is_there = TRUE;
    springs->bump_stop.gap_mm = dice_between (dice, 0.0, 60.0);
    springs->bump_stop.table = fixture_table (3, stop);
  }
  if (falls (dice))
    springs->damper.gas_force_n = dice_between (dice, 50.0, 250.0);
  if (falls (dice))
    springs->damper.table = fixture_table (4, damper);
}

CarSprings
dice_springs (Dice *dice, const Car *car)
{
  const double strut_length =
      vec3_distance (car->points[POINT_UPPER_MOUNT], car->points[POINT_STRUT_FOOT]);
  CarSprings springs = car_springs_none ();

  springs.bar = (CarTorsionBar){ .is_there = TRUE,
                                 .rate_nm_per_deg = dice_between (dice, 10.0, 35.0),
                                 .clamp_angle_deg = dice_between (dice, 10.0, 25.0) };
  springs.coil = dice_coil (dice, strut_length);
  if (falls (dice))
    springs.helper = dice_helper (dice, strut_length);
  if (springs.helper.place == HELPER_IN_SERIES && springs.helper.is_there) {
    springs.helper.free_length_mm = 60.0;
    springs.helper.solid_length_mm = 15.0;
  }
  add_strut_parts (dice, &springs);
  return springs;
}

const SpringCorner *
standing_corner (const StandingCar *standing)
{
  return &standing->springs->setups[0];
}

void
standing_car_raise (StandingCar *standing, RaiseBy by, double travel)
{
  double value;

  g_assert_true (spring_study_height_cure (standing->springs, 0, travel, by, &value));
  if (by == RAISE_PERCH)
    standing->car->springs.coil.perch_mm = value;
  else
    standing->car->springs.bar.clamp_angle_deg = value;
  standing_car_solve (standing);
}

double
fixture_load_at_rise (const SpringCorner *corner, double rise)
{
  const Station s = check_solve_at_contact (&corner->corner->corner, rise);
  SpringStation station;

  spring_law_station (corner->law, &corner->corner->corner, &s.pose, &station);
  return station.load;
}

StandingCar
dice_standing_car (Dice *dice)
{
  const MeasuredCorner measured = dice_corner (dice);
  Car *car = fixture_car_of (&measured);

  car->body.unsprung_corner_kg = dice_between (dice, 10.0, 40.0);
  car->springs = dice_springs (dice, car);
  car_setup (car, 0)->mount.inboard = dice_between (dice, -15.0, 15.0);
  StandingCar standing = standing_car_new (car);

  standing_car_raise (&standing, RAISE_CLAMP_ANGLE, dice_between (dice, -45.0, 45.0));
  return standing;
}
