/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Distance between a and b, d[i][j] of their first i and j letters:
 *   d[i][j] = least of d[i−1][j] + 1, d[i][j−1] + 1, d[i−1][j−1] + (aᵢ ≠ bⱼ), and, where
 *   the last two letters are those of the other swapped, d[i−2][j−2] + 1.
 * Source: the optimal string alignment distance, from memory. */
#include "model/words/near-word.h"

#include <string.h>

#define MOST_LETTERS 32
#define MOST_CHANGED 2 /* and never more than a third of the word */

static guint
least (guint a, guint b, guint c)
{
  return MIN (a, MIN (b, c));
}

static guint
distance (const char *a, const char *b)
{
  const gsize n_a = strlen (a), n_b = strlen (b);
  guint d[MOST_LETTERS + 1][MOST_LETTERS + 1];

  for (gsize i = 0; i <= n_a; i++)
    for (gsize j = 0; j <= n_b; j++) {
      d[i][j] = (guint) (i + j);
      if (i == 0 || j == 0)
        continue;
      d[i][j] = least (d[i - 1][j] + 1, d[i][j - 1] + 1,
                       d[i - 1][j - 1] + (a[i - 1] != b[j - 1]));
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        d[i][j] = MIN (d[i][j], d[i - 2][j - 2] + 1);
    }
  return d[n_a][n_b];
}

const char *
near_word (const char *word, const char *const *words)
{
  g_autofree char *plain = g_ascii_strdown (word, -1);
  const char *best = NULL;
  guint fewest = MOST_CHANGED + 1;

  if (strlen (plain) > MOST_LETTERS)
    return NULL;
  for (; *words != NULL; words++) {
    const gsize length = strlen (*words);
    const guint n = length > MOST_LETTERS ? MOST_CHANGED + 1 : distance (plain, *words);

    if (n < fewest && 3 * n <= MAX (length, strlen (plain)) + 1) {
      fewest = n;
      best = *words;
    }
  }
  return best;
}

static gboolean
lacks_unit (const char *word, const char *name)
{
  return word[0] != '\0' && g_str_has_prefix (name, word) && name[strlen (word)] == '_';
}

const char *
near_member (const char *word, const char *const *names)
{
  const char *near = near_word (word, names);

  for (; near == NULL && *names != NULL; names++)
    if (lacks_unit (word, *names))
      near = *names;
  return near;
}
