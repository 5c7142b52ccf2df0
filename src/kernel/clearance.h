/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The room between the tyre and what the strut carries.
 *
 * The tyre is the disc of its unloaded radius and section width about the spin axis, its
 * inner shoulder square: a real shoulder is rounder and leaves a little more room. It is
 * solid: the hollow of the rim, into which the foot of a tube may reach, is no part of
 * it. The tube is a round bar about the strut's axis, the spring one about the line of
 * its seats, their ends cut square; the spring seat is a flat plate square to the strut.
 *
 * Wheel, tube and spring seat are all clamped to the knuckle: neither wheel travel nor a
 * plate at the upper mount changes the room between them, to the bit. A camber bolt, a
 * wheel spacer or another tyre does. Only the spring's upper end follows the body. */

#pragma once

#include "kernel/spring-path.h"

/* mm */
typedef struct {
  double unloaded_radius, section_width;
} TyreShape;

/* mm; heights are along the strut's axis, upward from the strut foot. A radius of 0 means
 * that the part is not there. */
typedef struct {
  double tube_radius, tube_bottom, tube_top;
  double seat_radius, seat_height;
  double spring_radius; /* from the seat up to the mount, but for: */
  double spring_drop;   /* of its upper end below the mount */
  double spring_free;   /* its length at most, where it stands slack on its seat; 0: not
                           known, it always reaches its upper end */
  /* Of its ends off the strut's axis, as in CoilSeats; it leans as it does under the
   * strut's length that is asked for. */
  double lower_outboard, lower_forward, upper_outboard, upper_forward;
} StrutShape;

/* Its spring's direction follows the strut's length. */
bool strut_shape_leans (const StrutShape *strut);

typedef enum {
  STRUT_TUBE,
  STRUT_SPRING_SEAT,
  STRUT_SPRING,
  N_STRUT_PARTS
} StrutPart;

/* The room to each part, mm: INFINITY for what is not there; below 0 where it would stand
 * inside the tyre, by as much as its deepest point lies below the tyre's surface.
 * @strut_length is |S − U| of the position. */
typedef struct {
  double room[N_STRUT_PARTS];
  StrutPart nearest;
  double least; /* room[nearest] */
} TyreClearance;

TyreClearance tyre_clearance (const Corner *corner,
                              const TyreShape *tyre,
                              const StrutShape *strut,
                              double strut_length);
