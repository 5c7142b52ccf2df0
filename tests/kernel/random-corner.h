/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Invented corners inside the range of road cars, the same ones in every run. */

#pragma once

#include "kernel/corner.h"

#include <stdint.h>

typedef struct {
  uint64_t state;
} Dice;

typedef struct {
  MeasuredCorner measured;
  Adjustment adjustment; /* mount within 25 mm, nothing else */
  double travel, rack;   /* within 80 mm, within 45 mm */
} RandomCase;

/* Even between @low and @high. */
double dice_between (Dice *dice, double low, double high);
MeasuredCorner dice_corner (Dice *dice);
RandomCase dice_case (Dice *dice);
