/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "written-file.h"

#include <string.h>

GBytes *
written_bytes (const char *path)
{
  char *bytes;
  gsize length;

  g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
  return g_bytes_new_take (bytes, length);
}

guint
written_count (GBytes *bytes, const char *part)
{
  gsize length;
  const char *data = g_bytes_get_data (bytes, &length);
  const gsize n_part = strlen (part);
  guint n = 0;

  for (gsize i = 0; i + n_part <= length; i++)
    n += memcmp (data + i, part, n_part) == 0 ? 1 : 0;
  return n;
}
