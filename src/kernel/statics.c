/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "kernel/statics.h"

/* Unknowns: side forces f₁, f₂ along p, q square to the strut u; tie rod t along
 * r = (T − R)/|T − R|; axial force N; ball joint F_B.
 *
 * Moments about B leave the ball joint out. For a force F at the lever l from B:
 *   f₁ (U − B) × p + f₂ (U − B) × q + t (T − B) × r = −l × F,
 * three equations for three unknowns; then F_B = −(F + f₁ p + f₂ q + t r).
 *
 * The arm gets −F_B at B, and turns by v_B for an angle of 1: the bar's torque is
 * −v_B · F_B. With a coil this is 0, which gives N: the contact force alone and a coil of
 * 1 N alone each make a torque, and N weighs one against the other. */

/* Share of their lengths below which three columns, or two, are taken to be dependent. */
#define DEPENDENT 1e-12

typedef struct {
  Vec3 p, q, rod;
  Vec3 mount;     /* U − B */
  Vec3 column[3]; /* the moments about B of f₁, f₂, t at 1 */
  Vec3 minor[3];  /* column j × column k: Cramer's rule */
  double determinant;
} KnuckleJoints;

/* What holds one force. */
typedef struct {
  Vec3 side, ball;
  double tie_rod, torque;
} Holding;

static bool
find_joints (const Corner *corner, const Pose *pose, KnuckleJoints *k)
{
  k->p = vec3_any_normal (pose->strut_direction);
  k->q = vec3_cross (pose->strut_direction, k->p);
  k->rod = vec3_unit (vec3_sub (pose->tie_rod_outer, pose->tie_rod_inner));
  k->mount = vec3_sub (corner->upper_mount, pose->ball_joint);
  k->column[0] = vec3_cross (k->mount, k->p);
  k->column[1] = vec3_cross (k->mount, k->q);
  k->column[2] = vec3_cross (vec3_sub (pose->tie_rod_outer, pose->ball_joint), k->rod);
  for (int i = 0; i < 3; i++)
    k->minor[i] = vec3_cross (k->column[(i + 1) % 3], k->column[(i + 2) % 3]);
  k->determinant = vec3_dot (k->column[0], k->minor[0]);

  const double size = vec3_length (k->column[0]) * vec3_length (k->column[1]) *
                      vec3_length (k->column[2]);
  return fabs (k->determinant) > DEPENDENT * size;
}

static Holding
hold (const KnuckleJoints *k, const Pose *pose, Vec3 force, Vec3 lever)
{
  const Vec3 moment = vec3_scale (vec3_cross (lever, force), -1.0 / k->determinant);
  const double f1 = vec3_dot (moment, k->minor[0]), f2 = vec3_dot (moment, k->minor[1]);
  Holding h;

  h.tie_rod = vec3_dot (moment, k->minor[2]);
  h.side = vec3_along (vec3_scale (k->p, f1), f2, k->q);
  h.ball = vec3_scale (vec3_add (force, vec3_along (h.side, h.tie_rod, k->rod)), -1.0);
  h.torque = -vec3_dot (pose->ball_velocity, h.ball);
  return h;
}

static void
leave_gap (JointForces *forces)
{
  const Vec3 nowhere = { NAN, NAN, NAN };

  *forces = (JointForces){ .ball_joint = nowhere,
                           .tie_rod = NAN,
                           .side = nowhere,
                           .axial = NAN,
                           .torque = NAN,
                           .tower = nowhere };
}

bool
joint_forces (const Corner *corner,
              const Pose *pose,
              Vec3 contact_force,
              SpringCarrier carrier,
              JointForces *forces)
{
  const Vec3 u = pose->strut_direction, down = vec3_scale (u, -1.0);
  KnuckleJoints joints;

  leave_gap (forces);
  if (!find_joints (corner, pose, &joints))
    return false;

  const Vec3 lever = vec3_sub (pose_contact (corner, pose), pose->ball_joint);
  const Holding load = hold (&joints, pose, contact_force, lever);
  const Holding coil = hold (&joints, pose, down, joints.mount);
  double axial = 0.0, torque = load.torque;

  if (carrier == CARRIED_BY_COIL) {
    if (!(fabs (coil.torque) > DEPENDENT * vec3_length (pose->ball_velocity)))
      return false;
    axial = -load.torque / coil.torque;
    torque = 0.0;
  }
  forces->ball_joint = vec3_along (load.ball, axial, coil.ball);
  forces->tie_rod = load.tie_rod + axial * coil.tie_rod;
  forces->side = vec3_along (load.side, axial, coil.side);
  forces->axial = axial;
  forces->torque = torque;
  forces->tower = vec3_sub (vec3_scale (u, axial), forces->side);
  return true;
}
