/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What lowering does to the roll centre, in numbers and in whole sentences. */

#pragma once

#include "model/study/study.h"

/* Roll lever arm: from the roll centre up to the centre of gravity, which comes down with
 * the body. NAN where the station is not assembled. */
double roll_lever_arm (double cg_height, const Station *station);

/* From the height as measured to where a setup stands, in the setup's own linkage.
 * Lengths mm, above the ground. */
typedef struct {
  PoseStatus status; /* of the first of both positions that cannot be assembled */
  double lowering;
  double from, to;     /* the roll centre's height */
  double drop;         /* from − to: positive where the roll centre comes down */
  double drop_per_mm;  /* of lowering; at no lowering the exact rate there */
  double lever;        /* where it stands */
  double lever_growth; /* positive where the lever arm becomes longer */
} LoweringEffect;

LoweringEffect lowering_effect (const StudyCorner *corner, double cg_height);

/* "Lowering 30 mm drops the roll centre 83 mm: 2.8 mm for each mm. The lever arm grows by
 * 53 mm." */
char *lowering_sentence (const LoweringEffect *effect);

/* "Exact 76.7 mm, flat construction 76.8 mm: the construction leaves out the tie rod."
 * Where the setup stands; "" where that cannot be assembled. */
char *lowering_difference_sentence (const StudyCorner *corner);
