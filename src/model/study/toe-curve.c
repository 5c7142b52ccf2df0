/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Mathematics of the rates. A move p of one end of the tie rod, the wheel held at its
 * travel, turns the knuckle by dτ about the line from ball joint B to mount U, and the
 * arm by dθ. With e = U − B, outer end T, inner end R, and g = ∂(T − R)/∂p, the knuckle
 * held: |T − R| = L      (T − R)·(g + τ' e × (T − B)) = L L' travel held      θ' lift +
 * τ' (e × (W − B))_z = 0 spin axis        n' = τ' e × n + θ' ω × n L L' is 0, or under a
 * toe reset what keeps τ' = 0 at the standing height. */
#include "model/study/toe-curve.h"

static double
toe_of (const Pose *pose)
{
  return atan2 (pose->spin_axis.x, pose->spin_axis.y);
}

static double
offset_of (ToeCurveRange range, int i)
{
  return range.from + (range.to - range.from) * i / (TOE_CURVE_STATIONS - 1);
}

/* Each station from its neighbour on the side of the standing height. */
gboolean
toe_curve_solve (const Corner *corner, ToeCurveRange range, ToeCurve *curve)
{
  int first_above = 0;

  if (pose_at_travel (corner, range.standing, 0.0, NULL, &curve->standing) != POSE_OK)
    return FALSE;
  while (first_above < TOE_CURVE_STATIONS && offset_of (range, first_above) < 0.0)
    first_above++;

  const Pose *from = &curve->standing;
  for (int i = first_above; i < TOE_CURVE_STATIONS; from = &curve->at[i++])
    if (pose_at_travel (corner, range.standing + offset_of (range, i), 0.0, from,
                        &curve->at[i]) != POSE_OK)
      return FALSE;
  from = &curve->standing;
  for (int i = first_above - 1; i >= 0; from = &curve->at[i--])
    if (pose_at_travel (corner, range.standing + offset_of (range, i), 0.0, from,
                        &curve->at[i]) != POSE_OK)
      return FALSE;

  for (int i = 0; i < TOE_CURVE_STATIONS; i++)
    curve->toe[i] = toe_of (&curve->at[i]) - toe_of (&curve->standing);
  return TRUE;
}

/* The knuckle's own upward direction, that of the reference position, where the knuckle
 * is now: by its parts along spin axis, strut and their normal, which are known in both.
 */
static Vec3
knuckle_up (const Corner *corner, const Pose *pose)
{
  const Vec3 up = { 0.0, 0.0, 1.0 };
  const Vec3 n = corner->spin_axis, u = corner->strut_direction, c = vec3_cross (n, u);
  const double nu = vec3_dot (n, u), area = vec3_dot (c, c);
  const double along_n = (vec3_dot (up, n) - nu * vec3_dot (up, u)) / area;
  const double along_u = (vec3_dot (up, u) - nu * vec3_dot (up, n)) / area;
  const Vec3 across = vec3_cross (pose->spin_axis, pose->strut_direction);

  return vec3_along (vec3_along (vec3_scale (pose->spin_axis, along_n), along_u,
                                 pose->strut_direction),
                     vec3_dot (up, c) / area, across);
}

/* (T − R)·g */
static double
stretch (const Corner *corner, const Pose *pose, TieRodMove move)
{
  const Vec3 rod = vec3_sub (pose->tie_rod_outer, pose->tie_rod_inner);

  return move == TIE_ROD_OUTER_DOWN ? -vec3_dot (rod, knuckle_up (corner, pose)) : -rod.z;
}

/* @length_rate is L L'. */
static double
toe_rate (const Corner *corner, const Pose *pose, TieRodMove move, double length_rate)
{
  const Vec3 B = pose->ball_joint, n = pose->spin_axis;
  const Vec3 e = vec3_sub (corner->upper_mount, B);
  const Vec3 rod = vec3_sub (pose->tie_rod_outer, pose->tie_rod_inner);
  const Vec3 arm = vec3_sub (pose->tie_rod_outer, B);
  const double tau =
      (length_rate - stretch (corner, pose, move)) / vec3_dot (rod, vec3_cross (e, arm));
  const double theta =
      -tau * vec3_cross (e, vec3_sub (pose->wheel_centre, B)).z / pose->lift;
  const Vec3 turn = vec3_along (vec3_scale (e, tau), theta, pose->turn_rate);
  const Vec3 rate = vec3_cross (turn, n);

  return (n.y * rate.x - n.x * rate.y) / (n.x * n.x + n.y * n.y);
}

void
toe_curve_rates (const Corner *corner,
                 const ToeCurve *curve,
                 TieRodMove move,
                 gboolean is_toe_reset,
                 double rates[TOE_CURVE_STATIONS])
{
  const double length_rate =
      is_toe_reset ? stretch (corner, &curve->standing, move) : 0.0;
  const double standing = toe_rate (corner, &curve->standing, move, length_rate);

  for (int i = 0; i < TOE_CURVE_STATIONS; i++)
    rates[i] = toe_rate (corner, &curve->at[i], move, length_rate) - standing;
}
