/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The command `choose` in the program that draws. */

#include "command-line/choose-command.h"
#include "command-line/plot-choice.h"
#include "drawing/card/fitting-card.h"

static int
write_card (const ChooseCard *wanted)
{
  const FittingCard card = { .car = wanted->car,
                             .setup = car_setup (wanted->car, wanted->question->setup),
                             .answer = wanted->answer,
                             .carrier = wanted->question->carrier,
                             .date = wanted->date };
  g_autoptr (GError) error = NULL;

  if (fitting_card_write (&card, wanted->path, &error))
    return EXIT_DONE;
  return plot_say_error (error);
}

int
choose_card_command (int argc, char **argv)
{
  return choose_run (argc, argv, write_card);
}
