/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Plates for tests. */

#pragma once

#include "model/plate/plate.h"

/* Sound, of that kind (an eccentric with or without index), and all 53 bits in use. */
Plate *fixture_random_plate (GRand *rand, PlateKind kind);

/* Anything that can be dialled in on it. */
PlateSetting fixture_random_setting (GRand *rand, const Plate *plate);

void fixture_add_hole (Plate *plate, const char *label, double inboard, double rearward);
