/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a part of the spring set begins with when it is added, and what is said of it. */

#pragma once

#include "window/springs/springs-panel-edit.h"

/* Plausible and invented: the sizes of a small front-drive car; common practice, no
 * published source. */
void springs_start (SpringSet *set, SpringsGroup group);
/* Takes the part away, and with it what was given of it. */
void springs_end (SpringSet *set, SpringsGroup group);
/* What was added, in one sentence; free with g_free (). */
char *springs_start_sentence (const SpringSet *set, SpringsGroup group);

/* Another alternative of the same part; its rate stays where it has one. */
typedef enum {
  BAR_BY_SIZES,
  BAR_BY_RATE
} BarKind;
typedef enum {
  COIL_BY_RATE,
  COIL_BY_SIZES,
  COIL_BY_TABLE
} CoilKind;

void springs_set_bar_kind (SpringSet *set, const Car *car, BarKind kind);
void springs_set_coil_kind (SpringSet *set, const Car *car, CoilKind kind);
void springs_set_anti_roll_kind (SpringSet *set, const Car *car, BarKind kind);
/* Its link measured as a point, or where it usually holds. */
void springs_set_link_measured (SpringSet *set, const Car *car, gboolean is_measured);
void springs_set_rod_inverted (SpringSet *set, gboolean is_inverted);
