/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Forces in balance: what a force at the contact does to every joint of the corner.
 *
 * The spring's rod, seat and bearing carry no moment at the upper mount, so the strut
 * takes a force through U: along its axis, from the spring, and square to it, from the
 * guide. Unknowns: ball joint (3), tie rod (1), side force (2), and the spring's axial
 * force or the bar's torque (1). Equations: forces and moments on knuckle and tube (6),
 * the arm's moment about its hinge (1). Weight and inertia of the parts are left out.
 * Source: equilibrium of a rigid body; check figures in tests/kernel. */

#pragma once

#include "kernel/pose.h"

typedef enum {
  CARRIED_BY_COIL,       /* on the strut */
  CARRIED_BY_TORSION_BAR /* on the arm's hinge */
} SpringCarrier;

/* N; N·mm */
typedef struct {
  Vec3 ball_joint; /* on the knuckle */
  double tie_rod;  /* a pushing rod is positive */
  Vec3 side;       /* on the tube at the mount, square to the strut */
  double axial;    /* of the coil, positive in compression; 0 with a torsion bar */
  double torque;   /* of the bar, positive against bump; 0 with a coil */
  Vec3 tower;      /* on the body at the upper mount */
} JointForces;

/* @contact_force acts on the tyre at the contact centre, a brake's torque being taken by
 * the knuckle. False, and all NAN, where the equations have no answer: the linkage stands
 * at a dead point. */
bool joint_forces (const Corner *corner,
                   const Pose *pose,
                   Vec3 contact_force,
                   SpringCarrier carrier,
                   JointForces *forces);
