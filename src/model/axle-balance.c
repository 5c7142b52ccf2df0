/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/axle-balance.h"
#include "model/bracketed-root.h"
#include "model/spring-study-private.h"

static gboolean
is_end (SpringEventKind kind, gboolean has_parallel)
{
  return kind == SPRING_EVENT_COIL_BOUND ||
         (kind == SPRING_EVENT_HELPER_CLOSED && has_parallel);
}

gboolean
axle_balance_init (AxleBalance *self, const SpringCorner *corner)
{
  const Station *stations = corner->corner->stations;

  *self = (AxleBalance){ .corner = corner,
                         .least = INFINITY,
                         .most = -INFINITY,
                         .link_rate = spring_law_link_rate (corner->law),
                         .is_weighing = TRUE };
  for (gsize i = 0; i < STUDY_STATIONS; i++)
    if (stations[i].status == POSE_OK) {
      self->least = MIN (self->least, stations[i].travel);
      self->most = MAX (self->most, stations[i].travel);
    }
  self->least = MAX (self->least, corner->law->droop_stop);
  for (gsize i = 0; i < corner->n_events; i++)
    if (is_end (corner->events[i].kind, corner->law->has_parallel))
      self->most = MIN (self->most, corner->events[i].travel);
  return self->least < self->most;
}

/* What the wheel lacks to balance at one travel, and how that changes. */
typedef struct {
  double misfit;        /* N */
  double by_travel;     /* its change by the wheel's own travel */
  double by_other;      /* and by the rise of the other side's link */
  double rise, by_rise; /* of the link, and its change by travel */
} Lack;

/* v_Cx/v_Cz and v_Cy/v_Cz, and their change by travel. */
typedef struct {
  double x, y, x_slope, y_slope;
} ContactPath;

static ContactPath
contact_path (const Corner *corner, const Pose *pose)
{
  Measures m;

  pose_measure (corner, pose, &m);
  const double y = m.value[QUANTITY_ROLL_CENTRE_HEIGHT] / m.contact.y;

  return (ContactPath){ .x = m.value[QUANTITY_SIDE_VIEW_SLOPE],
                        .y = y,
                        .x_slope = m.slope[QUANTITY_SIDE_VIEW_SLOPE],
                        .y_slope = (m.slope[QUANTITY_ROLL_CENTRE_HEIGHT] -
                                    y * m.slope[QUANTITY_HALF_TRACK_CHANGE]) /
                                   m.contact.y };
}

static Lack
lack_at (const AxleBalance *self, Vec3 contact, double other_rise, double travel)
{
  const Corner *corner = &self->corner->corner->corner;
  SpringStation s;
  Pose pose;

  if (!spring_corner_carry (self->corner, travel, NULL, &pose, &s))
    return (Lack){ NAN, NAN, NAN, NAN, NAN };
  const ContactPath path = contact_path (corner, &pose);
  const double per_travel = s.paths.contact_per_travel, k = self->link_rate;
  const double twist = s.link_rise - other_rise;
  const double unsprung = self->is_weighing ? 0.0 : s.element_load[SPRING_UNSPRUNG];
  const double unsprung_rate = self->is_weighing ? 0.0 : s.element_rate[SPRING_UNSPRUNG];
  const double bar_rate = k * (s.link_ratio * s.link_ratio + twist * s.paths.link.bend);

  return (Lack){
    .misfit = s.load - unsprung + k * s.link_ratio * twist - contact.z -
              contact.x * path.x - contact.y * path.y,
    .by_travel = (s.rate - unsprung_rate + bar_rate) * per_travel -
                 contact.x * path.x_slope - contact.y * path.y_slope,
    .by_other = -k * s.link_ratio,
    .rise = s.link_rise,
    .by_rise = s.link_ratio * per_travel,
  };
}

/* Between the ends, or at the one that it is pressed against. */
static double
held_root (const AxleBalance *self,
           RootFunction function,
           void *data,
           gboolean *is_at_end)
{
  double slope;

  *is_at_end = TRUE;
  if (function (self->least, &slope, data) >= 0.0)
    return self->least;
  if (function (self->most, &slope, data) <= 0.0)
    return self->most;
  *is_at_end = FALSE;
  return bracketed_root (function, data, self->least, self->most);
}

typedef struct {
  const AxleBalance *self;
  Vec3 contact;
  double other_rise;
} OneWheel;

static double
misfit_of_wheel (double travel, double *slope, void *data)
{
  const OneWheel *w = data;
  const Lack lack = lack_at (w->self, w->contact, w->other_rise, travel);

  *slope = lack.by_travel;
  return lack.misfit;
}

AxleWheel
axle_balance_wheel (const AxleBalance *self, Vec3 contact, double other_rise)
{
  OneWheel one = { self, contact, other_rise };
  AxleWheel wheel;

  wheel.travel = held_root (self, misfit_of_wheel, &one, &wheel.is_at_end);
  wheel.link_rise = lack_at (self, contact, other_rise, wheel.travel).rise;
  return wheel;
}

typedef struct {
  const AxleBalance *self;
  AxleWheel right;
} BothWheels;

/* Of the left wheel, the right one having found its rest: where it moves, that moves by
 * −(∂misfit′/∂r)/(∂misfit′/∂z′) of the left link's rise. */
static double
misfit_of_both (double travel, double *slope, void *data)
{
  BothWheels *both = data;
  const AxleBalance *self = both->self;
  const double rise = lack_at (self, self->contact[0], 0.0, travel).rise;

  both->right = axle_balance_wheel (self, self->contact[1], rise);
  const Lack right = lack_at (self, self->contact[1], rise, both->right.travel);
  const Lack left = lack_at (self, self->contact[0], right.rise, travel);
  const double follows = both->right.is_at_end ? 0.0
                                               : -right.by_other * left.by_rise /
                                                     right.by_travel * right.by_rise;

  *slope = left.by_travel + left.by_other * follows;
  return left.misfit;
}

AxleWheel
axle_balance_left (const AxleBalance *self, AxleWheel *right)
{
  BothWheels both = { .self = self };
  double slope;
  AxleWheel left;

  if (self->link_rate == 0.0) {
    *right = axle_balance_wheel (self, self->contact[1], 0.0);
    return axle_balance_wheel (self, self->contact[0], 0.0);
  }
  left.travel = held_root (self, misfit_of_both, &both, &left.is_at_end);
  misfit_of_both (left.travel, &slope, &both);
  *right = both.right;
  left.link_rise = lack_at (self, self->contact[0], right->link_rise, left.travel).rise;
  return left;
}
