/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Stretches of wheel travel that cannot be assembled, told in words. */

#pragma once

#include "kernel/pose.h"

#include <glib.h>

typedef struct {
  double from, to; /* mm; the first and the last travel tried inside the gap */
  gsize n_stations;
  PoseStatus status;
} TravelGap;

/* Of TravelGap. */
GArray *travel_gaps_new (void);

/* Called for every station in order of travel. @is_next says that the station before was
 * added too, so that one gap may go on. */
void travel_gaps_add (GArray *gaps, double travel, PoseStatus status, gboolean is_next);

/* One translated sentence. */
char *travel_gap_sentence (const TravelGap *gap);
