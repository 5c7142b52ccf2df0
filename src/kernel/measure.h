/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every quantity of one solved position, each with its exact rate by wheel travel.
 *
 * Definitions and signs: the comment beside each name. n is the unit spin axis pointing
 * outboard, C the contact centre, v_C the velocity of the knuckle's material point at C,
 * z the wheel travel. Angles rad, lengths mm, rates per mm of wheel travel. */

#pragma once

#include "kernel/pose.h"

typedef enum {
  QUANTITY_CAMBER,         /* asin(−n_z): positive, top of the wheel outboard */
  QUANTITY_TOE_IN,         /* atan2(n_x, n_y), per wheel: positive, front inboard */
  QUANTITY_CASTER,         /* atan2(B_x − U_x, U_z − B_z): positive, top rearward */
  QUANTITY_SAI,            /* atan2(B_y − U_y, U_z − B_z): positive, top inboard */
  QUANTITY_INCLUDED_ANGLE, /* SAI + camber */
  QUANTITY_SCRUB_RADIUS, /* C_y − y of the axis at the ground: positive, axis inboard */
  QUANTITY_TRAIL,        /* x of the axis at the ground − C_x: positive, axis ahead */
  QUANTITY_ROLL_CENTRE_HEIGHT, /* C_y · v_Cy / v_Cz, above the ground at that travel */
  QUANTITY_HALF_TRACK_CHANGE,  /* C_y − C_y as measured: positive, wider */
  QUANTITY_WHEELBASE_CHANGE,   /* W_x − W_x as measured: positive, forward */
  QUANTITY_STRUT_LENGTH,       /* |S − U| */
  QUANTITY_STRUT_RATIO,        /* −d|S − U|/dz */
  QUANTITY_ARM_RATIO,          /* dθ/dz */
  QUANTITY_CAMBER_GAIN,        /* d camber/dz */
  QUANTITY_BUMP_STEER,         /* d toe-in/dz */
  QUANTITY_SIDE_VIEW_SLOPE,    /* v_Cx/v_Cz, the brake locked to the knuckle */
  QUANTITY_ANTI_DIVE, /* per cent: slope · front brake share · wheelbase/cg height */
  QUANTITY_SWING_ARM_LENGTH, /* C to the front-view instant centre; positive, inboard */
  QUANTITY_SWING_ARM_CURVATURE, /* 1/that: passes through 0 where the length is infinite
                                 */
  QUANTITY_CAMBER_ISO,          /* atan2(−n_z, n_y), about x as ISO 8855 has it */
  QUANTITY_TRAIL_IN_TYRE,       /* as trail, along the tyre's own plane at the ground */
  QUANTITY_SCRUB_IN_TYRE,       /* as scrub radius, across the tyre's own plane */
  QUANTITY_TRAIL_AT_CENTRE,     /* x of the axis at the wheel centre's height − W_x */
  QUANTITY_SCRUB_AT_CENTRE,     /* W_y − y of the axis at the wheel centre's height:
                                   kingpin or spindle offset */
  QUANTITY_ARM_ANGLE,           /* θ, 0 as measured: positive in bump */
  N_QUANTITIES
} Quantity;

typedef enum {
  DIMENSION_ANGLE,            /* rad */
  DIMENSION_LENGTH,           /* mm */
  DIMENSION_RATIO,            /* 1 */
  DIMENSION_PERCENT,          /* % */
  DIMENSION_ANGLE_PER_LENGTH, /* rad/mm */
  DIMENSION_PER_LENGTH        /* 1/mm */
} Dimension;

typedef struct {
  double value[N_QUANTITIES];
  double slope[N_QUANTITIES]; /* d value/dz */
  Vec3 contact;               /* C */
  Vec3 axis_at_ground;        /* where the steering axis meets the ground */
  /* Front-view instant centre: where the knuckle's y–z velocity vanishes, in the plane
   * x = C_x. Not finite when the knuckle does not turn in that view. */
  double instant_centre_y, instant_centre_z;
} Measures;

void pose_measure (const Corner *corner, const Pose *pose, Measures *measures);
Dimension quantity_dimension (Quantity quantity);
