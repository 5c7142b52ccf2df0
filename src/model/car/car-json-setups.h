/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside car-json only: the setups of a car file. */

#pragma once

#include "model/car/car-json.h"

/* A file without setups keeps the one of car_new (). */
gboolean car_read_setups (JsonObject *root, Car *car, GError **error);
/* Of the setups that were read, the first of that name. */
gboolean car_read_baseline (JsonObject *root, Car *car, GError **error);
