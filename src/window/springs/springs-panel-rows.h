/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The numbers and choices of a spring set as rows of its editor, and which of them are
 * asked for. A new number is one more row in springs-panel-rows.c. */

#pragma once

#include "window/springs/springs-panel-edit.h"

#include "model/words/unit.h"

typedef gboolean (*SpringsAsk) (const SpringSet *set);

/* A number of the set; 0 is shown as nothing where may_be_empty. */
typedef struct {
  SpringsGroup group;
  const char *path; /* inside the object of the springs, or "rod." and inside it */
  const char *name, *meaning; /* to be translated */
  const char *unit;           /* to be translated, with the word for its sign; or NULL */
  gsize offset;               /* of the double in a SpringSet */
  gboolean is_count;          /* a gsize instead */
  gboolean may_be_empty;
  const char *empty_word; /* to be translated: what nothing means */
  double least, most, step;
  double reach; /* either way, of the scale that drags it; 0: none */
  SpringsAsk is_asked;
} SpringsRow;

typedef enum {
  ROW_BAR_RATE,
  ROW_BAR_MODULUS,
  ROW_CLAMP_ANGLE,
  ROW_LEVER,
  ROW_SPLINES,
  ROW_COIL_RATE,
  ROW_WIRE,
  ROW_MEAN_DIAMETER,
  ROW_ACTIVE_COILS,
  ROW_TOTAL_COILS,
  ROW_COIL_MODULUS,
  ROW_FREE_LENGTH,
  ROW_SOLID_LENGTH,
  ROW_PERCH,
  ROW_UPPER_DROP,
  ROW_LOWER_OUTBOARD,
  ROW_LOWER_FORWARD,
  ROW_UPPER_OUTBOARD,
  ROW_UPPER_FORWARD,
  ROW_HELPER_RATE,
  ROW_HELPER_FREE_LENGTH,
  ROW_HELPER_SOLID_LENGTH,
  ROW_HELPER_PERCH,
  ROW_HELPER_UPPER_DROP,
  ROW_STOP_GAP,
  ROW_DROOP_STOP,
  ROW_ANTI_ROLL_RATE,
  ROW_ANTI_ROLL_DIAMETER,
  ROW_ANTI_ROLL_BORE,
  ROW_ANTI_ROLL_LENGTH,
  ROW_ANTI_ROLL_ARM,
  ROW_ANTI_ROLL_MODULUS,
  ROW_LINK_X,
  ROW_LINK_Y,
  ROW_LINK_Z,
  ROW_GAS,
  ROW_TYRE,
  ROW_ROD_DIAMETER,
  ROW_ROD_BORE,
  ROW_GUIDE_HEIGHT,
  ROW_PISTON_DROP,
  ROW_BUSH_SPACING,
  ROW_ROD_MODULUS,
  ROW_FRICTION,
  N_SPRINGS_ROWS
} SpringsRowName;

extern const SpringsRow springs_rows[N_SPRINGS_ROWS];

double springs_row_get (const SpringsRow *row, const SpringSet *set);
void springs_row_set (const SpringsRow *row, SpringSet *set, double value);

/* A law as points. */
typedef struct {
  SpringsGroup group;
  const char *path;
  const char *name, *meaning; /* to be translated */
  UnitKind x, y;
  const char *example, *inch_example;
  gsize offset; /* of the SpringTable in a SpringSet */
  gboolean may_be_empty;
  SpringsAsk is_asked;
} SpringsTableRow;

typedef enum {
  TABLE_COIL,
  TABLE_BUMP_STOP,
  TABLE_DAMPER,
  N_SPRINGS_TABLES
} SpringsTableName;

extern const SpringsTableRow springs_tables[N_SPRINGS_TABLES];

/* "Torsion bar", translated. */
const char *springs_group_name (SpringsGroup group);
/* "Coil: Rate", translated, as several parts have a rate; free with g_free (). */
char *springs_row_full_name (const SpringsRow *row);

/* The translated name of the entry for a member of the file, or of the part for an object
 * of it, free with g_free (); NULL where the editor has none. A member by itself is one
 * of the object at *@inside, which a whole path sets. */
char *springs_name_of_path (const char *path, const char **inside);

gboolean springs_has_group (const SpringSet *set, SpringsGroup group);
gboolean springs_ask_bar_sizes (const SpringSet *set);
gboolean springs_ask_coil_sizes (const SpringSet *set);
gboolean springs_ask_anti_roll_sizes (const SpringSet *set);
