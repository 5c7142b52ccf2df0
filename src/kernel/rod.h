/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The damper's rod as a beam: guided by a bush in the tube and by the piston, pushed
 * aside at the mount.
 *
 * Formulas: overhanging beam on two supports, Shigley's Mechanical Engineering Design,
 * Table A-9; deflection of the end F a² (a + l)/(3 E I). */

#pragma once

#include "kernel/pose.h"

/* mm, N/mm² */
typedef struct {
  double outer, inner; /* diameters; of the tube where it is that which slides */
  double modulus;      /* E */
  double guide_height; /* of the bush, or of the upper one, along the strut's axis from
                          its foot */
  double piston_drop;  /* of the piston below the mount; not read where bush_spacing is
                          above 0 */
  double bush_spacing; /* above 0: inverted: two bushes in the housing, this far apart */
  double friction;     /* coefficient at guide and piston */
} Rod;

/* Between mount and guide, and between guide and piston, mm. */
typedef struct {
  double overhang, spacing;
} RodReach;

/* What the rod has at that strut length. Not above 0: it does not fit there. */
RodReach rod_reach (const Rod *rod, double strut_length);

typedef struct {
  double guide, piston; /* N, reactions */
  double moment;        /* N·mm, at the guide */
  double stress;        /* N/mm², bending at the guide */
  double deflection;    /* mm, of the mount's end against the tube's axis */
  double slope;         /* rad, there */
  double between;       /* mm, the most between guide and piston */
  double breakaway;     /* N along the strut: friction at guide and piston */
} RodBending;

/* All NAN where it does not fit or has no size. */
RodBending rod_bend (const Rod *rod, RodReach reach, double side_force);
