/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which one measured figure, had it been misread, would explain every warning of the
 * measured points: what to measure again first. Static camber and toe-in come off a gauge
 * and stay out of it.
 *
 * Each of the 24 coordinates is tried by itself, the others left alone. The corner is
 * solved anew for every value tried, so an answer holds exactly; it says what would do,
 * not what is true. */

#pragma once

#include "model/car/car.h"

#define MISREAD_REACH 150.0 /* mm: how far off a figure is looked for, either way */
#define MISREAD_MOST 3      /* more explanations than that point at nothing */

typedef enum {
  MISREAD_OFF,   /* by whatever it takes */
  MISREAD_SIGN,  /* slips of the pen: the sign; */
  MISREAD_DIGITS /* two neighbouring digits the other way round */
} MisreadHow;

typedef struct {
  PointName point;
  int axis; /* 0, 1, 2: x, y, z */
  MisreadHow how;
  double least, most; /* mm: with any of these no warning of the points is left; of
                         whole mm or tenths, and equal for a slip of the pen */
  double change;      /* mm: the smallest that does, unsigned */
} MisreadFigure;

/* The explanations, slips of the pen first, the smallest change first; returns how many.
 * Where more than MISREAD_MOST figures explain the warnings, only the one among them that
 * is a slip, if it is the only one: among many a second slip is chance. None where the
 * points have no warning, and where nothing explains all of them. Past the reach only
 * slips are tried. @car is sound (car-json.h). */
guint misread_figures (const Car *car, MisreadFigure found[MISREAD_MOST]);

/* Translated sentences, one for each, that name members of the file by their paths; NULL
 * for none. */
char *misread_sentence (const Car *car, const MisreadFigure *found, guint n);
