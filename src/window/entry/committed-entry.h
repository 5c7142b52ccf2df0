/* SPDX-License-Identifier: GPL-3.0-or-later */
/* An entry that hands over what was typed by Enter or by leaving it. What cannot be taken
 * stays as it is, marked, with the sentence that refuses it; Escape puts back what stood
 * there. Up and Down, Page Up and Page Down, and the wheel where it has the focus, step.
 *
 * Signals: "checked" after something was taken, refused or put back; "cancelled" when
 * Escape had nothing to put back. */

#pragma once

#include <gtk/gtk.h>

#define SW_TYPE_COMMITTED_ENTRY (sw_committed_entry_get_type ())
G_DECLARE_FINAL_TYPE (SwCommittedEntry, sw_committed_entry, SW, COMMITTED_ENTRY, GtkEntry)

/* Stores what @text says and returns NULL, or says in one sentence why not; free with
 * g_free (). */
typedef char *(*EntryTake) (const char *text, gpointer data);
/* Stores what is @steps further. */
typedef void (*EntryStep) (int steps, gpointer data);

/* @step may be NULL. @data belongs to the caller and outlives the entry. */
GtkWidget *
sw_committed_entry_new (const char *label, EntryTake take, EntryStep step, gpointer data);

/* What is stored now: shown unless it was already, so that it does not overwrite what is
 * being typed. */
void sw_committed_entry_show (SwCommittedEntry *self, const char *text);
/* Gives up what is typed or refused. */
void sw_committed_entry_restore (SwCommittedEntry *self);
/* NULL where nothing is at fault. */
const char *sw_committed_entry_get_refusal (SwCommittedEntry *self);
/* One sentence on what it is; stands in the tooltip while nothing is refused. */
void sw_committed_entry_set_meaning (SwCommittedEntry *self, const char *meaning);
