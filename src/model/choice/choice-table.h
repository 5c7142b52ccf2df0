/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Ranked answers as a table: to read on a terminal, as CSV (RFC 4180) and as JSON, with
 * the numbers that window and fitting card show too.
 *
 * CSV and JSON: twelve significant digits, `.` in every locale; of a place that was
 * searched for, what is below CHOICE_FOUND_TO is 0; what does not apply is an empty field
 * or null. The setting and the verdict are words in the user's language. A
 * CSV row for each plate and side; in JSON the sides lie in a list. */

#pragma once

#include "model/choice/choice.h"
#include "model/words/table-format.h"
#include "model/words/unit.h"

/* mm, degrees and their like. A search stops within 1e-7 mm of the best setting, so below
 * this a number tells of the search and not of the car. One of a list is exact. */
#define CHOICE_FOUND_TO 1e-6

/* The numbers of one place, in edge units. */
typedef enum {
  CHOICE_CAMBER_BOLT,
  CHOICE_INBOARD,
  CHOICE_REARWARD,
  CHOICE_UP,
  CHOICE_CAMBER,
  CHOICE_CASTER,
  CHOICE_SAI,
  CHOICE_SCRUB_RADIUS,
  CHOICE_TRAIL,
  CHOICE_ROLL_CENTRE_HEIGHT,
  CHOICE_TOE_IN,
  CHOICE_TOE_BEFORE_RESET,
  CHOICE_TIE_ROD_CHANGE,
  CHOICE_TIE_ROD_TURNS,
  CHOICE_BUMP_STEER,
  CHOICE_TYRE_CLEARANCE,
  CHOICE_ROD_SIDE_FORCE,
  CHOICE_BEARING_TILT,
  CHOICE_EDGE_MARGIN,
  CHOICE_COST,
  N_CHOICE_NUMBERS
} ChoiceNumber;

typedef struct {
  const char *key;  /* column and member: `tie_rod_change_mm` */
  const char *head; /* translated, short: "Tie rod" */
  const char *unit; /* as chosen; "" behind degrees and minutes */
  int decimals;     /* in the stored unit */
  UnitKind kind;
} ChoiceNumberInfo;
ChoiceNumberInfo choice_number_info (ChoiceNumber number);

/* NAN where it does not apply. */
double choice_number (const ChoicePlace *place, ChoiceNumber number);

/* "−1.93", with a true minus sign and the locale's decimal mark; "–" where it does not
 * apply. Free with g_free (). */
char *choice_number_text (const ChoicePlace *place, ChoiceNumber number);

/* Whether it is the number that says how near @aim is. */
gboolean choice_number_answers_aim (ChoiceNumber number, Aim aim);
/* Whether it lies outside an aim that it stands for, so far that its digits show it, or
 * past a limit. */
gboolean choice_number_misses_aim (const ChoicePlace *place, ChoiceNumber number);
gboolean choice_number_is_past_limit (const ChoicePlace *place, ChoiceNumber number);

/* Whether both sides are set alike and come to the same. */
gboolean choice_is_alike (const ChoiceAnswer *answer);

/* Translated: "−2.70 to −2.30°", "5.00° or more", "0.0 mm". Free with g_free (). */
char *choice_target_text (const CarTarget *target);

typedef struct {
  const Car *car;
  ChoiceQuestion question;
  const GArray *answers;      /* of ChoiceAnswer, best first */
  const Plate *const *plates; /* n_plates of them, and … */
  const char *const *files;   /* … what each was read from */
  guint n_plates;
} ChoiceTable;

void choice_table_write (const ChoiceTable *table, TableFormat format, GString *text);
