/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a setup stands on in words and figures, part by part: the sizes that were given
 * what follows from them by itself, and what they come to where the setup stands, for
 * lists on paper. */

#pragma once

#include "model/spring/spring-study.h"

typedef struct {
  const char *part; /* translated: "Torsion bar" */
  char *name;       /* translated: "Active length" */
  char *text;       /* with its unit, in the units that are shown */
  gboolean is_long; /* a law: needs a line or two */
} SpringSize;

/* Of SpringSize, owned by the array, each part's together: of the springs and the rod
 * that @setup has, and nothing of those it has not. */
GPtrArray *spring_sizes (const SpringStudy *study, guint setup);

/* Its rates where it stands, as one more part: nothing where it does not stand by
 * its springs, and nothing of what is not known. */
void spring_sizes_add_figures (GPtrArray *sizes, const SpringCorner *corner);

/* Which springs there are, in a few translated words: "torsion bar with helper coil";
 * NULL for none. */
const char *spring_kind_words (const CarSprings *springs);
