/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside car-json only: the right side of a car as it was measured. */

#pragma once

#include "model/car/car-json.h"

gboolean car_read_right (JsonObject *root, Car *car, GError **error);
