/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Text in columns, as a terminal shows it. */

#pragma once

#include <glib.h>

/* Columns that @text takes. */
guint text_columns (const char *text);

/* @text as one line: what would move the cursor is a space. Free with g_free (). */
char *terminal_line (const char *text);

typedef enum {
  TERMINAL_LEFT,
  TERMINAL_RIGHT
} TerminalAlign;

/* Appends @cell, filled with spaces up to @width columns. */
void terminal_pad (GString *text, const char *cell, guint width, TerminalAlign align);

/* Appends @words with every line behind @indent spaces, wrapped between words so that no
 * line takes more than @width columns unless a word does; ends with a line feed. */
void terminal_paragraph (GString *text, const char *words, guint indent, guint width);
