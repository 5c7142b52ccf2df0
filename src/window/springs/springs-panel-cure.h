/* SPDX-License-Identifier: GPL-3.0-or-later */
/* "Stand at This Height": the perch or the clamp angle by which the springs carry the car
 * at the lowering of the setup in hand. */

#pragma once

#include "window/springs/springs-panel-edit.h"

#include "model/spring/spring-study.h"

/* Into row @at of @grid and the next; returns the rows taken. */
int springs_cure_add (SpringsEdit *edit, RaiseBy by, GtkGrid *grid, int at);

/* Puts it into @set, in digits that can be set on a car; FALSE where nothing does it. */
gboolean springs_cure_take (SpringsEdit *edit, RaiseBy by, SpringSet *set);
