/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/words/csv.h"
#include "model/words/number-text.h"

#include <math.h>
#include <string.h>

void
csv_append_text (GString *text, const char *field)
{
  if (strpbrk (field, ",\"\r\n") == NULL) {
    g_string_append (text, field);
    return;
  }
  g_string_append_c (text, '"');
  for (const char *c = field; *c != '\0'; c++) {
    if (*c == '"')
      g_string_append_c (text, '"');
    g_string_append_c (text, *c);
  }
  g_string_append_c (text, '"');
}

void
csv_append_number (GString *text, double value)
{
  if (isfinite (value))
    append_exact_number (text, value);
}
