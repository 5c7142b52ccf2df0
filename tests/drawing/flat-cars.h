/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Flat corners, whose roll centre a handbook's formula gives. */

#pragma once

#include "model/car/car.h"

static inline Car *
flat_car (const Vec3 points[N_POINTS])
{
  Car *car = car_new ();

  for (PointName i = 0; i < N_POINTS; i++)
    car->points[i] = points[i];
  car->loaded_radius_mm = 300.0;
  return car;
}

/* Strut axis through the ball joint, tie rod parallel and equal to the arm. Lowered by 30
 * mm its roll centre goes from 82.1011 to −0.9039 mm (closed form of the planar linkage,
 * worked out apart from the program). */
static inline Car *
set_p_car (void)
{
  return flat_car ((const Vec3[]){
      [POINT_ARM_FRONT_PIVOT] = { 100, 380, 200 },
      [POINT_ARM_REAR_PIVOT] = { -200, 380, 200 },
      [POINT_BALL_JOINT] = { 0, 700, 185 },
      [POINT_UPPER_MOUNT] = { 0, 575, 835 },
      [POINT_STRUT_FOOT] = { 0, 656.25, 412.5 },
      [POINT_TIE_ROD_OUTER] = { -130, 700, 185 },
      [POINT_TIE_ROD_INNER] = { -130, 380, 200 },
      [POINT_WHEEL_CENTRE] = { 0, 740, 300 },
  });
}

/* Roll centre of a strut corner by the handbook's formula.
 * Source: Reimpell, Stoll, Betzler, The Automotive Chassis, 2nd ed. 2001, 3.4.3 (from
 * memory): k = (c+o)/sin(α+β), p = k sin β + d,
 *   h_Ro = b_f/2 · p/(k cos β + d tan σ + r_σ). Angles in degrees, lengths mm. */
typedef struct {
  double alpha, beta, c_plus_o, d, sigma, r_sigma, track;
  double pole_y, pole_z, height; /* figures worked from it */
} HandbookCase;

/* Two lowered cars: the roll centre lies under the ground. */
static const HandbookCase case_rc_c = { 9.0, -4.0, 640,     175,     12.0,
                                        0,   1500, -6612.5, -337.23, -34.353 };
static const HandbookCase case_rc_e = { 7.5, -6.0, 600,      170,      10.5,
                                        8,   1460, -22104.9, -2225.89, -71.159 };

static inline Car *
handbook_car (const HandbookCase *h)
{
  const double rad = G_PI / 180.0, sigma = h->sigma * rad, alpha = h->alpha * rad,
               beta = h->beta * rad;
  const double y = h->track / 2.0 - h->r_sigma - h->d * tan (sigma);
  const double reach = h->c_plus_o / cos (sigma - alpha);
  const Vec3 ball = { 0, y, h->d };
  const Vec3 mount = vec3_along (ball, reach, (Vec3){ 0, -sin (sigma), cos (sigma) });
  const Vec3 pivot = vec3_along (ball, 320, (Vec3){ 0, -cos (beta), sin (beta) });

  return flat_car ((const Vec3[]){
      [POINT_ARM_FRONT_PIVOT] = { 100, pivot.y, pivot.z },
      [POINT_ARM_REAR_PIVOT] = { -200, pivot.y, pivot.z },
      [POINT_BALL_JOINT] = ball,
      [POINT_UPPER_MOUNT] = mount,
      [POINT_STRUT_FOOT] =
          vec3_along (mount, 380, (Vec3){ 0, sin (alpha), -cos (alpha) }),
      [POINT_TIE_ROD_OUTER] = { -130, ball.y, ball.z },
      [POINT_TIE_ROD_INNER] = { -130, pivot.y, pivot.z },
      [POINT_WHEEL_CENTRE] = { 0, h->track / 2.0, 300 },
  });
}
