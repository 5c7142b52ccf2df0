/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every reason that random answers give, looked at again by places a little further on:
 * past an end or a limit that is blamed the aim must come nearer, what is said to hardly
 * move it must not, and an aim that is said to pull must lose. */
#include "choice-fixture.h"

#include <math.h>

#define N_CARS 60
#define FURTHER 0.02 /* mm on a scale, or degrees */
#define RADIANS(degrees) (G_PI / 180.0 * (degrees))
#define DEGREES(radians) (180.0 / G_PI * (radians))

static const ChoiceQuestion question = { .setup = 1, .try_bolt = TRUE };

typedef struct {
  const Car *car;
  const Plate *plate;
  const ChoicePlace *place; /* on the left */
  gboolean has_bolt;
  guint n_seen[CHOICE_BAR_NOT_SET_SO + 1];
} Check;

static double
miss (const ChoicePlace *place, Aim aim)
{
  return fabs (place->aim_miss[aim]);
}

/* The place that so much on each scale and of bolt leads to; ends do not count. */
static ChoicePlace
beside (const Check *check, double along, double across, double bolt_deg)
{
  g_autoptr (Plate) wide = plate_copy (check->plate);
  PlateSetting setting = check->place->setting;

  wide->along.least -= 50.0;
  wide->along.most += 50.0;
  wide->across.least -= 50.0;
  wide->across.most += 50.0;
  wide->turn_least_deg -= 50.0;
  wide->turn_most_deg += 50.0;
  setting.along += along;
  setting.across += across;
  return choice_place (check->car, &question, SIDE_LEFT, wide, setting,
                       check->place->camber_bolt + RADIANS (bolt_deg));
}

static gboolean
is_within (PlateScale scale, double value)
{
  return value >= scale.least && value <= scale.most;
}

/* On the plate and the bolts that there are. */
static gboolean
is_there (const Check *check, const ChoicePlace *place)
{
  return is_within (plate_along_range (check->plate), place->setting.along) &&
         is_within (plate_across_range (check->plate), place->setting.across) &&
         fabs (DEGREES (place->camber_bolt)) <= check->car->limits.camber_bolt_deg;
}

typedef gboolean (*Counts) (const Check *check, const ChoicePlace *place);

/* Whether some step that is judged by @counts brings the aim nearer. */
static gboolean
some_step (const Check *check, Aim aim, Counts counts)
{
  const int ways = (int) plate_n_ways (check->plate), n_along = ways > 0,
            n_across = ways > 1;
  const int n_bolt = check->has_bolt;

  for (int i = -n_along; i <= n_along; i++)
    for (int j = -n_across; j <= n_across; j++)
      for (int k = -n_bolt; k <= n_bolt; k++) {
        const ChoicePlace there = beside (check, i * FURTHER, j * FURTHER, k * FURTHER);

        if (miss (&there, aim) < miss (check->place, aim) && counts (check, &there))
          return TRUE;
      }
  return FALSE;
}

static gboolean
is_past_end_of_plate (const Check *check, const ChoicePlace *place)
{
  return !is_within (plate_along_range (check->plate), place->setting.along) ||
         !is_within (plate_across_range (check->plate), place->setting.across);
}

static gboolean
is_past_bolt (const Check *check, const ChoicePlace *place)
{
  return fabs (DEGREES (place->camber_bolt)) > check->car->limits.camber_bolt_deg;
}

static gboolean
is_past_edge (const Check *check, const ChoicePlace *place)
{
  (void) check;
  return place->faults & CHOICE_EDGE_TOO_NEAR;
}

static gboolean
is_past_tilt (const Check *check, const ChoicePlace *place)
{
  (void) check;
  return place->faults & CHOICE_BEARING_TILTS_TOO_FAR;
}

static gboolean
is_past_tyre (const Check *check, const ChoicePlace *place)
{
  (void) check;
  return place->faults & CHOICE_TYRE_TOO_NEAR;
}

static Aim against;

static gboolean
costs_the_other (const Check *check, const ChoicePlace *place)
{
  return is_there (check, place) && miss (place, against) > miss (check->place, against);
}

/* Of a list or all around a circle, with the bolt as it is. */
static gboolean
some_other_place (const Check *check, Aim aim, Counts counts)
{
  const guint n = plate_n_places (check->plate);
  const guint n_turns = check->plate->kind == PLATE_ECCENTRIC && n == 0 ? 25 : 0;
  const PlateScale turns = plate_along_range (check->plate);

  for (guint i = 0; i < n + n_turns; i++) {
    const PlateSetting setting = {
      .place = i, .along = turns.least + (turns.most - turns.least) * i / 24.0
    };
    const ChoicePlace there =
        choice_place (check->car, &question, SIDE_LEFT, check->plate, setting,
                      check->place->camber_bolt);

    if (miss (&there, aim) < miss (check->place, aim) && counts (check, &there))
      return TRUE;
  }
  return FALSE;
}

static gboolean
some_place (const Check *check, Aim aim, Counts counts)
{
  return some_step (check, aim, counts) || some_other_place (check, aim, counts);
}

static Aim asked;

static gboolean
is_clearly_nearer (const Check *check, const ChoicePlace *place)
{
  return is_there (check, place) &&
         miss (place, asked) <
             miss (check->place, asked) - 2e-3 * aim_info (asked).unit_size;
}

/* 5 mm of any scale move it by less than a unit, or by less than is missed. */
static gboolean
hardly_moves (const Check *check, Aim aim)
{
  const double unit = aim_info (aim).unit_size, from = check->place->aim_value[aim];
  const int ways = (int) plate_n_ways (check->plate);

  for (int i = -(ways > 0); i <= (ways > 0); i++)
    for (int j = -(ways > 1); j <= (ways > 1); j++)
      if (fabs (beside (check, 5.0 * i, 5.0 * j, 0.0).aim_value[aim] - from) >
          fmin (unit, miss (check->place, aim)) * (abs (i) + abs (j)))
        return FALSE;
  return TRUE;
}

static gboolean
is_true (const Check *check, Aim aim, ChoiceBar bar)
{
  against = bar.against;
  asked = aim;
  switch (bar.kind) {
  case CHOICE_BAR_FIXED:
    return check->plate->kind == PLATE_FIXED || plate_n_places (check->plate) == 1;
  case CHOICE_BAR_HARDLY_MOVES:
    return hardly_moves (check, aim);
  case CHOICE_BAR_SLOT_END:
  case CHOICE_BAR_TURN_END:
    return some_step (check, aim, is_past_end_of_plate);
  case CHOICE_BAR_BOLT_END:
    return check->has_bolt && some_step (check, aim, is_past_bolt);
  case CHOICE_BAR_EDGE:
    return some_place (check, aim, is_past_edge);
  case CHOICE_BAR_TILT:
    return some_place (check, aim, is_past_tilt);
  case CHOICE_BAR_TYRE:
    return some_place (check, aim, is_past_tyre);
  case CHOICE_BAR_OTHER_AIM:
    return bar.against != aim && some_place (check, aim, costs_the_other);
  case CHOICE_BAR_CIRCLE:
  case CHOICE_BAR_NO_NEARER:
    return !some_other_place (check, aim, is_clearly_nearer);
  default:
    return FALSE;
  }
}

static void
check_answer (const Car *car, const ChoiceAnswer *answer, Check *check)
{
  const ChoicePlace *place = &answer->side[SIDE_LEFT];

  check->plate = answer->plate;
  check->place = place;
  check->has_bolt = answer->has_bolt;
  for (guint i = 0; i < car->targets->len; i++) {
    const Aim aim = g_array_index (car->targets, CarTarget, i).aim;
    const ChoiceBar bar = place->bar[aim];

    if (place->faults != CHOICE_MISSES_AIM || place->aim_miss[aim] == 0.0) {
      g_assert_cmpuint (bar.kind, ==, CHOICE_BAR_NONE);
      continue;
    }
    check->n_seen[bar.kind]++;
    if (!is_true (check, aim, bar))
      g_error ("%s: a reason of kind %d does not hold, plate of kind %d",
               aim_info (aim).key, (int) bar.kind, (int) answer->plate->kind);
  }
}

/* Aims that many plates miss, and room that some of them use up. */
static void
ask_much (Dice *dice, Car *car)
{
  g_autoptr (Plate) fixed = choice_fixture_fixed (0.0, 0.0);
  const ChoicePlace as_it_is =
      choice_place (car, &question, SIDE_LEFT, fixed, (PlateSetting){ 0 }, 0.0);
  const double camber = as_it_is.aim_value[AIM_CAMBER] + dice_between (dice, -3.0, 1.0);
  const double caster = as_it_is.aim_value[AIM_CASTER] + dice_between (dice, -2.0, 3.0);

  choice_fixture_aim (car, AIM_CAMBER, camber - 0.2, camber, 1.0);
  choice_fixture_aim (car, AIM_CASTER, caster, caster + 0.5,
                      dice_between (dice, 0.1, 1.0));
  choice_fixture_aim (car, AIM_SCRUB_CHANGE, -2.0, 2.0, 0.2);
  if (dice_between (dice, 0.0, 1.0) < 0.3)
    car->tower.opening_diameter_mm = dice_between (dice, 66.0, 90.0);
  if (dice_between (dice, 0.0, 1.0) < 0.5) {
    car->section_width_mm = 185.0;
    car->strut.tube_diameter_mm = 50.0;
    car->strut.tube_top_mm = 250.0;
    car->limits.tyre_clearance_mm =
        choice_place (car, &question, SIDE_LEFT, fixed, (PlateSetting){ 0 }, 0.0)
            .clearance.least -
        dice_between (dice, 0.0, 4.0);
  }
}

static void
test_every_reason_holds (void)
{
  Dice dice = { 17 };
  Check check = { 0 };

  for (guint i = 0; i < N_CARS; i++) {
    g_autoptr (Car) car = choice_fixture_random_car (&dice);

    check.car = car;
    ask_much (&dice, car);
    for (PlateKind kind = 0; kind < N_PLATE_KINDS; kind++) {
      g_autoptr (Plate) plate = choice_fixture_plate (&dice, kind, i % 2);
      const Plate *plates[] = { plate };

      plate->bearing_diameter_mm = 44.0;
      if (i % 3 == 0)
        plate->bearing_tilt_deg = dice_between (&dice, 1.0, 4.0);
      g_autoptr (GArray) answers = choice_solve (car, &question, plates, 1);
      for (guint k = 0; k < answers->len; k++)
        check_answer (car, &g_array_index (answers, ChoiceAnswer, k), &check);
    }
  }
  for (ChoiceBarKind kind = CHOICE_BAR_FIXED; kind < CHOICE_BAR_NOT_SET_SO; kind++) {
    g_test_message ("reason %d: %u times", (int) kind, check.n_seen[kind]);
    g_assert_true (check.n_seen[kind] > 0 || kind == CHOICE_BAR_ASSEMBLY);
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/choice/reasons/hold", test_every_reason_holds);
  return g_test_run ();
}
