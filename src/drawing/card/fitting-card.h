/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One page to fit a plate by: the car, the plate and its setting for each side with a
 * drawing to a stated scale, the alignment to set afterwards, what it costs, and the
 * cautions. Window, printer and command line draw the same page. */

#pragma once

#include "drawing/pen/paper.h"
#include "drawing/pen/text.h"
#include "model/choice/choice.h"

typedef struct {
  const Car *car;
  const CarSetup *setup;      /* the setup it stands on: height, corrections */
  const ChoiceAnswer *answer; /* the plate with its settings */
  SpringCarrier carrier;      /* that the side force was reckoned with */
  const char *date;           /* or NULL, for output that repeats to the byte */
} FittingCard;

/* From the origin, on white; @width and @height in points of 1/72 inch. Portrait, at
 * least 500 by 700. The plate's drawing is to the scale that it states. */
void fitting_card_draw (
    TextCache *texts, cairo_t *cr, const FittingCard *card, double width, double height);

/* As an A4 page: .pdf, .svg or .png by suffix; as export.h for errors and atomicity. */
gboolean fitting_card_write (const FittingCard *card, const char *path, GError **error);
