/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The numbers beside the springs. */

#pragma once

#include "model/spring/spring-study.h"

/* What the setup comes to where it stands by its springs, for tables and screens. */
typedef struct {
  const char *key, *name, *unit; /* name translated */
  int decimals;
  double value; /* in that unit; NAN where there is none */
} SpringFigure;
guint spring_figures_count (void);
SpringFigure spring_figure (const SpringCorner *corner, guint index);
