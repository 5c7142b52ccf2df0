/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Axes with round ticks: the ends, the steps between labels, and the way from values to
 * pixels and back. */

#pragma once

#include <stddef.h>

/* A range whose labels stand at the multiples of step that lie in it. */
typedef struct {
  double low, high, step;
} AxisRange;

/* The range @low … @high with the smallest step of 1, 2 or 5 · 10^n that makes at most
 * @most_steps (at least 1) steps of it. The ends stay. */
AxisRange axis_range_exact (double low, double high, int most_steps);

/* The same, the ends moved outward to whole or half steps, so that at least three labels
 * stand in it where @most_steps allows. Rounding what is already round changes nothing.
 */
AxisRange axis_range_round (double low, double high, int most_steps);

/* The labels: @first · step, (@first + 1) · step, …; returns how many. */
int axis_range_ticks (AxisRange range, int *first);

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
