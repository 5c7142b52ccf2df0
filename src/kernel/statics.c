/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "kernel/statics.h"

/* Unknowns on knuckle and tube: side forces f₁, f₂ along p, q square to the strut u; tie
 * rod t along r = (T − R)/|T − R|; ball joint F_B.
 *
 * Moments about B leave the ball joint out. Where all else pushes with F and turns with M
 * about B:
 *   f₁ (U − B) × p + f₂ (U − B) × q + t (T − B) × r = −M,
 * three equations for three unknowns; then F_B = −(F + f₁ p + f₂ q + t r).
 *
 * The arm gets −F_B at B and its own load F_A at P, and turns about its hinge axis a; a
 * point of it at X moves by v_X = a × (X − A₁) for an angle of 1. The bar holds it:
 *   τ = −v_B · F_B + v_P · F_A.
 * With the unknown carrier at 0 the rest is out of balance by some torque, and 1 N of the
 * carrier alone makes a torque: their ratio is the carrier's force, and what both do adds
 * up.
 *
 * The pivots A₁, A₂ = A₁ + ℓ w get what the arm gets, R in all and M₁ about A₁. Moments
 * square to w: f₂ = M₁ × w/ℓ, which is square to w; f₁ is the rest of R square to w. Of R
 * along w only the sum is known. M₁ · w is the bar's. */

/* Share of their lengths below which three columns, or two, are taken to be dependent. */
#define DEPENDENT 1e-12

typedef struct {
  Vec3 p, q, rod;
  Vec3 column[3]; /* the moments about B of f₁, f₂, t at 1 */
  Vec3 minor[3];  /* column j × column k: Cramer's rule */
  double determinant;
} KnuckleJoints;

/* Forces on one body together. */
typedef struct {
  Vec3 force, moment;
} Wrench;

/* What holds them. */
typedef struct {
  Vec3 side, ball;
  double tie_rod, torque;
} Holding;

static bool
find_joints (const Corner *corner, const Pose *pose, KnuckleJoints *k)
{
  const Vec3 mount = vec3_sub (corner->upper_mount, pose->ball_joint);

  k->p = vec3_any_normal (pose->strut_direction);
  k->q = vec3_cross (pose->strut_direction, k->p);
  k->rod = vec3_unit (vec3_sub (pose->tie_rod_outer, pose->tie_rod_inner));
  k->column[0] = vec3_cross (mount, k->p);
  k->column[1] = vec3_cross (mount, k->q);
  k->column[2] = vec3_cross (vec3_sub (pose->tie_rod_outer, pose->ball_joint), k->rod);
  for (int i = 0; i < 3; i++)
    k->minor[i] = vec3_cross (k->column[(i + 1) % 3], k->column[(i + 2) % 3]);
  k->determinant = vec3_dot (k->column[0], k->minor[0]);

  const double size = vec3_length (k->column[0]) * vec3_length (k->column[1]) *
                      vec3_length (k->column[2]);
  return fabs (k->determinant) > DEPENDENT * size;
}

/* @force at @at, its moment taken about @centre. */
static void
add_force (Wrench *wrench, Vec3 force, Vec3 at, Vec3 centre)
{
  const Vec3 moment = vec3_cross (vec3_sub (at, centre), force);

  wrench->force = vec3_add (wrench->force, force);
  wrench->moment = vec3_add (wrench->moment, moment);
}

static Holding
hold (const KnuckleJoints *k, const Pose *pose, const Wrench *load)
{
  const Vec3 moment = vec3_scale (load->moment, -1.0 / k->determinant);
  const double f1 = vec3_dot (moment, k->minor[0]), f2 = vec3_dot (moment, k->minor[1]);
  Holding h;

  h.tie_rod = vec3_dot (moment, k->minor[2]);
  h.side = vec3_along (vec3_scale (k->p, f1), f2, k->q);
  h.ball =
      vec3_scale (vec3_add (load->force, vec3_along (h.side, h.tie_rod, k->rod)), -1.0);
  h.torque = -vec3_dot (pose->ball_velocity, h.ball);
  return h;
}

/* Coil and strut push the tube down, about B. */
static void
add_spring_forces (Wrench *wrench,
                   const Corner *corner,
                   const Pose *pose,
                   const SpringHold *spring,
                   double coil,
                   double strut)
{
  add_force (wrench, vec3_scale (spring->coil_direction, -coil), spring->coil_top,
             pose->ball_joint);
  add_force (wrench, vec3_scale (pose->strut_direction, -strut), corner->upper_mount,
             pose->ball_joint);
}

/* All that is given on knuckle and tube. */
static Wrench
knuckle_load (const Corner *corner,
              const Pose *pose,
              const CornerLoad *load,
              const SpringHold *spring)
{
  const Vec3 ball = pose->ball_joint;
  Wrench sum = { 0 };

  add_force (&sum, load->contact, pose_contact (corner, pose), ball);
  add_force (&sum, load->wheel_centre, pose->wheel_centre, ball);
  add_force (&sum, load->on_knuckle, load->on_knuckle_at, ball);
  add_spring_forces (&sum, corner, pose, spring,
                     spring->found == CARRIED_BY_COIL ? 0.0 : spring->coil,
                     spring->found == CARRIED_BY_STRUT ? 0.0 : spring->strut);
  return sum;
}

static double
arm_torque (const Corner *corner, const CornerLoad *load)
{
  const Vec3 lever = vec3_sub (load->on_arm_at, corner->arm_pivot);

  return vec3_dot (corner->hinge_axis, vec3_cross (lever, load->on_arm));
}

/* Finds the force of @spring that is asked for, and what holds everything then. */
static bool
find_carrier (const KnuckleJoints *joints,
              const Corner *corner,
              const Pose *pose,
              const CornerLoad *load,
              SpringHold *spring,
              Holding *all)
{
  const Wrench given = knuckle_load (corner, pose, load, spring);
  const bool is_coil = spring->found == CARRIED_BY_COIL;
  Wrench one = { 0 };

  *all = hold (joints, pose, &given);
  const double torque = all->torque + arm_torque (corner, load);
  if (spring->found == CARRIED_BY_TORSION_BAR) {
    spring->torque = torque;
    return true;
  }

  add_spring_forces (&one, corner, pose, spring, is_coil ? 1.0 : 0.0,
                     is_coil ? 0.0 : 1.0);
  const Holding unit = hold (joints, pose, &one);
  const double found = (spring->torque - torque) / unit.torque;

  *(is_coil ? &spring->coil : &spring->strut) = found;
  all->ball = vec3_along (all->ball, found, unit.ball);
  all->side = vec3_along (all->side, found, unit.side);
  all->tie_rod += found * unit.tie_rod;
  return fabs (unit.torque) > DEPENDENT * vec3_length (pose->ball_velocity);
}

static void
split_pivots (const Corner *corner,
              const Pose *pose,
              const CornerLoad *load,
              JointForces *forces)
{
  const Vec3 front = corner->arm_pivot;
  const Vec3 between = vec3_sub (corner->arm_rear_pivot, front);
  const double length = vec3_length (between);
  const Vec3 w = vec3_scale (between, 1.0 / length);
  Wrench arm = { 0 };

  add_force (&arm, vec3_scale (forces->ball_joint, -1.0), pose->ball_joint, front);
  add_force (&arm, load->on_arm, load->on_arm_at, front);
  forces->rear_pivot = vec3_scale (vec3_cross (arm.moment, w), 1.0 / length);
  forces->front_pivot = vec3_sub (vec3_reject (arm.force, w), forces->rear_pivot);
  forces->along_hinge = vec3_scale (w, vec3_dot (arm.force, w));
  forces->anchor_moment = vec3_scale (corner->hinge_axis, forces->torque);
}

static void
press_on_tower (const Corner *corner,
                const Pose *pose,
                const SpringHold *spring,
                JointForces *forces)
{
  const Vec3 u = pose->strut_direction;
  const Vec3 coil = vec3_scale (spring->coil_direction, spring->coil);
  const Vec3 seat = vec3_sub (spring->coil_top, corner->upper_mount);

  forces->axial = vec3_dot (coil, u) + spring->strut;
  forces->tower = vec3_sub (vec3_along (coil, spring->strut, u), forces->side);
  forces->tower_moment = vec3_cross (seat, coil);
}

static void
leave_gap (JointForces *forces)
{
  const Vec3 nowhere = { NAN, NAN, NAN };

  *forces = (JointForces){ .ball_joint = nowhere,
                           .tie_rod = NAN,
                           .tie_rod_on_rack = nowhere,
                           .side = nowhere,
                           .axial = NAN,
                           .coil = NAN,
                           .strut = NAN,
                           .torque = NAN,
                           .tower = nowhere,
                           .tower_moment = nowhere,
                           .front_pivot = nowhere,
                           .rear_pivot = nowhere,
                           .along_hinge = nowhere,
                           .anchor_moment = nowhere };
}

bool
joint_forces (const Corner *corner,
              const Pose *pose,
              const CornerLoad *load,
              const SpringHold *given,
              JointForces *forces)
{
  SpringHold spring = *given;
  KnuckleJoints joints;
  Holding all;

  leave_gap (forces);
  if (!find_joints (corner, pose, &joints) ||
      !find_carrier (&joints, corner, pose, load, &spring, &all))
    return false;

  forces->ball_joint = all.ball;
  forces->tie_rod = all.tie_rod;
  forces->tie_rod_on_rack = vec3_scale (joints.rod, -all.tie_rod);
  forces->side = all.side;
  forces->coil = spring.coil;
  forces->strut = spring.strut;
  forces->torque = spring.torque;
  press_on_tower (corner, pose, &spring, forces);
  split_pivots (corner, pose, load, forces);
  return true;
}

SpringHold
spring_hold_alone (const Corner *corner, const Pose *pose, SpringCarrier found)
{
  return (SpringHold){ .found = found,
                       .coil_top = corner->upper_mount,
                       .coil_direction = pose->strut_direction };
}

Vec3
joint_forces_free_line (const JointForces *forces)
{
  const double length = vec3_length (forces->tower);

  return vec3_scale (forces->tower,
                     1.0 / copysign (length > 0.0 ? length : NAN, forces->tower.z));
}
