/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/entry/typed-number.h"

#include "model/words/typed-expression.h"

#include <locale.h>
#include <math.h>
#include <string.h>

#define MINUS "−"

static const char *
decimal_mark (void)
{
  return localeconv ()->decimal_point;
}

static gboolean
take (const char **text, const char *what)
{
  if (!g_str_has_prefix (*text, what))
    return FALSE;
  *text += strlen (what);
  return TRUE;
}

/* What is typed, as the C locale writes it; NULL where a character has no place in a
 * number. */
static char *
in_c_locale (const char *text)
{
  g_autoptr (GString) plain = g_string_new (NULL);

  while (*text != '\0')
    if (take (&text, MINUS) || take (&text, "-"))
      g_string_append_c (plain, '-');
    else if (take (&text, decimal_mark ()) || take (&text, "."))
      g_string_append_c (plain, '.');
    else if (g_ascii_isdigit (*text) || strchr ("+eE", *text) != NULL)
      g_string_append_c (plain, *text++);
    else
      return NULL;
  return g_string_free (g_steal_pointer (&plain), FALSE);
}

/* Without blanks of any kind around it. */
static char *
stripped (const char *text)
{
  const char *end = text + strlen (text);

  while (text < end && g_unichar_isspace (g_utf8_get_char (text)))
    text = g_utf8_next_char (text);
  while (end > text && g_unichar_isspace (g_utf8_get_char (g_utf8_prev_char (end))))
    end = g_utf8_prev_char (end);
  return g_strndup (text, (gsize) (end - text));
}

Typed
typed_number_read (const char *text, double *value)
{
  g_autofree char *bare = stripped (text), *plain = in_c_locale (bare);
  char *end;

  *value = 0.0;
  if (*bare == '\0')
    return TYPED_NOTHING;
  if (plain == NULL)
    return TYPED_NONSENSE;

  const double number = g_ascii_strtod (plain, &end);
  if (*end != '\0' || !isfinite (number))
    return TYPED_NONSENSE;
  *value = number;
  return TYPED_NUMBER;
}

Typed
typed_measure_read (const char *text, UnitKind kind, double *value)
{
  switch (typed_expression_read_stored (text, kind, value, NULL)) {
  case EXPRESSION_VALUE:
    return TYPED_NUMBER;
  case EXPRESSION_EMPTY:
    return TYPED_NOTHING;
  default:
    return TYPED_NONSENSE;
  }
}

char *
typed_number_meant (const char *text)
{
  g_auto (GStrv) parts = g_strsplit (text, ",", -1);
  g_autofree char *meant = g_strjoinv (decimal_mark (), parts);
  double value;

  if (g_strv_length (parts) != 2 || typed_number_read (text, &value) == TYPED_NUMBER ||
      typed_number_read (meant, &value) != TYPED_NUMBER)
    return NULL;
  return stripped (meant);
}

char *
typed_number_text (double value)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  for (int precision = 6; precision <= 17; precision++) {
    g_autofree char *format = g_strdup_printf ("%%.%dg", precision);

    g_ascii_formatd (digits, sizeof digits, format, value);
    if (g_ascii_strtod (digits, NULL) == value)
      break;
  }

  GString *text = g_string_new (digits);
  g_string_replace (text, ".", decimal_mark (), 1);
  return g_string_free (text, FALSE);
}

static gboolean
comma_parts (void)
{
  return !g_str_equal (decimal_mark (), ",");
}

/* The length of the piece that @text begins with. */
static gsize
piece_length (const char *text)
{
  const char *at = text;

  while (*at != '\0' && *at != ';' && !(comma_parts () && *at == ',') &&
         !g_unichar_isspace (g_utf8_get_char (at)))
    at = g_utf8_next_char (at);
  return (gsize) (at - text);
}

GArray *
typed_numbers_read (const char *text)
{
  g_autoptr (GArray) values = g_array_new (FALSE, FALSE, sizeof (double));

  while (*text != '\0') {
    const gsize length = piece_length (text);
    g_autofree char *piece = g_strndup (text, length);
    double value;

    if (length > 0 && typed_number_read (piece, &value) != TYPED_NUMBER)
      return NULL;
    if (length > 0)
      g_array_append_val (values, value);
    text += length;
    if (*text != '\0')
      text = g_utf8_next_char (text);
  }
  return g_steal_pointer (&values);
}

char *
typed_numbers_text (const double *values, guint n)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < n; i++) {
    g_autofree char *number = typed_number_text (values[i]);

    g_string_append_printf (text, "%s%s",
                            i == 0           ? ""
                            : comma_parts () ? ", "
                                             : "; ",
                            number);
  }
  return g_string_free (text, FALSE);
}
