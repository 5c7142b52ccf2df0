/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Coil and helper in series share one force F. Their squashes add up:
 *   s = s_c + s_h,  F = f (s_c),  F = k_h s_h while the helper is open,  s_h = its stroke
 * once it is closed. Springs only push: at s ≤ 0 nothing. */

#include "model/spring/spring-law-private.h"
#include "model/study/bracketed-root.h"

double
spring_law_coil_force (const SpringLaw *law, double squash, double *rate)
{
  *rate = 0.0;
  if (!law->has_coil || squash <= 0.0)
    return 0.0;
  if (law->coil_table.n > 0)
    return spring_curve_value (&law->coil_table, squash, rate);
  *rate = law->coil_rate;
  return law->coil_rate * squash;
}

typedef struct {
  const SpringLaw *law;
  double total_squash; /* of both, or NAN: the force is given */
  double force;
} Sharing;

/* Of the coil's squash: its force against the helper's, or against the one given. */
static double
difference (double squash, double *slope, void *data)
{
  const Sharing *sharing = data;
  const SpringLaw *law = sharing->law;
  const double force = spring_law_coil_force (law, squash, slope);

  if (isnan (sharing->total_squash))
    return force - sharing->force;
  *slope += law->helper_rate;
  return force - law->helper_rate * (sharing->total_squash - squash);
}

/* With the helper open. */
static double
open_squash (const SpringLaw *law, double total_squash)
{
  Sharing sharing = { law, total_squash, 0.0 };

  if (law->coil_table.n > 0)
    return bracketed_root (difference, &sharing, 0.0, total_squash);
  return total_squash * law->helper_rate / (law->coil_rate + law->helper_rate);
}

CoilShare
spring_law_share (const SpringLaw *law, double total_squash)
{
  CoilShare share = { .coil_squash = total_squash };

  if (total_squash <= 0.0) {
    share.coil_squash = 0.0;
    return share;
  }
  if (law->has_series) {
    const gboolean is_open = total_squash < law->close_squash;

    share.coil_squash =
        is_open ? open_squash (law, total_squash) : total_squash - law->helper_stroke;
    share.helper_squash = total_squash - share.coil_squash;
    share.force = spring_law_coil_force (law, share.coil_squash, &share.rate);
    if (is_open)
      share.rate = springs_in_series (share.rate, law->helper_rate);
    return share;
  }
  share.force = spring_law_coil_force (law, total_squash, &share.rate);
  return share;
}

/* How far @force squashes the coil. */
static double
coil_squash_at (const SpringLaw *law, double force)
{
  Sharing sharing = { law, NAN, force };
  double high = 1.0, rate;

  if (law->coil_table.n == 0)
    return force / law->coil_rate;
  while (spring_law_coil_force (law, high, &rate) < force && high < 1e6)
    high *= 2.0;
  return bracketed_root (difference, &sharing, 0.0, high);
}

void
spring_law_set_strokes (SpringLaw *law, double coil_free)
{
  const double stroke =
      law->coil_solid > 0.0 ? MAX (coil_free - law->coil_solid, 0.0) : INFINITY;

  law->total_free = coil_free;
  law->bound_squash = stroke;
  if (!law->has_series)
    return;
  const double closing = law->helper_rate * law->helper_stroke;
  double rate;

  law->total_free += law->helper_free;
  law->close_squash = coil_squash_at (law, closing) + law->helper_stroke;
  if (isfinite (stroke)) {
    const double force = spring_law_coil_force (law, stroke, &rate);

    law->bound_squash = stroke + MIN (force / law->helper_rate, law->helper_stroke);
  }
}
