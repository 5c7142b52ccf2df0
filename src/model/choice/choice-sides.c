/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/choice/choice-sides.h"
#include "model/choice/choice-reasons.h"
#include "model/choice/choice-search.h"
#include "model/choice/choice-terms.h"

#include <math.h>

#define RADIANS(degrees) (G_PI / 180.0 * (degrees))
#define WITHIN                                                                           \
  5e-4 /* °: what an aim may be missed by and still count as met, and more              \
        */

static gboolean
are_alike (const ChoiceCorner *a, const ChoiceCorner *b)
{
  return a->adjustment.corrections.clamp_tilt == b->adjustment.corrections.clamp_tilt &&
         a->baseline_toe == b->baseline_toe && a->baseline_scrub == b->baseline_scrub;
}

ChoiceSides
choice_sides_of (const Car *car, const ChoiceQuestion *question)
{
  ChoiceSides sides = { .car = car };

  for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++)
    sides.corner[side] = choice_corner_of (car, question, side);
  sides.n_sides =
      car_has_right (car) || !are_alike (&sides.corner[0], &sides.corner[1]) ? 2 : 1;
  return sides;
}

gboolean
choice_place_fits (const ChoicePlace *place)
{
  return (place->faults & ~(guint) CHOICE_MISSES_AIM) == 0;
}

void
choice_sides_join (const ChoiceSides *sides, ChoiceAnswer *answer)
{
  const CarLimits *limits = &sides->car->limits;
  const ChoicePlace *left = &answer->side[SIDE_LEFT];
  const ChoicePlace *right = &answer->side[SIDE_RIGHT];

  if (sides->n_sides == 1)
    answer->side[SIDE_RIGHT] = *left;
  answer->cross_camber = left->value[QUANTITY_CAMBER] - right->value[QUANTITY_CAMBER];
  answer->cross_caster = left->value[QUANTITY_CASTER] - right->value[QUANTITY_CASTER];
  answer->is_within_cross =
      fabs (answer->cross_camber) <= RADIANS (limits->cross_camber_deg) &&
      fabs (answer->cross_caster) <= RADIANS (limits->cross_caster_deg);
  answer->fits = choice_place_fits (left) && choice_place_fits (right);
  answer->meets = left->faults == 0 && right->faults == 0 && answer->is_within_cross;
}

/* Adds to @targets that @aim is to be within @most of @middle, in what it may be anyway.
 */
static void
narrow (GArray *targets, Aim aim, double middle, double most)
{
  const double reach = fmax (most - WITHIN, 0.0);
  CarTarget near = {
    .aim = aim, .least = middle - reach, .most = middle + reach, .weight = 1.0
  };

  for (guint i = 0; i < targets->len; i++) {
    CarTarget *target = &g_array_index (targets, CarTarget, i);

    if (target->aim == aim) {
      target->least = CLAMP (near.least, target->least, target->most);
      target->most = CLAMP (near.most, target->least, target->most);
      return;
    }
  }
  g_array_append_val (targets, near);
}

/* @side anew, its camber and caster near the given ones; its cost is that of the car's
 * own targets. */
static ChoicePlace
search_near (const ChoiceSides *sides,
             const ChoiceAnswer *answer,
             CarSide side,
             double camber,
             double caster,
             double share)
{
  const CarLimits *limits = &sides->car->limits;
  const ChoiceCorner *own = &sides->corner[side];
  const gboolean has_bolt =
      answer->side[side].camber_bolt != own->adjustment.corrections.clamp_tilt;
  g_autoptr (GArray) targets =
                 car_targets_new ((const CarTarget *) (void *) own->targets->data,
                                  own->targets->len);
  ChoiceCorner corner = *own;

  corner.targets = targets;
  narrow (targets, AIM_CAMBER, camber, limits->cross_camber_deg * share);
  narrow (targets, AIM_CASTER, caster, limits->cross_caster_deg * share);
  const ChoicePlace found =
      choice_search (&corner, answer->plate, answer->is_swapped, has_bolt);
  return choice_corner_place (own, answer->plate, found.setting,
                              found.camber_bolt - own->adjustment.corrections.clamp_tilt);
}

double
choice_sides_distance (const ChoiceAnswer *answer)
{
  double distance = 0.0;

  for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++)
    distance +=
        hypot (answer->side[side].mount.inboard, answer->side[side].mount.rearward);
  return distance;
}

static gboolean
serves_as_well (const ChoiceAnswer *trial, const ChoiceAnswer *answer)
{
  for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++) {
    const double cost = answer->side[side].cost;

    if (trial->side[side].cost > cost + SAME_COST * (1.0 + cost))
      return FALSE;
  }
  return trial->fits && trial->is_within_cross;
}

void
choice_sides_bring_together (const ChoiceSides *sides, ChoiceAnswer *answer)
{
  const double *left = answer->side[SIDE_LEFT].aim_value;
  const double *right = answer->side[SIDE_RIGHT].aim_value;
  const double camber[] = { right[AIM_CAMBER], left[AIM_CAMBER],
                            (left[AIM_CAMBER] + right[AIM_CAMBER]) / 2.0 };
  const double caster[] = { right[AIM_CASTER], left[AIM_CASTER],
                            (left[AIM_CASTER] + right[AIM_CASTER]) / 2.0 };
  ChoiceAnswer best = *answer;

  if (sides->n_sides == 1 || !answer->fits || answer->is_within_cross)
    return;
  /* the left to the right, the right to the left, or each half of the way */
  for (guint way = 0; way < 3; way++) {
    ChoiceAnswer trial = *answer;

    for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++)
      if (way == 2 || way == (guint) side)
        trial.side[side] = search_near (sides, answer, side, camber[way], caster[way],
                                        way == 2 ? 0.5 : 1.0);
    choice_sides_join (sides, &trial);
    if (serves_as_well (&trial, answer) &&
        (!best.is_within_cross ||
         choice_sides_distance (&trial) < choice_sides_distance (&best)))
      best = trial;
  }
  *answer = best;
}

void
choice_sides_explain (const ChoiceSides *sides, ChoiceAnswer *answer)
{
  for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++) {
    if (side == SIDE_RIGHT && sides->n_sides == 1)
      answer->side[side] = answer->side[SIDE_LEFT];
    else if (answer->side[side].faults == CHOICE_MISSES_AIM)
      choice_reasons_find (&sides->corner[side], answer->plate, answer->has_bolt,
                           &answer->side[side]);
  }
}
