/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What each spring of a corner feels of the wheel, exactly.
 *
 * A spring's own place q (a length, an angle, a height) follows from the arm angle. With
 * the rise c of the tyre's contact relative to the body, a force Q of the spring along q
 * is Q·dq/dc at the contact (virtual work), and its part of the wheel rate is
 *   (dQ/dq)·(dq/dc)² + Q·d²q/dc²,
 * the second term being the change of ratio with travel. Relation: Milliken & Milliken,
 * Race Car Vehicle Dynamics, ch. 16 (from memory), re-derived from energy. */

#pragma once

#include "kernel/pose.h"

typedef struct {
  double place; /* q: mm or rad */
  double ratio; /* dq/dc; positive where bump makes q larger */
  double bend;  /* d²q/dc² */
} SpringPath;

/* Where a coil stands, in the strut's own frame: its offsets are square to the strut,
 * "outboard" in the plane of the strut's axis and y as measured, "forward" square to
 * both. The lower seat is fixed to the tube. The upper seat sits on the strut's bearing
 * and turns with the rod, so that with all offsets 0 the coil stands exactly on the
 * strut's axis at every travel, and a lean keeps its angle to the strut.
 *
 * Such a seat passes no moment to the body: what the coil does to the body goes through
 * the mount, in the coil's direction. With coil_top of a SpringHold at the mount
 * joint_forces () does the same work as these ratios; with the seat there the moment of a
 * coil that leans past the mount would have to come from the body. */
typedef struct {
  double perch;      /* of the lower seat along the strut's axis, upward from its foot */
  double upper_drop; /* of the upper seat, below the mount along the strut's axis */
  double lower_outboard, lower_forward;
  double upper_outboard, upper_forward;
} CoilSeats;

typedef enum {
  LINK_ON_ARM,
  LINK_ON_STRUT /* its tube, and so the knuckle */
} LinkCarrier;

typedef struct {
  SpringPath coil;  /* its length with the sign turned: q = −length, mm */
  SpringPath strut; /* −|U − S|, mm: stops, gas and damper */
  SpringPath bar;   /* θ, rad: what a torsion bar on the hinge feels */
  SpringPath link;  /* rise of the anti-roll bar's link point, mm from the reference */
  SpringPath wheel; /* rise of the wheel centre, mm */
  Vec3 coil_bottom, coil_top; /* its seats in the car's axes */
  Vec3 coil_direction;        /* unit, from the lower to the upper seat */
  Vec3 link_point;
  double contact_rate;       /* dc/dθ, mm/rad */
  double contact_per_travel; /* dc/dz: of the contact, per wheel travel */
} SpringPaths;

typedef struct {
  CoilSeats seats;
  LinkCarrier link_carrier;
  Vec3 link_point; /* as measured, in the reference position: it moves with what carries
                      it, and with its corrections */
} SpringPlaces;

/* Both seats in the reference position, under a strut of that length. */
void coil_seats_place (const Corner *corner,
                       const CoilSeats *seats,
                       double strut_length,
                       Vec3 *lower,
                       Vec3 *upper);

/* False, and all NAN, where the contact does not rise. @pose is assembled. */
bool spring_paths (const Corner *corner,
                   const Pose *pose,
                   const SpringPlaces *places,
                   SpringPaths *paths);
