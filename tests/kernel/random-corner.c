/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "random-corner.h"

#define DEGREE (acos (-1.0) / 180.0)

/* The 64-bit linear congruential generator of Knuth, The Art of Computer Programming,
 * vol. 2, section 3.3.4 (constants from memory). */
double
dice_between (Dice *dice, double low, double high)
{
  dice->state = dice->state * 6364136223846793005u + 1442695040888963407u;
  return low + (high - low) * (double) (dice->state >> 11) / 9007199254740992.0;
}

static Vec3
near (Dice *dice, Vec3 from, Vec3 low, Vec3 high)
{
  const double x = dice_between (dice, low.x, high.x);
  const double y = dice_between (dice, low.y, high.y);
  const double z = dice_between (dice, low.z, high.z);

  return vec3_add (from, (Vec3){ x, y, z });
}

static void
place_arm (Dice *dice, Vec3 *p)
{
  const Vec3 wheel = p[POINT_WHEEL_CENTRE];
  const Vec3 ball = near (dice, wheel, (Vec3){ -15, -60, -130 }, (Vec3){ 15, -25, -90 });
  const Vec3 front = near (dice, ball, (Vec3){ -10, -370, -15 }, (Vec3){ 60, -280, 40 });

  p[POINT_BALL_JOINT] = ball;
  p[POINT_ARM_FRONT_PIVOT] = front;
  p[POINT_ARM_REAR_PIVOT] =
      near (dice, front, (Vec3){ -330, -10, -10 }, (Vec3){ -220, 30, 20 });
}

static void
place_strut (Dice *dice, Vec3 *p)
{
  const double caster = dice_between (dice, 1.0, 8.0) * DEGREE;
  const double sai = dice_between (dice, 9.0, 15.0) * DEGREE;
  const double height = dice_between (dice, 560.0, 680.0);
  const Vec3 axis = { -height * tan (caster), -height * tan (sai), height };
  const Vec3 foot =
      vec3_along (p[POINT_BALL_JOINT], dice_between (dice, 0.3, 0.45), axis);

  p[POINT_UPPER_MOUNT] = vec3_add (p[POINT_BALL_JOINT], axis);
  p[POINT_STRUT_FOOT] = near (dice, foot, (Vec3){ -12, -15, -5 }, (Vec3){ 12, 15, 5 });
}

/* Behind the axle or ahead of it. */
static void
place_tie_rod (Dice *dice, Vec3 *p)
{
  const double side = dice_between (dice, 0.0, 1.0) < 0.7 ? -1.0 : 1.0;
  const Vec3 middle =
      vec3_add (p[POINT_WHEEL_CENTRE], (Vec3){ side * 130.0, -55.0, -30.0 });
  const Vec3 outer = near (dice, middle, (Vec3){ -20, -25, -50 }, (Vec3){ 20, 25, 60 });
  const Vec3 inner = { outer.x, p[POINT_ARM_FRONT_PIVOT].y, outer.z };

  p[POINT_TIE_ROD_OUTER] = outer;
  p[POINT_TIE_ROD_INNER] =
      near (dice, inner, (Vec3){ -25, -40, -15 }, (Vec3){ 25, 20, 25 });
}

MeasuredCorner
dice_corner (Dice *dice)
{
  const double radius = dice_between (dice, 260.0, 330.0);
  MeasuredCorner m = { .loaded_radius = radius };

  m.at[POINT_WHEEL_CENTRE] = (Vec3){ 0.0, dice_between (dice, 680.0, 780.0), radius };
  place_arm (dice, m.at);
  place_strut (dice, m.at);
  place_tie_rod (dice, m.at);
  m.camber = dice_between (dice, -2.0, 0.5) * DEGREE;
  m.toe_in = dice_between (dice, -0.3, 0.3) * DEGREE;
  m.dive_lever = dice_between (dice, 2.0, 4.0);
  return m;
}

RandomCase
dice_case (Dice *dice)
{
  RandomCase c = { .measured = dice_corner (dice) };
  MountOffset *mount = &c.adjustment.mount;

  mount->inboard = dice_between (dice, -25.0, 25.0);
  mount->rearward = dice_between (dice, -25.0, 25.0);
  mount->up = dice_between (dice, -25.0, 25.0);
  c.travel = dice_between (dice, -80.0, 80.0);
  c.rack = dice_between (dice, -45.0, 45.0);
  return c;
}
