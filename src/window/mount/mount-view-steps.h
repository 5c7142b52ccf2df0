/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where a mount goes that is dragged or nudged over the map, on plain values: pointer,
 * arrow keys and tests all go through here. With a plate it stays within its reach. */

#pragma once

#include "model/plate/plate.h"

typedef struct {
  const Plate *plate; /* or NULL: anywhere in plan, at its own height */
  gboolean is_swapped;
} MountRail;

/* To where the rail comes nearest to @wanted, on steps of 0.1 mm or 0.1° of what is
 * dialled in. */
MountOffset mount_rail_nearest (const MountRail *rail, MountOffset wanted);

/* An arrow key: @right and @up are −1, 0 or 1 as the map shows them, outboard to the
 * right and rearward up. Along the scale of the plate that goes that way, or to the next
 * indexed place there; where the plate cannot go that way, nothing moves. */
MountOffset
mount_rail_nudge (const MountRail *rail, MountOffset from, double mm, int right, int up);

/* To the indexed place @steps on from the one nearest to @from, round and round. */
MountOffset mount_rail_walk (const MountRail *rail, MountOffset from, int steps);
