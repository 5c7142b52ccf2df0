/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the parts of the spring editor share: the set that the setup in hand stands on,
 * whose it is, and how a change of it is stored. */

#pragma once

#include "window/bench/bench.h"
#include "window/entry/committed-entry.h"

typedef enum {
  SPRINGS_BAR,
  SPRINGS_COIL,
  SPRINGS_HELPER,
  SPRINGS_STOPS,
  SPRINGS_ANTI_ROLL,
  SPRINGS_DAMPER,
  SPRINGS_ROD,
  N_SPRINGS_GROUPS
} SpringsGroup;

typedef struct {
  CarSprings springs;
  CarRod rod;
} SpringSet;

typedef enum {
  SET_OF_CAR,    /* the setup in hand is the baseline: what the car stands on */
  SET_INHERITED, /* the car's, which another setup only looks at */
  SET_OWN
} SetOwner;

typedef struct SpringsEdit SpringsEdit;

/* A part of the editor shows what is stored. */
typedef void (*SpringsShow) (gpointer part);

SpringsEdit *springs_edit_new (SwBench *bench);
void springs_edit_free (SpringsEdit *self);

SwBench *springs_edit_bench (SpringsEdit *self);
const Car *springs_edit_car (SpringsEdit *self);
/* What stands in the document now. */
const SpringSet *springs_edit_now (SpringsEdit *self);
SetOwner springs_edit_owner (SpringsEdit *self, SpringsGroup group);
/* While the parts are being told: what they do then is no person's doing. */
gboolean springs_edit_is_telling (SpringsEdit *self);

/* Takes @part, which is freed with g_free () at the end. */
void springs_edit_add_part (SpringsEdit *self, SpringsShow show, gpointer part);
/* Its refusals stand below it, and it takes nothing while its set is only looked at. The
 * entry belongs to its parent. */
void springs_edit_watch (SpringsEdit *self, SpringsGroup group, SwCommittedEntry *entry);
/* What is stored; what was refused in one that is not asked for any more is given up. */
void springs_entry_show (GtkWidget *entry, const char *text, gboolean is_asked);
/* Tells all parts what is stored. */
void springs_edit_show (SpringsEdit *self);
/* What the control @at offered and cannot be, below it; NULL takes it away. One at a
 * time, and only until an entry was read. */
void springs_edit_refuse (SpringsEdit *self, GtkWidget *at, const char *sentence);
/* The same of what was done, in the label @line. */
void springs_edit_tell (SpringsEdit *self, GtkWidget *line, const char *sentence);

/* Stores what is another than before as one step; NULL, or why not: free with g_free ().
 */
char *springs_edit_store (SpringsEdit *self, const SpringSet *set, const char *label);
/* The same of what the control @at offers, which has the refusal. */
void springs_edit_choose (SpringsEdit *self,
                          GtkWidget *at,
                          const SpringSet *set,
                          const char *label);
/* "Change the torsion bar". */
const char *springs_change_label (SpringsGroup group);

/* Gives the setup in hand a set, or a rod, of its own, or takes it away. */
void springs_edit_make_own (SpringsEdit *self, SpringsGroup group, gboolean is_own);
