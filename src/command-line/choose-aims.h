/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the command `choose`: what to aim for and within which limits, as typed. Each
 * says what is wrong on standard error. */

#pragma once

#include "model/car/car.h"

/* "camber=-2.7:-2.3@2": the targets named take the place of the car's own. NULL names
 * none and keeps those of the car; without any there is nothing to choose by. */
gboolean choose_targets (Car *car, char *const *words);

/* "tyre_clearance=8": over those of the car. */
gboolean choose_limits (Car *car, char *const *words);
