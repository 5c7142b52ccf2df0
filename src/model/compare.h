/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The setups of a car side by side, each at its own standing height: a column per setup, a
 * row per quantity, and the difference to the baseline. */

#pragma once

#include "model/study.h"

typedef enum {
  COMPARE_TEXT,
  COMPARE_CSV,
  COMPARE_JSON
} CompareFormat;

/* The rows that a comparison has by default, in order. */
const Quantity *compare_rows (guint *n);

/* Value at the standing height, at the edge (degrees, mm); NAN where it does not assemble. */
double compare_value (const Study *study, guint setup, Quantity quantity);
/* The same less the baseline's. */
double compare_change (const Study *study, guint setup, Quantity quantity);

/* Appends the whole table. Text is for reading (aligned, translated, rounded); CSV and JSON
 * are exact and name rows by QuantityInfo.key, in every locale alike. */
void compare_write (const Study *study, CompareFormat format, GString *text);
