/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The instructor's picture: one large front view with the construction of the roll centre
 * up to one step. The ground rests and the body comes down by study->travel. The type
 * follows the canvas: 28 pixels or more at 1280 × 720.
 *
 * Nothing jumps while the body moves: the scale is the car's. A line never ends where its
 * instant centre is off the picture; an inset at a smaller scale shows where that lies,
 * or an arrow says how far. */

#pragma once

#include "drawing/pen/theme.h"
#include "drawing/sheet/construction-words.h"

typedef struct {
  const Study *study;
  double section_width; /* of the tyre, mm */
  Theme theme;
  StoryStep step;
} StoryView;

typedef struct Story Story;
Story *story_new (void);
void story_free (Story *story);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Story, story_free)

void story_draw (
    Story *story, cairo_t *cr, const StoryView *view, double width, double height);

/* Where the last drawing has things, pixels; for tests and for hints beside them. */
typedef struct {
  double scale;    /* pixels per mm */
  double ground_y; /* of the ground */
  double middle_x; /* of the centre plane */
  double text;     /* size of the smallest type */
  bool has_inset;
  double inset_scale;                  /* pixels per mm, 0 without one */
  double pole_x, pole_y;               /* in the inset, else in the picture; NAN when
                                          the picture only points at it */
  double roll_centre_x, roll_centre_y; /* NAN where nothing is assembled */
} StoryPlaces;
StoryPlaces story_places (const Story *story);
