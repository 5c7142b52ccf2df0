/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A fine grid over all that a plate reaches never does better than the choice, whatever
 * is aimed for and whichever limit stands in the way. What a place of the grid costs is
 * worked out here again, from the kernel alone. */
#include "choice-fixture.h"

#include <math.h>
#include <string.h>

#define SEED 20260201u
#define GRID_STEP 0.25 /* mm */
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

    cost += target->weight * miss * miss;
  }
  return cost;
}

/* What the grid's best costs, of @n_bolts even bolts. */
static double
best_of_grid (const Reckoning *r, double step, guint n_bolts, double most_bolt)
{
  const gboolean is_circle = r->plate->kind == PLATE_ECCENTRIC;
  const PlateScale along = plate_along_range (r->plate);
  const PlateScale across = plate_across_range (r->plate);
  const double turn = is_circle ? DEGREES (step / r->plate->radius_mm) : step;
  const guint n_along = 1 + (guint) ((along.most - along.least) / turn);
  const guint n_across = 1 + (guint) ((across.most - across.least) / step);
  double best = INFINITY;

  for (guint i = 0; i <= n_along; i++)
    for (guint j = 0; j <= n_across; j++)
      for (guint b = 0; b < n_bolts; b++) {
        const PlateSetting setting = { .along = fmin (along.least + i * turn, along.most),
                                       .across =
                                           fmin (across.least + j * step, across.most) };
        const double bolt =
            n_bolts > 1 ? most_bolt * (2.0 * b / (n_bolts - 1) - 1.0) : 0.0;

        best = fmin (best, reckon (r, plate_place (r->plate, setting), bolt));
      }
  return best;
}

static ChoiceAnswer
solve_one (const Car *car,
           const ChoiceQuestion *question,
           const Plate *plate,
           gboolean has_bolt)
{
  g_autoptr (GArray) answers = choice_solve (car, question, &plate, 1);

  for (guint i = 0; i < answers->len; i++)
    if (!g_array_index (answers, ChoiceAnswer, i).has_bolt == !has_bolt)
      return g_array_index (answers, ChoiceAnswer, i);
  g_assert_false (has_bolt);
  g_assert_not_reached ();
}

static guint n_failed, n_met, n_cases;
static double t_grid, t_solve;

static void
check_against_grid (const Car *car, const Plate *plate)
{
  const gint64 t0 = g_get_monotonic_time ();
  const ChoiceAnswer answer = solve_one (car, &tried, plate, FALSE);
  const gint64 t1 = g_get_monotonic_time ();
  const Reckoning reckoning = reckoning_of (car, plate);
  const double best = best_of_grid (&reckoning, GRID_STEP, 1, 0.0);
  const gint64 t2 = g_get_monotonic_time ();
  const ChoicePlace *place = &answer.side[SIDE_LEFT];
  t_solve += t1 - t0;
  t_grid += t2 - t1;

  n_cases++;
  n_failed += !answer.fits;
  n_met += answer.meets;
  if (answer.fits ? place->cost > best + 1e-6 * (1.0 + best) : best < INFINITY)
    g_test_message (
        "BEATEN kind %d cost %.9g by %.9g faults %x at %.4f %.4f margin %.4f tilt %.4f/%.2f room %.4f bump %.4f",
        plate->kind, place->cost, best, place->faults, place->setting.along,
        place->setting.across, place->edge_margin, DEGREES (place->bearing_tilt),
        plate->bearing_tilt_deg, place->clearance.least, DEGREES (place->bump_steer));
}

static Plate *
any_plate (Dice *dice)
{
  const double kind = dice_between (dice, 0.0, 1.0);

  return choice_fixture_plate (dice,
                               kind < 0.7    ? PLATE_CROSSED_SLOTS
                               : kind < 0.85 ? PLATE_SLOT
                                             : PLATE_ECCENTRIC,
                               FALSE);
}

static void
aim_somewhere (Dice *dice, Car *car, const Plate *plate, Aim aim, gboolean is_range)
{
  const ChoicePlace a = choice_place (car, &tried, SIDE_LEFT, plate,
                                      choice_fixture_setting (dice, plate), 0.0);
  const double unit = aim_info (aim).unit_size;
  const double off = dice_between (dice, -4.0, 4.0) * unit;
  const double width = is_range ? dice_between (dice, 0.5, 6.0) * unit : 0.0;
  const double at = a.aim_value[aim] + off;

  choice_fixture_aim (car, aim, at, at + width, dice_between (dice, 0.1, 2.0));
}

static guint
n_of (guint n)
{
  return g_test_thorough () ? 10 * n : n;
}

static void
report (void)
{
  g_test_message ("%u cases, %u met, %u failed; solve %.1f ms grid %.1f", n_cases, n_met,
                  n_failed, t_solve / 1e3, t_grid / 1e3);
  n_cases = n_met = n_failed = 0;
  t_solve = t_grid = 0;
}

static void
test_aims (void)
{
  Dice dice = { SEED };

  for (guint i = 0; i < n_of (30); i++) {
    g_autoptr (Car) car = choice_fixture_random_car (&dice);
    g_autoptr (Plate) plate = any_plate (&dice);
    for (Aim aim = 0; aim < AIM_BUMP_STEER; aim++)
      if (dice_between (&dice, 0.0, 1.0) < 0.4)
        aim_somewhere (&dice, car, plate, aim, dice_between (&dice, 0.0, 1.0) < 0.6);
    check_against_grid (car, plate);
  }
  report ();
}

static void
add_tower (Dice *dice, Car *car, Plate *plate)
{
  car->tower =
      (CarTower){ dice_between (dice, 80.0, 100.0), dice_between (dice, -5.0, 5.0),
                  dice_between (dice, -5.0, 5.0) };
  plate->bearing_diameter_mm = dice_between (dice, 60.0, 75.0);
}

static void
test_edge (void)
{
  Dice dice = { SEED + 1 };

  for (guint i = 0; i < n_of (30); i++) {
    g_autoptr (Car) car = choice_fixture_random_car (&dice);
    g_autoptr (Plate) plate = any_plate (&dice);
    for (Aim aim = 0; aim < AIM_BUMP_STEER; aim++)
      if (dice_between (&dice, 0.0, 1.0) < 0.4)
        aim_somewhere (&dice, car, plate, aim, dice_between (&dice, 0.0, 1.0) < 0.6);
    add_tower (&dice, car, plate);
    check_against_grid (car, plate);
  }
  report ();
}

static void
test_tilt (void)
{
  Dice dice = { SEED + 2 };

  for (guint i = 0; i < n_of (8); i++) {
    g_autoptr (Car) car = choice_fixture_random_car (&dice);
    g_autoptr (Plate) plate = any_plate (&dice);
    for (Aim aim = 0; aim < AIM_BUMP_STEER; aim++)
      if (dice_between (&dice, 0.0, 1.0) < 0.4)
        aim_somewhere (&dice, car, plate, aim, dice_between (&dice, 0.0, 1.0) < 0.6);
    if (i % 2)
      add_tower (&dice, car, plate);
    plate->bearing_tilt_deg = dice_between (&dice, 1.0, 4.0);
    check_against_grid (car, plate);
  }
  report ();
}

static void
test_bump (void)
{
  Dice dice = { SEED + 3 };

  for (guint i = 0; i < n_of (8); i++) {
    g_autoptr (Car) car = choice_fixture_random_car (&dice);
    g_autoptr (Plate) plate = any_plate (&dice);
    for (Aim aim = 0; aim < AIM_BUMP_STEER; aim++)
      if (dice_between (&dice, 0.0, 1.0) < 0.2)
        aim_somewhere (&dice, car, plate, aim, dice_between (&dice, 0.0, 1.0) < 0.6);
    if (i % 2)
      add_tower (&dice, car, plate);
    choice_fixture_aim (car, AIM_BUMP_STEER, 0.0, i % 3 ? 0.0 : 0.1,
                        dice_between (&dice, 0.1, 2.0));
    check_against_grid (car, plate);
  }
  report ();
}

static void
test_tyre (void)
{
  Dice dice = { SEED + 4 };

  for (guint i = 0; i < n_of (8); i++) {
    g_autoptr (Car) car = choice_fixture_random_car (&dice);
    g_autoptr (Plate) plate = any_plate (&dice);
    for (Aim aim = 0; aim < AIM_BUMP_STEER; aim++)
      if (dice_between (&dice, 0.0, 1.0) < 0.4)
        aim_somewhere (&dice, car, plate, aim, dice_between (&dice, 0.0, 1.0) < 0.6);
    car->strut = (CarStrut){ 50, 0, 250, 0, 0, 0 };
    car->strut.seat_diameter_mm = 130;
    car->strut.seat_height_mm = 200;
    car->strut.spring_diameter_mm = dice_between (&dice, 100.0, 140.0);
    ChoicePlace p = choice_place (car, &tried, SIDE_LEFT, plate,
                                  choice_fixture_setting (&dice, plate), 0.0);
    car->limits.tyre_clearance_mm = p.clearance.least + dice_between (&dice, -0.0, 0.0);
    if (i < 10)
      g_test_message ("room %g %g %g", p.clearance.room[0], p.clearance.room[1],
                      p.clearance.room[2]);
    check_against_grid (car, plate);
  }
  report ();
}

static void
test_bolt (void)
{
  const ChoiceQuestion with_bolt = { .setup = 1, .try_bolt = TRUE };
  Dice dice = { SEED + 5 };
  guint n_bolts = 0;

  for (guint i = 0; i < n_of (20); i++) {
    g_autoptr (Car) car = choice_fixture_random_car (&dice);
    g_autoptr (Plate) plate = any_plate (&dice);
    for (Aim aim = 0; aim < AIM_BUMP_STEER; aim++)
      if (dice_between (&dice, 0.0, 1.0) < 0.3)
        aim_somewhere (&dice, car, plate, aim, dice_between (&dice, 0.0, 1.0) < 0.6);
    choice_fixture_aim (car, AIM_CAMBER, -3.0, -2.9, 1.0);
    add_tower (&dice, car, plate);
    car->strut = (CarStrut){ 50, 0, 250, 0, 0, 0 };
    car->limits.tyre_clearance_mm = -1000;
    ChoicePlace p = choice_place (car, &with_bolt, SIDE_LEFT, plate,
                                  choice_fixture_setting (&dice, plate),
                                  RADIANS (dice_between (&dice, -2.0, 1.0)));
    car->limits.tyre_clearance_mm = p.clearance.least;
    g_autoptr (GArray) answers =
                   choice_solve (car, &with_bolt, (const Plate *const *) &plate, 1);
    const Reckoning reckoning = reckoning_of (car, plate);
    const double best =
        best_of_grid (&reckoning, 1.0, 41, RADIANS (car->limits.camber_bolt_deg));
    const ChoiceAnswer *answer = &g_array_index (answers, ChoiceAnswer, 0);
    n_bolts += answer->has_bolt;
    n_cases++;
    n_failed += !answer->fits;
    n_met += answer->meets;
    const ChoicePlace *place = &answer->side[0];
    if (answer->has_bolt || !answer->fits)
      if (answer->fits ? place->cost > best + 1e-6 * (1.0 + best) : best < INFINITY)
        g_test_message (
            "BEATEN %u kind %d cost %.9g by %.9g faults %x at %.4f %.4f bolt %.4f margin %.4f  room %.4f/%.4f",
            i, plate->kind, place->cost, best, place->faults, place->setting.along,
            place->setting.across, DEGREES (place->camber_bolt), place->edge_margin,
            place->clearance.least, car->limits.tyre_clearance_mm);
  }
  g_test_message ("%u bolts", n_bolts);
  report ();
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/choice/grid/aims", test_aims);
  g_test_add_func ("/choice/grid/edge", test_edge);
  g_test_add_func ("/choice/grid/tilt", test_tilt);
  g_test_add_func ("/choice/grid/bump", test_bump);
  g_test_add_func ("/choice/grid/tyre", test_tyre);
  g_test_add_func ("/choice/grid/bolt", test_bolt);
  return g_test_run ();
}
