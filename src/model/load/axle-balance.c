/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/load/axle-balance.h"
#include "model/spring/spring-study-private.h"
#include "model/study/bracketed-root.h"

#define MOST_STEPS 16
#define SETTLED 1e-11 /* mm */

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

/* v_Cx/v_Cz and v_Cy/v_Cz, and their change by travel. */
typedef struct {
  double x, y, x_slope, y_slope;
} ContactPath;

static ContactPath
contact_path (const Measures *m)
{
  const double y = m->value[QUANTITY_ROLL_CENTRE_HEIGHT] / m->contact.y;

  return (ContactPath){ .x = m->value[QUANTITY_SIDE_VIEW_SLOPE],
                        .y = y,
                        .x_slope = m->slope[QUANTITY_SIDE_VIEW_SLOPE],
                        .y_slope = (m->slope[QUANTITY_ROLL_CENTRE_HEIGHT] -
                                    y * m->slope[QUANTITY_HALF_TRACK_CHANGE]) /
                                   m->contact.y };
}

/* What one wheel lacks to balance, and how that changes. */
typedef struct {
  double misfit;        /* N */
  double by_travel;     /* its change by the wheel's own travel */
  double by_other;      /* and by the rise of the other side's link */
  double rise, by_rise; /* of the link, and its change by travel */
} Lack;

/* A wheel between the strut's ends, pushed at its contact. */
typedef struct {
  const AxleBalance *self;
  Vec3 contact;
  double other_rise;
} OneWheel;

static Lack
lack_of (const OneWheel *wheel, const SpringStation *s, const Measures *measures)
{
  const AxleBalance *self = wheel->self;
  const ContactPath path = contact_path (measures);
  const double per_travel = s->paths.contact_per_travel, k = self->link_rate;
  const double twist = s->link_rise - wheel->other_rise, i = s->link_ratio;
  const double load =
      s->load - (self->is_weighing ? 0.0 : s->element_load[SPRING_UNSPRUNG]);
  const double rate =
      s->rate - (self->is_weighing ? 0.0 : s->element_rate[SPRING_UNSPRUNG]);

  return (Lack){
    .misfit = load + k * i * twist - wheel->contact.z - wheel->contact.x * path.x -
              wheel->contact.y * path.y,
    .by_travel = (rate + k * (i * i + twist * s->paths.link.bend)) * per_travel -
                 wheel->contact.x * path.x_slope - wheel->contact.y * path.y_slope,
    .by_other = -k * i,
    .rise = s->link_rise,
    .by_rise = i * per_travel,
  };
}

static gsize
station_near (const AxleBalance *self, double travel)
{
  const Station *stations = self->corner->corner->stations;
  const double from = stations[0].travel, to = stations[STUDY_STATIONS - 1].travel;
  const double place = (travel - from) / (to - from) * (STUDY_STATIONS - 1);

  return (gsize) CLAMP (round (place), 0.0, STUDY_STATIONS - 1.0);
}

/* @travel is NAN where none balances, as beside a gap. */
static Lack
lack_at (const OneWheel *wheel, double travel)
{
  const Lack none = { NAN, NAN, NAN, NAN, NAN };
  const SpringCorner *corner = wheel->self->corner;
  SpringStation s;
  Measures measures;
  Pose pose;

  if (isnan (travel))
    return none;

  const Station *near = &corner->corner->stations[station_near (wheel->self, travel)];
  if (!spring_corner_carry (corner, travel, near->status == POSE_OK ? &near->pose : NULL,
                            &pose, &s))
    return none;
  pose_measure (&corner->corner->corner, &pose, &measures);
  return lack_of (wheel, &s, &measures);
}

static double
misfit_of_wheel (double travel, double *slope, void *data)
{
  const Lack lack = lack_at (data, travel);

  *slope = lack.by_travel;
  return lack.misfit;
}

/* Halves the stations between the ends, of which @least lacks load and @most has too
 * much, down to two neighbours. */
static void
narrow (const OneWheel *wheel, double *least, double *most)
{
  const SpringCorner *corner = wheel->self->corner;
  const Station *stations = corner->corner->stations;
  gsize low = station_near (wheel->self, *least),
        high = station_near (wheel->self, *most);

  while (high > low + 1) {
    const gsize middle = (low + high) / 2;
    const double travel = stations[middle].travel;

    if (travel > *least && travel < *most) {
      const Lack lack =
          lack_of (wheel, &corner->stations[middle], &stations[middle].measures);

      *(lack.misfit < 0.0 ? least : most) = travel;
      *(lack.misfit < 0.0 ? &low : &high) = middle;
    } else
      break;
  }
}

AxleWheel
axle_balance_wheel (const AxleBalance *self, Vec3 contact, double other_rise)
{
  OneWheel one = { self, contact, other_rise };
  double least = self->least, most = self->most;
  AxleWheel wheel = { .is_at_end = TRUE };

  if (lack_at (&one, least).misfit >= 0.0)
    wheel.travel = least;
  else if (lack_at (&one, most).misfit <= 0.0)
    wheel.travel = most;
  else {
    narrow (&one, &least, &most);
    wheel.travel = bracketed_root (misfit_of_wheel, &one, least, most);
    wheel.is_at_end = FALSE;
  }
  wheel.link_rise = lack_at (&one, wheel.travel).rise;
  return wheel;
}

/* Newton's method on both wheels at once, from where they stand without the bar:
 *   | ∂l/∂z   ∂l/∂r′ · dr′/dz′ |
 *   | ∂l′/∂r · dr/dz   ∂l′/∂z′ |
 * FALSE where it does not settle between the ends. */
static gboolean
settle_together (const AxleBalance *self, AxleWheel *left, AxleWheel *right)
{
  double z[2] = { left->travel, right->travel };
  double rise[2] = { left->link_rise, right->link_rise };

  for (int i = 0; i < MOST_STEPS; i++) {
    const OneWheel l = { self, self->contact[0], rise[1] };
    const OneWheel r = { self, self->contact[1], rise[0] };
    Lack a = lack_at (&l, z[0]), b = lack_at (&r, z[1]);

    /* each has to know the other's link as it is now */
    a.misfit += a.by_other * (b.rise - rise[1]);
    b.misfit += b.by_other * (a.rise - rise[0]);
    const double ab = a.by_other * b.by_rise, ba = b.by_other * a.by_rise;
    const double determinant = a.by_travel * b.by_travel - ab * ba;
    const double step[2] = { (ab * b.misfit - b.by_travel * a.misfit) / determinant,
                             (ba * a.misfit - a.by_travel * b.misfit) / determinant };

    *left = (AxleWheel){ z[0], a.rise, FALSE };
    *right = (AxleWheel){ z[1], b.rise, FALSE };
    if (fabs (step[0]) + fabs (step[1]) < SETTLED)
      return TRUE;
    for (int k = 0; k < 2; k++) {
      z[k] += step[k];
      if (!(z[k] > self->least && z[k] < self->most))
        return FALSE;
    }
    rise[0] = a.rise + a.by_rise * step[0];
    rise[1] = b.rise + b.by_rise * step[1];
  }
  return FALSE;
}

typedef struct {
  const AxleBalance *self;
  AxleWheel right;
} BothWheels;

/* Of the left wheel, the right one having found its rest: where that is free, it moves by
 * −(∂l′/∂r)/(∂l′/∂z′) of the left link's rise. */
static double
misfit_of_both (double travel, double *slope, void *data)
{
  BothWheels *both = data;
  const AxleBalance *self = both->self;
  OneWheel left = { self, self->contact[0], 0.0 };
  const double rise = lack_at (&left, travel).rise;

  both->right = axle_balance_wheel (self, self->contact[1], rise);
  left.other_rise = both->right.link_rise;
  const OneWheel right = { self, self->contact[1], rise };
  const Lack l = lack_at (&left, travel), r = lack_at (&right, both->right.travel);
  const double follows =
      both->right.is_at_end ? 0.0 : -r.by_other * l.by_rise / r.by_travel * r.by_rise;

  *slope = l.by_travel + l.by_other * follows;
  return l.misfit;
}

/* One inside the other, where Newton's method on both does not settle. */
static AxleWheel
settle_in_turn (const AxleBalance *self, AxleWheel *right)
{
  BothWheels both = { .self = self };
  const OneWheel one = { self, self->contact[0], 0.0 };
  AxleWheel left = { .is_at_end = TRUE };
  double slope;

  if (misfit_of_both (self->least, &slope, &both) >= 0.0)
    left.travel = self->least;
  else if (misfit_of_both (self->most, &slope, &both) <= 0.0)
    left.travel = self->most;
  else {
    left.travel = bracketed_root (misfit_of_both, &both, self->least, self->most);
    left.is_at_end = FALSE;
  }
  misfit_of_both (left.travel, &slope, &both);
  *right = both.right;
  left.link_rise = lack_at (&one, left.travel).rise;
  return left;
}

AxleWheel
axle_balance_left (const AxleBalance *self, AxleWheel *right)
{
  AxleBalance apart = *self;

  apart.link_rate = 0.0;
  AxleWheel left = axle_balance_wheel (&apart, self->contact[0], 0.0);
  *right = axle_balance_wheel (&apart, self->contact[1], 0.0);
  if (self->link_rate == 0.0 || settle_together (self, &left, right))
    return left;
  return settle_in_turn (self, right);
}
