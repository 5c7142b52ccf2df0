/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/json/json-path.h"

#define LONGEST_NAME 40 /* characters of a member name that a sentence repeats */

void
json_path_append_member (GString *path, const char *name)
{
  if (path->len > 0)
    g_string_append_c (path, '.');
  for (int i = 0; *name != '\0'; i++, name = g_utf8_next_char (name)) {
    const gunichar c = g_utf8_get_char (name);

    if (i == LONGEST_NAME) {
      g_string_append (path, "…");
      return;
    }
    g_string_append_unichar (path, g_unichar_isprint (c) ? c : '?');
  }
}

void
json_path_append_index (GString *path, guint index)
{
  g_string_append_printf (path, "[%u]", index);
}
