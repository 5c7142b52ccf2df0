/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the fitting card: its two tables. Both give the height that they take, and draw
 * where the pen has a context. */

#pragma once

#include "drawing/card/fitting-card-facts.h"
#include "drawing/card/fitting-card-pen.h"

/* To set afterwards: as measured and now, with lines to write on. */
double fitting_alignment_table (
    const FittingPen *pen, const FittingFacts *facts, double x, double y, double width);
/* What it costs, with the limits beside. */
double fitting_cost_table (
    const FittingPen *pen, const FittingFacts *facts, double x, double y, double width);
