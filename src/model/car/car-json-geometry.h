/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside car-json only: whether the measured points make a corner, in words. */

#pragma once

#include "model/car/car.h"

/* FILE_REFUSAL_GEOMETRY, naming the members at fault, where the kernel refuses @car. */
gboolean car_check_geometry (const Car *car, GError **error);
