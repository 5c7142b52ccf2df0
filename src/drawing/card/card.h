/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A card: curves, sheet, lowering, mount map, springs or loads of one setup
 * with its title block, to be drawn as a preview or written as a file. Window and command
 * line export nothing else.
 */

#pragma once

#include "drawing/export/export.h"

typedef enum {
  CARD_CURVES,
  CARD_SHEET,
  CARD_LOWERING,
  CARD_MOUNT_MAP,
  CARD_SPRINGS,
  CARD_LOADS
} CardSubject;

typedef struct {
  CardSubject subject;
  ExportOptions options;
  BoardChoice choice;
  const Car *car;
  const CarSetup *setup;
  const Study *study; /* of that setup */
  MountMapView map;   /* for that: its side, subjects and plate; the rest is filled in */
  const SpringStudy *springs;  /* for CARD_SPRINGS: of that study, and … */
  const char *const *verdicts; /* its sentences, closed by NULL; or NULL */
  const LoadStudy
      *loads;       /* for CARD_LOADS; the sheet of a card that has them shows forces */
  const char *date; /* or NULL, for output that repeats to the byte */
} Card;

/* What drawing a card needs and keeps between two drawings. */
typedef struct CardPress CardPress;
CardPress *card_press_new (void);
void card_press_free (CardPress *press);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (CardPress, card_press_free)

/* At the card's own size, from the origin. */
void card_draw (CardPress *press, cairo_t *cr, const Card *card);

/* As export_board (), export_sheet () and export_lowering (). */
gboolean card_write (const Card *card, const char *path, GError **error);
