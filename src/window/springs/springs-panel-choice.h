/* SPDX-License-Identifier: GPL-3.0-or-later */
/* An alternative in the spring editor: by its rate or by its sizes, and so on. */

#pragma once

#include "window/springs/springs-panel-rows.h"

typedef enum {
  CHOICE_BAR,
  CHOICE_COIL,
  CHOICE_HELPER,
  CHOICE_ANTI_ROLL,
  CHOICE_LINK,
  CHOICE_LINK_POINT,
  CHOICE_ROD,
  N_SPRINGS_CHOICES
} SpringsChoice;

/* Into row @at of @grid; returns the rows taken. */
int springs_choice_add (SpringsEdit *edit, SpringsChoice choice, GtkGrid *grid, int at);
