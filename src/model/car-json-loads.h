/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside car-json only: the cases of load in the section "loads". */

#pragma once

#include "model/json-member.h"

/* Members of a case that are not known here are kept under its name. */
gboolean loads_read (JsonObject *loads, Car *car, GError **error);
/* The cases, and what else the section has. */
void loads_add (JsonObject *loads, const Car *car);
