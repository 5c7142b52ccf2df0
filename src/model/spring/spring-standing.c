/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where load meets weight: bracketed between stations, closed in on with the exact rate
 * of the wheel. */

#include "model/spring/spring-study-private.h"
#include "model/study/bracketed-root.h"

#define STANDS_WITHIN 1e-6 /* N */

typedef struct {
  const SpringCorner *self;
  double weight;
  const Pose *neighbour;
} Search;

static double
misfit_at (double travel, double *slope, void *data)
{
  const Search *search = data;
  SpringStation station;
  Pose pose;

  spring_corner_carry (search->self, travel, search->neighbour, &pose, &station);
  const int blocks = spring_law_blocks (search->self->law, travel, &station);

  *slope = station.rate * station.paths.contact_per_travel;
  return blocks != 0 ? blocks * INFINITY : station.load - search->weight;
}

static void
stand_at (SpringCorner *self, double weight, double travel, const Pose *neighbour)
{
  Pose pose;

  if (!isfinite (travel) ||
      !spring_corner_carry (self, travel, neighbour, &pose, &self->at_standing) ||
      !(fabs (self->at_standing.load - weight) <= STANDS_WITHIN))
    return;
  self->standing = travel;
  self->stands = STANDS_BY_SPRINGS;
}

/* Misfit at station @i as the search sees it: past an end of the strut its side only;
 * NAN where it cannot be assembled. */
static double
station_misfit (const SpringCorner *self, double weight, gsize i)
{
  const Station *at = &self->corner->stations[i];
  const SpringStation *s = &self->stations[i];
  const int blocks = spring_law_blocks (self->law, at->travel, s);

  if (at->status != POSE_OK)
    return NAN;
  return blocks != 0 ? blocks * INFINITY : s->load - weight;
}

/* Between the station before @i and @i itself, if load meets weight there. */
static void
look_before (SpringCorner *self, double weight, gsize i)
{
  const Station *stations = self->corner->stations;
  Search search = { self, weight, &stations[i].pose };

  stand_at (self, weight,
            bracketed_root (misfit_at, &search, stations[i - 1].travel,
                            stations[i].travel),
            &stations[i].pose);
}

/* Whether a spring is solid somewhere in the travel. */
static gboolean
is_closed (const SpringCorner *self)
{
  const Station *at = self->corner->stations;

  for (gsize i = 0; i < STUDY_STATIONS; i++)
    if (at[i].status == POSE_OK &&
        spring_law_blocks (self->law, at[i].travel, &self->stations[i]) > 0)
      return TRUE;
  return FALSE;
}

void
spring_corner_find_standing (SpringCorner *self, double weight)
{
  double before = NAN, first = NAN;

  self->standing = NAN;
  self->stands = STANDS_NOT_GIVEN;
  spring_law_station (self->law, &self->corner->corner, NULL, &self->at_standing);
  if (!spring_law_holds (self->law))
    return;
  for (gsize i = 0; i < STUDY_STATIONS && isnan (self->standing); i++) {
    const double misfit = station_misfit (self, weight, i);

    if (isnan (first) && isfinite (misfit))
      first = misfit;
    if (before < 0.0 && misfit >= 0.0)
      look_before (self, weight, i);
    before = misfit;
  }
  if (isnan (self->standing))
    self->stands = first > 0.0        ? STANDS_NOWHERE_TOO_STIFF
                   : is_closed (self) ? STANDS_NOWHERE_BOUND
                                      : STANDS_NOWHERE_TOO_SOFT;
}
