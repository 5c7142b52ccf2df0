/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the fitting card says, apart from where it says it. Texts are translated and are
 * freed with g_free () unless they are const. */

#pragma once

#include "drawing/card/fitting-card.h"
#include "model/choice/choice-table.h"

typedef struct {
  const FittingCard *card;
  ChoicePlace measured[2]; /* the car as it was measured: nothing moved, not lowered */
  gboolean is_alike;       /* both sides are set alike and come to the same */
} FittingFacts;

FittingFacts fitting_facts (const FittingCard *card);
const ChoicePlace *fitting_now (const FittingFacts *facts, CarSide side);

/* The columns of the card: as one stands before the car and looks at it. */
#define FITTING_FIRST SIDE_RIGHT
#define FITTING_SECOND SIDE_LEFT
const char *fitting_side_name (CarSide side);

/* What the setup contributes beside its plate, which may be another than the card's:
 * "lowered 20.0 mm · toe reset by the tie rod · Rack up 5.0 mm". The camber bolt stands
 * with each side. */
char *fitting_setup_words (const CarSetup *setup);
/* The corrections alone, all but the camber bolt: "Rack up 5.0 mm", or "". */
char *fitting_corrections_words (const CarSetup *setup);
/* Whether the setup has this plate, set so: then the card may bear its name. */
gboolean fitting_is_setup_itself (const FittingCard *card);
/* "Slot · 8.0 mm thick · bearing 3.0 mm higher" */
char *fitting_plate_words (const Plate *plate);
/* What is dialled in, without a word on swapping. */
char *fitting_setting_words (const FittingFacts *facts, CarSide side);
/* "bearing 12.0 mm inboard, 8.0 mm rearward" */
char *fitting_place_words (const ChoicePlace *place);
/* "camber bolt −1.00°, top leans in" */
char *fitting_bolt_words (const ChoicePlace *place);
char *fitting_bolt_angle_words (double angle); /* radians */
/* What to do: "1.25 turns longer (1.90 mm)", or "leave as it is"; and, below it, what
 * that is about. */
char *fitting_tie_rod_words (const FittingFacts *facts, CarSide side);
char *fitting_tie_rod_remark (const FittingFacts *facts, CarSide side);
/* Whether the setup lets toe go along, so that its toe is not yet one to drive with. */
gboolean fitting_toe_waits (const FittingFacts *facts, CarSide side);

/* "−2.50°", "12.0 mm" */
char *fitting_number (const ChoicePlace *place, ChoiceNumber number);

/* "aim −2.70 to −2.30°", or NULL where nothing is aimed for. */
char *fitting_aim (const Car *car, ChoiceNumber number);
/* What the number is held against: a limit, an aim, or ""; for the room to the
 * tyre also the part that is nearest. */
char *fitting_limit (const FittingFacts *facts, ChoiceNumber number);

/* On tightening, lifting, the road, and what load figures are worth. */
const char *fitting_caution (void);
