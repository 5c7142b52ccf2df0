/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the sheet writes beside its dimensions and handles. */

#pragma once

#include "drawing/sheet/sheet-writing.h"

/* A word and its figure, set as one line. */
typedef struct {
  const char *word; /* translated, or "" */
  char figure[48];
} Label;

/* Of the setup in hand. */
Label
label_for (Quantity quantity, const char *word, gboolean with_sign, const Study *study);
/* @word, or "" on a small sheet, where only figures find room. */
const char *label_word (const SheetPen *pen, const char *word);
/* Where a label may stand: @across as in TextAnchor.x, the middle of the line at @at.y.
 */
typedef struct {
  Pixel at;
  double across;
} LabelSpot;

/* Puts the label on the first spot that has room, the whole of it before the figure
 * alone. False where there is none. */
bool label_place (const SheetPen *pen,
                  SheetViewName view,
                  int quantity,
                  const Label *label,
                  const LabelSpot *spots,
                  unsigned n_spots);
/* The same in two lines, the word over the figure: a spot says where the upper one is. */
bool label_place_stacked (const SheetPen *pen,
                          SheetViewName view,
                          int quantity,
                          const Label *label,
                          const LabelSpot *spots,
                          unsigned n_spots);

/* The upper mount's way from where it was measured. */
MountOffset mount_of_study (const Study *study);
/* "15.0 in", "10.0 forward"; what rounds to nothing has its positive name. */
void inboard_text (double mm, char *text, size_t size);
void rearward_text (double mm, char *text, size_t size);
void up_text (double mm, char *text, size_t size);
/* "lowered 20.0 mm" */
void lowering_text (double mm, char *text, size_t size);
/* "15.0 in · 10.0 back · 0.0 up" */
void mount_text (MountOffset mount, char *text, size_t size);
