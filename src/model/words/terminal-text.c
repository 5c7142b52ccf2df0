/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/words/terminal-text.h"

guint
text_columns (const char *text)
{
  guint n = 0;

  for (const char *c = text; *c != '\0'; c = g_utf8_next_char (c)) {
    const gunichar character = g_utf8_get_char (c);

    if (!g_unichar_iszerowidth (character))
      n += g_unichar_iswide (character) ? 2 : 1;
  }
  return n;
}

char *
terminal_line (const char *name)
{
  GString *plain = g_string_new (NULL);

  for (const char *c = name; *c != '\0'; c = g_utf8_next_char (c)) {
    const gunichar character = g_utf8_get_char (c);

    g_string_append_unichar (plain, g_unichar_iscntrl (character) ? ' ' : character);
  }
  return g_string_free (plain, FALSE);
}

void
terminal_pad (GString *text, const char *cell, guint width, TerminalAlign align)
{
  const guint columns = text_columns (cell);
  const int room = columns < width ? (int) (width - columns) : 0;

  g_string_append_printf (text, "%*s%s%*s", align == TERMINAL_RIGHT ? room : 0, "", cell,
                          align == TERMINAL_LEFT ? room : 0, "");
}

void
terminal_paragraph (GString *text, const char *words, guint indent, guint width)
{
  g_auto (GStrv) list = g_strsplit (words, " ", -1);
  guint at = 0; /* columns of the line so far; 0 before its first word */

  for (char **word = list; *word != NULL; word++) {
    const guint columns = text_columns (*word);

    if (at > 0 && at + 1 + columns > width) {
      g_string_append_c (text, '\n');
      at = 0;
    }
    if (at == 0) {
      g_string_append_printf (text, "%*s%s", (int) indent, "", *word);
      at = indent + columns;
    } else {
      g_string_append_printf (text, " %s", *word);
      at += 1 + columns;
    }
  }
  g_string_append_c (text, '\n');
}
