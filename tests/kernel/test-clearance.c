/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Room between tyre and strut over random corners, against projections to and fro between
 * the two bodies, which end in the nearest points and in a plane that keeps the bodies
 * apart. */

#include "check-data.h"
#include "random-corner.h"

#include "kernel/clearance.h"

#include <gsl/gsl_multimin.h>

#define N_CORNERS 300
#define N_WILD 500

/* A round bar, or the tyre, in the car's axes. */
typedef struct {
  Vec3 middle, axis;
  double half_length, radius;
} Bar;

typedef struct {
  Corner corner;
  Station station;
  TyreShape tyre;
  StrutShape strut;
  double strut_length;
} Case;

/* As a coil of its own has them. */
static void
dice_seats (Dice *dice, StrutShape *strut)
{
  strut->spring_drop = dice_between (dice, 0, 40);
  strut->spring_free = dice_between (dice, 80, 300);
  strut->lower_outboard = dice_between (dice, -15, 15);
  strut->lower_forward = dice_between (dice, -15, 15);
  strut->upper_outboard = dice_between (dice, -15, 15);
  strut->upper_forward = dice_between (dice, -15, 15);
}

static Case
dice_fitted_case (Dice *dice)
{
  RandomCase c = dice_case (dice);
  Case f = { 0 };

  c.adjustment.corrections.clamp_tilt = dice_between (dice, -0.04, 0.04);
  c.adjustment.corrections.wheel_spacer = dice_between (dice, -20, 60);
  f.corner = check_assemble (&c.measured, c.adjustment);
  g_assert_cmpint (station_solve (&f.corner, c.travel, c.rack, &f.station), ==, POSE_OK);
  f.tyre.unloaded_radius = c.measured.loaded_radius + dice_between (dice, 4, 15);
  f.tyre.section_width = dice_between (dice, 135, 225);
  f.strut.tube_radius = dice_between (dice, 20, 30);
  f.strut.tube_bottom = dice_between (dice, -60, 150);
  f.strut.tube_top = f.strut.tube_bottom + dice_between (dice, 50, 250);
  f.strut.seat_radius = dice_between (dice, 40, 90);
  f.strut.seat_height = dice_between (dice, 60, 330);
  f.strut.spring_radius = dice_between (dice, 35, 75);
  f.strut_length = f.station.measures.value[QUANTITY_STRUT_LENGTH];
  return f;
}

static Bar
bar_between (const Case *c, double radius, double bottom, double top)
{
  const Pose *p = &c->station.pose;

  return (Bar){ vec3_along (p->strut_foot, (bottom + top) / 2, p->strut_direction),
                p->strut_direction, (top - bottom) / 2, radius };
}

/* Between its seats as the springs have them at that travel. */
static Bar
bar_of_spring (const Case *c)
{
  const StrutShape *s = &c->strut;
  const SpringPlaces places = { .seats = { s->seat_height, s->spring_drop,
                                           s->lower_outboard, s->lower_forward,
                                           s->upper_outboard, s->upper_forward } };
  SpringPaths paths;

  g_assert_true (spring_paths (&c->corner, &c->station.pose, &places, &paths));
  const double length =
      fmin (s->spring_free, vec3_distance (paths.coil_bottom, paths.coil_top));

  g_assert_cmpfloat (s->seat_height + s->spring_drop, <, c->strut_length);
  return (Bar){ vec3_along (paths.coil_bottom, length / 2, paths.coil_direction),
                paths.coil_direction, length / 2, s->spring_radius };
}

static Bar
bar_of_part (const Case *c, StrutPart part)
{
  const StrutShape *s = &c->strut;

  if (part == STRUT_TUBE)
    return bar_between (c, s->tube_radius, s->tube_bottom, s->tube_top);
  if (part == STRUT_SPRING_SEAT)
    return bar_between (c, s->seat_radius, s->seat_height, s->seat_height);
  if (s->spring_free > 0)
    return bar_of_spring (c);
  return bar_between (c, s->spring_radius, s->seat_height,
                      fmax (s->seat_height, c->strut_length));
}

static Bar
tyre_of (const Case *c)
{
  return (Bar){ c->station.pose.wheel_centre, c->station.pose.spin_axis,
                c->tyre.section_width / 2, c->tyre.unloaded_radius };
}

static Vec3
nearest_in (const Bar *bar, Vec3 point)
{
  const Vec3 from = vec3_sub (point, bar->middle);
  const double along = vec3_dot (from, bar->axis);
  const Vec3 off = vec3_along (from, -along, bar->axis);
  const double share = fmin (1.0, bar->radius / fmax (vec3_length (off), 1e-300));

  return vec3_along (vec3_along (bar->middle, share, off),
                     CLAMP (along, -bar->half_length, bar->half_length), bar->axis);
}

/* How far @bar reaches along the unit vector @d. */
static double
reach (const Bar *bar, Vec3 d)
{
  const double along = vec3_dot (bar->axis, d);

  return vec3_dot (bar->middle, d) + bar->half_length * fabs (along) +
         bar->radius * vec3_length (vec3_reject (d, bar->axis));
}

typedef struct {
  const Bar *tyre, *bar;
  Vec3 line; /* unit: directions are looked for about it */
} Pair;

/* How far the planes square to @d that touch the two bodies are apart: never more than
 * the bodies are, and as much where @d is the line of their nearest points. */
static double
gap_along (const Pair *pair, Vec3 d)
{
  const Vec3 line = vec3_unit (d);

  return -reach (pair->bar, vec3_scale (line, -1.0)) - reach (pair->tyre, line);
}

static double
no_gap (const gsl_vector *x, void *data)
{
  const Pair *pair = data;
  const Vec3 p = vec3_any_normal (pair->line), q = vec3_cross (pair->line, p);

  return -gap_along (pair, vec3_along (vec3_along (pair->line, gsl_vector_get (x, 0), p),
                                       gsl_vector_get (x, 1), q));
}

/* The widest gap, looked for from @line by GSL's simplex. */
static double
widest_gap (const Bar *tyre, const Bar *bar, Vec3 line)
{
  Pair pair = { tyre, bar, line };
  gsl_multimin_function f = { no_gap, 2, &pair };
  gsl_multimin_fminimizer *m =
      gsl_multimin_fminimizer_alloc (gsl_multimin_fminimizer_nmsimplex2, 2);
  gsl_vector *x = gsl_vector_calloc (2), *step = gsl_vector_alloc (2);
  double gap = -INFINITY;

  for (double size = 0.3; size > 1e-5; size /= 10.0) {
    gsl_vector_set_all (step, size);
    gsl_multimin_fminimizer_set (m, &f, x, step);
    for (int i = 0; i < 200 && gsl_multimin_fminimizer_iterate (m) == GSL_SUCCESS; i++)
      if (gsl_multimin_fminimizer_size (m) < 1e-12)
        break;
    gsl_vector_memcpy (x, gsl_multimin_fminimizer_x (m));
    gap = fmax (gap, -gsl_multimin_fminimizer_minimum (m));
  }
  gsl_vector_free (x);
  gsl_vector_free (step);
  gsl_multimin_fminimizer_free (m);
  return gap;
}

/* Points to and fro between the bodies end in the nearest ones; with Nesterov's momentum,
 * dropped whenever they draw apart. Their distance is never less than that of the bodies.
 */
static double
nearest_points (const Bar *tyre, const Bar *bar, Vec3 *line)
{
  Vec3 now = bar->middle, before = now;
  double distance = INFINITY, momentum = 0.0;

  for (int i = 0; i < 6000 && distance > 1e-10; i++) {
    const double keep = momentum / (momentum + 3.0);
    const Vec3 ahead = vec3_along (now, keep, vec3_sub (now, before));
    const Vec3 next = nearest_in (bar, nearest_in (tyre, ahead));
    const double d = vec3_distance (next, nearest_in (tyre, next));

    momentum = d < distance ? momentum + 1.0 : 0.0;
    before = momentum > 0.0 ? now : next;
    now = next;
    distance = d;
  }
  *line = vec3_unit (vec3_sub (now, nearest_in (tyre, now)));
  return distance;
}

static void
check_apart (const Bar *tyre, const Bar *bar, double value, const char *what)
{
  Vec3 line;
  const double most = nearest_points (tyre, bar, &line);
  const double least = widest_gap (tyre, bar, line);

  check_near (what, most, least, most, 1e-7);
  check_near (what, most, value, least, 1e-8);
  g_assert_cmpfloat (value, <=, most + 1e-9);
}

static Bar
core_of (const Bar *tyre, double depth)
{
  Bar core = *tyre;

  core.half_length -= depth;
  core.radius -= depth;
  return core;
}

/* What lies deeper in the tyre than by @depth is a smaller tyre: the part stands clear of
 * one that is a little smaller still, and shares a point with one a little larger. */
static void
check_inside (const Bar *tyre, const Bar *bar, double depth, const char *what)
{
  const Bar clear = core_of (tyre, depth + 1e-3), shared = core_of (tyre, depth - 1e-3);
  Vec3 line;

  check_near (what, depth, nearest_points (&shared, bar, &line), 0.0, 1e-6);
  if (clear.half_length <= 0.0)
    return;
  nearest_points (&clear, bar, &line);
  g_assert_cmpfloat (widest_gap (&clear, bar, line), >, 0.0);
}

typedef struct {
  int apart, inside;
} Count;

static void
check_case (const Case *c, Count *count)
{
  static const char *const names[] = { "tube", "seat", "spring" };
  const TyreClearance got =
      tyre_clearance (&c->corner, &c->tyre, &c->strut, c->strut_length);
  const Bar tyre = tyre_of (c);

  for (StrutPart part = 0; part < N_STRUT_PARTS; part++) {
    const Bar bar = bar_of_part (c, part);

    if (got.room[part] > 0.0)
      check_apart (&tyre, &bar, got.room[part], names[part]);
    else
      check_inside (&tyre, &bar, -got.room[part], names[part]);
    count->apart += got.room[part] > 0.0;
    count->inside += got.room[part] <= 0.0;
    g_assert_cmpfloat (got.least, <=, got.room[part]);
  }
  g_assert_true (got.least == got.room[got.nearest]);
}

static void
test_second_way (void)
{
  Dice dice = { 501 };
  Count n = { 0 };

  for (int i = 0; i < N_CORNERS; i++) {
    const Case c = dice_fitted_case (&dice);

    check_case (&c, &n);
  }
  g_assert_cmpint (n.apart, >, N_CORNERS / 2);
  g_assert_cmpint (n.inside, >, N_CORNERS / 2);
}

static void
test_second_way_of_coils (void)
{
  Dice dice = { 508 };
  Count n = { 0 };

  for (int i = 0; i < N_CORNERS / 2; i++) {
    Case c = dice_fitted_case (&dice);

    c.strut.seat_height = dice_between (&dice, 60, 240);
    dice_seats (&dice, &c.strut);
    check_case (&c, &n);
  }
  g_assert_cmpint (n.apart, >, N_CORNERS / 4);
  g_assert_cmpint (n.inside, >, N_CORNERS / 4);
}

/* A strut that lies anyhow beside its wheel, or in it, as on no car. */
static Case
dice_wild_case (Dice *dice)
{
  Case c = dice_fitted_case (dice);
  Pose *p = &c.station.pose;
  const Vec3 u = { dice_between (dice, -1, 1), dice_between (dice, -1, 1),
                   dice_between (dice, 0.1, 1) };

  p->strut_direction = c.corner.strut_direction = vec3_unit (u);
  p->strut_foot = vec3_add (p->wheel_centre, (Vec3){ dice_between (dice, -350, 350),
                                                     dice_between (dice, -250, 150),
                                                     dice_between (dice, -200, 300) });
  c.corner.wheel_centre = p->wheel_centre;
  c.corner.spin_axis = p->spin_axis;
  c.corner.strut_foot = p->strut_foot;
  return c;
}

static void
test_second_way_of_wild_corners (void)
{
  Dice dice = { 777 };
  Count n = { 0 };

  for (int i = 0; i < N_WILD; i++) {
    const Case c = dice_wild_case (&dice);

    check_case (&c, &n);
  }
  g_assert_cmpint (n.apart, >, N_WILD / 2);
  g_assert_cmpint (n.inside, >, N_WILD / 2);
}

static void
test_travel_and_mount_change_nothing (void)
{
  Dice dice = { 502 };

  for (int i = 0; i < N_CORNERS; i++) {
    const Case c = dice_fitted_case (&dice);
    const RandomCase r = dice_case (&dice);
    Adjustment moved = r.adjustment;
    const Corner plain = check_assemble (&r.measured, (Adjustment){ 0 });

    moved.lowering = 30;
    moved.toe = i % 2 == 0 ? TOE_AS_MOVED : TOE_RESET;
    const Corner other = check_assemble (&r.measured, moved);
    const TyreClearance a = tyre_clearance (&plain, &c.tyre, &c.strut, 450);
    const TyreClearance b = tyre_clearance (&other, &c.tyre, &c.strut, 380);

    g_assert_true (a.room[STRUT_TUBE] == b.room[STRUT_TUBE]);
    g_assert_true (a.room[STRUT_SPRING_SEAT] == b.room[STRUT_SPRING_SEAT]);
  }
}

static StrutShape
shape_above_the_foot (void)
{
  return (StrutShape){ .tube_radius = 22,
                       .tube_bottom = 120,
                       .tube_top = 300,
                       .seat_radius = 30,
                       .seat_height = 150,
                       .spring_radius = 28 };
}

/* A spacer of any length, where the tyre's face is what comes near. */
static void
test_spacer_takes_it_away_by_its_length (void)
{
  const MeasuredCorner *cars[] = { &set_m, &set_p, &worked_set };
  const TyreShape tyre = { 320, 150 };
  const StrutShape strut = shape_above_the_foot ();

  for (size_t i = 0; i < G_N_ELEMENTS (cars); i++)
    for (double spacer = -5.0; spacer <= 40.0; spacer += 5.0) {
      const Corner bare = check_assemble (cars[i], (Adjustment){ 0 });
      const Corner spaced =
          check_assemble (cars[i], (Adjustment){ .corrections.wheel_spacer = spacer });
      const TyreClearance was = tyre_clearance (&bare, &tyre, &strut, 400);
      const TyreClearance is = tyre_clearance (&spaced, &tyre, &strut, 400);

      for (StrutPart part = 0; part < N_STRUT_PARTS; part++)
        check_near ("room", spacer, is.room[part] - was.room[part], spacer, 1e-11);
    }
}

/* Common practice, no published source: a camber bolt that leans the wheel in at the top
 * brings the tyre's top nearer to the strut. A wider tyre comes nearer by half of what it
 * is wider. */
static void
test_directions (void)
{
  const MeasuredCorner *cars[] = { &set_m, &set_p, &worked_set };
  const TyreShape tyre = { 320, 150 }, wider = { 320, 160 };
  const StrutShape strut = shape_above_the_foot ();

  for (size_t i = 0; i < G_N_ELEMENTS (cars); i++) {
    const Adjustment bolt = { .corrections.clamp_tilt = RADIANS (-1) };
    const Corner bare = check_assemble (cars[i], (Adjustment){ 0 });
    const Corner bolted = check_assemble (cars[i], bolt);
    const TyreClearance was = tyre_clearance (&bare, &tyre, &strut, 400);
    const TyreClearance is = tyre_clearance (&bolted, &tyre, &strut, 400);
    const TyreClearance wide_now = tyre_clearance (&bare, &wider, &strut, 400);

    for (StrutPart part = 0; part < N_STRUT_PARTS; part++) {
      g_assert_cmpfloat (is.room[part], <, was.room[part] - 1.0);
      check_near ("wider", part, was.room[part] - wide_now.room[part], 5, 1e-11);
    }
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/kernel/clearance/coils", test_second_way_of_coils);
  g_test_add_func ("/kernel/clearance/second-way", test_second_way);
  g_test_add_func ("/kernel/clearance/wild", test_second_way_of_wild_corners);
  g_test_add_func ("/kernel/clearance/travel-and-mount",
                   test_travel_and_mount_change_nothing);
  g_test_add_func ("/kernel/clearance/spacer", test_spacer_takes_it_away_by_its_length);
  g_test_add_func ("/kernel/clearance/directions", test_directions);
  return g_test_run ();
}
