/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside car-json only: what a car file aims for. */

#pragma once

#include "model/car/car-json.h"

gboolean car_read_targets (JsonObject *root, Car *car, GError **error);
