/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the model only: the members "springs" and "rod" of a car or a setup.
 *
 * Members not known here are kept in one object that mirrors the nesting: those of the
 * coil in its member "coil". */

#pragma once

#include "model/car/car.h"
#include "model/json/json-member.h"

/* Reads the member of @parent, whose path is @parent_path; where it is missing, all stays
 * as it is. */
gboolean springs_read (JsonObject *parent,
                       const char *parent_path,
                       CarSprings *springs,
                       JsonObject **unknown,
                       GError **error);
JsonObject *springs_object (const CarSprings *springs, JsonObject *unknown);
/* What a file makes of @wanted: parts that are not there without numbers and without
 * unknown members, no −0.0. Or a refusal, and nothing is set. @unknown is a new one. */
gboolean springs_renew (const CarSprings *wanted,
                        JsonObject *old_unknown,
                        CarSprings *springs,
                        JsonObject **unknown,
                        GError **error);

gboolean rod_read (JsonObject *parent,
                   const char *parent_path,
                   CarRod *rod,
                   JsonObject **unknown,
                   GError **error);
JsonObject *rod_object (const CarRod *rod, JsonObject *unknown);
/* Of the car and of every setup that has its own. */
gboolean springs_check_all_seats (const Car *car, GError **error);

/* As springs_renew () does. */
gboolean rod_renew (const CarRod *wanted, CarRod *rod, GError **error);
/* The bore inside the diameter; by the names that the object at @path has for them. */
gboolean rod_check (const CarRod *rod,
                    const char *path,
                    const char *bore,
                    const char *diameter,
                    GError **error);
