/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/words/typed-expression.h"
#include "model/words/typed-unit.h"

#include <glib/gi18n-lib.h>
#include <locale.h>
#include <math.h>
#include <string.h>

typedef struct {
  const char *at;
  UnitKind kind; /* of the units that may follow a number */
  double bare;   /* the size of a number's unit that has none */
  unsigned depth;
  char *refusal;
} Reader;

typedef struct {
  double number; /* in the stored unit of the reader's kind with a unit */
  gboolean has_unit;
} Measure;

static Measure read_sum (Reader *r);

static Measure
refuse (Reader *r, char *sentence)
{
  if (r->refusal == NULL)
    r->refusal = sentence;
  else
    g_free (sentence);
  return (Measure){ 0 };
}

static void
skip_blanks (Reader *r)
{
  while (*r->at != '\0' && g_unichar_isspace (g_utf8_get_char (r->at)))
    r->at = g_utf8_next_char (r->at);
}

static gboolean
take (Reader *r, const char *what)
{
  if (!g_str_has_prefix (r->at, what))
    return FALSE;
  r->at += strlen (what);
  return TRUE;
}

static gboolean
take_any (Reader *r, const char *const *what)
{
  skip_blanks (r);
  for (; *what != NULL; what++)
    if (take (r, *what))
      return TRUE;
  return FALSE;
}

static gboolean
take_plus (Reader *r)
{
  return take_any (r, (const char *const[]){ "+", NULL });
}

static gboolean
take_minus (Reader *r)
{
  return take_any (r, (const char *const[]){ "−", "-", "–", NULL });
}

static gboolean
take_times (Reader *r)
{
  return take_any (r, (const char *const[]){ "*", "×", "·", NULL });
}

static gboolean
take_over (Reader *r)
{
  return take_any (r, (const char *const[]){ "/", "÷", "⁄", NULL });
}

/* What stands at @at: a word, a number or one sign. */
static char *
piece (const char *at)
{
  const char *end = at;

  while (*end != '\0' && g_unichar_isalpha (g_utf8_get_char (end)))
    end = g_utf8_next_char (end);
  if (end == at)
    while (g_ascii_isdigit (*end))
      end++;
  if (end == at && *end != '\0')
    end = g_utf8_next_char (end);
  return g_strndup (at, (gsize) (end - at));
}

static Measure
refuse_piece (Reader *r)
{
  skip_blanks (r);
  g_autofree char *what = piece (r->at);

  if (*what == '\0')
    return refuse (r, g_strdup (_ ("A number is missing at the end.")));
  return refuse (r, g_strdup_printf (_ ("“%s” was not understood."), what));
}

/* No Measure leaves here that is not finite. */
static Measure
measure (Reader *r, double number, gboolean has_unit)
{
  if (!isfinite (number))
    return refuse (r, g_strdup (_ ("The number is too large.")));
  return (Measure){ number, has_unit };
}

static gboolean
take_mark (Reader *r)
{
  return take (r, localeconv ()->decimal_point) || take (r, ".");
}

static void
take_digits (Reader *r, GString *digits)
{
  while (g_ascii_isdigit (*r->at))
    g_string_append_c (digits, *r->at++);
}

static void
take_exponent (Reader *r, GString *digits)
{
  Reader after = *r;

  if (*after.at != 'e' && *after.at != 'E')
    return;
  after.at++;
  const gboolean is_negative = take (&after, "−") || take (&after, "-");

  if (!is_negative)
    take (&after, "+");
  if (!g_ascii_isdigit (*after.at))
    return;
  g_string_append (digits, is_negative ? "e-" : "e");
  take_digits (&after, digits);
  r->at = after.at;
}

/* A number without sign; false, and nothing taken, where there is none. */
static gboolean
take_number (Reader *r, double *value)
{
  g_autoptr (GString) digits = g_string_new (NULL);
  Reader after = *r;

  take_digits (&after, digits);
  const gsize n_before = digits->len;

  if (take_mark (&after)) {
    g_string_append_c (digits, '.');
    take_digits (&after, digits);
  }
  if (digits->len == 0 || (n_before == 0 && digits->len == 1))
    return FALSE;
  take_exponent (&after, digits);
  *value = g_ascii_strtod (digits->str, NULL);
  r->at = after.at;
  return TRUE;
}

/* Digits alone: no mark, no exponent behind them. */
static gboolean
take_whole (Reader *r, double *value)
{
  Reader number = *r, digits = *r;
  g_autoptr (GString) taken = g_string_new (NULL);

  take_digits (&digits, taken);
  if (!take_number (&number, value) || number.at != digits.at)
    return FALSE;
  r->at = number.at;
  return TRUE;
}

static gboolean
take_vulgar (Reader *r, double *value)
{
  static const struct {
    const char *sign;
    double value;
  } signs[] = { { "½", 0.5 },   { "¼", 0.25 },  { "¾", 0.75 }, { "⅛", 0.125 },
                { "⅜", 0.375 }, { "⅝", 0.625 }, { "⅞", 0.875 } };

  for (gsize i = 0; i < G_N_ELEMENTS (signs); i++)
    if (take (r, signs[i].sign)) {
      *value = signs[i].value;
      return TRUE;
    }
  return FALSE;
}

/* "1/8"; blanks may stand around the stroke. */
static gboolean
take_fraction (Reader *r, double *value)
{
  Reader after = *r;
  double above, below;

  if (take_vulgar (r, value))
    return TRUE;
  if (!take_whole (&after, &above) || !take_over (&after))
    return FALSE;
  skip_blanks (&after);
  if (!take_whole (&after, &below))
    return FALSE;
  if (below == 0.0)
    refuse (r, g_strdup (_ ("Nothing can be divided by zero.")));
  else
    *value = above / below;
  r->at = after.at;
  return TRUE;
}

/* A number, a fraction, or a whole number and a fraction. */
static gboolean
take_figure (Reader *r, double *value)
{
  double fraction = 0.0;

  *value = 0.0;
  if (take_fraction (r, value))
    return TRUE;

  Reader whole = *r;
  if (take_whole (&whole, value)) {
    skip_blanks (&whole);
    if (take_fraction (&whole, &fraction)) {
      r->at = whole.at;
      r->refusal = whole.refusal;
      *value += fraction;
      return TRUE;
    }
  }
  return take_number (r, value);
}

/* NULL where no unit stands here, or one that does not fit. */
static const TypedUnit *
take_unit (Reader *r)
{
  skip_blanks (r);
  const TypedUnit *unit = typed_unit_find (r->at, r->kind);

  if (unit == NULL)
    return NULL;
  if (unit->kind != r->kind) {
    refuse (r, g_strdup_printf (_ ("“%s” is no unit that fits here."), unit->symbol));
    return NULL;
  }
  r->at += strlen (unit->symbol);
  return unit;
}

static gboolean
is_next_smaller (const TypedUnit *unit, const TypedUnit *larger)
{
  return fabs (unit->size / larger->size - larger->fraction) < 1e-9;
}

/* The minutes behind degrees, the inches behind feet; @size is of the unit before. */
static double
read_rest (Reader *r, const TypedUnit *larger)
{
  double value;

  skip_blanks (r);
  if (larger->fraction == 0.0 || r->refusal != NULL || !take_figure (r, &value))
    return 0.0;

  const char *behind = r->at;
  const TypedUnit *unit = take_unit (r);
  const double size = larger->size * larger->fraction;

  if (unit != NULL && !is_next_smaller (unit, larger)) {
    r->at = behind;
    refuse_piece (r);
  } else if (value * larger->fraction >= 1.0) {
    refuse (r, g_strdup_printf (_ ("What follows “%s” must be less than one of it."),
                                larger->symbol));
  }
  return r->refusal == NULL ? value * size + (unit != NULL ? read_rest (r, unit) : 0.0)
                            : 0.0;
}

static Measure
read_measure (Reader *r)
{
  double value;

  if (!take_figure (r, &value))
    return refuse_piece (r);

  const TypedUnit *unit = take_unit (r);
  if (unit == NULL)
    return measure (r, value, FALSE);
  return measure (r, value * unit->size + read_rest (r, unit), TRUE);
}

static Measure
read_bracket (Reader *r)
{
  const Measure inside = read_sum (r);

  skip_blanks (r);
  if (r->refusal == NULL && *r->at == '\0')
    return refuse (r, g_strdup (_ ("A closing bracket is missing.")));
  if (r->refusal == NULL && !take (r, ")"))
    return refuse_piece (r);

  const TypedUnit *unit = inside.has_unit ? NULL : take_unit (r);
  return unit != NULL ? measure (r, inside.number * unit->size, TRUE) : inside;
}

static Measure
read_nested (Reader *r)
{
  skip_blanks (r);
  if (take (r, "("))
    return read_bracket (r);
  return read_measure (r);
}

static Measure
read_factor (Reader *r)
{
  Measure value;

  if (r->depth >= TYPED_EXPRESSION_NESTING)
    return refuse (r, g_strdup (_ ("Brackets are nested too deeply.")));
  r->depth++;
  if (take_minus (r)) {
    value = read_factor (r);
    value.number = -value.number;
  } else if (take_plus (r)) {
    value = read_factor (r);
  } else {
    value = read_nested (r);
  }
  r->depth--;
  return value;
}

static Measure
multiplied (Reader *r, Measure a, Measure b)
{
  if (a.has_unit && b.has_unit)
    return refuse (r, g_strdup (_ ("Only one factor of a product can have a unit.")));
  return measure (r, a.number * b.number, a.has_unit || b.has_unit);
}

static Measure
divided (Reader *r, Measure a, Measure b)
{
  if (r->refusal != NULL)
    return a;
  if (b.has_unit)
    return refuse (r, g_strdup (_ ("What divides a number must be without a unit.")));
  if (b.number == 0.0)
    return refuse (r, g_strdup (_ ("Nothing can be divided by zero.")));
  return measure (r, a.number / b.number, a.has_unit);
}

static Measure
read_product (Reader *r)
{
  Measure value = read_factor (r);

  while (r->refusal == NULL)
    if (take_times (r))
      value = multiplied (r, value, read_factor (r));
    else if (take_over (r))
      value = divided (r, value, read_factor (r));
    else
      break;
  return value;
}

static Measure
with_unit (Reader *r, Measure value)
{
  return value.has_unit ? value : measure (r, value.number * r->bare, TRUE);
}

static Measure
added (Reader *r, Measure a, Measure b, double sign)
{
  if (a.has_unit || b.has_unit) {
    a = with_unit (r, a);
    b = with_unit (r, b);
  }
  return measure (r, a.number + sign * b.number, a.has_unit);
}

static Measure
read_sum (Reader *r)
{
  Measure value = read_product (r);

  while (r->refusal == NULL)
    if (take_plus (r))
      value = added (r, value, read_product (r), 1.0);
    else if (take_minus (r))
      value = added (r, value, read_product (r), -1.0);
    else
      break;
  return value;
}

/* A toe is typed as it is shown: an angle, or a length at the rim. */
static Reader
reader_of (const char *text, UnitKind kind)
{
  UnitKind units = kind;

  if (kind == UNIT_TOE)
    units = unit_choice ()->toe == TOE_AT_DIAMETER ? UNIT_LENGTH : UNIT_ANGLE;
  if (kind == UNIT_PITCH)
    return (Reader){ .at = text, .kind = UNIT_LENGTH, .bare = 1.0 };
  return (Reader){ .at = text, .kind = units, .bare = unit_stored (units, 1.0) };
}

static double
stored_toe (Reader *r, double value)
{
  const double toe = unit_stored (UNIT_TOE, value / r->bare);

  if (!isfinite (toe))
    refuse (r, g_strdup (_ ("The toe is too large for the diameter it is taken at.")));
  return toe;
}

static ExpressionStatus
read_all (Reader *r, UnitKind kind, double *value, char **refusal)
{
  *value = 0.0;
  if (refusal != NULL)
    *refusal = NULL;
  skip_blanks (r);
  if (*r->at == '\0')
    return EXPRESSION_EMPTY;

  const Measure sum = with_unit (r, read_sum (r));
  const double stored = kind == UNIT_TOE ? stored_toe (r, sum.number) : sum.number;
  skip_blanks (r);
  if (*r->at != '\0')
    refuse_piece (r);
  if (r->refusal == NULL) {
    *value = stored;
    return EXPRESSION_VALUE;
  }
  if (refusal != NULL)
    *refusal = g_steal_pointer (&r->refusal);
  g_free (r->refusal);
  return EXPRESSION_REFUSED;
}

ExpressionStatus
typed_expression_read (const char *text, UnitKind kind, double *value, char **refusal)
{
  Reader r = reader_of (text, kind);

  return read_all (&r, kind, value, refusal);
}

ExpressionStatus
typed_expression_read_stored (const char *text,
                              UnitKind kind,
                              double *value,
                              char **refusal)
{
  Reader r = { .at = text, .kind = kind, .bare = 1.0 };

  return read_all (&r, kind, value, refusal);
}
