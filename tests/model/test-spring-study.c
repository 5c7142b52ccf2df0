/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Springs through travel: against figures computed independently, against derivatives and
 * roots by GSL, and by applying every answer and solving again. */

#include "check-data.h"
#include "spring-fixture.h"

#include <gsl/gsl_deriv.h>
#include <gsl/gsl_roots.h>

#define N_CASES 60
#define SEED 77001u

/* Set P with 3500 N standing on each front wheel and nothing unsprung. */
static Car *
car_p (void)
{
  Car *car = fixture_car_of (&set_p);

  car->body.front_mass_kg = 7000.0 / SPRING_GRAVITY;
  return car;
}

/* A coil of 25 N/mm on the strut that carries 3500 N as measured: rate with its change of
 * ratio, loads 40 mm either way; computed independently, to the last digit shown. */
static void
test_set_p_coil (void)
{
  Car *car = car_p ();

  car->springs = car_springs_none ();
  car->springs.coil = (CarCoil){ .is_there = TRUE,
                                 .rate_n_per_mm = 25.0,
                                 .free_length_mm = 420.0,
                                 .perch_mm = 60.0,
                                 .upper_drop_mm = 45.0 };
  g_auto (StandingCar) standing = standing_car_new (car);
  standing_car_raise (&standing, RAISE_PERCH, 0.0);
  const SpringCorner *corner = standing_corner (&standing);

  g_assert_cmpint (corner->stands, ==, STANDS_BY_SPRINGS);
  check_near ("standing", 0, corner->standing, 0.0, 1e-9);
  check_near ("axial", 0, corner->at_standing.coil_force, 3647.602, 5e-4);
  check_near ("rate", 0, corner->wheel_rate, 25.23063, 5e-6);
  check_near ("geometric", 0, corner->at_standing.geometric_rate, 2.21296, 5e-6);
  check_near ("−40", 0, fixture_load_at_rise (corner, -40.0), 2532.854, 5e-4);
  check_near ("+40", 0, fixture_load_at_rise (corner, 40.0), 4559.874, 5e-4);
}

/* A bar of Ø 20 and 600 mm, 2094.395 N·m/rad, on the arm hinge instead. */
static void
test_set_p_bar (void)
{
  Car *car = car_p ();

  car->springs = car_springs_none ();
  car->springs.bar.is_there = TRUE;
  car->springs.bar.n_sections = 1;
  car->springs.bar.sections[0].outer_mm = 20.0;
  car->springs.bar.sections[0].length_mm = 600.0;
  car->springs.bar.shear_modulus_gpa = 80.0;
  g_auto (StandingCar) standing = standing_car_new (car);
  standing_car_raise (&standing, RAISE_CLAMP_ANGLE, 0.0);
  const SpringCorner *corner = standing_corner (&standing);

  check_near ("standing", 0, corner->standing, 0.0, 1e-9);
  check_near ("torque", 0, corner->at_standing.bar_torque, 1135897, 0.5);
  check_near ("rate", 0, corner->wheel_rate, 19.79020, 5e-6);
  check_near ("stress", 0, corner->at_standing.bar_stress,
              16.0 * corner->at_standing.bar_torque / (G_PI * 8000.0), 1e-6);
}

typedef struct {
  const SpringCorner *corner;
  double weight;
} Weighing;

static double
overload (double travel, void *data)
{
  const Weighing *w = data;
  SpringStation s;
  Pose pose;

  g_assert_cmpint (pose_at_travel (&w->corner->corner->corner, travel, 0.0, NULL, &pose),
                   ==, POSE_OK);
  spring_law_station (w->corner->law, &w->corner->corner->corner, &pose, &s);
  return s.load - w->weight;
}

static double
root_between (gsl_function function, double low, double high)
{
  gsl_root_fsolver *solver = gsl_root_fsolver_alloc (gsl_root_fsolver_brent);

  gsl_root_fsolver_set (solver, &function, low, high);
  for (int i = 0; i < 100; i++)
    gsl_root_fsolver_iterate (solver);
  const double root = gsl_root_fsolver_root (solver);

  gsl_root_fsolver_free (solver);
  return root;
}

static void
test_standing (void)
{
  Dice dice = { SEED };

  for (int i = 0; i < N_CASES; i++) {
    g_auto (StandingCar) standing = dice_standing_car (&dice);
    const SpringCorner *corner = standing_corner (&standing);
    Weighing w = { corner, standing.springs->corner_weight };

    if (corner->stands != STANDS_BY_SPRINGS)
      continue;
    check_near ("weight", i, corner->at_standing.load, w.weight, 1e-8);
    check_near ("place", i, corner->standing,
                root_between ((gsl_function){ overload, &w }, corner->standing - 1.0,
                              corner->standing + 1.0),
                1e-9);
  }
}

static double
load_of_rise (double rise, void *data)
{
  const SpringCorner *corner = data;

  return fixture_load_at_rise (corner, rise);
}

/* Numerically, by the contact's own height. */
static void
test_wheel_rate (void)
{
  Dice dice = { SEED + 1 };

  for (int i = 0; i < N_CASES / 3; i++) {
    g_auto (StandingCar) standing = dice_standing_car (&dice);
    const SpringCorner *corner = standing_corner (&standing);
    const gsl_function f = { load_of_rise, (void *) corner };
    double rate, error;

    for (double rise = -30.0; rise <= 30.0; rise += 15.0) {
      const Station at = check_solve_at_contact (&corner->corner->corner, rise);
      SpringStation s;

      spring_law_station (corner->law, &corner->corner->corner, &at.pose, &s);
      gsl_deriv_central (&f, rise, 0.01, &rate, &error);
      if (isfinite (rate))
        check_near ("rate", i, s.rate, rate, 1e-6 * MAX (1.0, fabs (s.rate)));
    }
  }
}

/* Each is where a length or an angle says so, found by GSL on the geometry alone. */
typedef struct {
  const SpringCorner *corner;
  SpringEventKind kind;
} Happening;

static double
short_of_event (double travel, void *data)
{
  const Happening *h = data;
  const CarSprings *s = h->corner->springs;
  const Corner *corner = &h->corner->corner->corner;
  Station at;

  g_assert_cmpint (station_solve (corner, travel, 0.0, &at), ==, POSE_OK);
  const double strut = at.measures.value[QUANTITY_STRUT_LENGTH];
  const double up = strut - s->coil.perch_mm - s->coil.upper_drop_mm;
  const double coil =
      hypot (up, hypot (s->coil.upper_outboard_mm - s->coil.lower_outboard_mm,
                        s->coil.upper_forward_mm - s->coil.lower_forward_mm));

  switch (h->kind) {
  case SPRING_EVENT_TOPS_OUT:
    return s->coil.free_length_mm - coil;
  case SPRING_EVENT_COIL_BOUND:
    return s->coil.solid_length_mm - coil;
  case SPRING_EVENT_HELPER_SLACK:
    return s->helper.free_length_mm -
           (strut - s->helper.perch_mm - s->helper.upper_drop_mm);
  case SPRING_EVENT_HELPER_CLOSED:
    return s->helper.solid_length_mm -
           (strut - s->helper.perch_mm - s->helper.upper_drop_mm);
  case SPRING_EVENT_BAR_UNWOUND:
    return RADIANS (s->bar.clamp_angle_deg) + at.measures.value[QUANTITY_ARM_ANGLE];
  case SPRING_EVENT_DROOP_STOP:
    return travel + s->droop_stop_mm;
  default:
    return vec3_distance (set_m.at[POINT_UPPER_MOUNT], set_m.at[POINT_STRUT_FOOT]) -
           s->bump_stop.gap_mm - strut;
  }
}

/* Set M on a spring of every kind, each of which has its event. */
static Car *
eventful_car (void)
{
  const double stop[][2] = { { 0, 0 }, { 20, 800 }, { 50, 5000 } };
  Car *car = fixture_car_of (&set_m);
  CarSprings *s = &car->springs;

  *s = car_springs_none ();
  s->bar = (CarTorsionBar){ .is_there = TRUE,
                            .rate_nm_per_deg = 20.0,
                            .clamp_angle_deg = 10.0 };
  s->coil = (CarCoil){ .is_there = TRUE,
                       .rate_n_per_mm = 12.0,
                       .free_length_mm = 330.0,
                       .solid_length_mm = 230.0,
                       .perch_mm = 60.0,
                       .upper_drop_mm = 45.0,
                       .lower_outboard_mm = 20.0 };
  s->helper = (CarHelper){ .is_there = TRUE,
                           .place = HELPER_IN_PARALLEL,
                           .rate_n_per_mm = 4.0,
                           .free_length_mm = 340.0,
                           .solid_length_mm = 245.0,
                           .perch_mm = 50.0,
                           .upper_drop_mm = 50.0 };
  s->bump_stop = (CarBumpStop){ .is_there = TRUE, .gap_mm = 30.0 };
  s->bump_stop.table = fixture_table (3, stop);
  s->droop_stop_mm = 60.0;
  return car;
}

static void
test_events (void)
{
  g_auto (StandingCar) standing = standing_car_new (eventful_car ());
  const SpringCorner *corner = standing_corner (&standing);
  unsigned seen = 0;

  g_assert_cmpint (corner->n_events, ==, N_SPRING_EVENTS);
  for (gsize i = 0; i < corner->n_events; i++) {
    const SpringEvent *e = &corner->events[i];
    Happening h = { corner, e->kind };

    seen |= 1u << e->kind;
    g_assert_true (i == 0 || e->travel >= corner->events[i - 1].travel);
    g_assert_true (isfinite (e->load));
    check_near (spring_event_name (e->kind), i, e->travel,
                root_between ((gsl_function){ short_of_event, &h }, e->travel - 1.0,
                              e->travel + 1.0),
                1e-9);
  }
  g_assert_cmpint (seen, ==, (1u << N_SPRING_EVENTS) - 1);
}

/* Curves end where the strut does. */
static void
test_gaps (void)
{
  g_auto (StandingCar) standing = standing_car_new (eventful_car ());
  const SpringCorner *corner = standing_corner (&standing);

  for (gsize i = 0; i < STUDY_STATIONS; i++) {
    const double travel = corner->corner->stations[i].travel;
    gboolean is_past = FALSE;

    for (gsize k = 0; k < corner->n_events; k++) {
      const SpringEvent *e = &corner->events[k];

      is_past |= e->kind == SPRING_EVENT_DROOP_STOP && travel < e->travel;
      is_past |=
          (e->kind == SPRING_EVENT_COIL_BOUND || e->kind == SPRING_EVENT_HELPER_CLOSED) &&
          travel > e->travel;
    }
    g_assert_true (isnan (corner->stations[i].load) == is_past);
  }
}

static void
test_series_events (void)
{
  Car *car = eventful_car ();

  car->springs.helper = (CarHelper){ .is_there = TRUE,
                                     .rate_n_per_mm = 5.0,
                                     .free_length_mm = 60.0,
                                     .solid_length_mm = 15.0 };
  car->springs.coil.free_length_mm = 275.0;
  car->springs.coil.lower_outboard_mm = 0.0;
  car->springs.coil.solid_length_mm = 200.0;
  g_auto (StandingCar) standing = standing_car_new (car);
  const SpringCorner *corner = standing_corner (&standing);
  gboolean has_closed = FALSE;

  for (gsize i = 0; i < corner->n_events; i++) {
    Station at;

    g_assert_cmpint (corner->events[i].kind, !=, SPRING_EVENT_HELPER_SLACK);
    if (corner->events[i].kind != SPRING_EVENT_HELPER_CLOSED)
      continue;
    has_closed = TRUE;
    station_solve (&corner->corner->corner, corner->events[i].travel, 0.0, &at);
    /* 45 mm of helper, and the coil by the same force */
    check_near ("length", 0, at.measures.value[QUANTITY_STRUT_LENGTH] - 105.0,
                275.0 + 60.0 - 45.0 - 45.0 * 5.0 / 12.0, 1e-9);
  }
  g_assert_true (has_closed);
}

static void
test_where_it_does_not_stand (void)
{
  g_auto (StandingCar) standing = standing_car_new (eventful_car ());
  CarSprings *s = &standing.car->springs;

  *s = car_springs_none ();
  standing_car_solve (&standing);
  g_assert_cmpint (standing_corner (&standing)->stands, ==, STANDS_NOT_GIVEN);
  s->bar = (CarTorsionBar){ .is_there = TRUE, .rate_nm_per_deg = 1.0 };
  standing_car_solve (&standing);
  g_assert_cmpint (standing_corner (&standing)->stands, ==, STANDS_NOWHERE_TOO_SOFT);
  g_assert_true (isnan (standing_corner (&standing)->standing));
  g_assert_true (isnan (standing_corner (&standing)->frequency));
  s->bar.rate_nm_per_deg = 20.0;
  s->bar.clamp_angle_deg = 200.0;
  standing_car_solve (&standing);
  g_assert_cmpint (standing_corner (&standing)->stands, ==, STANDS_NOWHERE_TOO_STIFF);
  /* with a droop stop above where it would stand */
  standing_car_raise (&standing, RAISE_CLAMP_ANGLE, -50.0);
  g_assert_cmpint (standing_corner (&standing)->stands, ==, STANDS_BY_SPRINGS);
  s->droop_stop_mm = 49.5;
  standing_car_solve (&standing);
  g_assert_cmpint (standing_corner (&standing)->stands, ==, STANDS_NOWHERE_TOO_STIFF);
}

/* Between two stations the coil is bound before it carries the corner. */
static void
test_bound_before_it_stands (void)
{
  Car *car = car_p ();

  car->springs = car_springs_none ();
  car->springs.coil = (CarCoil){ .is_there = TRUE,
                                 .rate_n_per_mm = 25.0,
                                 .free_length_mm = 420.0,
                                 .perch_mm = 60.0,
                                 .upper_drop_mm = 45.0 };
  g_auto (StandingCar) standing = standing_car_new (car);
  standing_car_raise (&standing, RAISE_PERCH, 10.5);
  const double length = standing_corner (&standing)->at_standing.coil_length;

  standing.car->springs.coil.solid_length_mm = length - 0.1;
  standing_car_solve (&standing);
  check_near ("just free", 0, standing_corner (&standing)->standing, 10.5, 1e-9);
  standing.car->springs.coil.solid_length_mm = length + 0.1;
  standing_car_solve (&standing);
  g_assert_cmpint (standing_corner (&standing)->stands, ==, STANDS_NOWHERE_BOUND);
}

/* What lies past an end of the travel is told and not reached. */
static void
test_reached_events (void)
{
  g_auto (StandingCar) standing = standing_car_new (eventful_car ());
  const SpringCorner *corner = standing_corner (&standing);
  const SpringEvent *solid = spring_corner_solid (corner);
  gsize n_past = 0;

  g_assert_nonnull (solid);
  for (gsize i = 0; i < corner->n_events; i++) {
    const SpringEvent *e = &corner->events[i];
    SpringStation s;
    Pose pose;

    pose_at_travel (&corner->corner->corner, e->travel, 0.0, NULL, &pose);
    spring_law_station (corner->law, &corner->corner->corner, &pose, &s);
    if (e == solid || e->kind == SPRING_EVENT_DROOP_STOP)
      g_assert_true (e->is_reached); /* the ends themselves */
    else
      g_assert_true (e->is_reached == isfinite (s.load));
    n_past += e->is_reached ? 0 : 1;
  }
  g_assert_cmpuint (n_past, >, 0);
}

/* Applied, it stands where it was asked to. */
static void
test_height_cure (void)
{
  Dice dice = { SEED + 3 };
  int n_checked[2] = { 0 };

  for (int i = 0; i < N_CASES; i++) {
    g_auto (StandingCar) standing = dice_standing_car (&dice);
    const double travel = dice_between (&dice, -40.0, 40.0);
    const RaiseBy by = i % 2 == 0 ? RAISE_PERCH : RAISE_CLAMP_ANGLE;
    double value;

    if (!spring_study_height_cure (standing.springs, 0, travel, by, &value)) {
      g_assert_true (isnan (value));
      continue;
    }
    standing_car_raise (&standing, by, travel);
    check_near ("travel", i, standing_corner (&standing)->standing, travel, 1e-9);
    n_checked[by]++;
  }
  g_assert_cmpint (n_checked[RAISE_PERCH], >, N_CASES / 6);
  g_assert_cmpint (n_checked[RAISE_CLAMP_ANGLE], >, N_CASES / 6);
}

static void
test_no_cure (void)
{
  g_auto (StandingCar) standing = standing_car_new (car_p ());
  double value;

  standing.car->springs = car_springs_none ();
  standing_car_solve (&standing);
  g_assert_false (
      spring_study_height_cure (standing.springs, 0, 0.0, RAISE_PERCH, &value));
  g_assert_false (
      spring_study_height_cure (standing.springs, 0, 0.0, RAISE_CLAMP_ANGLE, &value));
  /* bound before it carries the corner */
  standing.car->springs.coil = (CarCoil){ .is_there = TRUE,
                                          .rate_n_per_mm = 5.0,
                                          .free_length_mm = 420.0,
                                          .solid_length_mm = 200.0 };
  standing_car_solve (&standing);
  g_assert_false (
      spring_study_height_cure (standing.springs, 0, 0.0, RAISE_PERCH, &value));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/spring-study/set-p-coil", test_set_p_coil);
  g_test_add_func ("/spring-study/set-p-bar", test_set_p_bar);
  g_test_add_func ("/spring-study/standing", test_standing);
  g_test_add_func ("/spring-study/wheel-rate", test_wheel_rate);
  g_test_add_func ("/spring-study/events", test_events);
  g_test_add_func ("/spring-study/gaps", test_gaps);
  g_test_add_func ("/spring-study/series-events", test_series_events);
  g_test_add_func ("/spring-study/where-it-does-not-stand", test_where_it_does_not_stand);
  g_test_add_func ("/spring-study/reached-events", test_reached_events);
  g_test_add_func ("/spring-study/bound-before-it-stands", test_bound_before_it_stands);
  g_test_add_func ("/spring-study/height-cure", test_height_cure);
  g_test_add_func ("/spring-study/no-cure", test_no_cure);
  return g_test_run ();
}
