/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/entry/refusal-units.h"
#include "window/entry/typed-number.h"

#include <math.h>
#include <string.h>

/* As printf writes them, with the unit that some sentences have behind them; indices of
 * lists are no numbers. */
#define NUMBER "(?<![\\w\\[.,])(-?\\d+(?:[.,]\\d+)?(?:e[-+]?\\d+)?)( N\\b)?(?![\\w\\]])"
#define DIGITS 1000.0

static UnitKind
kind_of_member (const char *path)
{
  static const struct {
    const char *ending;
    UnitKind kind;
  } endings[] = { { "_n_per_mm", UNIT_RATE },
                  { "_mm", UNIT_LENGTH },
                  { "_nm_per_deg", UNIT_TWIST_RATE },
                  { "_gpa", UNIT_MODULUS },
                  { "_n", UNIT_FORCE },
                  { "][1]", UNIT_FORCE },
                  { "]", UNIT_LENGTH } };

  for (gsize i = 0; i < G_N_ELEMENTS (endings); i++)
    if (g_str_has_suffix (path, endings[i].ending))
      return endings[i].kind == UNIT_LENGTH && strstr (path, "damper.table") != NULL
                 ? UNIT_SPEED
                 : endings[i].kind;
  return UNIT_NONE;
}

static gboolean
convert (const GMatchInfo *match, GString *text, gpointer data)
{
  g_autofree char *digits = g_match_info_fetch (match, 1);
  g_autofree char *newton = g_match_info_fetch (match, 2);
  const gboolean is_force = newton != NULL && newton[0] != '\0';
  const UnitKind kind = is_force ? UNIT_FORCE : *(const UnitKind *) data;
  const double stored = g_ascii_strtod (g_strdelimit (digits, ",", '.'), NULL);
  g_autofree char *shown =
      typed_number_text (round (unit_shown (kind, stored) * DIGITS) / DIGITS);

  if (unit_shown (kind, 1.0) == 1.0) {
    g_autofree char *whole = g_match_info_fetch (match, 0);

    g_string_append (text, whole);
    return FALSE;
  }
  g_string_append_printf (text, "%s %s", shown, unit_symbol (kind));
  return FALSE;
}

char *
refusal_in_units (const char *sentence)
{
  g_autofree char *path = g_strndup (sentence, strcspn (sentence, " "));
  UnitKind kind = kind_of_member (path);

  g_autoptr (GRegex) number = g_regex_new (NUMBER, 0, 0, NULL);
  return g_regex_replace_eval (number, sentence, -1, 0, 0, convert, &kind, NULL);
}

static gboolean
put_unit (const GMatchInfo *match, GString *text, gpointer data)
{
  g_autofree char *digits = g_match_info_fetch (match, 1);
  const double stored = g_ascii_strtod (g_strdelimit (digits, ",", '.'), NULL);
  g_autofree char *shown = unit_plain_text (*(const UnitKind *) data, stored, 3);

  g_string_append (text, shown);
  return FALSE;
}

char *
refusal_with_units (const char *sentence, UnitKind kind)
{
  g_autoptr (GRegex) number = g_regex_new (NUMBER, 0, 0, NULL);
  return g_regex_replace_eval (number, sentence, -1, 0, 0, put_unit, &kind, NULL);
}
