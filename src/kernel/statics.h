/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Forces in balance: what forces on wheel and links do to every joint of the corner.
 *
 * The spring's rod, seat and bearing carry no moment at the upper mount, so the strut
 * takes a force through U: along its axis, and square to it, from the guide. Unknowns:
 * ball joint (3), tie rod (1), side force (2), and one of coil, strut and bar (1).
 * Equations: forces and moments on knuckle and tube (6), the arm's moment about its hinge
 * (1). Weight and inertia are left out but for what a CornerLoad has of them.
 * Source: equilibrium of a rigid body; check figures in tests/kernel. */

#pragma once

#include "kernel/pose.h"

typedef enum {
  CARRIED_BY_COIL,        /* along its own line */
  CARRIED_BY_STRUT,       /* along the strut's axis: damper and stops */
  CARRIED_BY_TORSION_BAR, /* on the arm's hinge */
} SpringCarrier;

/* What acts on the corner, N, in the car's axes. */
typedef struct {
  Vec3 contact; /* on the tyre at the contact centre; a brake's torque is taken by the
                   knuckle */
  Vec3 wheel_centre; /* on the knuckle at W: weight and inertia of what is unsprung */
  Vec3 on_knuckle, on_knuckle_at; /* one more, an anti-roll bar's link on the strut */
  Vec3 on_arm, on_arm_at;         /* or on the arm */
} CornerLoad;

/* What holds it. Two of the three forces are given; that of @found is not read. */
typedef struct {
  SpringCarrier found;
  double coil, strut;  /* N, positive in compression */
  double torque;       /* N·mm, positive against bump */
  Vec3 coil_top;       /* a point of the coil's line; the mount, for a coil on the axis */
  Vec3 coil_direction; /* unit, upward */
} SpringHold;

/* N; N·mm */
typedef struct {
  Vec3 ball_joint;      /* on the knuckle */
  double tie_rod;       /* a pushing rod is positive */
  Vec3 tie_rod_on_rack; /* on the rack, along the rod */
  Vec3 side;            /* on the tube at the mount, square to the strut */
  double axial;         /* coil (its part along the strut's axis) and strut together */
  double coil, strut;   /* compression positive */
  double torque;        /* of the bar, positive against bump */
  Vec3 tower;           /* on the body at the upper mount, the coil's seat included */
  Vec3 tower_moment;    /* about the mount, by a coil that stands beside it; N·mm */
  /* On the body at the arm's pivots, square to the hinge axis; along it statics give only
   * the sum of both. */
  Vec3 front_pivot, rear_pivot, along_hinge;
  Vec3 anchor_moment; /* of the bar on the body */
} JointForces;

/* False, and all NAN, where the equations have no answer: the linkage stands at a dead
 * point. */
bool joint_forces (const Corner *corner,
                   const Pose *pose,
                   const CornerLoad *load,
                   const SpringHold *hold,
                   JointForces *forces);

/* Nothing but @found carries, a coil on the strut's own axis. */
SpringHold
spring_hold_alone (const Corner *corner, const Pose *pose, SpringCarrier found);

/* The line from the mount along which a coil would leave the tube no side force: unit,
 * upward; the force of tower on tube reversed. In a flat corner it passes through the
 * point where load line and arm line cross (Barton & Fieldhouse, Automotive Chassis
 * Engineering, 3.10.2.2). NAN where nothing pushes there. */
Vec3 joint_forces_free_line (const JointForces *forces);
