/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One ranked plate as the table needs it: its texts are made once, not at each showing.
 */

#pragma once

#include "model/choice/choice-table.h"

#include <glib-object.h>

#define SW_TYPE_ANSWER_ROW (sw_answer_row_get_type ())
G_DECLARE_FINAL_TYPE (SwAnswerRow, sw_answer_row, SW, ANSWER_ROW, GObject)

/* With @both_sides a cell has a line for each side where they differ. */
SwAnswerRow *sw_answer_row_new (const Car *car,
                                const ChoiceAnswer *answer,
                                guint rank,
                                gboolean both_sides);

guint sw_answer_row_get_rank (SwAnswerRow *self); /* from 1 */
ChoiceVerdict sw_answer_row_get_verdict (SwAnswerRow *self);
const char *sw_answer_row_get_verdict_words (SwAnswerRow *self);
const char *sw_answer_row_get_plate (SwAnswerRow *self);
gboolean sw_answer_row_is_swapped (SwAnswerRow *self);
const char *sw_answer_row_get_setting (SwAnswerRow *self);  /* a line for each side */
const char *sw_answer_row_get_side (SwAnswerRow *self);     /* "left\nright", or "both" */
const char *sw_answer_row_get_sentence (SwAnswerRow *self); /* choice_sentence () */
/* The right side has none where the left one's speaks for both. */
const char *
sw_answer_row_get_number (SwAnswerRow *self, ChoiceNumber number, CarSide side);
/* What its sign means, and whether it is off; or NULL. */
const char *sw_answer_row_get_hint (SwAnswerRow *self, ChoiceNumber number, CarSide side);
/* Whether it misses an aim or passes a limit. */
gboolean sw_answer_row_is_marked (SwAnswerRow *self, ChoiceNumber number, CarSide side);
