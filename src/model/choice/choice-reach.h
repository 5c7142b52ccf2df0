/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the choice only: what can be moved on one side, as up to three variables of like
 * size in mm: along, across (of a circle the length along it), and what a camber bolt
 * does at the strut's top. */

#pragma once

#include "model/choice/choice-probe.h"

#define MOST_WAYS 3

typedef struct {
  const ChoiceCorner *corner;
  const Plate *plate;
  Plate *wide; /* the same with its ends further out: to see the slope at an end */
  ChoiceRooms *rooms;
  PlateSetting setting; /* what the variables do not say */
  gboolean is_through_travel;
  guint n_ways, n_plate_ways;
  double unit[MOST_WAYS]; /* of the scale, or radians of bolt, for 1 mm */
  double least[MOST_WAYS], most[MOST_WAYS]; /* mm */
} ChoiceReach;

/* @place where the plate has a list of them. Free with choice_reach_clear (). */
ChoiceReach choice_reach_of (const ChoiceCorner *corner,
                             const Plate *plate,
                             PlateSetting place,
                             gboolean has_bolt);
void choice_reach_clear (ChoiceReach *reach);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (ChoiceReach, choice_reach_clear)

/* @camber_bolt: what is added, rad. */
PlateSetting
choice_reach_setting (const ChoiceReach *reach, const double *x, double *camber_bolt);

gboolean
choice_reach_probe (const ChoiceReach *reach, const double *x, double outputs[N_OUTPUTS]);

/* All outputs around one place to the second order, by differences that are exact for a
 * parabola: each is smooth, and by a tenth of a millimetre so nearly straight that the
 * third order leaves nothing to see. */
typedef struct {
  guint n_ways, n_outputs;
  double value[N_OUTPUTS];
  double slope[MOST_WAYS][N_OUTPUTS];
  double bend[MOST_WAYS][MOST_WAYS][N_OUTPUTS];
} ChoiceModel;

gboolean choice_reach_model (const ChoiceReach *reach,
                             const double *x,
                             const double outputs[N_OUTPUTS],
                             ChoiceModel *model);
