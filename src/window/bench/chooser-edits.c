/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the question "Mount" changes in the document. */

#include "window/bench/chooser.h"

#include <glib/gi18n-lib.h>

static SwDocument *
document_of (SwChooser *self)
{
  return sw_bench_get_document (sw_chooser_get_bench (self));
}

MountOffset
sw_chooser_get_mount (SwChooser *self)
{
  const CarSetup *setup = sw_bench_get_setup (sw_chooser_get_bench (self));

  return car_side_adjustment (setup, sw_chooser_get_side (self)).mount;
}

static void
set_left (SwChooser *self, MountOffset mount)
{
  sw_bench_set_mount (sw_chooser_get_bench (self), mount);
}

/* From then on the right side is set by itself. */
static void
set_right (SwChooser *self, MountOffset mount)
{
  SwBench *bench = sw_chooser_get_bench (self);
  const CarSetup *setup = sw_bench_get_setup (bench);
  const CarRightSide right = {
    .is_own = TRUE,
    .mount = mount,
    .camber_bolt_deg = setup->right.is_own ? setup->right.camber_bolt_deg
                                           : setup->corrections.camber_bolt_deg,
  };

  sw_document_set_right_side (document_of (self), sw_bench_get_setup_index (bench),
                              &right, _ ("Move upper mount"));
}

void
sw_chooser_set_mount (SwChooser *self, MountOffset mount, gboolean by_plate)
{
  SwDocument *document = document_of (self);
  SwBench *bench = sw_chooser_get_bench (self);
  const Plate *plate = by_plate ? sw_chooser_get_plate (self) : NULL;
  const gboolean is_whole = !sw_document_is_changing (document);

  if (is_whole)
    sw_document_begin (document, _ ("Move upper mount"));
  sw_document_set_plate (document, sw_bench_get_setup_index (bench),
                         plate != NULL ? plate->name : NULL,
                         plate != NULL && sw_chooser_is_swapped (self),
                         _ ("Move upper mount"));
  if (sw_chooser_get_side (self) == SIDE_LEFT)
    set_left (self, mount);
  else
    set_right (self, mount);
  if (is_whole)
    sw_bench_end_drag (bench);
}

void
sw_chooser_fit (SwChooser *self, guint index)
{
  SwBench *bench = sw_chooser_get_bench (self);
  const GArray *answers = sw_chooser_get_answers (self);

  g_return_if_fail (index < answers->len);

  const ChoiceAnswer *answer = &g_array_index (answers, ChoiceAnswer, index);
  const Car *car = sw_document_get_car (document_of (self));
  CarSetup setup = choice_setup (car, sw_bench_get_setup_index (bench), answer);

  sw_document_add_setup_like (document_of (self), &setup);
  car_setup_clear (&setup);
  sw_bench_set_setup_index (bench,
                            sw_document_get_car (document_of (self))->setups->len - 1);
}
