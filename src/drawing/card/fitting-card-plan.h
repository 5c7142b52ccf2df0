/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The fitting card's drawing of one side: plate and tower from above, as one stands
 * before the car, true to a scale that is stated. */

#pragma once

#include "drawing/card/fitting-card-pen.h"
#include "model/choice/choice.h"

typedef struct {
  double x, y, width, height;
} FittingBox;

/* Points on paper for a mm of the car at 1 : @scale. */
double fitting_plan_points_per_mm (int scale);

/* The largest of 1 : 1, 1 : 2, 1 : 5 … that both sides of the answer fit @box at. */
int fitting_plan_scale (const FittingPen *pen,
                        const Car *car,
                        const ChoiceAnswer *answer,
                        FittingBox box);

void fitting_plan_draw (const FittingPen *pen,
                        const Car *car,
                        const ChoiceAnswer *answer,
                        CarSide side,
                        int scale,
                        FittingBox box);
