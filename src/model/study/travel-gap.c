/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/study/travel-gap.h"
#include "model/study/study.h"
#include "model/words/unit.h"

#include <glib/gi18n-lib.h>

GArray *
travel_gaps_new (void)
{
  return g_array_new (FALSE, FALSE, sizeof (TravelGap));
}

void
travel_gaps_add (GArray *gaps, double travel, PoseStatus status, gboolean is_next)
{
  const TravelGap fresh = { travel, travel, 1, status };
  TravelGap *last =
      gaps->len > 0 ? &g_array_index (gaps, TravelGap, gaps->len - 1) : NULL;

  if (!is_next || last == NULL || last->status != status) {
    g_array_append_val (gaps, fresh);
    return;
  }
  last->to = travel;
  last->n_stations++;
}

char *
travel_gap_sentence (const TravelGap *gap)
{
  g_autofree char *from = unit_plain_number (UNIT_LENGTH, gap->from, 1);
  g_autofree char *to = unit_plain_number (UNIT_LENGTH, gap->to, 1);
  const char *unit = unit_symbol (UNIT_LENGTH);

  if (gap->n_stations == 1)
    return g_strdup_printf (_ ("At %s %s of wheel travel nothing can be assembled. %s"),
                            from, unit, pose_status_sentence (gap->status));
  return g_strdup_printf (
      _ ("From %s to %s %s of wheel travel nothing can be assembled. %s"), from, to, unit,
      pose_status_sentence (gap->status));
}
