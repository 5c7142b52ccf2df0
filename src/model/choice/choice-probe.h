/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the choice only: what a search sees of a place, and no more than it needs. */

#pragma once

#include "model/choice/choice-corner.h"

/* Functions of the place that are smooth, each by itself. */
enum {
  OUTPUT_AIM = 0,          /* N_AIMS, edge units; not bump steer */
  OUTPUT_INBOARD = N_AIMS, /* mm */
  OUTPUT_REARWARD,         /* mm */
  OUTPUT_OFF_CENTRE_2,     /* mm², of the bearing in the tower's opening */
  OUTPUT_ROOM,             /* mm, N_STRUT_PARTS; INFINITY for what is not there */
  N_STANDING_OUTPUTS = OUTPUT_ROOM + N_STRUT_PARTS,
  OUTPUT_TOE = N_STANDING_OUTPUTS, /* °, from standing, through the travel used */
  OUTPUT_CHORD_2 = OUTPUT_TOE + TOE_CURVE_STATIONS, /* of the bearing's tilt likewise:
                                                       (2 sin (tilt / 2))² */
  N_OUTPUTS = OUTPUT_CHORD_2 + TOE_CURVE_STATIONS
};

#define N_KNOWN_ROOMS 8

/* The room beside the tyre, which takes longer than all the rest: kept by bolt and length
 * of the strut. A spring that even without an end would limit nothing is left out, and
 * then the length says nothing either. */
typedef struct {
  StrutShape strut;
  struct {
    double camber_bolt, length;
    double room[N_STRUT_PARTS];
  } known[N_KNOWN_ROOMS];
  guint n_found; /* the last of them are known */
} ChoiceRooms;

/* For bolts of that range, rad, added to the setup's own. */
ChoiceRooms
choice_rooms_of (const ChoiceCorner *corner, double least_bolt, double most_bolt);

/* Those past N_STANDING_OUTPUTS only with @is_through_travel. FALSE where the corner
 * cannot be assembled. */
gboolean choice_probe (const ChoiceCorner *corner,
                       ChoiceRooms *rooms,
                       MountOffset mount,
                       double camber_bolt,
                       gboolean is_through_travel,
                       double outputs[N_OUTPUTS]);
