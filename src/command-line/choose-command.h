/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The command `choose`, with a card or without. */

#pragma once

#include "command-line/command-line.h"
#include "model/choice/choice.h"

/* What is known when the card of an answer is to be written. */
typedef struct {
  const Car *car;
  const ChoiceQuestion *question;
  const ChoiceAnswer *answer;
  const char *path, *date; /* date may be NULL */
} ChooseCard;

/* Writes it; says on standard error why it could not. Gives an ExitStatus. */
typedef int (*ChooseCardWriter) (const ChooseCard *card);

/* Where @writer is NULL and a card is asked for, another program does it all. */
int choose_run (int argc, char **argv, ChooseCardWriter writer);
