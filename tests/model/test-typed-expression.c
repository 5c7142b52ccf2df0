/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "comma-locale.h"
#include "model/words/typed-expression.h"

#include <float.h>
#include <locale.h>
#include <string.h>

typedef struct {
  const char *text;
  UnitKind kind;
  double value; /* by hand */
} Case;

static void
assert_value (const char *text, UnitKind kind, double wanted)
{
  g_autofree char *refusal = NULL;
  double value = 99.0;

  g_test_message ("“%s”", text);
  g_assert_cmpint (typed_expression_read (text, kind, &value, &refusal), ==,
                   EXPRESSION_VALUE);
  g_assert_null (refusal);
  g_assert_cmpfloat_with_epsilon (value, wanted, 1e-12 * MAX (1.0, ABS (wanted)));
}

static void
test_reads_what_people_type (void)
{
  static const Case cases[] = {
    { "12", UNIT_LENGTH, 12.0 },
    { " −0.5 ", UNIT_LENGTH, -0.5 },
    { "+.25", UNIT_LENGTH, 0.25 },
    { "5.", UNIT_LENGTH, 5.0 },
    { "1e3", UNIT_NONE, 1000.0 },
    { "1e-2*3", UNIT_NONE, 0.03 },
    { "1/8", UNIT_LENGTH, 0.125 },
    { "12 1/2", UNIT_LENGTH, 12.5 },
    { "-12 1/2", UNIT_LENGTH, -12.5 },
    { "12½", UNIT_LENGTH, 12.5 },
    { "2 ¼ in", UNIT_LENGTH, 57.15 },
    { "2 1/4\"", UNIT_LENGTH, 57.15 },
    { "1/8 in", UNIT_LENGTH, 3.175 },
    { "12.5+1/8 in", UNIT_LENGTH, 15.675 },
    { "12.5 mm + 1/8\"", UNIT_LENGTH, 15.675 },
    { "3mm", UNIT_LENGTH, 3.0 },
    { "1.2 cm", UNIT_LENGTH, 12.0 },
    { "2' 3 1/2\"", UNIT_LENGTH, 698.5 }, /* 27.5 in */
    { "2 ft 3", UNIT_LENGTH, 685.8 },
    { "2*(3+1 in)", UNIT_LENGTH, 56.8 },
    { "(1+1/8) in", UNIT_LENGTH, 28.575 },
    { "10/4*2", UNIT_LENGTH, 5.0 },
    { "2-3-4", UNIT_LENGTH, -5.0 },
    { "2+3*4", UNIT_LENGTH, 14.0 },
    { "5×−2", UNIT_LENGTH, -10.0 },
    { "7÷2", UNIT_LENGTH, 3.5 },
    { "--5", UNIT_LENGTH, 5.0 },
    { "200 in/s", UNIT_SPEED, 5.08 },
    { "500 mm/s", UNIT_SPEED, 0.5 },
    { "70 Mpsi/10", UNIT_MODULUS, 7.0 * 0.45359237 * 9.80665 / 0.64516 },
    { "12 in lbf/deg", UNIT_TWIST_RATE, 0.45359237 * 9.80665 * 0.3048 },
    { "12 lbf·ft/°", UNIT_TWIST_RATE, 12 * 0.45359237 * 9.80665 * 0.3048 },
    { "1°30'", UNIT_ANGLE, 1.5 },
    { "−1° 30′", UNIT_ANGLE, -1.5 },
    { "1°30", UNIT_ANGLE, 1.5 },
    { "1°30'36\"", UNIT_ANGLE, 1.51 },
    { "45'", UNIT_ANGLE, 0.75 },
    { "2 deg 6 min", UNIT_ANGLE, 2.1 },
    { "1.5", UNIT_ANGLE, 1.5 },
    { "30'/4", UNIT_ANGLE, 0.125 },
    { "5 lbf/in", UNIT_RATE, 5.0 * 4.4482216152605 / 25.4 },
    { "200 lb/in / 2", UNIT_RATE, 100.0 * 4.4482216152605 / 25.4 },
    { "28 N/mm", UNIT_RATE, 28.0 },
    { "28000 N/m", UNIT_RATE, 28.0 },
    { "10 lb", UNIT_MASS, 4.5359237 },
    { "10 lb", UNIT_FORCE, 44.482216152605 },
    { "1 kN", UNIT_FORCE, 1000.0 },
    { "\u00a0"
      "7\u202f",
      UNIT_LENGTH, 7.0 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    assert_value (cases[i].text, cases[i].kind, cases[i].value);
}

/* A bare number is in the unit that the entry shows. */
static void
test_bare_numbers_follow_the_choice (void)
{
  UnitChoice choice = unit_choice_stored;

  choice.length = LENGTH_INCH;
  choice.angle = ANGLE_MINUTES;
  choice.toe = TOE_TOTAL;
  unit_choice_set (&choice);
  assert_value ("1/8", UNIT_LENGTH, 3.175);
  assert_value ("12.7 mm + 1/2", UNIT_LENGTH, 25.4);
  assert_value ("1.5", UNIT_ANGLE, 1.5);
  assert_value ("30'", UNIT_TOE, 0.25);
  choice.toe = TOE_AT_DIAMETER;
  choice.toe_diameter_mm = 500.0;
  unit_choice_set (&choice);
  assert_value ("500 mm", UNIT_TOE, 30.0); /* sin 30° = 1/2 */
  unit_choice_set (&unit_choice_stored);
}

/* An entry that keeps to the stored unit takes others all the same. */
static void
test_stored_units_stay_where_they_are_shown (void)
{
  UnitChoice choice = unit_choice_stored;
  double value;

  choice.length = LENGTH_INCH;
  unit_choice_set (&choice);
  g_assert_cmpint (typed_expression_read_stored ("1/2 + 1/2 in", UNIT_LENGTH, &value,
                                                 NULL),
                   ==, EXPRESSION_VALUE);
  g_assert_cmpfloat_with_epsilon (value, 13.2, 1e-12);
  unit_choice_set (&unit_choice_stored);
}

static void
test_says_what_was_not_understood (void)
{
  static const struct {
    const char *text;
    UnitKind kind;
    const char *refusal;
  } cases[] = {
    { "20x", UNIT_LENGTH, "“x” was not understood." },
    { "abc + 1", UNIT_LENGTH, "“abc” was not understood." },
    { "system(1)", UNIT_LENGTH, "“system” was not understood." },
    { "2**3", UNIT_LENGTH, "“*” was not understood." },
    { "2^3", UNIT_LENGTH, "“^” was not understood." },
    { "1.2.3", UNIT_NONE, "“.” was not understood." },
    { "1,5", UNIT_LENGTH, "“,” was not understood." },
    { "1 2", UNIT_LENGTH, "“2” was not understood." },
    { "3 mm 4", UNIT_LENGTH, "“4” was not understood." },
    { "0x10", UNIT_LENGTH, "“x” was not understood." },
    { "inf", UNIT_LENGTH, "“inf” was not understood." },
    { "2 inside", UNIT_LENGTH, "“inside” was not understood." },
    { "-", UNIT_LENGTH, "A number is missing at the end." },
    { "12+", UNIT_LENGTH, "A number is missing at the end." },
    { "(1+2", UNIT_LENGTH, "A closing bracket is missing." },
    { "1+2)", UNIT_LENGTH, "“)” was not understood." },
    { "()", UNIT_LENGTH, "“)” was not understood." },
    { "3 kg", UNIT_LENGTH, "“kg” is no unit that fits here." },
    { "3 mm", UNIT_ANGLE, "“mm” is no unit that fits here." },
    { "3 mm", UNIT_NONE, "“mm” is no unit that fits here." },
    { "2 mm * 3 mm", UNIT_LENGTH, "Only one factor of a product can have a unit." },
    { "2 / (3 mm)", UNIT_LENGTH, "What divides a number must be without a unit." },
    { "1/0", UNIT_LENGTH, "Nothing can be divided by zero." },
    { "1/(2-2)", UNIT_LENGTH, "Nothing can be divided by zero." },
    { "5 1/0", UNIT_LENGTH, "Nothing can be divided by zero." },
    { "1e999", UNIT_LENGTH, "The number is too large." },
    { "1e200*1e200", UNIT_LENGTH, "The number is too large." },
    { "1e308 in", UNIT_LENGTH, "The number is too large." },
    { "1°75'", UNIT_ANGLE, "What follows “°” must be less than one of it." },
    { "1°30 deg", UNIT_ANGLE, "“deg” was not understood." },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autofree char *refusal = NULL;
    double value = 99.0;

    g_test_message ("“%s”", cases[i].text);
    g_assert_cmpint (typed_expression_read (cases[i].text, cases[i].kind, &value,
                                            &refusal),
                     ==, EXPRESSION_REFUSED);
    g_assert_cmpstr (refusal, ==, cases[i].refusal);
    g_assert_cmpfloat (value, ==, 0.0);
  }
}

static char *
nested (guint n)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < n; i++)
    g_string_append_c (text, '(');
  g_string_append_c (text, '1');
  for (guint i = 0; i < n; i++)
    g_string_append_c (text, ')');
  return g_string_free (text, FALSE);
}

static void
test_nesting_ends (void)
{
  g_autofree char *most = nested (TYPED_EXPRESSION_NESTING - 1);
  g_autofree char *deep = nested (TYPED_EXPRESSION_NESTING);
  g_autofree char *abyss = nested (1000000);
  g_autofree char *signs = g_strnfill (1000000, '-');
  const char *refused[] = { deep, abyss, signs };

  assert_value (most, UNIT_LENGTH, 1.0);
  for (gsize i = 0; i < G_N_ELEMENTS (refused); i++) {
    g_autofree char *refusal = NULL;
    double value;

    g_assert_cmpint (typed_expression_read (refused[i], UNIT_LENGTH, &value, &refusal),
                     ==, EXPRESSION_REFUSED);
    g_assert_cmpstr (refusal, ==, "Brackets are nested too deeply.");
  }
}

static void
test_empty (void)
{
  double value;

  g_assert_cmpint (typed_expression_read (" \t", UNIT_LENGTH, &value, NULL), ==,
                   EXPRESSION_EMPTY);
}

static void
test_comma_locale (void)
{
  double value;

  if (!comma_locale_enter ())
    return;
  assert_value ("12,5", UNIT_LENGTH, 12.5);
  assert_value ("12.5", UNIT_LENGTH, 12.5);
  assert_value ("12,5+1/8 in", UNIT_LENGTH, 15.675);
  g_assert_cmpint (typed_expression_read ("1.234,5", UNIT_LENGTH, &value, NULL), ==,
                   EXPRESSION_REFUSED);
  comma_locale_leave ();
}

/* Any bytes of the alphabet: an answer or a sentence, and never a value that is none. */
static void
test_any_text_has_an_answer (void)
{
  static const char *const pieces[] = { "1", "0", ".",  "°",  "'", "\"", "mm", "in",
                                        "(", ")", "+",  "-",  "−", "*",  "/",  " ",
                                        "e", "½", "kg", "ft", ",", "9",  "x",  "⁄" };

  for (guint i = 0; i < (g_test_thorough () ? 200000u : 20000u); i++) {
    g_autoptr (GString) text = g_string_new (NULL);
    g_autofree char *refusal = NULL;
    double value;

    for (int n = g_test_rand_int_range (0, 12); n > 0; n--)
      g_string_append (text, pieces[g_test_rand_int_range (0, G_N_ELEMENTS (pieces))]);

    const ExpressionStatus status =
        typed_expression_read (text->str,
                               (UnitKind) g_test_rand_int_range (0, N_UNIT_KINDS), &value,
                               &refusal);
    g_assert_true ((status == EXPRESSION_REFUSED) == (refusal != NULL));
    g_assert_true (ABS (value) <= DBL_MAX);
  }
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "C");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/typed-expression/reads-what-people-type",
                   test_reads_what_people_type);
  g_test_add_func ("/typed-expression/bare-numbers-follow-the-choice",
                   test_bare_numbers_follow_the_choice);
  g_test_add_func ("/typed-expression/stored-units-stay-where-they-are-shown",
                   test_stored_units_stay_where_they_are_shown);
  g_test_add_func ("/typed-expression/says-what-was-not-understood",
                   test_says_what_was_not_understood);
  g_test_add_func ("/typed-expression/nesting-ends", test_nesting_ends);
  g_test_add_func ("/typed-expression/empty", test_empty);
  g_test_add_func ("/typed-expression/comma-locale", test_comma_locale);
  g_test_add_func ("/typed-expression/any-text-has-an-answer",
                   test_any_text_has_an_answer);
  return g_test_run ();
}
