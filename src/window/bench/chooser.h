/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the parts of the question "Mount" share in one window: the plates on the shelf,
 * the plate in hand, the side looked at, what the map draws, and the ranked answers.
 *
 * Answers are worked out when they are asked for after the car changed, never during a
 * drag. Signals: "changed" when plate, side, subjects or shelf changed; "answered" when
 * the answers are others than before. */

#pragma once

#include "model/choice/choice.h"
#include "model/mount-field/mount-field.h"
#include "model/plate/plate-library.h"
#include "window/bench/bench.h"

#define SW_TYPE_CHOOSER (sw_chooser_get_type ())
G_DECLARE_FINAL_TYPE (SwChooser, sw_chooser, SW, CHOOSER, GObject)

/* The one of this bench, made at the first call; it lives as long as the bench. */
SwChooser *sw_chooser_of (SwBench *bench);
SwBench *sw_chooser_get_bench (SwChooser *self);

const PlateLibrary *sw_chooser_get_library (SwChooser *self);
void sw_chooser_reload_library (SwChooser *self); /* after a plate was saved or removed */

/* The plate in hand, or NULL for none: the setup's own where it names one. */
const Plate *sw_chooser_get_plate (SwChooser *self);
gboolean sw_chooser_is_swapped (SwChooser *self);
void sw_chooser_set_plate (SwChooser *self, const char *name, gboolean is_swapped);

gboolean sw_chooser_has_two_sides (SwChooser *self); /* that differ */
CarSide sw_chooser_get_side (SwChooser *self);
void sw_chooser_set_side (SwChooser *self, CarSide side);

/* @which is 0 or 1; a FieldSubject, the second may be MOUNT_MAP_NONE. */
int sw_chooser_get_subject (SwChooser *self, guint which);
void sw_chooser_set_subject (SwChooser *self, guint which, int subject);

/* Whether a dragged mount stays within the plate's reach. */
gboolean sw_chooser_keeps_to_plate (SwChooser *self);
void sw_chooser_set_keeps_to_plate (SwChooser *self, gboolean keeps);

ChoiceQuestion sw_chooser_get_question (SwChooser *self);
/* Its setup is the one in hand, whatever @question says. A carrier that is not what the
 * setup stands on is kept for all of them. */
void sw_chooser_set_question (SwChooser *self, const ChoiceQuestion *question);

/* Of ChoiceAnswer; good until the next "answered". The second one as they are, without
 * working any out. */
const GArray *sw_chooser_get_answers (SwChooser *self);
const GArray *sw_chooser_peek_answers (SwChooser *self);
/* The answer that is about the plate in hand, or -1; of those with and without a camber
 * bolt the one that was taken, or the better one. */
int sw_chooser_find_answer (SwChooser *self);
void sw_chooser_take_answer (SwChooser *self, guint answer); /* its plate in hand */
/* The place of that answer on the side looked at, or NULL while it is not known. */
const ChoicePlace *sw_chooser_get_best (SwChooser *self);
/* While somebody looks at the answers they are worked out anew by themselves. */
void sw_chooser_watch (SwChooser *self);
void sw_chooser_unwatch (SwChooser *self);

/* The mount of the setup in hand, on the side looked at. Setting it is an edit of the
 * document; the setup then names the plate in hand where @by_plate, or none. */
MountOffset sw_chooser_get_mount (SwChooser *self);
void sw_chooser_set_mount (SwChooser *self, MountOffset mount, gboolean by_plate);

/* Puts a setup with that answer behind the others and takes it in hand: one undo step. */
void sw_chooser_fit (SwChooser *self, guint answer);
