/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Axes with round ticks: the ends, the steps between labels, and the way from values to
 * pixels and back. */

#pragma once

#include "model/words/unit.h"

#include <stddef.h>

/* A range of stored values (see unit.h) whose labels stand at the multiples of step that
 * lie in it; the step is a shown number. */
typedef struct {
  double low, high, step;
  UnitKind kind;
} AxisRange;

/* The range @low … @high with the smallest step of 1, 2 or 5 · 10^n that makes at most
 * @most_steps (at least 1) steps of it. The ends stay. */
AxisRange axis_range_exact (double low, double high, int most_steps);

/* The same, the ends moved outward to whole or half steps, so that at least three labels
 * stand in it where @most_steps allows; round zero there are two steps at least. Rounding
 * what is already round changes nothing. */
AxisRange axis_range_round (double low, double high, int most_steps);

/* The same for a kind of unit, with steps that are round as shown: 10′ and 30′ where
 * there are minutes. */
AxisRange axis_range_exact_in (UnitKind kind, double low, double high, int most_steps);
AxisRange axis_range_round_in (UnitKind kind, double low, double high, int most_steps);

/* The labels: @first · step, (@first + 1) · step, …; returns how many. */
int axis_range_ticks (AxisRange range, int *first);
/* Where label @i stands, as a stored value, and what it says. */
double axis_tick (AxisRange range, int i);
void axis_tick_text (AxisRange range, int i, char *text, size_t size);

/* Decimals that tell one multiple of @step from the next. */
int axis_step_decimals (double step);

/* "−1.5", with a true minus sign and the locale's decimal mark. */
void axis_format (double value, int decimals, char *text, size_t size);

typedef struct {
  double low, high;       /* values */
  double at_low, at_high; /* their pixels */
} Axis;

double axis_to_pixel (Axis axis, double value);
double axis_to_data (Axis axis, double pixel);
