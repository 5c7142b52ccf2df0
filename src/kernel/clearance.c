/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "kernel/clearance.h"

/* Room to a part: the least, over its points, of the signed distance s from the tyre.
 * With a along the spin axis n from the wheel centre and ρ off it,
 *   α = |a| − width/2,  β = ρ − radius,
 *   s = max (α, β) where both are below 0, else √(max (α, 0)² + max (β, 0)²),
 * which is convex, and rises with ρ.
 *
 * Unknowns: the height h of a plate along the strut's axis u, and the point (x, y) on it,
 * x along the part of n that lies in the plate. With κ = n·u and σ = √(1 − κ²), by axes
 * n, n × y and y from the wheel centre, the point is
 *   (a₀ + κ h + σ x,  m₀ + σ h − κ x,  y₀ + y).
 * Only ρ knows y, so the best y is the chord's nearest to −y₀: closed. With x = r sin φ
 * what is left falls and then rises over φ, and the least of each plate is convex over h.
 * Both are found by their slopes: a bracket, closed by false position (Illinois) and, so
 * that a kink cannot hold it up, by halves. */

/* rad or mm: a bracket is closed when it is as narrow. Across a kink it can still gain
 * this times the part's radius. */
#define CLOSED 1e-14
#define MOST_STEPS 150

typedef struct {
  double radius, half_width;    /* of the tyre */
  double along, across, beside; /* a₀, m₀, |y₀|: of the strut foot, or the bottom */
  double kappa, sigma;          /* κ, σ */
} Setting;

/* A plate, or one height of a bar. */
typedef struct {
  const Setting *setting;
  double part_radius, height;
} Plate;

/* A function of one variable at @at: its value, its slope, and its slope by height. */
typedef struct {
  double at, value, slope, rise;
} Sample;

typedef Sample (*Sampler) (const Plate *plate, double at);

/* Of what stands along @u above @bottom. */
static Setting
find_setting (const Corner *corner, const TyreShape *tyre, Vec3 bottom, Vec3 u)
{
  const Vec3 n = corner->spin_axis;
  const Vec3 foot = vec3_sub (bottom, corner->wheel_centre);
  const Vec3 across = vec3_cross (u, n);
  const double sigma = vec3_length (across);
  const Vec3 y = sigma > 0.0 ? vec3_scale (across, 1.0 / sigma) : vec3_any_normal (n);

  return (Setting){ .radius = tyre->unloaded_radius,
                    .half_width = tyre->section_width / 2.0,
                    .along = vec3_dot (n, foot),
                    .across = vec3_dot (vec3_cross (n, y), foot),
                    .beside = fabs (vec3_dot (y, foot)),
                    .kappa = vec3_dot (n, u),
                    .sigma = sigma };
}

/* @value is s; @slope its slope by a, @rise its slope by ρ. */
static Sample
signed_distance (const Setting *g, double a, double rho)
{
  const double alpha = fabs (a) - g->half_width, beta = rho - g->radius;
  const double side = copysign (1.0, a);

  if (beta <= 0.0 && alpha >= beta)
    return (Sample){ .value = alpha, .slope = side };
  if (alpha <= 0.0)
    return (Sample){ .value = beta, .rise = 1.0 };

  const double s = hypot (alpha, beta);
  return (Sample){ .value = s, .slope = side * alpha / s, .rise = beta / s };
}

static Sample
sample_plate (const Plate *plate, double phi)
{
  const Setting *g = plate->setting;
  const double sine = plate->part_radius * sin (phi);
  const double cosine = plate->part_radius * cos (phi);
  const double a = g->along + g->kappa * plate->height + g->sigma * sine;
  const double m = g->across + g->sigma * plate->height - g->kappa * sine;
  const double y = fmax (g->beside - cosine, 0.0);
  const double rho = hypot (m, y);
  const Sample s = signed_distance (g, a, rho);
  const double by_m = rho > 0.0 ? s.rise * m / rho : 0.0;
  const double by_y = rho > 0.0 ? s.rise * y / rho : 0.0;

  return (Sample){ phi, s.value,
                   (s.slope * g->sigma - by_m * g->kappa) * cosine + by_y * sine,
                   s.slope * g->kappa + by_m * g->sigma };
}

/* At a kink the slopes either side do not vanish; weighed so that they do together. */
static Sample
meet (Sample low, Sample high)
{
  const double w = low.slope == high.slope ? 0.0 : low.slope / (low.slope - high.slope);
  const Sample best = low.value < high.value ? low : high;

  return (Sample){ best.at, best.value, 0.0, low.rise + w * (high.rise - low.rise) };
}

/* Where a function that falls and then rises has its least, in between. */
typedef struct {
  Sample low, high;
  double fall, rise; /* their slopes; that of an end which stays behind is halved */
  int moved;         /* −1 or +1: the end that moved last */
} Bracket;

static void
narrow (Bracket *b, Sample middle)
{
  const int end = middle.slope <= 0.0 ? -1 : 1;
  const double keep = b->moved == end ? 0.5 : 1.0;

  if (end < 0) {
    b->low = middle;
    b->fall = middle.slope;
    b->rise *= keep;
  } else {
    b->high = middle;
    b->rise = middle.slope;
    b->fall *= keep;
  }
  b->moved = end;
}

static Sample
least (Sampler sample, const Plate *plate, double from, double to)
{
  Bracket b = { .low = sample (plate, from), .high = sample (plate, to) };

  if (b.low.slope >= 0.0)
    return b.low;
  if (b.high.slope <= 0.0)
    return b.high;
  b.fall = b.low.slope;
  b.rise = b.high.slope;
  for (int i = 0; i < MOST_STEPS; i++) {
    const double width = b.high.at - b.low.at;
    const double share = i % 3 == 2 ? 0.5 : b.fall / (b.fall - b.rise);

    if (width < CLOSED * fmax (1.0, fabs (b.low.at)) || b.low.slope == 0.0)
      break;
    narrow (&b, sample (plate, b.low.at + share * width));
  }
  return meet (b.low, b.high);
}

static Sample
sample_bar (const Plate *bar, double height)
{
  const Plate plate = { bar->setting, bar->part_radius, height };
  const double square = acos (0.0);
  const Sample s = least (sample_plate, &plate, -square, square);

  return (Sample){ height, s.value, s.rise, 0.0 };
}

static double
room_to_bar (const Setting *setting, double radius, double bottom, double top)
{
  const Plate bar = { setting, radius, bottom };

  if (radius <= 0.0)
    return INFINITY;
  return least (sample_bar, &bar, bottom, fmax (bottom, top)).value;
}

bool
strut_shape_leans (const StrutShape *strut)
{
  return strut->lower_outboard != strut->upper_outboard ||
         strut->lower_forward != strut->upper_forward;
}

static bool
is_beside_the_strut (const StrutShape *strut)
{
  return strut_shape_leans (strut) || strut->lower_outboard != 0.0 ||
         strut->lower_forward != 0.0;
}

static double
spring_length (const StrutShape *strut, double between_seats)
{
  return strut->spring_free > 0.0 ? fmin (between_seats, strut->spring_free)
                                  : between_seats;
}

/* The seats of one that is squashed to nothing give no direction: a plate. */
static double
room_to_spring_beside (const Corner *corner,
                       const TyreShape *tyre,
                       const StrutShape *strut,
                       double strut_length)
{
  const CoilSeats seats = { strut->seat_height,    strut->spring_drop,
                            strut->lower_outboard, strut->lower_forward,
                            strut->upper_outboard, strut->upper_forward };
  const bool has_height = strut_length - strut->spring_drop > strut->seat_height;
  Vec3 lower, upper;

  coil_seats_place (corner, &seats, strut_length, &lower, &upper);
  const Vec3 line = vec3_sub (upper, lower);
  const Setting g =
      find_setting (corner, tyre, lower,
                    has_height ? vec3_unit (line) : corner->strut_direction);

  return room_to_bar (&g, strut->spring_radius, 0.0,
                      has_height ? spring_length (strut, vec3_length (line)) : 0.0);
}

static double
room_to_spring (const Corner *corner,
                const TyreShape *tyre,
                const StrutShape *strut,
                double strut_length)
{
  const double seat = strut->seat_height, top = strut_length - strut->spring_drop;
  const double free_top = strut->spring_free > 0.0 ? seat + strut->spring_free : INFINITY;

  if (strut->spring_radius <= 0.0)
    return INFINITY;
  if (is_beside_the_strut (strut))
    return room_to_spring_beside (corner, tyre, strut, strut_length);

  const Setting g =
      find_setting (corner, tyre, corner->strut_foot, corner->strut_direction);
  return room_to_bar (&g, strut->spring_radius, seat, fmin (top, free_top));
}

TyreClearance
tyre_clearance (const Corner *corner,
                const TyreShape *tyre,
                const StrutShape *strut,
                double strut_length)
{
  const Setting g =
      find_setting (corner, tyre, corner->strut_foot, corner->strut_direction);
  const double seat = strut->seat_height;
  TyreClearance c = {
    .room = { [STRUT_TUBE] = room_to_bar (&g, strut->tube_radius, strut->tube_bottom,
                                          strut->tube_top),
              [STRUT_SPRING_SEAT] = room_to_bar (&g, strut->seat_radius, seat, seat),
              [STRUT_SPRING] = room_to_spring (corner, tyre, strut, strut_length) },
  };

  for (StrutPart part = 0; part < N_STRUT_PARTS; part++)
    if (c.room[part] < c.room[c.nearest])
      c.nearest = part;
  c.least = c.room[c.nearest];
  return c;
}
