/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What follows from the sizes in the spring editor: a rate, a solid length, a clamp angle
 * in millimetres and steps. */

#pragma once

#include "window/springs/springs-panel-edit.h"

typedef enum {
  READING_BAR,
  READING_ADJUSTER,
  READING_COIL,
  READING_ANTI_ROLL
} SpringsReading;

/* Into row @at of @grid; returns the rows taken. */
int
springs_reading_add (SpringsEdit *edit, SpringsReading reading, GtkGrid *grid, int at);

/* Nothing, where nothing follows: free with g_free (). */
char *
springs_reading_words (SpringsReading reading, const Car *car, const SpringSet *set);
