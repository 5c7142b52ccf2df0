/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the model only: the cases of load in the section "loads". */

#pragma once

#include "model/car/car.h"
#include "model/json/json-member.h"

extern const char *const load_case_members[]; /* NULL-terminated */

/* Members of a case that are not known here are kept under its name. */
gboolean loads_read (JsonObject *loads, Car *car, GError **error);
/* The cases, and what else the section has. */
void loads_add (JsonObject *loads, const Car *car);
/* What a file makes of @n cases instead of those that @car has: members that are not
 * known here stay with the name of their case. Or a refusal, and @car is as it was. */
gboolean loads_renew (Car *car, const CarLoadCase *cases, gsize n, GError **error);
