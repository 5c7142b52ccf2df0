/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Members of a car file that are kept and never read: later versions' or somebody's own,
 * or one that is misspelt. */

#pragma once

#include "model/car/car.h"

typedef struct {
  char *path;        /* "tyre.unloaded_radius_m" */
  const char *meant; /* "unloaded_radius_mm": the one that it resembles; or NULL */
} CarUnknown;

/* Of CarUnknown, owned by the array, in the order of the sections. */
GPtrArray *car_unknown_members (const Car *car);
