/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/choice/choice-reasons.h"
#include "model/choice/choice-least-distance.h"
#include "model/choice/choice-reach.h"
#include "model/choice/choice-terms.h"

#include <math.h>

#define AT_END 1e-3 /* mm or degrees: nearer is there */
#define HARDLY 0.1  /* units for 1 mm: a bench cannot tell what 10 mm would change */
#define FULL_TURN 360.0
#define CIRCLE_SAMPLES 24
#define MOST_BARRIERS (2 * MOST_WAYS + MOST_ROWS)

/* An end or a limit that the place stands at, and the way past it. */
typedef struct {
  ChoiceBarKind kind;
  double out[MOST_WAYS];
} Barrier;

typedef struct {
  const ChoiceCorner *corner;
  const Plate *plate;
  const ChoicePlace *place;
  ChoiceReach reach;
  double camber_bolt; /* added, rad */
  double x[MOST_WAYS];
  double outputs[N_OUTPUTS];
  ChoiceModel model;
  Barrier barriers[MOST_BARRIERS];
  guint n_barriers;
} Here;

static double
dot (const double *a, const double *b)
{
  double sum = 0.0;

  for (guint i = 0; i < MOST_WAYS; i++)
    sum += a[i] * b[i];
  return sum;
}

static void
add_barrier (Here *here, ChoiceBarKind kind, const double *out)
{
  Barrier *barrier = &here->barriers[here->n_barriers++];

  barrier->kind = kind;
  for (guint i = 0; i < MOST_WAYS; i++)
    barrier->out[i] = out[i];
}

static ChoiceBarKind
end_of_way (const Here *here, guint way)
{
  if (way >= here->reach.n_plate_ways)
    return CHOICE_BAR_BOLT_END;
  return here->plate->kind == PLATE_ECCENTRIC ? CHOICE_BAR_TURN_END : CHOICE_BAR_SLOT_END;
}

/* A full circle has no ends. */
static gboolean
has_ends (const Here *here, guint way)
{
  return end_of_way (here, way) != CHOICE_BAR_TURN_END ||
         here->plate->turn_most_deg - here->plate->turn_least_deg < FULL_TURN;
}

static void
add_ends (Here *here)
{
  for (guint i = 0; i < here->reach.n_ways; i++) {
    double out[MOST_WAYS] = { 0 };

    out[i] = -1.0;
    if (has_ends (here, i) && here->x[i] < here->reach.least[i] + AT_END)
      add_barrier (here, end_of_way (here, i), out);
    out[i] = 1.0;
    if (has_ends (here, i) && here->x[i] > here->reach.most[i] - AT_END)
      add_barrier (here, end_of_way (here, i), out);
  }
}

static ChoiceBarKind
limit_of_output (guint output)
{
  if (output == OUTPUT_OFF_CENTRE_2)
    return CHOICE_BAR_EDGE;
  return output < OUTPUT_ROOM + N_STRUT_PARTS ? CHOICE_BAR_TYRE : CHOICE_BAR_TILT;
}

static void
add_limits (Here *here)
{
  Terms terms;

  terms_of_aims (here->corner, here->plate, here->outputs, &terms);
  for (guint r = 0; r < terms.n_rows; r++) {
    const TermRow *row = &terms.rows[r];
    double out[MOST_WAYS] = { 0 };

    if (row->term != WALL || term_row_value (row, here->outputs) < -AT_END)
      continue;
    for (guint i = 0; i < here->reach.n_ways; i++)
      out[i] = row->scale * row->sign * here->model.slope[i][row->output];
    add_barrier (here, limit_of_output (row->output), out);
  }
}

/* Which output says it, and the sign that makes its size grow. */
static guint
output_of_aim (const Here *here, Aim aim, double *sign)
{
  guint furthest = OUTPUT_TOE;

  *sign = 1.0;
  if (aim != AIM_BUMP_STEER)
    return OUTPUT_AIM + aim;
  for (guint i = OUTPUT_TOE; i < OUTPUT_TOE + TOE_CURVE_STATIONS; i++)
    if (fabs (here->outputs[i]) > fabs (here->outputs[furthest]))
      furthest = i;
  *sign = copysign (1.0, here->outputs[furthest]);
  return furthest;
}

/* Of the aim, in its units for each mm of the ways. */
static void
slopes_of_aim (const Here *here, Aim aim, double *slopes)
{
  double sign;
  const guint output = output_of_aim (here, aim, &sign);

  for (guint i = 0; i < MOST_WAYS; i++)
    slopes[i] = i < here->reach.n_ways
                    ? sign * here->model.slope[i][output] / aim_info (aim).unit_size
                    : 0.0;
}

static double
miss_in_units (const ChoicePlace *place, Aim aim)
{
  return place->aim_miss[aim] / aim_info (aim).unit_size;
}

/* What a way must move the aim by, for each mm, to be a way to it. */
static double
least_slope (const Here *here, Aim aim)
{
  return HARDLY * fmin (1.0, fabs (miss_in_units (here->place, aim)));
}

/* Of the miss, along ways that move it. */
static void
slopes_of_miss (const Here *here, Aim aim, double *g)
{
  const double side = copysign (1.0, here->place->aim_miss[aim]);
  const double least = least_slope (here, aim);

  slopes_of_aim (here, aim, g);
  for (guint i = 0; i < MOST_WAYS; i++)
    g[i] = fabs (g[i]) < least ? 0.0 : side * g[i];
}

/* What the step @p adds to the weighted cost of an aim, for each mm. */
static double
cost_rate (const Here *here, const CarTarget *target, const double *p)
{
  const double unit = aim_info (target->aim).unit_size, met = 2.0 * CHOICE_SAME * unit;
  const double value = here->place->aim_value[target->aim];
  const double t = miss_in_units (here->place, target->aim);
  double slopes[MOST_WAYS];

  slopes_of_aim (here, target->aim, slopes);
  const double rate = dot (slopes, p);
  if (t != 0.0)
    return target->weight * 2.0 * (fabs (t) + FIRST_UNIT) * copysign (1.0, t) * rate;
  if ((value > target->most - met && rate > 0.0) ||
      (value < target->least + met && rate < 0.0))
    return target->weight * 2.0 * FIRST_UNIT * fabs (rate);
  return 0.0;
}

/* The aim that the step costs most. */
static ChoiceBar
other_aim (const Here *here, Aim aim, const double *p)
{
  const GArray *targets = here->corner->targets;
  ChoiceBar bar = { .kind = CHOICE_BAR_NOT_SET_SO };
  double most = 0.0, sum = 0.0;

  for (guint i = 0; i < targets->len; i++) {
    const CarTarget *target = &g_array_index (targets, CarTarget, i);
    const double rate = cost_rate (here, target, p);

    sum += rate;
    if (target->aim != aim && rate > most) {
      most = rate;
      bar.against = target->aim;
    }
  }
  /* within what the search leaves of its conditions */
  if (most > 0.0 && sum > -CHOICE_SAME * most)
    bar.kind = CHOICE_BAR_OTHER_AIM;
  return bar;
}

static ChoiceBar
blame (const Here *here, const Inequality *held, const double *g)
{
  ChoiceBar bar = { .kind = CHOICE_BAR_NO_NEARER };
  double most = 0.0;

  for (guint k = 0; k < here->n_barriers; k++) {
    const double *out = here->barriers[k].out;
    const double share = held[k].multiplier * sqrt (dot (out, out));

    if (dot (out, g) < 0.0 && share > most) {
      most = share;
      bar.kind = here->barriers[k].kind;
    }
  }
  return bar;
}

/* By the slopes @g of the miss, which are not all 0. */
static ChoiceBar
bar_of_slopes (const Here *here, Aim aim, const double *g)
{
  Inequality held[MOST_BARRIERS] = { 0 };
  double y[LEAST_DISTANCE_MOST_UNKNOWNS] = { 0 }, p[MOST_WAYS];

  /* −nₖ·(y − g) ≥ 0 */
  for (guint k = 0; k < here->n_barriers; k++) {
    for (guint i = 0; i < MOST_WAYS; i++)
      held[k].row[i] = -here->barriers[k].out[i];
    held[k].level = dot (held[k].row, g);
  }
  if (here->n_barriers > 0)
    least_distance_solve (held, here->n_barriers, MOST_WAYS, y);
  for (guint i = 0; i < MOST_WAYS; i++)
    p[i] = y[i] - g[i];
  return dot (p, p) < dot (y, y) ? blame (here, held, g) : other_aim (here, aim, p);
}

/* Another setting of the plate, with the bolt as it is. */
static PlateSetting
sample_setting (const Here *here, guint i)
{
  const PlateScale turns = plate_along_range (here->plate);
  PlateSetting setting = here->place->setting;

  if (plate_n_ways (here->plate) == 0)
    setting.place = i;
  else
    setting.along = turns.least + (turns.most - turns.least) * i / CIRCLE_SAMPLES;
  return setting;
}

static guint
n_samples (const Plate *plate)
{
  return plate_n_ways (plate) == 0 ? plate_n_places (plate) : CIRCLE_SAMPLES + 1;
}

/* The place that comes nearest to the aim. @fastest: how many units for 1 mm the aim
 * changes by from here to any of them, at most. */
static ChoicePlace
nearest_to_aim (const Here *here, Aim aim, double *fastest)
{
  const double unit = aim_info (aim).unit_size;
  ChoicePlace best = *here->place;

  *fastest = 0.0;
  for (guint i = 0; i < n_samples (here->plate); i++) {
    const ChoicePlace place =
        choice_corner_place (here->corner, here->plate, sample_setting (here, i),
                             here->camber_bolt);
    const double way = hypot (place.mount.inboard - here->place->mount.inboard,
                              place.mount.rearward - here->place->mount.rearward);
    const double change = (place.aim_value[aim] - here->place->aim_value[aim]) / unit;

    if (way > AT_END && isfinite (change))
      *fastest = fmax (*fastest, fabs (change) / way);
    if (fabs (place.aim_miss[aim]) < fabs (best.aim_miss[aim]) - CHOICE_SAME * unit)
      best = place;
  }
  return best;
}

static ChoiceBar
bar_of_faults (guint faults)
{
  static const struct {
    ChoiceFault fault;
    ChoiceBarKind kind;
  } pairs[] = { { CHOICE_NOT_ASSEMBLED, CHOICE_BAR_ASSEMBLY },
                { CHOICE_EDGE_TOO_NEAR, CHOICE_BAR_EDGE },
                { CHOICE_BEARING_TILTS_TOO_FAR, CHOICE_BAR_TILT },
                { CHOICE_TYRE_TOO_NEAR, CHOICE_BAR_TYRE } };

  for (gsize i = 0; i < G_N_ELEMENTS (pairs); i++)
    if (faults & pairs[i].fault)
      return (ChoiceBar){ .kind = pairs[i].kind };
  return (ChoiceBar){ 0 };
}

/* The aim that costs more @there than here by the most. */
static ChoiceBar
aim_worse_there (const Here *here, Aim aim, const ChoicePlace *there)
{
  const GArray *targets = here->corner->targets;
  ChoiceBar bar = { .kind = CHOICE_BAR_NOT_SET_SO };
  double most = 0.0;

  for (guint i = 0; i < targets->len; i++) {
    const CarTarget *target = &g_array_index (targets, CarTarget, i);
    const double more =
        target->weight * (term_cost (fabs (miss_in_units (there, target->aim))) -
                          term_cost (fabs (miss_in_units (here->place, target->aim))));

    if (target->aim != aim && more > most) {
      most = more;
      bar.against = target->aim;
    }
  }
  if (most > 0.0 && there->cost > here->place->cost - SAME_COST)
    bar.kind = CHOICE_BAR_OTHER_AIM;
  return bar;
}

/* Of a list or a circle, by looking at its other places. */
static ChoiceBar
bar_of_samples (const Here *here, Aim aim)
{
  double fastest;
  const ChoicePlace nearest = nearest_to_aim (here, aim, &fastest);
  const guint past = nearest.faults & ~(guint) CHOICE_MISSES_AIM;

  if (fastest < least_slope (here, aim))
    return (ChoiceBar){ .kind = CHOICE_BAR_HARDLY_MOVES };
  if (nearest.aim_miss[aim] == here->place->aim_miss[aim])
    return (ChoiceBar){ .kind = here->plate->kind == PLATE_ECCENTRIC &&
                                        plate_n_ways (here->plate) > 0
                                    ? CHOICE_BAR_CIRCLE
                                    : CHOICE_BAR_NO_NEARER };
  return past != 0 ? bar_of_faults (past) : aim_worse_there (here, aim, &nearest);
}

static ChoiceBar
bar_of (const Here *here, Aim aim)
{
  const gboolean is_fixed =
      plate_n_ways (here->plate) == 0 && plate_n_places (here->plate) <= 1;
  double g[MOST_WAYS];

  slopes_of_miss (here, aim, g);
  if (dot (g, g) > 0.0)
    return bar_of_slopes (here, aim, g);
  if (is_fixed)
    return (ChoiceBar){ .kind = CHOICE_BAR_FIXED };
  if (here->plate->kind == PLATE_SLOT || here->plate->kind == PLATE_CROSSED_SLOTS)
    return (ChoiceBar){ .kind = CHOICE_BAR_HARDLY_MOVES };
  return bar_of_samples (here, aim);
}

/* FALSE where it cannot be assembled around here. */
static gboolean
look_around (Here *here, gboolean has_bolt)
{
  const PlateSetting setting = here->place->setting;

  here->reach = choice_reach_of (here->corner, here->plate, setting, has_bolt);
  here->reach.is_through_travel = choice_needs_travel (here->corner, here->plate);
  if (here->reach.n_plate_ways > 0)
    here->x[0] = setting.along / here->reach.unit[0];
  if (here->reach.n_plate_ways > 1)
    here->x[1] = setting.across / here->reach.unit[1];
  if (has_bolt)
    here->x[here->reach.n_plate_ways] =
        here->camber_bolt / here->reach.unit[here->reach.n_plate_ways];
  return choice_reach_probe (&here->reach, here->x, here->outputs) &&
         choice_reach_model (&here->reach, here->x, here->outputs, &here->model);
}

void
choice_reasons_find (const ChoiceCorner *corner,
                     const Plate *plate,
                     gboolean has_bolt,
                     ChoicePlace *place)
{
  Here here = { .corner = corner,
                .plate = plate,
                .place = place,
                .camber_bolt =
                    place->camber_bolt - corner->adjustment.corrections.clamp_tilt };
  const gboolean is_known = look_around (&here, has_bolt);

  if (is_known) {
    add_ends (&here);
    add_limits (&here);
  }
  for (Aim aim = 0; aim < N_AIMS; aim++)
    if (isfinite (place->aim_miss[aim]) && place->aim_miss[aim] != 0.0)
      place->bar[aim] =
          is_known ? bar_of (&here, aim) : (ChoiceBar){ .kind = CHOICE_BAR_ASSEMBLY };
  choice_reach_clear (&here.reach);
}
