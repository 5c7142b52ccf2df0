/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the commands that draw are asked for; each says on standard error what there is if
 * not. */

#pragma once

#include "command-line/command-line.h"
#include "drawing/export/export.h"
#include "drawing/pen/paper.h"

/* The place of @name among @words, 0 for NULL; or -1. */
int plot_choose_word (const char *option, const char *name, const char *const words[]);

/* a4 or letter, A4 for NULL. */
gboolean plot_choose_paper (const char *name, PaperSize *paper);

/* Three curves or fewer stand in one column; more are laid out as in the window. */
gboolean plot_choose_curves (char **names, BoardChoice *choice);

/* The last one named is in hand; of the others only those named are drawn, and the
 * baseline. The first of the car for NULL. */
gboolean plot_choose_setups (Car *car, char **names, guint *in_hand);

/* Gives the exit status that goes with it. */
int plot_say_error (const GError *error);
