/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside car-json only: numbers of a set of springs that must fit one another. */

#pragma once

#include "model/car/car-json-spring-members.h"

/* The number @name of the object at @path is below @other; 0 says nothing. */
gboolean spring_check_below (const char *path,
                             const char *name,
                             double value,
                             const char *other,
                             double most,
                             GError **error);

/* One part by itself, at its @path; and the parts together, that of the set. */
gboolean spring_check_part (SpringPartName name,
                            const CarSprings *springs,
                            const char *path,
                            GError **error);
gboolean spring_check_set (const CarSprings *springs, const char *path, GError **error);
/* Lower seats on a strut of @length: below its upper seats and its mount. */
gboolean spring_check_seats (const CarSprings *springs,
                             double length,
                             const char *path,
                             GError **error);
