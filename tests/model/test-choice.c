/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which place is taken, and in which order the plates stand. */
#include "car-fixture.h"
#include "check-data.h"
#include "choice-fixture.h"

#include <math.h>

#define SEED 77u
#define SAME_PLACE 1e-3 /* mm */

static const ChoiceQuestion tried = { .setup = 1 };

static ChoiceAnswer
nth (const GArray *answers, guint n)
{
  g_assert_cmpuint (n, <, answers->len);
  return g_array_index (answers, ChoiceAnswer, n);
}

static ChoiceAnswer
solve_one (const Car *car, const Plate *plate)
{
  g_autoptr (GArray) answers = choice_solve (car, &tried, &plate, 1);

  g_assert_cmpuint (answers->len, ==, 1);
  return nth (answers, 0);
}

static void
check_mount (const ChoicePlace *place, double inboard, double rearward)
{
  g_assert_cmpfloat_with_epsilon (place->mount.inboard, inboard, SAME_PLACE);
  g_assert_cmpfloat_with_epsilon (place->mount.rearward, rearward, SAME_PLACE);
}

static Car *
car_of_set_m (void)
{
  return choice_fixture_car (&set_m, 0.0, TOE_AS_MOVED);
}

/* A right side whose wheel was measured with that camber. */
static Car *
car_with_right (double camber_deg)
{
  Car *car = car_of_set_m ();

  car->right.has_alignment = TRUE;
  car->right.camber_deg = camber_deg;
  car->right.toe_in_deg = car->toe_in_deg;
  return car;
}

/* Every place of the list by itself. */
static void
test_lists_are_tried_whole (void)
{
  Dice dice = { SEED };

  for (guint i = 0; i < 60; i++) {
    const gboolean is_circle = i % 2 == 0;
    g_autoptr (Car) car = choice_fixture_random_car (&dice);
    g_autoptr (Plate) plate =
                   choice_fixture_plate (&dice, is_circle ? PLATE_ECCENTRIC : PLATE_HOLES,
                                         is_circle);
    double least = INFINITY;
    guint best = 0;

    choice_fixture_aim (car, AIM_CAMBER, -2.2, -2.0, 1.0);
    choice_fixture_aim (car, AIM_CASTER, 5.0, 5.0, dice_between (&dice, 0.2, 2.0));
    for (guint place = 0; place < plate_n_places (plate); place++) {
      const PlateSetting setting = { .place = place };
      const double cost = choice_place (car, &tried, SIDE_LEFT, plate, setting, 0.0).cost;

      if (cost < least) {
        least = cost;
        best = place;
      }
    }
    g_assert_cmpuint (solve_one (car, plate).side[SIDE_LEFT].setting.place, ==, best);
  }
}

/* Nothing aimed for: the foot of the perpendicular, the corner, the hole, the turn that
 * is nearest. */
static void
test_no_aims (void)
{
  const PlateHole three[] = { { NULL, 9.0, 0.0, NULL },
                              { NULL, 3.0, -4.0, NULL },
                              { NULL, 0.0, 7.0, NULL } };
  g_autoptr (Car) car = car_of_set_m ();
  g_autoptr (Plate) slot = choice_fixture_slot (90.0, -10.0, 10.0);
  g_autoptr (Plate) rectangle = choice_fixture_rectangle (4.0, 6.0);
  g_autoptr (Plate) holes = choice_fixture_holes (three, G_N_ELEMENTS (three));
  g_autoptr (Plate) circle = plate_new ();

  slot->inboard_mm = 7.0;
  slot->rearward_mm = 3.0;
  rectangle->inboard_mm = 9.0;
  rectangle->rearward_mm = -5.0;
  circle->kind = PLATE_ECCENTRIC;
  circle->inboard_mm = circle->rearward_mm = 6.0;
  circle->radius_mm = 2.0;
  const ChoiceAnswer on_slot = solve_one (car, slot);
  const ChoiceAnswer in_rectangle = solve_one (car, rectangle);
  const ChoiceAnswer in_hole = solve_one (car, holes);
  const ChoiceAnswer on_circle = solve_one (car, circle);
  const double nearest = 6.0 - 2.0 / sqrt (2.0);
  check_mount (&on_slot.side[SIDE_LEFT], 7.0, 0.0);
  check_mount (&in_rectangle.side[SIDE_LEFT], 5.0, 0.0);
  check_mount (&in_hole.side[SIDE_LEFT], 3.0, -4.0);
  check_mount (&on_circle.side[SIDE_LEFT], nearest, nearest);
  g_assert_true (on_slot.meets && in_rectangle.meets && in_hole.meets && on_circle.meets);
}

/* A range that many places meet: the one nearest to the mount as measured, at the range's
 * own end. */
static void
test_nearest_of_equals (void)
{
  g_autoptr (Car) car = car_of_set_m ();
  g_autoptr (Plate) plate = choice_fixture_rectangle (20.0, 20.0);
  double turned[] = { -0.02, 0.02 };

  choice_fixture_aim (car, AIM_CAMBER, -2.5, -1.5, 1.0);
  const ChoicePlace found = solve_one (car, plate).side[SIDE_LEFT];
  const double distance = hypot (found.mount.inboard, found.mount.rearward);
  g_assert_cmpuint (found.faults, ==, 0);
  g_assert_cmpfloat_with_epsilon (found.aim_value[AIM_CAMBER], -1.5, 1e-6);
  /* a little round the circle through it, camber is out of the range */
  for (guint i = 0; i < G_N_ELEMENTS (turned); i++) {
    const double angle = atan2 (found.mount.rearward, found.mount.inboard) + turned[i];
    const PlateSetting beside = { .along = distance * cos (angle),
                                  .across = distance * sin (angle) };

    g_assert_cmpfloat (choice_place (car, &tried, SIDE_LEFT, plate, beside, 0.0)
                           .aim_value[AIM_CAMBER],
                       >, found.aim_value[AIM_CAMBER]);
  }
}

static void
add_tower (Car *car, Plate *plate, double opening, double bearing)
{
  car->tower.opening_diameter_mm = opening;
  plate->bearing_diameter_mm = bearing;
}

/* However much an aim weighs, the edge of the tower is kept: 44 − 35 − 2 mm. */
static void
test_limits_are_never_traded (void)
{
  g_autoptr (Car) car = car_of_set_m ();
  g_autoptr (Plate) plate = choice_fixture_rectangle (20.0, 20.0);

  add_tower (car, plate, 88.0, 70.0);
  for (double weight = 1e-3; weight < 1e7; weight *= 100.0) {
    g_array_set_size (car->targets, 0);
    choice_fixture_aim (car, AIM_CAMBER, -5.0, -4.5, weight);
    choice_fixture_aim (car, AIM_CASTER, 8.0, 9.0, weight);
    const ChoiceAnswer answer = solve_one (car, plate);
    const ChoicePlace *place = &answer.side[SIDE_LEFT];

    g_assert_true (answer.fits && !answer.meets);
    g_assert_cmpfloat (place->edge_margin, >=, car->limits.edge_margin_mm);
    g_assert_cmpfloat_with_epsilon (hypot (place->mount.inboard, place->mount.rearward),
                                    7.0, SAME_PLACE);
  }
}

/* A slot across the car moves set M's camber 0.086° and its caster 0.0005° a millimetre
 * (check-cases, mount moved inboard): the caster cannot be had, and its trifle is not
 * worth the camber that can. By squares alone the camber would stay 0.009° short. */
static void
test_an_aim_that_can_be_met_is_not_given_away (void)
{
  g_autoptr (Car) car = car_of_set_m ();
  g_autoptr (Plate) plate = choice_fixture_slot (0.0, 0.0, 25.0);

  choice_fixture_aim (car, AIM_CAMBER, -1.6, -1.2, 1.0);
  choice_fixture_aim (car, AIM_CASTER, 5.0, INFINITY, 1.0);
  const ChoicePlace place = solve_one (car, plate).side[SIDE_LEFT];

  g_assert_cmpfloat (place.aim_miss[AIM_CAMBER], ==, 0.0);
  g_assert_cmpfloat_with_epsilon (place.aim_value[AIM_CAMBER], -1.2, 1e-4);
  g_assert_cmpfloat (place.aim_miss[AIM_CASTER], <, -1.0);
}

/* A bar by itself; with a coil beside it, or without any spring, the coil. A setup's own
 * springs go before the car's. */
static void
test_what_carries_is_what_it_stands_on (void)
{
  g_autoptr (Car) car = car_of_set_m ();

  g_assert_cmpint (choice_usual_carrier (car, 0), ==, CARRIED_BY_COIL);
  car->springs.bar.is_there = TRUE;
  g_assert_cmpint (choice_usual_carrier (car, 0), ==, CARRIED_BY_TORSION_BAR);
  car_setup (car, 0)->has_springs = TRUE;
  car_setup (car, 0)->springs.coil.is_there = TRUE;
  g_assert_cmpint (choice_usual_carrier (car, 0), ==, CARRIED_BY_COIL);
  car_setup (car, 0)->springs.bar.is_there = TRUE;
  g_assert_cmpint (choice_usual_carrier (car, 0), ==, CARRIED_BY_COIL);
}

/* No place is within the limit: the one that passes it least, and of those the best. */
static void
test_no_place_is_within (void)
{
  g_autoptr (Car) car = car_of_set_m ();
  g_autoptr (Plate) plate = choice_fixture_rectangle (5.0, 5.0);

  plate->inboard_mm = 20.0;
  plate->rearward_mm = 3.0;
  add_tower (car, plate, 80.0, 70.0);
  choice_fixture_aim (car, AIM_CAMBER, -3.0, -2.5, 1.0);
  const ChoiceAnswer answer = solve_one (car, plate);
  check_mount (&answer.side[SIDE_LEFT], 15.0, 0.0);
  g_assert_false (answer.fits || answer.meets);
  g_assert_true (answer.side[SIDE_LEFT].faults & CHOICE_EDGE_TOO_NEAR);

  car->tower.opening_diameter_mm = 0.0;
  car->strut.tube_diameter_mm = 60.0;
  car->strut.tube_top_mm = 300.0;
  car->limits.tyre_clearance_mm = 500.0;
  const ChoiceAnswer at_tyre = solve_one (car, plate);
  /* any place leaves the tyre the same: the aim decides */
  g_assert_true (at_tyre.side[SIDE_LEFT].faults & CHOICE_TYRE_TOO_NEAR);
  g_assert_cmpfloat_with_epsilon (at_tyre.side[SIDE_LEFT].aim_value[AIM_CAMBER], -2.5,
                                  1e-5);
}

static const char *
name_of (const GArray *answers, guint n)
{
  return nth (answers, n).plate->name;
}

static Plate *
named (Plate *plate, const char *name)
{
  g_free (plate->name);
  plate->name = g_strdup (name);
  return plate;
}

static void
test_order (void)
{
  g_autoptr (Car) car = car_of_set_m ();
  g_autoptr (Plate) fails = named (choice_fixture_slot (0.0, 0.0, 20.0), "fails");
  g_autoptr (Plate) far = named (choice_fixture_slot (0.0, 0.0, 4.0), "far");
  g_autoptr (Plate) near = named (choice_fixture_slot (0.0, 0.0, 8.0), "near");
  g_autoptr (Plate) meets = named (choice_fixture_slot (0.0, 0.0, 20.0), "meets");
  g_autoptr (Plate) long_way = named (choice_fixture_slot (-60.0, 0.0, 40.0), "long way");
  const Plate *plates[] = { fails, far, near, long_way, meets };

  car->tower.opening_diameter_mm = 80.0;
  fails->bearing_diameter_mm = 79.0;
  choice_fixture_aim (car, AIM_CAMBER, -2.0, -1.8, 1.0);
  g_autoptr (GArray) answers = choice_solve (car, &tried, plates, G_N_ELEMENTS (plates));
  g_assert_cmpuint (answers->len, ==, G_N_ELEMENTS (plates));
  g_assert_cmpstr (name_of (answers, 0), ==, "meets");
  g_assert_cmpstr (name_of (answers, 1), ==, "long way");
  g_assert_cmpstr (name_of (answers, 2), ==, "near");
  g_assert_cmpstr (name_of (answers, 3), ==, "far");
  g_assert_cmpstr (name_of (answers, 4), ==, "fails");
  g_assert_true (nth (answers, 1).meets && !nth (answers, 2).meets);
  g_assert_true (nth (answers, 3).fits && !nth (answers, 4).fits);
}

/* Both wheels are to stand alike, so the side that leans out more goes further in. */
static void
test_sides_are_set_apart (void)
{
  g_autoptr (Car) car = car_with_right (0.2);
  g_autoptr (Plate) plate = choice_fixture_rectangle (30.0, 20.0);

  choice_fixture_aim (car, AIM_CAMBER, -2.0, -2.0, 1.0);
  choice_fixture_aim (car, AIM_CASTER, 4.5, 4.5, 1.0);
  const ChoiceAnswer answer = solve_one (car, plate);
  const ChoicePlace *left = &answer.side[SIDE_LEFT], *right = &answer.side[SIDE_RIGHT];
  g_assert_true (answer.meets);
  g_assert_cmpfloat (right->mount.inboard, >, left->mount.inboard + 5.0);
  g_assert_cmpfloat_with_epsilon (answer.cross_camber, 0.0, 1e-8);
  g_assert_cmpfloat_with_epsilon (answer.cross_caster, 0.0, 1e-8);
}

/* The same plate at one place: what differs is what was measured. */
static void
test_cross (void)
{
  g_autoptr (Car) car = car_with_right (0.2);
  g_autoptr (Plate) plate = choice_fixture_fixed (0.0, 0.0);

  car->limits.cross_camber_deg = 0.71;
  const ChoiceAnswer within = solve_one (car, plate);
  g_assert_cmpfloat_with_epsilon (DEGREES (within.cross_camber), -0.7, 1e-9);
  g_assert_true (within.is_within_cross && within.meets);
  car->limits.cross_camber_deg = 0.69;
  const ChoiceAnswer past = solve_one (car, plate);
  g_assert_true (!past.is_within_cross && !past.meets && past.fits);
}

/* Ranges leave room: instead of the two nearest places two that differ as the limit has
 * it, and not further away than that takes. */
static void
test_sides_are_brought_together (void)
{
  g_autoptr (Car) car = car_with_right (0.2);
  g_autoptr (Plate) plate = choice_fixture_rectangle (30.0, 20.0);

  choice_fixture_aim (car, AIM_CAMBER, -2.0, 1.0, 1.0);
  const ChoiceAnswer answer = solve_one (car, plate);
  g_assert_true (answer.meets);
  g_assert_cmpfloat (fabs (DEGREES (answer.cross_camber)), <=, 0.5);
  g_assert_cmpfloat (fabs (DEGREES (answer.cross_camber)), >, 0.49);
  car->limits.cross_camber_deg = 0.8;
  const ChoiceAnswer at_ease = solve_one (car, plate);
  check_mount (&at_ease.side[SIDE_LEFT], 0.0, 0.0);
  check_mount (&at_ease.side[SIDE_RIGHT], 0.0, 0.0);
}

static void
test_alike_sides_are_equal (void)
{
  g_autoptr (Car) car = car_of_set_m ();
  g_autoptr (Plate) plate = choice_fixture_rectangle (20.0, 20.0);

  choice_fixture_aim (car, AIM_CAMBER, -1.9, -1.8, 1.0);
  const ChoiceAnswer answer = solve_one (car, plate);
  g_assert_cmpmem (&answer.side[SIDE_LEFT], sizeof (ChoicePlace),
                   &answer.side[SIDE_RIGHT], sizeof (ChoicePlace));
  g_assert_true (answer.cross_camber == 0.0 && answer.cross_caster == 0.0);
}

/* A camber slot fitted on the other side, turned by −90°, is a caster slot. */
static void
test_swap_changes_the_axis (void)
{
  const ChoiceQuestion with_swap = { .setup = 1, .try_swap = TRUE };
  g_autoptr (Car) car = car_of_set_m ();
  g_autoptr (Plate) slot = choice_fixture_slot (0.0, 0.0, 20.0);
  const Plate *plates[] = { slot };

  choice_fixture_aim (car, AIM_CASTER, 5.0, 5.2, 1.0);
  g_autoptr (GArray) not_to_be = choice_solve (car, &with_swap, plates, 1);
  g_assert_cmpuint (not_to_be->len, ==, 1);
  slot->can_swap = TRUE;
  slot->swap_turn_deg = -90.0;
  g_autoptr (GArray) not_asked = choice_solve (car, &tried, plates, 1);
  g_assert_cmpuint (not_asked->len, ==, 1);

  g_autoptr (GArray) answers = choice_solve (car, &with_swap, plates, 1);
  const ChoiceAnswer best = nth (answers, 0), other = nth (answers, 1);
  g_assert_true (best.is_swapped && best.meets && !other.is_swapped && !other.meets);
  g_assert_true (best.side[SIDE_LEFT].setting.is_swapped);
  g_assert_cmpfloat (best.side[SIDE_LEFT].mount.inboard, ==, 0.0);
  g_assert_cmpfloat (best.side[SIDE_LEFT].mount.rearward, >, 10.0);
  g_assert_cmpfloat (other.side[SIDE_LEFT].mount.rearward, ==, 0.0);
}

static guint
n_with_swap (const Car *car, Plate *plate, double turn)
{
  const ChoiceQuestion with_swap = { .setup = 1, .try_swap = TRUE };
  const Plate *plates[] = { plate };

  plate->can_swap = TRUE;
  plate->swap_turn_deg = turn;
  g_autoptr (GArray) answers = choice_solve (car, &with_swap, plates, 1);
  return answers->len;
}

/* Where the other side's plate reaches just the same, it is not tried. */
static void
test_swap_to_the_same (void)
{
  g_autoptr (Car) car = car_of_set_m ();
  g_autoptr (Plate) square = choice_fixture_rectangle (10.0, 10.0);
  g_autoptr (Plate) rectangle = choice_fixture_rectangle (10.0, 8.0);
  g_autoptr (Plate) diagonal = choice_fixture_slot (45.0, -5.0, 15.0);
  g_autoptr (Plate) steep = choice_fixture_slot (50.0, -5.0, 15.0);
  g_autoptr (Plate) fixed = choice_fixture_fixed (4.0, 4.0);
  g_autoptr (Plate) circle = plate_new ();

  circle->kind = PLATE_ECCENTRIC;
  circle->radius_mm = 6.0;
  g_assert_cmpuint (n_with_swap (car, square, -90.0), ==, 1);
  g_assert_cmpuint (n_with_swap (car, rectangle, -90.0), ==, 2);
  g_assert_cmpuint (n_with_swap (car, rectangle, 0.0), ==, 1);
  g_assert_cmpuint (n_with_swap (car, diagonal, -90.0), ==, 1);
  g_assert_cmpuint (n_with_swap (car, steep, -90.0), ==, 2);
  g_assert_cmpuint (n_with_swap (car, fixed, -90.0), ==, 1);
  g_assert_cmpuint (n_with_swap (car, fixed, 0.0), ==, 2);
  g_assert_cmpuint (n_with_swap (car, circle, 30.0), ==, 1);
  circle->inboard_mm = 3.0;
  g_assert_cmpuint (n_with_swap (car, circle, 30.0), ==, 2);
}

static GArray *
solve_with_bolt (const Car *car, const Plate *plate)
{
  const ChoiceQuestion with_bolt = { .setup = 1, .try_bolt = TRUE };

  return choice_solve (car, &with_bolt, &plate, 1);
}

static void
test_bolt_where_the_mount_is_not_enough (void)
{
  g_autoptr (Car) car = car_of_set_m ();
  g_autoptr (Plate) plate = choice_fixture_slot (0.0, 0.0, 8.0);

  choice_fixture_aim (car, AIM_CAMBER, -2.4, -2.2, 1.0);
  g_autoptr (GArray) reached = solve_with_bolt (car, plate);
  g_assert_cmpuint (reached->len, ==, 2);
  const ChoiceAnswer with = nth (reached, 0), without = nth (reached, 1);
  g_assert_true (with.has_bolt && with.meets && !without.has_bolt && !without.meets);
  g_assert_cmpfloat (with.side[SIDE_LEFT].camber_bolt, <, 0.0);
  g_assert_cmpfloat (without.side[SIDE_LEFT].camber_bolt, ==, 0.0);

  car_setup (car, 1)->corrections.camber_bolt_deg = -0.4;
  g_array_index (car->targets, CarTarget, 0).most = -9.0;
  g_array_index (car->targets, CarTarget, 0).least = -9.5;
  g_autoptr (GArray) out_of_reach = solve_with_bolt (car, plate);
  /* all of the bolts that can be had, whatever the setup has already */
  g_assert_cmpfloat_with_epsilon (DEGREES (
                                      nth (out_of_reach, 0).side[SIDE_LEFT].camber_bolt),
                                  -1.75, 1e-9);
}

/* No bolt is fitted for what a bench cannot tell, nor where nothing is missed. */
static void
test_bolt_only_where_it_shows (void)
{
  g_autoptr (Car) car = car_of_set_m ();
  g_autoptr (Plate) plate = choice_fixture_fixed (8.0, 0.0);
  const double camber = solve_one (car, plate).side[SIDE_LEFT].aim_value[AIM_CAMBER];

  choice_fixture_aim (car, AIM_CAMBER, -9.0, camber + 0.01, 1.0);
  g_autoptr (GArray) met = solve_with_bolt (car, plate);
  g_assert_cmpuint (met->len, ==, 1);
  g_array_index (car->targets, CarTarget, 0).most = camber - 0.09;
  g_autoptr (GArray) next_to = solve_with_bolt (car, plate);
  g_assert_cmpuint (next_to->len, ==, 1);
  g_array_index (car->targets, CarTarget, 0).most = camber - 0.11;
  g_autoptr (GArray) beside = solve_with_bolt (car, plate);
  g_assert_cmpuint (beside->len, ==, 2);
}

/* Only on the side that needs one. */
static void
test_bolt_on_one_side (void)
{
  g_autoptr (Car) car = car_with_right (0.4);
  g_autoptr (Plate) plate = choice_fixture_slot (0.0, 0.0, 8.0);

  choice_fixture_aim (car, AIM_CAMBER, -2.0, -1.0, 1.0);
  g_autoptr (GArray) answers = solve_with_bolt (car, plate);
  const ChoiceAnswer best = nth (answers, 0);
  g_assert_true (best.has_bolt && best.meets);
  g_assert_cmpfloat (best.side[SIDE_LEFT].camber_bolt, ==, 0.0);
  g_assert_cmpfloat (best.side[SIDE_RIGHT].camber_bolt, <, -0.005);
}

static void
check_equal_places (const ChoicePlace *a, const ChoicePlace *b, double same)
{
  g_assert_cmpfloat_with_epsilon (a->mount.inboard, b->mount.inboard, same);
  g_assert_cmpfloat_with_epsilon (a->mount.rearward, b->mount.rearward, same);
  g_assert_cmpfloat_with_epsilon (a->camber_bolt, b->camber_bolt, same);
  g_assert_cmpfloat_with_epsilon (a->value[QUANTITY_CAMBER], b->value[QUANTITY_CAMBER],
                                  same);
  g_assert_cmpfloat_with_epsilon (a->tie_rod_turns, b->tie_rod_turns, same);
  g_assert_cmpfloat_with_epsilon (a->bump_steer, b->bump_steer, same);
  g_assert_cmpfloat_with_epsilon (a->bearing_tilt, b->bearing_tilt, same);
  g_assert_cmpfloat_with_epsilon (a->side_force, b->side_force, 1e3 * same);
  g_assert_cmpfloat_with_epsilon (a->cost, b->cost, 1e3 * same);
  g_assert_cmpuint (a->faults, ==, b->faults);
}

/* The demo cars with their own aims: a place asked for by itself, and the setup that an
 * answer makes, say what the answer said. */
static void
test_answers_hold (void)
{
  const char *const demos[] = { "wren", "fieldfare", "lapwing" };
  const ChoiceQuestion all = { .setup = 1, .try_bolt = TRUE, .try_swap = TRUE };
  Dice dice = { SEED };

  for (guint i = 0; i < 12; i++) {
    g_autoptr (Car) car = fixture_demo (demos[i % G_N_ELEMENTS (demos)]);
    g_autoptr (Plate) plate =
                   named (choice_fixture_plate (&dice, i % N_PLATE_KINDS, i % 2 == 0),
                          "Blue plate");
    const Plate *plates[] = { plate };

    plate->can_swap = TRUE;
    plate->swap_turn_deg = -90.0;
    car_setup (car, 1)->corrections.camber_bolt_deg = 0.25;
    g_autoptr (GArray) answers = choice_solve (car, &all, plates, 1);
    for (guint n = 0; n < answers->len; n++) {
      const ChoiceAnswer answer = nth (answers, n);
      const CarSetup setup = choice_setup (car, 1, &answer);
      const guint index = car->setups->len;
      ChoiceQuestion again = all;

      g_assert_cmpstr (setup.name, ==, "Blue plate");
      g_assert_cmpstr (setup.plate, ==, "Blue plate");
      g_assert_cmpint (setup.is_plate_swapped, ==, answer.is_swapped);
      g_array_append_val (car->setups, setup);
      again.setup = index;
      const ChoiceAnswer reread = choice_of_setup (car, &again, plate);
      for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++) {
        const ChoicePlace *place = &answer.side[side];
        const double own = RADIANS (0.25);
        const ChoicePlace alone = choice_place (car, &all, side, plate, place->setting,
                                                place->camber_bolt - own);

        check_equal_places (&alone, place, 1e-12);
        check_equal_places (&reread.side[side], place, 1e-9);
      }
      g_assert_false (reread.has_bolt);
      g_assert_cmpint (reread.meets, ==, answer.meets);
      g_assert_cmpint (reread.fits, ==, answer.fits);
      g_assert_cmpfloat_with_epsilon (reread.cross_caster, answer.cross_caster, 1e-9);
    }
  }
}

/* What the baseline cannot say is no reason to look no further. */
static void
test_baseline_that_cannot_stand (void)
{
  g_autoptr (Car) car = car_of_set_m ();
  g_autoptr (Plate) plate = choice_fixture_slot (0.0, 0.0, 20.0);

  car_setup (car, 0)->lowering_mm = 450.0;
  choice_fixture_aim (car, AIM_CAMBER, -2.0, -2.0, 1.0);
  choice_fixture_aim (car, AIM_SCRUB_CHANGE, -1.0, 1.0, 1.0);
  const ChoiceAnswer answer = solve_one (car, plate);
  const ChoicePlace *place = &answer.side[SIDE_LEFT];
  g_assert_cmpfloat_with_epsilon (place->aim_value[AIM_CAMBER], -2.0, 1e-5);
  g_assert_true (isnan (place->aim_miss[AIM_SCRUB_CHANGE]));
  g_assert_true (answer.fits && !answer.meets);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/choice/lists", test_lists_are_tried_whole);
  g_test_add_func ("/choice/no-aims", test_no_aims);
  g_test_add_func ("/choice/nearest-of-equals", test_nearest_of_equals);
  g_test_add_func ("/choice/limits", test_limits_are_never_traded);
  g_test_add_func ("/choice/none-within", test_no_place_is_within);
  g_test_add_func ("/choice/order", test_order);
  g_test_add_func ("/choice/sides/apart", test_sides_are_set_apart);
  g_test_add_func ("/choice/sides/cross", test_cross);
  g_test_add_func ("/choice/sides/together", test_sides_are_brought_together);
  g_test_add_func ("/choice/sides/alike", test_alike_sides_are_equal);
  g_test_add_func ("/choice/swap/axis", test_swap_changes_the_axis);
  g_test_add_func ("/choice/swap/same", test_swap_to_the_same);
  g_test_add_func ("/choice/bolt/reaches", test_bolt_where_the_mount_is_not_enough);
  g_test_add_func ("/choice/bolt/shows", test_bolt_only_where_it_shows);
  g_test_add_func ("/choice/carrier", test_what_carries_is_what_it_stands_on);
  g_test_add_func ("/choice/not-given-away",
                   test_an_aim_that_can_be_met_is_not_given_away);
  g_test_add_func ("/choice/bolt/one-side", test_bolt_on_one_side);
  g_test_add_func ("/choice/answers-hold", test_answers_hold);
  g_test_add_func ("/choice/no-baseline", test_baseline_that_cannot_stand);
  return g_test_run ();
}
