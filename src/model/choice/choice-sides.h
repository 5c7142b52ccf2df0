/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the choice only: both sides of the car, and what they come to together. */

#pragma once

#include "model/choice/choice-corner.h"

typedef struct {
  const Car *car;
  ChoiceCorner corner[2];
  guint n_sides; /* 1 where both are alike */
} ChoiceSides;

ChoiceSides choice_sides_of (const Car *car, const ChoiceQuestion *question);

/* Whether nothing is wrong with it but an aim that is missed. */
gboolean choice_place_fits (const ChoicePlace *place);

/* Fills in what stands beside the sides. With one side the other becomes its like. */
void choice_sides_join (const ChoiceSides *sides, ChoiceAnswer *answer);

/* Where the sides differ too much and a place that serves as well differs less: takes it.
 */
void choice_sides_bring_together (const ChoiceSides *sides, ChoiceAnswer *answer);

/* What keeps the sides from the aims that they miss. */
void choice_sides_explain (const ChoiceSides *sides, ChoiceAnswer *answer);

/* How far in plan both sides' mounts are from where they were measured, in all, mm. */
double choice_sides_distance (const ChoiceAnswer *answer);
