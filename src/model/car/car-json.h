/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Car files: strict reading, exact writing. The names are those of the car-file format,
 * version 1.
 *
 * Setups may share a name; where one is meant by its name, it is the first of them.
 *
 * Every refusal is one sentence that names the member by its path, such as
 * `corner.ball_joint[1]`, in the domain of "model/json/file-refusal.h". */

#pragma once

#include "model/car/car.h"
#include "model/json/file-refusal.h"

#define CAR_FILE_VERSION 1

/* Each is solved through the whole travel whenever the car changes. */
#define CAR_MOST_SETUPS 500
/* How far a setup may move the mount or the body, either way, mm: a slip of the keyboard
 * beyond, and no car. */
#define CAR_FURTHEST_MOVE 1000.0
/* How much hardware may correct, either way. */
#define CAR_MOST_CAMBER_BOLT 10.0  /* degrees */
#define CAR_MOST_CORRECTION 200.0  /* mm */
#define CAR_MOST_THREAD_PITCH 10.0 /* mm per turn */
/* How much a target may weigh; what it may ask for is aim_info ().furthest. */
#define CAR_MOST_WEIGHT 1000.0

/* Car files of a sound geometry: what this returns, corner_assemble () takes. */
Car *car_from_json (const char *text, gsize length, GError **error);
/* Ends with a line feed; the same car always gives the same bytes, in every locale. */
char *car_to_json (const Car *car, gsize *length);

/* Whether car_from_json () would take what car_to_json () makes of it; the same sentence
 * if not. */
gboolean car_check (const Car *car, GError **error);

/* The same for a set of springs, for a rod and for cases of load; sentences name members
 * from the set on, such as `springs.coil.wire_mm`. */
gboolean car_check_springs (const CarSprings *springs, GError **error);
/* Whether the seats of @springs find room on the car's strut as measured; what
 * car_from_json () asks besides car_check_springs (). */
gboolean
car_check_spring_seats (const Car *car, const CarSprings *springs, GError **error);
gboolean car_check_rod (const CarRod *rod, GError **error);
/* What the check takes for the number at @path inside the object of the springs, or
 * "rod." and inside it; @is_open: above @least only. FALSE for what has no bounds. */
gboolean
car_spring_bounds (const char *path, double *least, double *most, gboolean *is_open);
gboolean car_check_load_cases (const CarLoadCase *cases, gsize n, GError **error);

Car *car_load (GFile *file, GError **error);
/* Atomic: a crash leaves the old file or the new one. A symbolic link keeps pointing at
 * its file, and the file keeps its permissions. A car that could not be loaded again is
 * refused. */
gboolean car_save (const Car *car, GFile *file, GError **error);
