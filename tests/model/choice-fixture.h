/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Cars and plates for the tests of the choice, the same ones in every run. */

#pragma once

#include "random-corner.h"

#include "model/choice/choice.h"

/* A car of that corner with a baseline as measured and a second setup, lowered. */
Car *choice_fixture_car (const MeasuredCorner *measured, double lowering, ToeMode toe);
Car *choice_fixture_random_car (Dice *dice);

/* Any setting of @plate, not swapped. */
PlateSetting choice_fixture_setting (Dice *dice, const Plate *plate);
/* A plate of that kind within 25 mm of the mount as measured. An eccentric is indexed
 * with @is_indexed. */
Plate *choice_fixture_plate (Dice *dice, PlateKind kind, gboolean is_indexed);
Plate *choice_fixture_fixed (double inboard, double rearward);
Plate *choice_fixture_slot (double direction_deg, double least, double most);
Plate *choice_fixture_rectangle (double half_inboard, double half_rearward);
Plate *choice_fixture_holes (const PlateHole *holes, guint n_holes);

void choice_fixture_aim (Car *car, Aim aim, double least, double most, double weight);
