/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How long springs through travel take for six setups on every kind of spring: what a
 * drag asks for in each frame. Prints, never fails on time. */
#include "spring-fixture.h"

#include "check-data.h"

#include "model/load/load-case.h"

#include <stdio.h>
#include <time.h>

#define N_SETUPS 6
#define N_ROUNDS 400

static Car *
full_car (void)
{
  Dice dice = { 4711 };
  Car *car = fixture_car_of (&set_m);

  car->springs = dice_springs (&dice, car);
  car->springs.anti_roll_bar.is_there = TRUE;
  car->springs.anti_roll_bar.rate_n_per_mm = 20.0;
  for (guint i = 1; i < N_SETUPS; i++) {
    CarSetup setup = { .name = g_strdup ("tried"),
                       .mount = { .inboard = 3.0 * i },
                       .has_springs = TRUE };

    setup.springs = dice_springs (&dice, car);
    g_array_append_val (car->setups, setup);
  }
  return car;
}

/* µs of this program alone, whatever else runs, for each of @n. */
static double
time_each (void (*work) (StandingCar *), StandingCar *standing, int n)
{
  const clock_t start = clock ();

  for (int i = 0; i < n; i++)
    work (standing);
  return (double) (clock () - start) / CLOCKS_PER_SEC * 1e6 / n;
}

static void
solve (StandingCar *standing)
{
  spring_study_solve (standing->springs, standing->study, standing->car);
}

static void
move (StandingCar *standing)
{
  spring_study_set_travel (standing->springs);
}

static void
lean (StandingCar *standing)
{
  const CarLoadCase bend = { .lateral_g = 0.5, .braking_g = 0.3, .vertical = 1.0 };
  JointLoads loads;

  joint_loads_of_case (standing->springs, 0, &bend, NAN, SPRING_AS_SET, &loads);
}

int
main (void)
{
  g_auto (StandingCar) standing = standing_car_new (full_car ());

  printf ("springs of %d setups at %d stations: %.0f µs; another travel: %.1f µs\n",
          N_SETUPS, STUDY_STATIONS, time_each (solve, &standing, N_ROUNDS),
          time_each (move, &standing, N_ROUNDS));
  printf ("one case on springs and anti-roll bar: %.0f µs\n",
          time_each (lean, &standing, N_ROUNDS));
  return 0;
}
