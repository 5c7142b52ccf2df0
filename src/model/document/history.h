/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Labelled copies of a car, with a place among them: undo and redo are steps of the
 * place. A car is a small value, so copies are simpler than inverse edits, and exact to
 * the bit. */

#pragma once

#include "model/car/car.h"

#define HISTORY_MOST_STEPS 500 /* beyond, the oldest are forgotten */

typedef struct History History;

History *history_new (const Car *first);
void history_free (History *history);

/* Keeps a copy of @car as the newest state; what was undone is forgotten. */
void history_push (History *history, const Car *car, const char *label);
const Car *history_current (const History *history);
/* Whether there was a step to take. */
gboolean history_undo (History *history);
gboolean history_redo (History *history);
/* What the step did, or NULL where there is none. */
const char *history_undo_label (const History *history);
const char *history_redo_label (const History *history);
