/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the choice only: what keeps a place from an aim that it misses.
 *
 * With g the exact slopes of the aim's miss along the ways and nₖ the outward normals of
 * the ends and limits at which the place stands, the step that lowers the miss most is
 * the projection p of −g onto the steps that are free, nₖ·p ≤ 0; then −g = p + Σ λₖ nₖ
 * with λₖ ≥ 0. An end or a limit is to blame only where λₖ nₖ is most of −g and going
 * past it would lower the miss, nₖ·g < 0. Where p is most of it, another aim that p would
 * cost more is to blame. */

#pragma once

#include "model/choice/choice-corner.h"

/* Fills in @place->bar for each aim that it misses. @place is within the limits. */
void choice_reasons_find (const ChoiceCorner *corner,
                          const Plate *plate,
                          gboolean has_bolt,
                          ChoicePlace *place);
