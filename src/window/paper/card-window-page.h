/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a fitting card is made of, held by itself: the window behind may change while the
 * card is looked at. */

#pragma once

#include "drawing/card/fitting-card.h"
#include "window/bench/chooser.h"
#include "window/paper/paper-kind.h"

typedef struct {
  Car *car;
  Plate *plate;
  guint setup;
  ChoiceAnswer answer; /* of that plate */
  SpringCarrier carrier;
  char *date;
} CardPage;

/* The plate in hand as it was ranked, or where the setup in hand names that plate, as
 * that setup has it set; NULL where there is neither. */
CardPage *card_page_new (SwChooser *chooser);
CardPage *card_page_copy (const CardPage *page);
void card_page_free (CardPage *page);
FittingCard card_page_card (const CardPage *page);

/* Its one page of A4, upright. */
extern const PaperKind card_paper;

/* Shows @page, which must outlive it, as wide as there is room. */
GtkWidget *card_preview_new (const CardPage *page);
