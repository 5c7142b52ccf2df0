/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside car-json only: points, and the eight of one side. */

#pragma once

#include "model/car/car-json.h"

/* All eight are required; @parent is the path of @object. */
gboolean
car_read_points (JsonObject *object, const char *parent, Vec3 *points, GError **error);
gboolean car_read_point (JsonObject *object,
                         const char *parent,
                         const char *name,
                         Vec3 *point,
                         GError **error);
void car_add_point (JsonObject *object, const char *name, Vec3 point);
