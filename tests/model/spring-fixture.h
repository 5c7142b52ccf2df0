/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Cars on springs for tests: reference corners, and random ones on any mix. */

#pragma once

#include "random-corner.h"

#include "model/spring/spring-study.h"

/* With @measured as its corner, unsprung mass 0, one setup. */
Car *fixture_car_of (const MeasuredCorner *measured);

/* Its study and what it stands on, solved at travel 0. */
typedef struct {
  Car *car;
  Study *study;
  SpringStudy *springs;
} StandingCar;

StandingCar standing_car_new (Car *car);
void standing_car_solve (StandingCar *self);
void standing_car_clear (StandingCar *self);
/* Of its only setup. */
const SpringCorner *standing_corner (const StandingCar *self);
/* Puts the car's own spring so that it stands at @travel, which must be possible. */
void standing_car_raise (StandingCar *self, RaiseBy by, double travel);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (StandingCar, standing_car_clear)

/* A bar, a coil beside the strut, and each other part as the dice fall; stands somewhere
 * in its travel. */
CarSprings dice_springs (Dice *dice, const Car *car);

/* A random car on any mix that was asked to stand within 45 mm of its reference height,
 * its bar wound up so. */
StandingCar dice_standing_car (Dice *dice);

/* N on the wheel where its contact has risen by @rise from travel 0. */
double fixture_load_at_rise (const SpringCorner *corner, double rise);

/* One point of a table after the other: x, y, … */
SpringTable fixture_table (gsize n, const double points[][2]);
