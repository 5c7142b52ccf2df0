/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every sentence that an answer can come with, from an answer that was solved for. */
#include "check-data.h"
#include "choice-fixture.h"
#include "comma-locale.h"

#include "model/words/number-text.h"

#include <math.h>

static const ChoiceQuestion tried = { .setup = 1 };

static Car *
new_car (void)
{
  return choice_fixture_car (&set_m, 0.0, TOE_AS_MOVED);
}

static ChoiceAnswer
best_of (const Car *car, const ChoiceQuestion *question, const Plate *plate)
{
  g_autoptr (GArray) answers = choice_solve (car, question, &plate, 1);

  return g_array_index (answers, ChoiceAnswer, 0);
}

static void
check_sentence (const Car *car, const Plate *plate, const char *expected)
{
  const ChoiceAnswer answer = best_of (car, &tried, plate);
  g_autofree char *sentence = choice_sentence (car, &answer);

  g_assert_cmpstr (sentence, ==, expected);
}

/* "Camber stays … short of …: @end.", the numbers being the answer's own. */
static char *
miss_words (const ChoiceAnswer *answer, Aim aim, const char *verb, const char *end)
{
  const AimInfo info = aim_info (aim);
  const double miss = answer->side[SIDE_LEFT].aim_miss[aim];
  const double bound = answer->side[SIDE_LEFT].aim_value[aim] - miss;
  const char *unit = g_str_equal (info.unit, "°") ? "°" : " mm";
  const char *side = g_str_equal (verb, "is") ? "past" : "short of";
  g_autofree char *by = number_text (fabs (miss), info.decimals);
  g_autofree char *aimed_for = number_text (bound, info.decimals);

  g_assert_cmpfloat (miss, !=, 0.0);
  return g_strdup_printf ("%s %s %s%s %s %s%s: %s.", info.name, verb, by, unit, side,
                          aimed_for, unit, end);
}

static void
check_miss (const Car *car,
            const ChoiceQuestion *question,
            const Plate *plate,
            Aim aim,
            const char *verb,
            const char *end)
{
  const ChoiceAnswer answer = best_of (car, question, plate);
  g_autofree char *expected = miss_words (&answer, aim, verb, end);
  g_autofree char *sentence = choice_sentence (car, &answer);

  g_assert_cmpstr (sentence, ==, expected);
}

static void
aim_only (Car *car, Aim aim, double least, double most)
{
  g_array_set_size (car->targets, 0);
  choice_fixture_aim (car, aim, least, most, 1.0);
}

static void
test_meets (void)
{
  g_autoptr (Car) car = new_car ();
  g_autoptr (Plate) plate = choice_fixture_slot (0.0, 0.0, 20.0);

  check_sentence (car, plate,
                  "Nothing is aimed for: this is the place nearest to the mount as "
                  "measured.");
  aim_only (car, AIM_CAMBER, -1.6, -1.4);
  check_sentence (car, plate, "Meets every aim.");
}

static void
test_slot_ends (void)
{
  g_autoptr (Car) car = new_car ();
  g_autoptr (Plate) slot = choice_fixture_slot (0.0, 0.0, 8.0);

  aim_only (car, AIM_CAMBER, -9.0, -2.5);
  check_miss (car, &tried, slot, AIM_CAMBER, "stays", "the slot ends");
  /* as measured it leans −0.5° */
  aim_only (car, AIM_CAMBER, -0.2, 0.0);
  check_sentence (car, slot, "Camber is 0.30° past −0.20°: the slot ends.");
  aim_only (car, AIM_CAMBER, 0.1, 0.2);
  check_sentence (car, slot, "Camber stays 0.60° short of 0.10°: the slot ends.");
}

static void
test_lists_and_circles (void)
{
  const PlateHole two[] = { { NULL, 3.0, 0.0, NULL }, { NULL, 6.0, 0.0, NULL } };
  g_autoptr (Car) car = new_car ();
  g_autoptr (Plate) fixed = choice_fixture_fixed (0.0, 0.0);
  g_autoptr (Plate) holes = choice_fixture_holes (two, G_N_ELEMENTS (two));
  g_autoptr (Plate) circle = plate_new ();

  circle->kind = PLATE_ECCENTRIC;
  circle->radius_mm = 5.0;
  aim_only (car, AIM_TRAIL, 0.0, 1.0);
  check_miss (car, &tried, fixed, AIM_TRAIL, "is", "this mount cannot be set");
  aim_only (car, AIM_CAMBER, -4.0, -3.0);
  check_miss (car, &tried, holes, AIM_CAMBER, "stays", "no other place comes nearer");
  check_miss (car, &tried, circle, AIM_CAMBER, "stays", "its circle comes no nearer");
  circle->turn_least_deg = 90.0;
  circle->turn_most_deg = 180.0;
  check_miss (car, &tried, circle, AIM_CAMBER, "stays", "it turns no further");
}

/* Two aims that one slot cannot both serve: both are told, the costlier first. */
static void
test_other_aims (void)
{
  g_autoptr (Car) car = new_car ();
  g_autoptr (Plate) slot = choice_fixture_slot (0.0, 0.0, 20.0);

  choice_fixture_aim (car, AIM_CAMBER, -1.9, -1.8, 1.0);
  choice_fixture_aim (car, AIM_SAI, 11.0, 11.2, 0.5);
  for (guint camber_first = 0; camber_first <= 1; camber_first++) {
    g_array_index (car->targets, CarTarget, 0).weight = camber_first ? 0.2 : 1.0;
    const ChoiceAnswer answer = best_of (car, &tried, slot);
    g_autofree char *sai = miss_words (&answer, AIM_SAI, "is", "camber pulls against it");
    g_autofree char *camber = miss_words (&answer, AIM_CAMBER, "stays",
                                          "steering-axis inclination pulls against it");
    g_autofree char *expected =
        g_strjoin (" ", camber_first ? camber : sai, camber_first ? sai : camber, NULL);
    g_autofree char *sentence = choice_sentence (car, &answer);

    g_assert_cmpstr (sentence, ==, expected);
  }
}

/* Nothing that leans the wheel in is to blame for caster. */
static void
test_hardly_moves (void)
{
  const ChoiceQuestion with_bolt = { .setup = 1, .try_bolt = TRUE };
  const PlateHole row[] = { { NULL, 0.0, 0.0, NULL }, { NULL, 8.0, 0.0, NULL } };
  g_autoptr (Car) car = new_car ();
  g_autoptr (Plate) slot = choice_fixture_slot (0.0, 0.0, 8.0);
  g_autoptr (Plate) holes = choice_fixture_holes (row, G_N_ELEMENTS (row));
  g_autoptr (Plate) fixed = choice_fixture_fixed (0.0, 0.0);
  const Plate *const inboard[] = { slot, holes };
  const double caster =
      best_of (car, &tried, fixed).side[SIDE_LEFT].aim_value[AIM_CASTER];

  aim_only (car, AIM_CASTER, caster + 1.0, INFINITY);
  for (gsize i = 0; i < G_N_ELEMENTS (inboard); i++)
    check_miss (car, &with_bolt, inboard[i], AIM_CASTER, "stays",
                "this plate hardly moves it");
  /* with a bolt at its limit, for camber's sake */
  choice_fixture_aim (car, AIM_CAMBER, -9.0, -8.0, 1.0);
  const ChoiceAnswer answer = best_of (car, &with_bolt, holes);
  g_autofree char *first =
      miss_words (&answer, AIM_CAMBER, "stays", "the camber bolt turns no further");
  g_autofree char *second =
      miss_words (&answer, AIM_CASTER, "stays", "this plate hardly moves it");
  g_autofree char *expected = g_strjoin (" ", first, second, NULL);
  g_autofree char *sentence = choice_sentence (car, &answer);
  g_assert_cmpstr (sentence, ==, expected);
}

/* A miss that its usual decimals would hide, and a place that nobody looked around. */
static void
test_small_and_unexplained (void)
{
  g_autoptr (Car) car = new_car ();
  g_autoptr (Plate) fixed = choice_fixture_fixed (0.0, 0.0);

  aim_only (car, AIM_CAMBER, -0.497, 0.0);
  check_sentence (car, fixed, "Camber is 0.003° past −0.497°: this mount cannot be set.");

  ChoiceAnswer answer = { .plate = fixed };
  for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++)
    answer.side[side] = choice_place (car, &tried, side, fixed, (PlateSetting){ 0 }, 0.0);
  g_autofree char *sentence = choice_sentence (car, &answer);
  g_assert_cmpstr (sentence, ==, "Camber is 0.003° past −0.497°.");
}

/* A setup that is not the best its plate can do. */
static void
test_setup_as_it_stands (void)
{
  g_autoptr (Car) car = new_car ();
  g_autoptr (Plate) slot = choice_fixture_slot (0.0, 0.0, 20.0);

  aim_only (car, AIM_CAMBER, -1.6, -1.4);
  const ChoiceAnswer answer = choice_of_setup (car, &tried, slot);
  g_autofree char *sentence = choice_sentence (car, &answer);
  g_autofree char *expected =
      miss_words (&answer, AIM_CAMBER, "stays", "the plate could be set nearer");
  g_assert_cmpstr (sentence, ==, expected);
}

/* By hand: the opening's radius less the place less the bearing's radius. */
static void
test_tower (void)
{
  g_autoptr (Car) car = new_car ();
  g_autoptr (Plate) slot = choice_fixture_slot (0.0, 10.0, 30.0);

  car->tower.opening_diameter_mm = 80.0;
  aim_only (car, AIM_CAMBER, -4.0, -3.5);
  slot->bearing_diameter_mm = 57.0;
  check_sentence (car, slot, "Leaves 1.5 mm to the tower's edge, 2.0 mm are asked for.");
  slot->bearing_diameter_mm = 64.0;
  check_sentence (car, slot,
                  "Stands 2.0 mm past the tower's edge, 2.0 mm of room are asked for.");
  slot->bearing_diameter_mm = 56.04;
  check_sentence (car, slot,
                  "Leaves 1.98 mm to the tower's edge, 2.00 mm are asked for.");
  slot->bearing_diameter_mm = 50.0;
  check_miss (car, &tried, slot, AIM_CAMBER, "stays", "the tower's edge is too near");
}

static void
test_bearing (void)
{
  g_autoptr (Car) car = new_car ();
  g_autoptr (Plate) slot = choice_fixture_slot (0.0, 15.0, 30.0);
  const PlateSetting first = { .along = 15.0 };
  const double tilt =
      DEGREES (choice_place (car, &tried, SIDE_LEFT, slot, first, 0.0).bearing_tilt);
  g_autofree char *by = number_text (tilt, 1);
  g_autofree char *expected =
      g_strdup_printf ("Tilts the bearing by %s°, it allows 1.0°.", by);

  slot->bearing_tilt_deg = 1.0;
  check_sentence (car, slot, expected);
  slot->bearing_tilt_deg = tilt + 0.5;
  aim_only (car, AIM_CAMBER, -4.0, -3.5);
  check_miss (car, &tried, slot, AIM_CAMBER, "stays", "the bearing tilts no further");
}

static void
check_tyre (Car *car, double tube_diameter, double asked, const char *format)
{
  g_autoptr (Plate) fixed = choice_fixture_fixed (0.0, 0.0);

  car->strut.tube_diameter_mm = tube_diameter;
  car->strut.tube_top_mm = 200.0;
  car->limits.tyre_clearance_mm = asked;
  const ChoiceAnswer answer = best_of (car, &tried, fixed);
  g_autofree char *room = number_text (fabs (answer.side[SIDE_LEFT].clearance.least), 1);
  g_auto (GStrv) parts = g_strsplit (format, "#", 2);
  g_autofree char *expected = g_strconcat (parts[0], room, parts[1], NULL);
  g_autofree char *sentence = choice_sentence (car, &answer);

  g_assert_cmpstr (sentence, ==, expected);
}

/* A slim tube beside a narrow tyre, and one as thick as a barrel. */
static void
test_tyre (void)
{
  g_autoptr (Car) car = new_car ();

  car->section_width_mm = 100.0;
  check_tyre (car, 20.0, 60.0, "Leaves # mm to the tyre, 60.0 mm are asked for.");
  check_tyre (car, 300.0, 5.0,
              "Stands # mm inside the tyre, 5.0 mm of room are asked for.");
}

/* What fails on each side, and what fails between them: 0.2° against −0.5°. */
static void
test_sides (void)
{
  g_autoptr (Car) car = new_car ();
  g_autoptr (Plate) fixed = choice_fixture_fixed (0.0, 0.0);

  car->right.has_alignment = TRUE;
  car->right.camber_deg = 0.2;
  car->right.toe_in_deg = car->toe_in_deg;
  aim_only (car, AIM_CAMBER, -1.0, 1.0);
  check_sentence (car, fixed,
                  "Meets every aim. Camber differs by 0.7° between the sides, 0.5° are "
                  "allowed.");
  aim_only (car, AIM_CAMBER, -1.0, -0.25);
  check_sentence (car, fixed,
                  "Left: Meets every aim. Right: Camber stays 0.45° short of −0.25°: "
                  "this mount cannot be set. Camber differs by 0.7° between the sides, "
                  "0.5° are allowed.");
}

static void
test_bolt (void)
{
  const ChoiceQuestion with_bolt = { .setup = 1, .try_bolt = TRUE };
  g_autoptr (Car) car = new_car ();
  g_autoptr (Plate) fixed = choice_fixture_fixed (0.0, 0.0);

  aim_only (car, AIM_CAMBER, -1.5, -1.4);
  const ChoiceAnswer answer = best_of (car, &with_bolt, fixed);
  g_autofree char *bolt = number_text (DEGREES (answer.side[SIDE_LEFT].camber_bolt), 2);
  g_autofree char *expected =
      g_strdup_printf ("Meets every aim with a camber bolt at %s°.", bolt);
  g_autofree char *sentence = choice_sentence (car, &answer);
  g_assert_cmpstr (sentence, ==, expected);

  aim_only (car, AIM_CAMBER, -4.0, -3.5);
  check_miss (car, &with_bolt, fixed, AIM_CAMBER, "stays",
              "the camber bolt turns no further");
  /* room for half of what the bolt could do */
  car->strut.tube_diameter_mm = 40.0;
  car->strut.tube_top_mm = 200.0;
  car->limits.tyre_clearance_mm =
      choice_place (car, &tried, SIDE_LEFT, fixed, (PlateSetting){ 0 }, RADIANS (-0.9))
          .clearance.least;
  check_miss (car, &with_bolt, fixed, AIM_CAMBER, "stays", "the tyre is too near");
}

static void
test_not_assembled (void)
{
  g_autoptr (Car) car = new_car ();
  g_autoptr (Plate) fixed = choice_fixture_fixed (0.0, 0.0);

  car_setup (car, 1)->lowering_mm = 400.0;
  check_sentence (car, fixed,
                  "The linkage cannot be assembled everywhere in the travel used.");
  car_setup (car, 1)->lowering_mm = 0.0;
  car_setup (car, 0)->lowering_mm = 400.0;
  aim_only (car, AIM_SCRUB_CHANGE, -1.0, 1.0);
  check_sentence (car, fixed,
                  "Change of scrub radius cannot be told, as the baseline cannot be "
                  "assembled.");
}

static char *
count_of (const Car *car, const Plate *const *plates, guint n_plates)
{
  g_autoptr (GArray) answers = choice_solve (car, &tried, plates, n_plates);

  return choice_count_sentence (car, answers);
}

/* Of three, one cannot lean far enough and one has no room for its bearing. */
static void
test_count (void)
{
  g_autoptr (Car) car = new_car ();
  g_autoptr (Plate) slot = choice_fixture_slot (0.0, 0.0, 20.0);
  g_autoptr (Plate) fixed = choice_fixture_fixed (0.0, 0.0);
  g_autoptr (Plate) thick = choice_fixture_fixed (0.0, 0.0);
  const Plate *const plates[] = { slot, fixed, thick };

  car->tower.opening_diameter_mm = 80.0;
  thick->bearing_diameter_mm = 79.0;
  g_autofree char *without = count_of (car, plates, G_N_ELEMENTS (plates));
  g_assert_cmpstr (without, ==,
                   "No aims are set: 2 of 3 fit, and what changes the car least comes "
                   "first.");
  g_autofree char *one_fits = count_of (car, &plates[1], 2);
  g_assert_true (g_str_has_prefix (one_fits, "No aims are set: 1 of 2 fits, "));
  aim_only (car, AIM_CAMBER, -1.6, -1.4);
  g_autofree char *with = count_of (car, plates, G_N_ELEMENTS (plates));
  g_assert_cmpstr (with, ==, "1 of 3 meets every aim.");
  g_autofree char *nothing = count_of (car, plates, 0);
  g_assert_cmpstr (nothing, ==, "");
}

/* The locale's own decimal mark. */
static void
test_comma (void)
{
  g_autoptr (Car) car = new_car ();
  g_autoptr (Plate) slot = choice_fixture_slot (0.0, 0.0, 8.0);

  aim_only (car, AIM_CAMBER, -0.2, 0.0);
  if (!comma_locale_enter ())
    return;
  check_sentence (car, slot, "Camber is 0,30° past −0,20°: the slot ends.");
  comma_locale_leave ();
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/choice/words/meets", test_meets);
  g_test_add_func ("/choice/words/slot", test_slot_ends);
  g_test_add_func ("/choice/words/lists-and-circles", test_lists_and_circles);
  g_test_add_func ("/choice/words/other-aims", test_other_aims);
  g_test_add_func ("/choice/words/hardly-moves", test_hardly_moves);
  g_test_add_func ("/choice/words/small-and-unexplained", test_small_and_unexplained);
  g_test_add_func ("/choice/words/setup-as-it-stands", test_setup_as_it_stands);
  g_test_add_func ("/choice/words/tower", test_tower);
  g_test_add_func ("/choice/words/bearing", test_bearing);
  g_test_add_func ("/choice/words/tyre", test_tyre);
  g_test_add_func ("/choice/words/sides", test_sides);
  g_test_add_func ("/choice/words/bolt", test_bolt);
  g_test_add_func ("/choice/words/not-assembled", test_not_assembled);
  g_test_add_func ("/choice/words/count", test_count);
  g_test_add_func ("/choice/words/comma", test_comma);
  return g_test_run ();
}
