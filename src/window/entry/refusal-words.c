/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/entry/refusal-words.h"
#include "window/entry/typed-number.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* Members, and elements of lists. */
#define PATH "[a-z][a-z_]*(?:\\[\\d+\\]|\\.[a-z][a-z_]*)*"

typedef struct {
  RefusalEntry entry;
  gpointer data;
} Wording;

/* A bare word inside a sentence may be just that. */
static gboolean
may_be_path (const GMatchInfo *match, const char *word)
{
  int start;

  g_match_info_fetch_pos (match, 0, &start, NULL);
  return start == 0 || strpbrk (word, "_.[") != NULL;
}

static gboolean
word_path (const GMatchInfo *match, GString *text, gpointer data)
{
  const Wording *wording = data;
  g_autofree char *word = g_match_info_fetch (match, 0);
  g_autofree char *name =
      may_be_path (match, word) ? wording->entry (word, wording->data) : NULL;

  if (name == NULL)
    g_string_append (text, word);
  else
    /* Translators: the name of an entry, quoted inside a sentence. */
    g_string_append_printf (text, _ ("“%s”"), name);
  return FALSE;
}

char *
refusal_of_number (const char *name, const char *text)
{
  g_autofree char *meant = typed_number_meant (text);

  if (meant == NULL)
    return g_strdup_printf (_ ("“%s” holds “%s”, which is no number."), name, text);
  /* Translators: the last is the same with the decimal mark that is read: "−0.6" for
   * "−0,6". */
  return g_strdup_printf (_ ("“%s” holds “%s”, which is no number here; write “%s”."),
                          name, text, meant);
}

char *
refusal_of_piece (const char *name, const char *text, const char *why)
{
  return g_strdup_printf (_ ("“%s” holds “%s”, which is no number: %s"), name, text, why);
}

char *
refusal_of_bound (const char *name, const char *text, gboolean is_high, const char *bound)
{
  /* Translators: the name of an entry, its bound as “45.00°”, what was typed. */
  return g_strdup_printf (is_high ? _ ("“%s” is at most %s; “%s” is more.")
                                  : _ ("“%s” is at least %s; “%s” is less."),
                          name, bound, text);
}

char *
refusal_in_words (const char *sentence, RefusalEntry entry, gpointer data)
{
  static GRegex *path;
  Wording wording = { entry, data };

  if (path == NULL)
    path = g_regex_new (PATH, G_REGEX_OPTIMIZE, 0, NULL);
  return g_regex_replace_eval (path, sentence, -1, 0, 0, word_path, &wording, NULL);
}
