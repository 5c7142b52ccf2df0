/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every joint's force of one load on one setup, as text, CSV (RFC 4180) or JSON.
 *
 * CSV has the columns quantity,unit,value,x,y,z: a scalar has its value, a vector its
 * size and its parts in the car's axes (x forward, y left, z up). JSON names the same
 * rows; vectors are lists of three. What has no answer is an empty field, or null. The
 * rod's rows are there where a rod is given. */

#pragma once

#include "model/load/rod-study.h"
#include "model/words/table-format.h"

typedef struct {
  const SpringStudy *study;
  guint setup;
  SpringMode mode;
  const CarLoadCase *load_case; /* or NULL: a force by itself */
  const JointLoads *loads;
  const RodStation *rod; /* under them; or NULL: none is given */
} JointTable;

/* The rows, in order, for a screen as well. */
typedef struct {
  const char *key;     /* "tower_on_body_n" */
  const char *name;    /* translated: "Strut on tower" */
  const char *unit;    /* "N" */
  const char *meaning; /* translated: its sign, or what it is */
  gboolean is_share;   /* what one spring or stop carries along the strut */
  gboolean is_vector;
  int decimals; /* as many as mean something on a screen */
  double value; /* of a vector its size */
  Vec3 parts;   /* of a vector */
} JointRow;

guint joint_rows_count (void);
JointRow joint_row (const JointLoads *loads, guint row);
/* A share that carries nothing: left out where people read, not in files. */
gboolean joint_row_is_idle (const JointRow *row);

/* The rod's numbers as rows of the same kind, all scalars. */
guint rod_rows_count (void);
JointRow rod_row (const RodStation *station, guint row);

/* All that @table has: of the joints, then of the rod. */
guint joint_table_rows (const JointTable *table);
JointRow joint_table_row (const JointTable *table, guint row);

void joint_table_write (const JointTable *table, TableFormat format, GString *text);
