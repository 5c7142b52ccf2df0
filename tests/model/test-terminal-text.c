/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/words/terminal-text.h"

/* ä is two bytes, a combining mark no column, 低 two: Unicode Standard Annex 11. */
static void
test_columns_are_what_a_terminal_shows (void)
{
  g_assert_cmpuint (text_columns (""), ==, 0);
  g_assert_cmpuint (text_columns ("ä −1°"), ==, 5);
  g_assert_cmpuint (text_columns ("e\xcc\x81低"), ==, 3);
}

static void
check_pad (const char *cell, guint width, TerminalAlign align, const char *padded)
{
  g_autoptr (GString) text = g_string_new ("|");

  terminal_pad (text, cell, width, align);
  g_assert_cmpstr (text->str, ==, padded);
}

static void
test_pad_counts_columns (void)
{
  check_pad ("低", 4, TERMINAL_LEFT, "|低  ");
  check_pad ("−1", 4, TERMINAL_RIGHT, "|  −1");
  check_pad ("long", 3, TERMINAL_RIGHT, "|long");
}

static void
test_a_line_stays_a_line (void)
{
  g_autofree char *line = terminal_line ("a\tb\nc\x1b[31m");

  g_assert_cmpstr (line, ==, "a b c [31m");
}

static void
check_paragraph (const char *words, guint indent, guint width, const char *wrapped)
{
  g_autoptr (GString) text = g_string_new (NULL);

  terminal_paragraph (text, words, indent, width);
  g_assert_cmpstr (text->str, ==, wrapped);
}

static void
test_paragraphs_wrap_between_words (void)
{
  check_paragraph ("one two three", 0, 7, "one two\nthree\n");
  check_paragraph ("one two three", 2, 7, "  one\n  two\n  three\n");
  check_paragraph ("one", 2, 80, "  one\n");
  check_paragraph ("a unbreakable b", 1, 5, " a\n unbreakable\n b\n");
  check_paragraph ("低低 低", 0, 6, "低低\n低\n");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/terminal-text/columns", test_columns_are_what_a_terminal_shows);
  g_test_add_func ("/terminal-text/pad", test_pad_counts_columns);
  g_test_add_func ("/terminal-text/line", test_a_line_stays_a_line);
  g_test_add_func ("/terminal-text/paragraph", test_paragraphs_wrap_between_words);
  return g_test_run ();
}
