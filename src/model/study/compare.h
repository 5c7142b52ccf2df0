/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The setups of a car side by side, each at its own standing height: a column per setup,
 * a row per quantity, and the difference to the baseline. Every setup of the study is in
 * it, those that are hidden on screen too.
 *
 * CSV (RFC 4180) pastes into a spreadsheet as it reads: the columns are
 *   quantity,unit,NAME,NAME: change from BASELINE,…
 * with the value and its change for each setup in the car's order, the baseline's own
 * change being 0. Rows before the quantities: `lowering_mm`, and `tie_rod_change_mm`, how
 * much longer the tie rod is than as measured. JSON has the same rows, as members of
 * `values` and `changes` of each setup. What cannot be assembled is an empty field, or
 * null. */

#pragma once

#include "model/study/study.h"
#include "model/words/table-format.h"

/* The rows that a comparison has by default, in order. */
const Quantity *compare_rows (guint *n);

/* Value at the standing height, at the edge (degrees, mm); NAN where it does not
 * assemble. */
double compare_value (const Study *study, guint setup, Quantity quantity);
/* The same less the baseline's. */
double compare_change (const Study *study, guint setup, Quantity quantity);

/* How much longer the tie rod is than as measured, mm; NAN where it does not assemble. */
double compare_tie_rod_change (const Study *study, guint setup);

/* Appends the whole table. Text is for reading (aligned, translated, rounded); CSV and
 * JSON are exact and name rows by QuantityInfo.key, in every locale alike. */
void compare_write (const Study *study, TableFormat format, GString *text);
