/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside car-json only: the eight points of one side. */

#pragma once

#include "model/car-json.h"

/* All eight are required; @parent is the path of @object. */
gboolean
car_read_points (JsonObject *object, const char *parent, Vec3 *points, GError **error);
