/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the choice only: the best place of one plate on one side. */

#pragma once

#include "model/choice/choice-corner.h"

/* Of places that are not within all limits, those that pass them least; of these, those
 * with the least cost; of these the nearest to the mount as measured. */
ChoicePlace choice_search (const ChoiceCorner *corner,
                           const Plate *plate,
                           gboolean is_swapped,
                           gboolean has_bolt);
