/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "kernel/bent-rod.h"
#include "kernel/motion.h"

/* The body pushes the rod's end with the side force Q, square to the strut, so in the
 * tube's frame the end moves by s = k Q off the axis, k being the end's deflection by
 * 1 N. The end sits in the mount, at U: the tube's axis then passes U − s.
 *
 * Round by round, s ← k Q(s). It settles as k |dQ/ds| is small: moving the mount by 1 mm
 * tilts the strut by 1/length; a coil of N newtons that keeps its line then has N/length
 * more across the strut, some 10 N/mm, one on the axis less, and k is some thousandths of
 * a mm/N. Each round gains about two digits. A rod so slender that the product is near 1
 * is out of reach of its corner, or does not settle, and that is said. */

#define MOST_ROUNDS 50
#define STANDS_STILL 1e-10 /* mm */
#define ON_AXIS 1e-9       /* rad, mm */

typedef struct {
  const Corner *corner;
  const Pose *pose;
  const Rod *rod;
  const CornerLoad *load;
  const SpringHold *hold;
} Question;

/* Nothing but numbers. */
static void
leave_gap (BentRod *bent)
{
  double *number = (double *) bent;

  for (size_t i = 0; i < sizeof *bent / sizeof *number; i++)
    number[i] = NAN;
}

static bool
stand_at_travel (const Corner *moved, const Pose *straight, Pose *pose)
{
  Pose near;

  return pose_at_arm_angle (moved, straight->arm_angle, straight->rack, &near) ==
             POSE_OK &&
         near.lift > 0.0 &&
         pose_at_travel (moved, straight->travel, straight->rack, &near, pose) == POSE_OK;
}

/* A point of the arm goes with the ball joint about the hinge. */
static Vec3
follow_arm (const Corner *corner, const Pose *from, const Pose *to, Vec3 point)
{
  const Vec3 centre = corner->hinge_centre;
  double along, out;
  const AxisFrame before =
      frame_towards (corner->hinge_axis, vec3_sub (from->ball_joint, centre), &along,
                     &out);
  const AxisFrame after =
      frame_towards (corner->hinge_axis, vec3_sub (to->ball_joint, centre), &along, &out);

  return vec3_add (centre, frame_map (&after, &before, vec3_sub (point, centre)));
}

static Vec3
follow_knuckle (const Question *ask, const Corner *moved, const Pose *pose, Vec3 point)
{
  const KnuckleTurn before = knuckle_turn (ask->corner, ask->pose);
  const KnuckleTurn after = knuckle_turn (moved, pose);
  const Vec3 lever = vec3_sub (point, ask->pose->ball_joint);
  const Vec3 on_knuckle = frame_map (&before.knuckle, &before.body, lever);

  return vec3_add (pose->ball_joint, knuckle_vector (&after, on_knuckle));
}

static bool
coil_is_on_axis (const Question *ask)
{
  const Vec3 u = ask->pose->strut_direction;
  const Vec3 seat = vec3_sub (ask->hold->coil_top, ask->corner->upper_mount);

  return vec3_length (vec3_cross (ask->hold->coil_direction, u)) < ON_AXIS &&
         vec3_length (vec3_cross (seat, u)) < ON_AXIS;
}

static bool
balance (const Question *ask, const Corner *moved, const Pose *pose, JointForces *forces)
{
  CornerLoad load = *ask->load;
  SpringHold hold = *ask->hold;

  load.on_arm_at = follow_arm (ask->corner, ask->pose, pose, load.on_arm_at);
  load.on_knuckle_at = follow_knuckle (ask, moved, pose, load.on_knuckle_at);
  if (coil_is_on_axis (ask)) {
    hold.coil_top = moved->upper_mount;
    hold.coil_direction = pose->strut_direction;
  }
  return joint_forces (moved, pose, &load, &hold, forces);
}

/* What the mount's end is shifted by, where the corner hangs on a mount that is shifted
 * by @shift already. */
static bool
bend_once (const Question *ask, const Corner *moved, BentRod *bent, Vec3 *shift)
{
  if (!stand_at_travel (moved, ask->pose, &bent->pose) ||
      !balance (ask, moved, &bent->pose, &bent->forces))
    return false;

  const Vec3 Q = bent->forces.side;
  const double force = vec3_length (Q);
  const double length = vec3_distance (moved->upper_mount, bent->pose.strut_foot);

  bent->bending = rod_bend (ask->rod, rod_reach (ask->rod, length), force);
  *shift = vec3_scale (Q, force > 0.0 ? bent->bending.deflection / force : 0.0);
  return vec3_is_finite (*shift) && isfinite (bent->bending.deflection);
}

static void
compare (const Question *ask, const Corner *moved, BentRod *bent)
{
  Measures straight, now;

  pose_measure (ask->corner, ask->pose, &straight);
  pose_measure (moved, &bent->pose, &now);
  bent->camber_change = now.value[QUANTITY_CAMBER] - straight.value[QUANTITY_CAMBER];
  bent->toe_change = now.value[QUANTITY_TOE_IN] - straight.value[QUANTITY_TOE_IN];
}

bool
bent_rod_solve (const Corner *corner,
                const Pose *pose,
                const Rod *rod,
                const CornerLoad *load,
                const SpringHold *hold,
                BentRod *bent)
{
  const Question ask = { corner, pose, rod, load, hold };
  Corner moved = *corner;
  Vec3 shift = { 0 };

  for (int i = 0; i < MOST_ROUNDS; i++) {
    if (!bend_once (&ask, &moved, bent, &bent->shift))
      break;
    if (vec3_distance (bent->shift, shift) < STANDS_STILL) {
      compare (&ask, &moved, bent);
      return true;
    }
    shift = bent->shift;
    moved.upper_mount = vec3_sub (corner->upper_mount, shift);
  }
  leave_gap (bent);
  return false;
}
