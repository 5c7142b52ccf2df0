/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "raw-measures.h"

#define HALF 3 /* neighbours either side that a derivative needs */

/* d/dz of what stands at @f[-3] … @f[3], one every RAW_STEP: the central difference of
 * sixth order (Abramowitz & Stegun, table 25.2; from memory). */
static double
slope_of (const double *f)
{
  return (45.0 * (f[1] - f[-1]) - 9.0 * (f[2] - f[-2]) + (f[3] - f[-3])) /
         (60.0 * RAW_STEP);
}

static Vec3
measured_spin (const MeasuredCorner *m)
{
  const Vec3 straight = { sin (m->toe_in), cos (m->toe_in), -tan (m->camber) };

  return vec3_unit (straight);
}

void
raw_space_wheel (RawCorner *raw, double length)
{
  raw_corner_move_wheel (raw, vec3_scale (measured_spin (&raw->measured), length));
}

Vec3
raw_spin_axis (const RawCorner *raw, const RawPose *pose)
{
  return raw_pose_direction (pose, measured_spin (&raw->measured));
}

/* The wheel's rim runs ahead along n × k; down in its plane is square to that and to n.
 */
Vec3
raw_contact (const RawCorner *raw, const RawPose *pose)
{
  const Vec3 n = raw_spin_axis (raw, pose), k = { 0.0, 0.0, 1.0 };
  const Vec3 ahead = vec3_unit (vec3_cross (n, k));
  const Vec3 down = vec3_cross (n, ahead);
  const double sign = down.z < 0.0 ? 1.0 : -1.0;

  return vec3_along (raw_pose_point (raw, pose, raw->wheel),
                     sign * raw->measured.loaded_radius, down);
}

/* Without the spacer that may be on now. */
static Vec3
contact_as_measured (const RawCorner *raw)
{
  RawCorner bare = *raw;

  raw_corner_move_wheel (&bare, (Vec3){ 0 });
  const RawPose home = raw_corner_measured_pose (&bare);
  return raw_contact (&bare, &home);
}

static double
x_at_height (Vec3 a, Vec3 b, double z)
{
  return a.x + (b.x - a.x) * (z - a.z) / (b.z - a.z);
}

static double
y_at_height (Vec3 a, Vec3 b, double z)
{
  return a.y + (b.y - a.y) * (z - a.z) / (b.z - a.z);
}

/* The arm's angle from where it was measured, bump positive, by the sides of the triangle
 * that the ball joint, its measured place and the foot of both on the hinge make. */
static double
arm_angle (const RawCorner *raw, Vec3 ball)
{
  const Vec3 *p = raw->measured.at;
  const Vec3 before = vec3_reject (raw->arm, raw->hinge_axis);
  const Vec3 now = vec3_reject (vec3_sub (ball, raw->hinge), raw->hinge_axis);
  const Vec3 chord = vec3_sub (now, before);
  const double angle = 2.0 * asin (vec3_length (chord) / (2.0 * vec3_length (before)));

  return ball.z < p[POINT_BALL_JOINT].z ? -angle : angle;
}

static void
measure_position (const RawCorner *raw, const RawPose *pose, double *q)
{
  const Vec3 *p = raw->measured.at;
  const Vec3 U = raw->mount, n = raw_spin_axis (raw, pose);
  const Vec3 B = raw_pose_point (raw, pose, p[POINT_BALL_JOINT]);
  const Vec3 S = raw_pose_point (raw, pose, p[POINT_STRUT_FOOT]);
  const Vec3 W = raw_pose_point (raw, pose, raw->wheel);
  const Vec3 C = raw_contact (raw, pose);
  const double toe = atan (n.x / n.y), lean = atan (-n.z / hypot (n.x, n.y));
  const double ahead = x_at_height (B, U, C.z) - C.x;
  const double inboard = C.y - y_at_height (B, U, C.z);

  q[QUANTITY_CAMBER] = lean;
  q[QUANTITY_CAMBER_ISO] = atan (-n.z / n.y);
  q[QUANTITY_TOE_IN] = toe;
  q[QUANTITY_CASTER] = atan ((B.x - U.x) / (U.z - B.z));
  q[QUANTITY_SAI] = atan ((B.y - U.y) / (U.z - B.z));
  q[QUANTITY_INCLUDED_ANGLE] = q[QUANTITY_SAI] + lean;
  q[QUANTITY_TRAIL] = ahead;
  q[QUANTITY_SCRUB_RADIUS] = inboard;
  q[QUANTITY_TRAIL_IN_TYRE] = ahead * cos (toe) + inboard * sin (toe);
  q[QUANTITY_SCRUB_IN_TYRE] = inboard * cos (toe) - ahead * sin (toe);
  q[QUANTITY_TRAIL_AT_CENTRE] = x_at_height (B, U, W.z) - W.x;
  q[QUANTITY_SCRUB_AT_CENTRE] = W.y - y_at_height (B, U, W.z);
  q[QUANTITY_HALF_TRACK_CHANGE] = C.y - contact_as_measured (raw).y;
  q[QUANTITY_WHEELBASE_CHANGE] = W.x - p[POINT_WHEEL_CENTRE].x;
  q[QUANTITY_STRUT_LENGTH] = vec3_distance (S, U);
  q[QUANTITY_ARM_ANGLE] = arm_angle (raw, B);
}

/* The velocity, per mm of travel, of a point that is on the knuckle in @row[0] now. */
static Vec3
velocity_at (const RawCorner *raw, const RawPose *row, Vec3 now)
{
  const Vec3 point = raw_pose_point_as_measured (raw, row, now);
  double x[RAW_ROW], y[RAW_ROW], z[RAW_ROW];

  for (int k = -HALF; k <= HALF; k++) {
    const Vec3 place = raw_pose_point (raw, row + k, point);

    x[HALF + k] = place.x;
    y[HALF + k] = place.y;
    z[HALF + k] = place.z;
  }
  return (Vec3){ slope_of (x + HALF), slope_of (y + HALF), slope_of (z + HALF) };
}

/* The front-view instant centre from two velocities: that of the contact, and that of the
 * knuckle's point 100 mm above it. */
static void
measure_velocity (const RawCorner *raw, const RawPose *row, double *q)
{
  const Vec3 C = raw_contact (raw, row), above = { C.x, C.y, C.z + 100.0 };
  const Vec3 v = velocity_at (raw, row, C), v_above = velocity_at (raw, row, above);
  const double turn = (v.y - v_above.y) / 100.0;

  q[QUANTITY_ROLL_CENTRE_HEIGHT] = C.y * v.y / v.z;
  q[QUANTITY_SIDE_VIEW_SLOPE] = v.x / v.z;
  q[QUANTITY_ANTI_DIVE] = 100.0 * raw->measured.dive_lever * v.x / v.z;
  q[QUANTITY_SWING_ARM_CURVATURE] = turn / hypot (v.y, v.z);
  q[QUANTITY_SWING_ARM_LENGTH] = hypot (v.y, v.z) / turn;
}

static double
slope_in_row (double (*row)[N_QUANTITIES], Quantity quantity)
{
  double f[2 * HALF + 1];

  for (int k = -HALF; k <= HALF; k++)
    f[HALF + k] = row[k][quantity];
  return slope_of (f + HALF);
}

RawMeasures
raw_measures (const RawCorner *raw, const RawPose row[RAW_ROW])
{
  double table[RAW_ROW][N_QUANTITIES];
  RawMeasures out;

  for (int i = 0; i < RAW_ROW; i++)
    measure_position (raw, &row[i], table[i]);
  for (int i = HALF; i < RAW_ROW - HALF; i++) {
    double *q = table[i];

    measure_velocity (raw, &row[i], q);
    q[QUANTITY_CAMBER_GAIN] = slope_in_row (&table[i], QUANTITY_CAMBER);
    q[QUANTITY_BUMP_STEER] = slope_in_row (&table[i], QUANTITY_TOE_IN);
    q[QUANTITY_STRUT_RATIO] = -slope_in_row (&table[i], QUANTITY_STRUT_LENGTH);
    q[QUANTITY_ARM_RATIO] = slope_in_row (&table[i], QUANTITY_ARM_ANGLE);
  }
  for (int i = 0; i < N_QUANTITIES; i++) {
    out.value[i] = table[RAW_REACH][i];
    out.slope[i] = slope_in_row (&table[RAW_REACH], (Quantity) i);
  }
  return out;
}
