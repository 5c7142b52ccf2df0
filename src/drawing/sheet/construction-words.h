/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The construction of the roll centre as a story in steps: its numbers at the travel in
 * hand, and for every step a title and one sentence with them. */

#pragma once

#include "kernel/construction.h"
#include "model/study/study.h"

typedef enum {
  STORY_CORNER,         /* the corner alone */
  STORY_ARM_LINE,       /* the arm's line */
  STORY_STRUT_NORMAL,   /* square to the strut at the upper mount */
  STORY_INSTANT_CENTRE, /* where both meet, or nowhere */
  STORY_CONTACT_LINE,   /* from the contact to it */
  STORY_ROLL_CENTRE,    /* read at the centre plane */
  N_STORY_STEPS
} StoryStep;

/* An instant centre that lies this far from the contact counts as at infinity, mm. */
#define STORY_INFINITY 1e5

typedef struct {
  PoseStatus status; /* unless POSE_OK nothing below is set, but travel */
  double travel;     /* of the wheel, which is the lowering of the body, mm */
  Construction drawn;
  double arm_fall;     /* rad: how the arm's line falls towards the centre plane */
  double normal_fall;  /* the same of the strut's normal */
  double contact_rise; /* how the line from the contact rises towards the centre plane */
  gboolean is_parallel;
  double pole_inboard; /* from the contact across to the instant centre, mm; negative:
                          outboard; not finite where they are parallel to rounding */
  double exact_height; /* of the roll centre, tie rod included, mm */
} StoryNumbers;

StoryNumbers story_numbers (const StudyCorner *corner);

/* Decimals, 1 or 2, that do not hide a difference of @drawn to @exact which is worth
 * telling; 0 where they are the same to half a tenth of a millimetre. */
int construction_decimals (double drawn, double exact);

/* Translated, short. */
const char *story_title (StoryStep step);
/* Translated, newly allocated: what the step shows, or why nothing can be shown. */
char *story_sentence (const StoryNumbers *numbers, StoryStep step);
/* "2858 mm inboard", "31 m outboard", "at infinity" */
char *story_pole_text (const StoryNumbers *numbers);
