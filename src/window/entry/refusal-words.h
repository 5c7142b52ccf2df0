/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Refusals and warnings of the model name members of a file by their paths; people in
 * front of a form know its entries by their names. */

#pragma once

#include <glib.h>

/* The translated name of the entry for the member at @path, free with g_free (); NULL
 * where the form has none. Notes which entry it was. */
typedef char *(*RefusalEntry) (const char *path, gpointer data);

/* That the entry @name holds @text, which is no number. Free with g_free (). */
char *refusal_of_number (const char *name, const char *text);

/* The same with the sentence @why. */
char *refusal_of_piece (const char *name, const char *text, const char *why);

/* That the entry @name takes no more than @bound, or no less, "45.00°", where it holds
 * @text. Free with g_free (). */
char *refusal_of_bound (const char *name,
                        const char *text,
                        gboolean is_high,
                        const char *bound);

/* @sentence with the name of the entry in place of each path. Free with g_free (). */
char *refusal_in_words (const char *sentence, RefusalEntry entry, gpointer data);
