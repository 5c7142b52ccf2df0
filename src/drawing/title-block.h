/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The block that says what a drawing shows and whose numbers they are, and the caution that
 * leaves the program with every export. */

#pragma once

#include "drawing/text.h"
#include "model/study.h"

typedef struct {
  const char *car;   /* its name */
  const char *setup; /* its name */
  MountOffset mount; /* mm */
  double lowering;   /* mm */
  ToeMode toe;
  const char *date; /* or NULL: left out, for output that repeats to the byte */
} TitleBlock;

TitleBlock title_block_for (const Car *car, const CarSetup *setup, const char *date);

/* Translated: the cautions in one or two sentences. */
const char *caution_text (void);
