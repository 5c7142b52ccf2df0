/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The questions that can stand beside the sheet. A question brings its own charts; it
 * never hides the sheet. A new one is a row in question.c. */

#pragma once

#include "drawing/card/card.h"
#include "window/bench/bench.h"

#include <gtk/gtk.h>

typedef GtkWidget *(*QuestionPart) (SwBench *bench);

typedef struct {
  const char *name;  /* of its stack page and action target; for good */
  const char *title; /* to be translated */
  QuestionPart create;
  QuestionPart create_tools;       /* beside the switcher; or NULL */
  const char *strip_title;         /* to be translated, */
  QuestionPart create_strip;       /* what stands below besides the numbers; or NULL */
  QuestionPart create_strip_tools; /* above that */
  CardSubject subject;             /* what an export begins with */
  gboolean ground_fixed;           /* the sheet moves the body, not the ground */
  gboolean shows_forces;           /* the sheet draws them in place of dimensions */
  gboolean
      is_late; /* its parts are made when they are shown first, not with the window */
} Question;

/* @n gets their number. */
const Question *questions (guint *n);
/* The one of that name, or NULL. */
const Question *question_named (const char *name);

/* One of the parts of @question; an empty box where it has none. */
GtkWidget *question_part (const Question *question, QuestionPart create, SwBench *bench);
