/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A corner in space for the tests of the drawing: general geometry, nothing flat, nothing
 * square. */

#pragma once

#include "model/car/car.h"

static inline Car *
set_m_car (void)
{
  static const Vec3 points[N_POINTS] = {
    [POINT_ARM_FRONT_PIVOT] = { 10, 380, 200 },
    [POINT_ARM_REAR_PIVOT] = { -300, 395, 210 },
    [POINT_BALL_JOINT] = { 5, 700, 185 },
    [POINT_UPPER_MOUNT] = { -35, 575, 835 },
    [POINT_STRUT_FOOT] = { -12, 640, 430 },
    [POINT_TIE_ROD_OUTER] = { -130, 690, 240 },
    [POINT_TIE_ROD_INNER] = { -145, 345, 251 },
    [POINT_WHEEL_CENTRE] = { 0, 740, 300 },
  };
  Car *car = car_new ();

  for (PointName i = 0; i < N_POINTS; i++)
    car->points[i] = points[i];
  car->camber_deg = -0.5;
  car->toe_in_deg = 0.1;
  car->loaded_radius_mm = 300.0;
  return car;
}
