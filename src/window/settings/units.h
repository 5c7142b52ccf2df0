/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The units that this person reads and types in, kept from one start to the next. */

#pragma once

#include "model/words/unit.h"

#include <glib-object.h>

#define SW_TYPE_UNITS (sw_units_get_type ())
G_DECLARE_FINAL_TYPE (SwUnits, sw_units, SW, UNITS, GObject)

/* The one of the program, which shows what unit_choice () says. Emits "changed".
 * Made when first asked for, with what was kept. */
SwUnits *sw_units_get (void);

/* Shows and keeps them. */
void sw_units_choose (SwUnits *self, const UnitChoice *choice);
