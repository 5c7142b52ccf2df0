/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What people read for the measured car and for its setups. The first setup of a car is
 * named "As measured", and may be changed like any other: the two never share a name. */

#pragma once

#include "model/car/car.h"

/* Translated: "measured car". */
const char *measured_car_title (void);

/* The setup's own name; one that is named "As measured" and no longer stands so says that
 * it was changed, which makes it longer: not for labels that must not shift in a drag.
 * The car's string or a lasting one. */
const char *setup_title (const CarSetup *setup);
