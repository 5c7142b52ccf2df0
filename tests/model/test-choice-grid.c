/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A fine grid over all that a plate reaches never does better than the choice, whatever
 * is aimed for and whichever limit stands in the way. What a place of the grid costs is
 * worked out here again, from the kernel alone. */
#include "choice-fixture.h"

#include <math.h>

#define SEED 20260201u
#define GRID_STEP 0.25     /* mm */
#define BOLT_GRID_STEP 1.0 /* mm */
#define AT_LIMIT 1e-4      /* mm or degrees */
#define SAME_COST 1e-6
#define N_STATIONS 41
#define RADIANS(degrees) (G_PI / 180.0 * (degrees))
#define DEGREES(radians) (180.0 / G_PI * (radians))

static const ChoiceQuestion tried = { .setup = 1 };

/* One place of the grid: INFINITY where it passes a limit or cannot be assembled. */
typedef struct {
  const Car *car;
  const Plate *plate;
  MeasuredCorner measured;
  Adjustment adjustment;
  double toe, scrub; /* of the baseline */
  gboolean looks_at_travel;
} Reckoning;

static gboolean
aims_for_bump_steer (const Car *car)
{
  for (guint i = 0; i < car->targets->len; i++)
    if (g_array_index (car->targets, CarTarget, i).aim == AIM_BUMP_STEER)
      return TRUE;
  return FALSE;
}

static Reckoning
reckoning_of (const Car *car, const Plate *plate)
{
  const Adjustment baseline = car_adjustment (car_setup (car, 0));
  Reckoning reckoning = { .car = car,
                          .plate = plate,
                          .measured = car_measured_corner (car),
                          .adjustment = car_adjustment (car_setup (car, 1)),
                          .looks_at_travel = aims_for_bump_steer (car) ||
                                             plate->bearing_tilt_deg > 0.0 ||
                                             car_has_strut_shape (car) };
  MountPlace place;

  mount_place_solve (&reckoning.measured, &baseline, baseline.mount, &place);
  reckoning.toe = place.value[QUANTITY_TOE_IN];
  reckoning.scrub = place.value[QUANTITY_SCRUB_RADIUS];
  return reckoning;
}

typedef struct {
  double bump_steer, tilt, room;
} Travel;

/* FALSE where part of it cannot be assembled. */
static gboolean
look_at_travel (const Reckoning *r, const Adjustment *adjustment, Travel *travel)
{
  const double standing = adjustment->lowering, used = r->car->limits.travel_used_mm;
  const SweepRange range = { fmax (standing - used, -r->car->droop_mm),
                             fmin (standing + used, r->car->bump_mm), N_STATIONS };
  const Vec3 strut = vec3_unit (
      vec3_sub (r->measured.at[POINT_UPPER_MOUNT], r->measured.at[POINT_STRUT_FOOT]));
  const TyreShape tyre = car_tyre_shape (r->car);
  const StrutShape shape = car_strut_shape (r->car);
  Station stations[N_STATIONS], at_standing;
  double longest = 0.0;
  Corner corner;

  corner_assemble (&r->measured, adjustment, &corner);
  if (sweep_travel (&corner, range, 0.0, stations) < N_STATIONS ||
      station_solve (&corner, standing, 0.0, &at_standing) != POSE_OK)
    return FALSE;
  *travel = (Travel){ 0.0, 0.0, INFINITY };
  for (guint i = 0; i < N_STATIONS; i++) {
    const double *value = stations[i].measures.value;
    const double toe =
        DEGREES (value[QUANTITY_TOE_IN] - at_standing.measures.value[QUANTITY_TOE_IN]);
    const double cosine = vec3_dot (stations[i].pose.strut_direction, strut);

    travel->bump_steer = fmax (travel->bump_steer, fabs (toe));
    travel->tilt = fmax (travel->tilt, DEGREES (acos (fmin (cosine, 1.0))));
    longest = fmax (longest, value[QUANTITY_STRUT_LENGTH]);
  }
  if (car_has_strut_shape (r->car))
    travel->room = tyre_clearance (&corner, &tyre, &shape, longest).least;
  return TRUE;
}

static gboolean
is_over_edge (const Reckoning *r, MountOffset mount)
{
  const CarTower *tower = &r->car->tower;
  const double off = hypot (mount.inboard - tower->opening_inboard_mm,
                            mount.rearward - tower->opening_rearward_mm);

  return tower->opening_diameter_mm > 0.0 && r->plate->bearing_diameter_mm > 0.0 &&
         tower->opening_diameter_mm / 2.0 - off - r->plate->bearing_diameter_mm / 2.0 <
             r->car->limits.edge_margin_mm;
}

static double
value_of (const Reckoning *r, const MountPlace *place, const Travel *travel, Aim aim)
{
  static const Quantity quantities[N_AIMS] = {
    [AIM_CAMBER] = QUANTITY_CAMBER,
    [AIM_CASTER] = QUANTITY_CASTER,
    [AIM_SAI] = QUANTITY_SAI,
    [AIM_SCRUB_RADIUS] = QUANTITY_SCRUB_RADIUS,
    [AIM_TRAIL] = QUANTITY_TRAIL,
    [AIM_ROLL_CENTRE_HEIGHT] = QUANTITY_ROLL_CENTRE_HEIGHT,
  };

  switch (aim) {
  case AIM_TOE_CHANGE:
    return DEGREES (place->toe_as_moved - r->toe);
  case AIM_SCRUB_CHANGE:
    return place->value[QUANTITY_SCRUB_RADIUS] - r->scrub;
  case AIM_BUMP_STEER:
    return travel->bump_steer;
  case AIM_CAMBER:
  case AIM_CASTER:
  case AIM_SAI:
    return DEGREES (place->value[quantities[aim]]);
  default:
    return place->value[quantities[aim]];
  }
}

static double
reckon (const Reckoning *r, MountOffset mount, double bolt)
{
  Adjustment adjustment = r->adjustment;
  Travel travel = { 0.0, 0.0, INFINITY };
  MountPlace place;
  double cost = 0.0;

  adjustment.mount = mount;
  adjustment.corrections.clamp_tilt += bolt;
  if (is_over_edge (r, mount) ||
      mount_place_solve (&r->measured, &adjustment, mount, &place) != POSE_OK ||
      (r->looks_at_travel && !look_at_travel (r, &adjustment, &travel)) ||
      travel.room < r->car->limits.tyre_clearance_mm ||
      (r->plate->bearing_tilt_deg > 0.0 && travel.tilt > r->plate->bearing_tilt_deg))
    return INFINITY;
  for (guint i = 0; i < r->car->targets->len; i++) {
    const CarTarget *target = &g_array_index (r->car->targets, CarTarget, i);
    const double value = value_of (r, &place, &travel, target->aim);
    const double miss = fmax (fmax (value - target->most, target->least - value), 0.0) /
                        aim_info (target->aim).unit_size;

    cost += target->weight * miss * (miss + 0.5);
  }
  return cost;
}

static double
even (PlateScale scale, guint i, guint n)
{
  return n > 1 ? scale.least + (scale.most - scale.least) * i / (n - 1) : scale.least;
}

static guint
n_even (PlateScale scale, double step)
{
  return 1 + (guint) ceil ((scale.most - scale.least) / step);
}

/* What the grid's best costs, with @n_bolts even bolts at each place. */
static double
best_of_grid (const Reckoning *r, double step, guint n_bolts)
{
  const Plate *plate = r->plate;
  const double unit =
      plate->kind == PLATE_ECCENTRIC ? DEGREES (1.0 / plate->radius_mm) : 1.0;
  const PlateScale along = plate_along_range (plate), across = plate_across_range (plate);
  const double most_bolt = n_bolts > 1 ? r->car->limits.camber_bolt_deg : 0.0;
  const PlateScale bolts = { -most_bolt, most_bolt };
  const guint n_along = n_even (along, step * unit), n_across = n_even (across, step);
  double best = INFINITY;

  for (guint i = 0; i < n_along; i++)
    for (guint j = 0; j < n_across; j++) {
      const PlateSetting setting = { .along = even (along, i, n_along),
                                     .across = even (across, j, n_across) };
      const MountOffset mount = plate_place (plate, setting);

      for (guint b = 0; b < n_bolts; b++)
        best = fmin (best, reckon (r, mount, RADIANS (even (bolts, b, n_bolts))));
    }
  return best;
}

/* How many of a test's cases came to what, so that none of it is tested by accident. */
typedef struct {
  guint n_cases, n_met, n_failed, n_at_limit, n_bolts;
} Tally;

static gboolean
is_at_limit (const Car *car, const Plate *plate, const ChoicePlace *place)
{
  return place->edge_margin < car->limits.edge_margin_mm + AT_LIMIT ||
         place->clearance.least < car->limits.tyre_clearance_mm + AT_LIMIT ||
         (plate->bearing_tilt_deg > 0.0 &&
          DEGREES (place->bearing_tilt) > plate->bearing_tilt_deg - AT_LIMIT);
}

static void
check_against (const Car *car,
               const Plate *plate,
               const ChoiceAnswer *answer,
               double best,
               Tally *tally)
{
  const ChoicePlace *place = &answer->side[SIDE_LEFT];

  tally->n_cases++;
  tally->n_met += answer->meets;
  tally->n_failed += !answer->fits;
  tally->n_bolts += answer->has_bolt;
  if (answer->fits) {
    tally->n_at_limit += is_at_limit (car, plate, place);
    g_assert_cmpfloat (place->cost, <=, best + SAME_COST * (1.0 + best));
  } else {
    g_assert_cmpfloat (best, ==, INFINITY);
  }
}

static void
check_plate (const Car *car, const Plate *plate, Tally *tally)
{
  g_autoptr (GArray) answers = choice_solve (car, &tried, &plate, 1);
  const Reckoning reckoning = reckoning_of (car, plate);

  g_assert_cmpuint (answers->len, ==, 1);
  check_against (car, plate, &g_array_index (answers, ChoiceAnswer, 0),
                 best_of_grid (&reckoning, GRID_STEP, 1), tally);
}

static void
report (const Tally *tally)
{
  g_test_message ("%u cases: %u met, %u failed, %u at a limit, %u with a bolt",
                  tally->n_cases, tally->n_met, tally->n_failed, tally->n_at_limit,
                  tally->n_bolts);
}

/* More cases on demand, for a night. */
static guint
n_of (guint n)
{
  return g_test_thorough () ? 20 * n : n;
}

static Plate *
any_plate (Dice *dice)
{
  const double die = dice_between (dice, 0.0, 1.0);
  const PlateKind kind = die < 0.7    ? PLATE_CROSSED_SLOTS
                         : die < 0.85 ? PLATE_SLOT
                                      : PLATE_ECCENTRIC;

  return choice_fixture_plate (dice, kind, FALSE);
}

/* What some setting of the plate has, and a few units off it. */
static void
aim_near (Dice *dice, Car *car, const Plate *plate, Aim aim, gboolean is_range)
{
  const PlateSetting setting = choice_fixture_setting (dice, plate);
  const ChoicePlace place = choice_place (car, &tried, SIDE_LEFT, plate, setting, 0.0);
  const double unit = aim_info (aim).unit_size;
  const double least = place.aim_value[aim] + dice_between (dice, -4.0, 4.0) * unit;
  const double width = is_range ? dice_between (dice, 0.5, 6.0) * unit : 0.0;

  choice_fixture_aim (car, aim, least, least + width, dice_between (dice, 0.1, 2.0));
}

/* Each aim but bump steer by that chance, ranges and exact values. */
static void
aim_by_chance (Dice *dice, Car *car, const Plate *plate, double chance)
{
  for (Aim aim = 0; aim < AIM_BUMP_STEER; aim++)
    if (dice_between (dice, 0.0, 1.0) < chance)
      aim_near (dice, car, plate, aim, dice_between (dice, 0.0, 1.0) < 0.6);
}

static void
add_tower (Dice *dice, Car *car, Plate *plate)
{
  car->tower.opening_diameter_mm = dice_between (dice, 80.0, 100.0);
  car->tower.opening_inboard_mm = dice_between (dice, -5.0, 5.0);
  car->tower.opening_rearward_mm = dice_between (dice, -5.0, 5.0);
  plate->bearing_diameter_mm = dice_between (dice, 60.0, 75.0);
}

static void
test_aims (void)
{
  Dice dice = { SEED };
  Tally tally = { 0 };

  for (guint i = 0; i < n_of (16); i++) {
    g_autoptr (Car) car = choice_fixture_random_car (&dice);
    g_autoptr (Plate) plate = any_plate (&dice);

    aim_by_chance (&dice, car, plate, 0.4);
    check_plate (car, plate, &tally);
  }
  report (&tally);
  g_assert_cmpuint (tally.n_met, >=, tally.n_cases / 10);
  g_assert_cmpuint (tally.n_failed, ==, 0);
}

/* The opening's edge is a circle that cuts what the plate reaches. */
static void
test_edge (void)
{
  Dice dice = { SEED + 1 };
  Tally tally = { 0 };

  for (guint i = 0; i < n_of (20); i++) {
    g_autoptr (Car) car = choice_fixture_random_car (&dice);
    g_autoptr (Plate) plate = any_plate (&dice);

    aim_by_chance (&dice, car, plate, 0.4);
    add_tower (&dice, car, plate);
    check_plate (car, plate, &tally);
  }
  report (&tally);
  g_assert_cmpuint (tally.n_at_limit, >=, tally.n_cases / 4);
  g_assert_cmpuint (tally.n_failed, >=, 1);
}

static void
test_tilt (void)
{
  Dice dice = { SEED + 2 };
  Tally tally = { 0 };

  for (guint i = 0; i < n_of (8); i++) {
    g_autoptr (Car) car = choice_fixture_random_car (&dice);
    g_autoptr (Plate) plate = any_plate (&dice);

    aim_by_chance (&dice, car, plate, 0.4);
    if (i % 2 == 0)
      add_tower (&dice, car, plate);
    plate->bearing_tilt_deg = dice_between (&dice, 1.2, 3.0);
    check_plate (car, plate, &tally);
  }
  report (&tally);
  g_assert_cmpuint (tally.n_at_limit, >=, tally.n_cases / 4);
}

/* The most of many stations: where two of them are as far off, its slope jumps. */
static void
test_bump_steer (void)
{
  Dice dice = { SEED + 3 };
  Tally tally = { 0 };

  for (guint i = 0; i < n_of (6); i++) {
    g_autoptr (Car) car = choice_fixture_random_car (&dice);
    g_autoptr (Plate) plate = any_plate (&dice);

    aim_by_chance (&dice, car, plate, 0.2);
    if (i % 2 == 0)
      add_tower (&dice, car, plate);
    choice_fixture_aim (car, AIM_BUMP_STEER, 0.0, i % 3 == 0 ? 0.1 : 0.0,
                        dice_between (&dice, 0.1, 2.0));
    check_plate (car, plate, &tally);
  }
  report (&tally);
  g_assert_cmpuint (tally.n_failed, <, tally.n_cases / 2);
}

/* A limit of room that some bolt of some place just keeps. */
static void
add_tyre_limit (Dice *dice, Car *car, const Plate *plate)
{
  const PlateSetting setting = choice_fixture_setting (dice, plate);
  const double bolt = RADIANS (dice_between (dice, -1.7, 0.5));

  car->strut.tube_diameter_mm = 50.0;
  car->strut.tube_top_mm = 250.0;
  car->strut.spring_diameter_mm = dice_between (dice, 40.0, 120.0);
  car->strut.seat_height_mm = 180.0;
  car->limits.tyre_clearance_mm =
      choice_place (car, &tried, SIDE_LEFT, plate, setting, bolt).clearance.least;
}

/* Bolts too: by a coarser grid of places, each with many bolts. Camber is asked for that
 * few mounts reach alone. */
static void
test_bolt (void)
{
  const ChoiceQuestion with_bolt = { .setup = 1, .try_bolt = TRUE };
  Dice dice = { SEED + 4 };
  Tally tally = { 0 };

  for (guint i = 0; i < n_of (8); i++) {
    g_autoptr (Car) car = choice_fixture_random_car (&dice);
    g_autoptr (Plate) plate = any_plate (&dice);
    const Plate *plates[] = { plate };

    choice_fixture_aim (car, AIM_CAMBER, -3.0, -2.9, 1.0);
    aim_near (&dice, car, plate, AIM_CASTER, i % 2 == 0);
    add_tower (&dice, car, plate);
    add_tyre_limit (&dice, car, plate);

    g_autoptr (GArray) answers = choice_solve (car, &with_bolt, plates, 1);
    const ChoiceAnswer *answer = &g_array_index (answers, ChoiceAnswer, 0);
    const Reckoning reckoning = reckoning_of (car, plate);
    if (answer->has_bolt || !answer->fits)
      check_against (car, plate, answer, best_of_grid (&reckoning, BOLT_GRID_STEP, 15),
                     &tally);
  }
  report (&tally);
  g_assert_cmpuint (tally.n_bolts, >=, tally.n_cases / 2);
  g_assert_cmpuint (tally.n_at_limit, >=, tally.n_cases / 4);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/choice/grid/aims", test_aims);
  g_test_add_func ("/choice/grid/edge", test_edge);
  g_test_add_func ("/choice/grid/tilt", test_tilt);
  g_test_add_func ("/choice/grid/bump-steer", test_bump_steer);
  g_test_add_func ("/choice/grid/bolt", test_bolt);
  return g_test_run ();
}
