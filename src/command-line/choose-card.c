/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The command `choose` in the program that draws. */

#include "command-line/choose-command.h"
#include "drawing/export.h"
#include "drawing/fitting-card.h"

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
  command_line_say ("%s", error->message);
  return g_error_matches (error, EXPORT_ERROR, EXPORT_ERROR_SUFFIX) ? EXIT_USAGE
                                                                    : EXIT_REFUSED;
}

int
choose_card_command (int argc, char **argv)
{
  return choose_run (argc, argv, write_card);
}
