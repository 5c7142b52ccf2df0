/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the command `choose`: the plates to choose from. */

#pragma once

#include "model/plate/plate.h"

typedef struct {
  GPtrArray *plates; /* of Plate */
  GPtrArray *files;  /* of char *: what each was read from, UTF-8 */
} ChoosePlates;

ChoosePlates *choose_plates_new (void);
void choose_plates_free (ChoosePlates *plates);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (ChoosePlates, choose_plates_free)

/* FALSE, and one sentence on standard error, if the file is refused. */
gboolean choose_plates_add (ChoosePlates *plates, const char *file);

/* All that lie on the shelf for that car file; says on standard error which files there
 * were refused. FALSE where there is none at all. */
gboolean choose_plates_add_library (ChoosePlates *plates, const char *car_file);
