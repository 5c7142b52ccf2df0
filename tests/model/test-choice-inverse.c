/* SPDX-License-Identifier: GPL-3.0-or-later */
/* An alignment is worked out forwards for some place of a plate, and aimed for: the place
 * is found again, or another that has the same and lies nearer to the mount as measured.
 */
#include "choice-fixture.h"

#include <math.h>

#define SEED 20260131u
#define N_INVERSE 400
#define N_BOLTS 60
#define SAME_PLACE 1e-3 /* mm */
#define SAME_BOLT 1e-6  /* rad */
#define RADIANS(degrees) (G_PI / 180.0 * (degrees))

static const ChoiceQuestion tried = { .setup = 1 };

static double
distance (MountOffset a, MountOffset b)
{
  return hypot (a.inboard - b.inboard, a.rearward - b.rearward);
}

static double
from_as_measured (MountOffset mount)
{
  return hypot (mount.inboard, mount.rearward);
}

static void
aim_for_the_same (Car *car, Aim aim, const ChoicePlace *wanted)
{
  choice_fixture_aim (car, aim, wanted->aim_value[aim], wanted->aim_value[aim], 1.0);
}

/* Two aims fix a place in a rectangle and pick one of a list; along a slot or round a
 * circle one is enough. */
static void
test_places_are_found_again (void)
{
  Dice dice = { SEED };
  guint n_nearer = 0;

  for (guint i = 0; i < N_INVERSE; i++) {
    const PlateKind kind = i % N_PLATE_KINDS;
    g_autoptr (Car) car = choice_fixture_random_car (&dice);
    g_autoptr (Plate) plate = choice_fixture_plate (&dice, kind, i % 2 == 0);
    const PlateSetting setting = choice_fixture_setting (&dice, plate);
    const Plate *plates[] = { plate };
    const ChoicePlace wanted = choice_place (car, &tried, SIDE_LEFT, plate, setting, 0.0);

    g_assert_cmpuint (wanted.faults, ==, 0);
    aim_for_the_same (car, AIM_CAMBER, &wanted);
    if (plate_n_ways (plate) != 1)
      aim_for_the_same (car, AIM_CASTER, &wanted);

    g_autoptr (GArray) answers = choice_solve (car, &tried, plates, 1);
    const ChoiceAnswer *answer = &g_array_index (answers, ChoiceAnswer, 0);
    const MountOffset found = answer->side[SIDE_LEFT].mount;
    g_assert_true (answer->meets);
    g_assert_cmpfloat (answer->side[SIDE_LEFT].cost, ==, 0.0);
    if (distance (found, wanted.mount) > SAME_PLACE) {
      g_assert_cmpint (kind, ==, PLATE_ECCENTRIC);
      g_assert_cmpfloat (from_as_measured (found), <, from_as_measured (wanted.mount));
      n_nearer++;
    }
  }
  g_test_message ("%u of %d have their camber nearer to as measured too", n_nearer,
                  N_INVERSE);
  g_assert_cmpuint (n_nearer, <, N_INVERSE / 10);
}

/* Camber and steering-axis inclination together are the knuckle's own: only the bolt
 * changes their sum. */
static void
test_bolts_are_found_again (void)
{
  const ChoiceQuestion with_bolt = { .setup = 1, .try_bolt = TRUE };
  Dice dice = { SEED + 1 };

  for (guint i = 0; i < N_BOLTS; i++) {
    g_autoptr (Car) car = choice_fixture_random_car (&dice);
    g_autoptr (Plate) plate = choice_fixture_plate (&dice, PLATE_CROSSED_SLOTS, FALSE);
    const PlateSetting setting = choice_fixture_setting (&dice, plate);
    const double bolt = RADIANS (dice_between (&dice, -1.7, -0.5));
    const Plate *plates[] = { plate };
    const ChoicePlace wanted =
        choice_place (car, &tried, SIDE_LEFT, plate, setting, bolt);

    aim_for_the_same (car, AIM_CAMBER, &wanted);
    aim_for_the_same (car, AIM_CASTER, &wanted);
    aim_for_the_same (car, AIM_SAI, &wanted);

    g_autoptr (GArray) answers = choice_solve (car, &with_bolt, plates, 1);
    const ChoiceAnswer *answer = &g_array_index (answers, ChoiceAnswer, 0);
    const ChoicePlace *found = &answer->side[SIDE_LEFT];
    g_assert_cmpuint (answers->len, ==, 2);
    g_assert_true (answer->has_bolt && answer->meets);
    g_assert_cmpfloat (distance (found->mount, wanted.mount), <, SAME_PLACE);
    g_assert_cmpfloat_with_epsilon (found->camber_bolt, bolt, SAME_BOLT);
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/choice/inverse/places", test_places_are_found_again);
  g_test_add_func ("/choice/inverse/bolts", test_bolts_are_found_again);
  return g_test_run ();
}
