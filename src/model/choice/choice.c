/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/choice/choice.h"
#include "model/choice/choice-search.h"
#include "model/choice/choice-sides.h"

#include <gsl/gsl_errno.h>
#include <math.h>

#define RADIANS(degrees) (G_PI / 180.0 * (degrees))
#define DEGREES(radians) (180.0 / G_PI * (radians))
#define SAME_PLACE 1e-9 /* mm */
#define COST_STEP 1e-6

static ChoiceAnswer
answer_plain (const ChoiceSides *sides, const Plate *plate, gboolean is_swapped)
{
  ChoiceAnswer answer = { .plate = plate, .is_swapped = is_swapped };

  for (guint side = 0; side < sides->n_sides; side++)
    answer.side[side] = choice_search (&sides->corner[side], plate, is_swapped, FALSE);
  choice_sides_join (sides, &answer);
  choice_sides_bring_together (sides, &answer);
  return answer;
}

/* By more than a bench can tell: an aim comes nearer by one of its units. */
static gboolean
is_worth_it (const ChoicePlace *with, const ChoicePlace *without)
{
  if (choice_place_fits (with) != choice_place_fits (without))
    return choice_place_fits (with);
  if (!choice_place_fits (with) || !(with->cost < without->cost))
    return FALSE;
  for (Aim aim = 0; aim < N_AIMS; aim++)
    if (fabs (without->aim_miss[aim]) - fabs (with->aim_miss[aim]) >
        aim_info (aim).unit_size)
      return TRUE;
  return FALSE;
}

/* FALSE where a bolt is not worth fitting. */
static gboolean
answer_with_bolt (const ChoiceSides *sides,
                  const ChoiceAnswer *plain,
                  ChoiceAnswer *answer)
{
  *answer = *plain;
  for (guint side = 0; side < sides->n_sides; side++) {
    /* no bolt moves the bearing in the tower */
    if (plain->side[side].faults == 0 ||
        (plain->side[side].faults & CHOICE_EDGE_TOO_NEAR))
      continue;
    const ChoicePlace with =
        choice_search (&sides->corner[side], plain->plate, plain->is_swapped, TRUE);
    if (is_worth_it (&with, &plain->side[side])) {
      answer->side[side] = with;
      answer->has_bolt = TRUE;
    }
  }
  choice_sides_join (sides, answer);
  choice_sides_bring_together (sides, answer);
  return answer->has_bolt;
}

static void
add_answers (const ChoiceSides *sides,
             const ChoiceQuestion *question,
             const Plate *plate,
             gboolean is_swapped,
             GArray *answers)
{
  const ChoiceAnswer plain = answer_plain (sides, plate, is_swapped);
  ChoiceAnswer with_bolt;

  g_array_append_val (answers, plain);
  if (question->try_bolt && answer_with_bolt (sides, &plain, &with_bolt))
    g_array_append_val (answers, with_bolt);
}

/* The places that say where a plate reaches: all of a list, else ends and middles. */
static GArray *
outline_of (const Plate *plate, gboolean is_swapped)
{
  GArray *outline = g_array_new (FALSE, FALSE, sizeof (MountOffset));
  const PlateScale along = plate_along_range (plate), across = plate_across_range (plate);
  const guint n_ways = plate_n_ways (plate);
  const guint n_along = n_ways > 0 ? 3 : 1, n_across = n_ways > 1 ? 3 : 1;

  for (guint place = 0; place < MAX (plate_n_places (plate), 1); place++)
    for (guint i = 0; i < n_along; i++)
      for (guint j = 0; j < n_across; j++) {
        const MountOffset at =
            plate_place (plate,
                         (PlateSetting){
                             .place = place,
                             .along = along.least + (along.most - along.least) * i / 2.0,
                             .across =
                                 across.least + (across.most - across.least) * j / 2.0,
                             .is_swapped = is_swapped });

        g_array_append_val (outline, at);
      }
  return outline;
}

static gboolean
reaches (const Plate *plate, gboolean is_swapped, MountOffset at)
{
  const MountOffset nearest = plate_place (plate, plate_nearest (plate, at, is_swapped));

  return hypot (nearest.inboard - at.inboard, nearest.rearward - at.rearward) <
         SAME_PLACE;
}

/* Whether the other side's plate reaches the same places as its own. */
static gboolean
is_same_swapped (const Plate *plate)
{
  g_autoptr (GArray) swapped = outline_of (plate, TRUE);

  for (guint i = 0; i < swapped->len; i++)
    if (!reaches (plate, FALSE, g_array_index (swapped, MountOffset, i)))
      return FALSE;
  return TRUE;
}

static int
class_of (const ChoiceAnswer *answer)
{
  return answer->meets ? 0 : answer->fits ? 1 : 2;
}

/* In steps, so that what rounding makes of equal costs decides nothing. */
static double
cost_of (const ChoiceAnswer *answer)
{
  return round ((answer->side[SIDE_LEFT].cost + answer->side[SIDE_RIGHT].cost) /
                COST_STEP) *
         COST_STEP;
}

static int
compare_numbers (double a, double b)
{
  return a < b ? -1 : a > b ? 1 : 0;
}

/* Where the cost is the same: what needs less done to the car. */
static int
compare_answers (gconstpointer first, gconstpointer second)
{
  const ChoiceAnswer *a = first, *b = second;

  if (class_of (a) != class_of (b))
    return class_of (a) - class_of (b);
  if (cost_of (a) != cost_of (b))
    return compare_numbers (cost_of (a), cost_of (b));
  if (a->has_bolt != b->has_bolt)
    return a->has_bolt - b->has_bolt;
  if (a->is_swapped != b->is_swapped)
    return a->is_swapped - b->is_swapped;
  return compare_numbers (choice_sides_distance (a), choice_sides_distance (b));
}

SpringCarrier
choice_usual_carrier (const Car *car, guint setup)
{
  const CarSprings *springs = car_setup_springs (car, setup);

  return springs->bar.is_there && !springs->coil.is_there ? CARRIED_BY_TORSION_BAR
                                                          : CARRIED_BY_COIL;
}

GArray *
choice_solve (const Car *car,
              const ChoiceQuestion *question,
              const Plate *const *plates,
              guint n_plates)
{
  GArray *answers = g_array_new (FALSE, FALSE, sizeof (ChoiceAnswer));
  gsl_error_handler_t *handler = gsl_set_error_handler_off ();
  const ChoiceSides sides = choice_sides_of (car, question);

  for (guint i = 0; i < n_plates; i++) {
    add_answers (&sides, question, plates[i], FALSE, answers);
    if (question->try_swap && plates[i]->can_swap && !is_same_swapped (plates[i]))
      add_answers (&sides, question, plates[i], TRUE, answers);
  }
  for (guint i = 0; i < answers->len; i++)
    choice_sides_explain (&sides, &g_array_index (answers, ChoiceAnswer, i));
  gsl_set_error_handler (handler);
  g_array_sort (answers, compare_answers);
  return answers;
}

ChoiceAnswer
choice_of_setup (const Car *car, const ChoiceQuestion *question, const Plate *plate)
{
  const CarSetup *setup = car_setup (car, MIN (question->setup, car->setups->len - 1));
  const gboolean is_swapped = setup->is_plate_swapped;
  const ChoiceSides sides = choice_sides_of (car, question);
  ChoiceAnswer answer = { .plate = plate, .is_swapped = is_swapped };

  for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++) {
    const ChoiceCorner *corner = &sides.corner[side];

    answer.side[side] =
        choice_corner_place (corner, plate,
                             plate_nearest (plate, corner->adjustment.mount, is_swapped),
                             0.0);
  }
  choice_sides_join (&sides, &answer);
  choice_sides_explain (&sides, &answer);
  return answer;
}

static double
bolt_deg (double own_deg, double bolt)
{
  return RADIANS (own_deg) == bolt ? own_deg : DEGREES (bolt);
}

CarSetup
choice_setup (const Car *car, guint like, const ChoiceAnswer *answer)
{
  const CarSetup *own = car_setup (car, MIN (like, car->setups->len - 1));
  const ChoicePlace *left = &answer->side[SIDE_LEFT];
  const ChoicePlace *right = &answer->side[SIDE_RIGHT];
  CarSetup setup = car_setup_copy (own);

  g_free (setup.name);
  g_free (setup.plate);
  setup.name = g_strdup (answer->plate->name);
  setup.plate = g_strdup (answer->plate->name);
  setup.is_plate_swapped = answer->is_swapped;
  setup.is_hidden = FALSE;
  setup.mount = left->mount;
  setup.corrections.camber_bolt_deg =
      bolt_deg (own->corrections.camber_bolt_deg, left->camber_bolt);
  setup.right = (CarRightSide){ 0 };
  if (right->mount.inboard != left->mount.inboard ||
      right->mount.rearward != left->mount.rearward ||
      right->camber_bolt != left->camber_bolt) {
    const double own_deg =
        own->right.is_own ? own->right.camber_bolt_deg : own->corrections.camber_bolt_deg;

    setup.right =
        (CarRightSide){ TRUE, right->mount, bolt_deg (own_deg, right->camber_bolt) };
  }
  return setup;
}
