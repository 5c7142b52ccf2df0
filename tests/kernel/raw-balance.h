/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The second way to the forces at the joints: the twelve equations of balance as they
 * stand, forces and moments of knuckle with tube and of the arm, all about the origin,
 * given to GSL's LU decomposition. */

#pragma once

#include "random-corner.h"

#include "kernel/statics.h"
#include "kernel/sweep.h"

JointForces raw_balance (const Corner *corner,
                         const Pose *pose,
                         const CornerLoad *load,
                         const SpringHold *hold);

/* A corner at a random place, its contact loaded with up to 7 kN. */
typedef struct {
  Corner corner;
  Station station;
  CornerLoad load;
} LoadedCorner;

LoadedCorner dice_loaded_corner (Dice *dice);

/* Ends the test where the balance has no answer. */
JointForces check_balance (const LoadedCorner *loaded, const SpringHold *hold);
/* Nothing but @carrier carries. */
JointForces check_balance_alone (const LoadedCorner *loaded, SpringCarrier carrier);

/* Fails unless @value is within @tolerance of @expected. */
void check_vector (
    const char *what, double place, Vec3 value, Vec3 expected, double tolerance);
/* Every force within @share of @force and every moment within @share of @force a metre
 * off. */
void check_same_forces (const JointForces *value,
                        const JointForces *expected,
                        double place,
                        double share,
                        double force);
