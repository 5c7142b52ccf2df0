/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A bent rod is a moved mount: what the rod's deflection under load costs in camber and
 * toe. The deflection shifts the mount's end against the strut's axis, which is the same
 * as the body's mount moved the other way; the corner is solved there anew, and the load
 * with it, until the shift stands still. The tie rod keeps its length. */

#pragma once

#include "kernel/measure.h"
#include "kernel/rod.h"
#include "kernel/statics.h"

typedef struct {
  RodBending bending;
  JointForces forces;
  Vec3 shift; /* of the mount's end against the strut's axis, in the car's axes */
  Pose pose;  /* with the rod bent, at the same wheel travel */
  double camber_change, toe_change; /* rad, against the straight rod */
} BentRod;

/* @pose is the one with a straight rod, at rack 0; the coil in @hold stands on the
 * strut's axis where its direction says so, else keeps its line. False, and all NAN,
 * where a rod does not fit, a balance has no answer, or the shift does not settle. */
bool bent_rod_solve (const Corner *corner,
                     const Pose *pose,
                     const Rod *rod,
                     const CornerLoad *load,
                     const SpringHold *hold,
                     BentRod *bent);
