/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the sheet writes beside its dimensions and handles. */

#pragma once

#include "drawing/sheet-pen.h"

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
/* @across as in TextAnchor.x; the middle of the line stands at @at.y. */
void label_draw (const SheetPen *pen,
                 SheetViewName view,
                 int quantity,
                 const Label *label,
                 Pixel at,
                 double across);

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
