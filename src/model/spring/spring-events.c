/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every event is a place on the path of one spring: found between two stations, closed in
 * on with the path's exact slope. */

#include "model/spring/spring-study-private.h"
#include "model/study/bracketed-root.h"

#include <glib/gi18n-lib.h>

const char *
spring_event_key (SpringEventKind kind)
{
  static const char *const keys[N_SPRING_EVENTS] = {
    [SPRING_EVENT_TOPS_OUT] = "tops_out",
    [SPRING_EVENT_COIL_BOUND] = "coil_bound",
    [SPRING_EVENT_HELPER_CLOSED] = "helper_closed",
    [SPRING_EVENT_HELPER_SLACK] = "helper_slack",
    [SPRING_EVENT_BUMP_STOP] = "bump_stop",
    [SPRING_EVENT_DROOP_STOP] = "droop_stop",
    [SPRING_EVENT_BAR_UNWOUND] = "bar_unwound",
  };

  return keys[kind];
}

const char *
spring_event_name (SpringEventKind kind)
{
  switch (kind) {
  case SPRING_EVENT_TOPS_OUT:
    return _ ("coil off its seat");
  case SPRING_EVENT_COIL_BOUND:
    return _ ("coil bound");
  case SPRING_EVENT_HELPER_CLOSED:
    return _ ("helper closed");
  case SPRING_EVENT_HELPER_SLACK:
    return _ ("helper slack");
  case SPRING_EVENT_BUMP_STOP:
    return _ ("bump stop touches");
  case SPRING_EVENT_DROOP_STOP:
    return _ ("droop stop");
  case SPRING_EVENT_BAR_UNWOUND:
    return _ ("torsion bar unwound");
  case N_SPRING_EVENTS:
    break;
  }
  g_return_val_if_reached ("");
}

typedef enum {
  ON_COIL,
  ON_STRUT,
  ON_BAR
} PathName;

/* The event is where the path passes @place. */
typedef struct {
  SpringEventKind kind;
  PathName path;
  double place;
} Mark;

static const SpringPath *
path_of (const SpringPaths *paths, PathName name)
{
  return name == ON_COIL ? &paths->coil : name == ON_STRUT ? &paths->strut : &paths->bar;
}

/* A path's place is its length with the sign turned: squash less the free length. */
static gsize
marks_of (const SpringLaw *law, Mark marks[N_SPRING_EVENTS])
{
  const double helper_free = law->helper_free + law->helper_seats;
  gsize n = 0;

  if (law->has_coil) {
    marks[n++] = (Mark){ SPRING_EVENT_TOPS_OUT, ON_COIL, -law->total_free };
    marks[n++] =
        (Mark){ SPRING_EVENT_COIL_BOUND, ON_COIL, law->bound_squash - law->total_free };
  }
  if (law->has_series)
    marks[n++] = (Mark){ SPRING_EVENT_HELPER_CLOSED, ON_COIL,
                         law->close_squash - law->total_free };
  if (law->has_parallel) {
    marks[n++] = (Mark){ SPRING_EVENT_HELPER_SLACK, ON_STRUT, -helper_free };
    marks[n++] =
        (Mark){ SPRING_EVENT_HELPER_CLOSED, ON_STRUT, law->helper_stroke - helper_free };
  }
  if (law->has_stop)
    marks[n++] = (Mark){ SPRING_EVENT_BUMP_STOP, ON_STRUT, -law->stop_length };
  if (law->bar_rate > 0.0)
    marks[n++] = (Mark){ SPRING_EVENT_BAR_UNWOUND, ON_BAR, -law->clamp_angle };
  return n;
}

typedef struct {
  const SpringCorner *self;
  const Mark *mark;
  const Pose *neighbour;
} Search;

static double
distance_past (double travel, double *slope, void *data)
{
  const Search *search = data;
  SpringStation station;
  Pose pose;

  spring_corner_carry (search->self, travel, search->neighbour, &pose, &station);
  const SpringPath *path = path_of (&station.paths, search->mark->path);

  *slope = path->ratio * station.paths.contact_per_travel;
  return path->place - search->mark->place;
}

static void
add_event (SpringCorner *self, SpringEventKind kind, double travel, const Pose *neighbour)
{
  SpringStation station;
  Pose pose;

  if (self->n_events == SPRING_EVENTS_MOST || !isfinite (travel) ||
      !spring_corner_carry (self, travel, neighbour, &pose, &station))
    return;
  gsize at = self->n_events++;

  for (; at > 0 && self->events[at - 1].travel > travel; at--)
    self->events[at] = self->events[at - 1];
  self->events[at] = (SpringEvent){ kind, travel, station.load, TRUE };
}

static void
find_crossings (SpringCorner *self, const Mark *mark)
{
  const Station *stations = self->corner->stations;

  for (gsize i = 0; i + 1 < STUDY_STATIONS; i++) {
    const double a = path_of (&self->stations[i].paths, mark->path)->place - mark->place;
    const double b =
        path_of (&self->stations[i + 1].paths, mark->path)->place - mark->place;
    Search search = { self, mark, &stations[i].pose };

    if (isnan (a) || isnan (b) || (a < 0.0) == (b < 0.0))
      continue;
    add_event (self, mark->kind,
               bracketed_root (distance_past, &search, stations[i].travel,
                               stations[i + 1].travel),
               &stations[i].pose);
  }
}

const SpringEvent *
spring_corner_solid (const SpringCorner *self)
{
  for (gsize i = 0; i < self->n_events; i++) {
    const SpringEventKind kind = self->events[i].kind;

    if (kind == SPRING_EVENT_COIL_BOUND ||
        (kind == SPRING_EVENT_HELPER_CLOSED && self->law->has_parallel))
      return &self->events[i];
  }
  return NULL;
}

static void
find_reached (SpringCorner *self)
{
  const SpringEvent *solid = spring_corner_solid (self);
  const double most = solid != NULL ? solid->travel : INFINITY;

  for (gsize i = 0; i < self->n_events; i++)
    self->events[i].is_reached =
        self->events[i].travel >= self->law->droop_stop && self->events[i].travel <= most;
}

void
spring_corner_find_events (SpringCorner *self)
{
  const Station *stations = self->corner->stations;
  const double droop = self->law->droop_stop;
  Mark marks[N_SPRING_EVENTS];
  const gsize n = marks_of (self->law, marks);

  self->n_events = 0;
  for (gsize i = 0; i < n; i++)
    find_crossings (self, &marks[i]);
  if (droop >= stations[0].travel && droop <= stations[STUDY_STATIONS - 1].travel)
    add_event (self, SPRING_EVENT_DROOP_STOP, droop, NULL);
  find_reached (self);
}
