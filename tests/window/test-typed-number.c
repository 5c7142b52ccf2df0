/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/entry/typed-number.h"

#include <locale.h>
#include <math.h>

static void
test_reads_what_people_type (void)
{
  static const struct {
    const char *text;
    Typed typed;
    double value;
  } cases[] = {
    { "", TYPED_NOTHING, 0.0 },
    { " \t ", TYPED_NOTHING, 0.0 },
    { "12", TYPED_NUMBER, 12.0 },
    { " -0.5 ", TYPED_NUMBER, -0.5 },
    { "−0.5", TYPED_NUMBER, -0.5 },
    { "+3", TYPED_NUMBER, 3.0 },
    { ".25", TYPED_NUMBER, 0.25 },
    { "\u00a0"
      "7\u202f",
      TYPED_NUMBER, 7.0 },
    { "1e3", TYPED_NUMBER, 1000.0 },
    { "20x", TYPED_NONSENSE, 0.0 },
    { "-", TYPED_NONSENSE, 0.0 },
    { "1.2.3", TYPED_NONSENSE, 0.0 },
    { "1-2", TYPED_NONSENSE, 0.0 },
    { "inf", TYPED_NONSENSE, 0.0 },
    { "nan", TYPED_NONSENSE, 0.0 },
    { "0x10", TYPED_NONSENSE, 0.0 },
    { "1e999", TYPED_NONSENSE, 0.0 },
    { "1 2", TYPED_NONSENSE, 0.0 },
    { "1,5", TYPED_NONSENSE, 0.0 }, /* the C locale has the point alone */
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    double value = 99.0;

    g_test_message ("“%s”", cases[i].text);
    g_assert_cmpint (typed_number_read (cases[i].text, &value), ==, cases[i].typed);
    g_assert_cmpfloat (value, ==, cases[i].value);
  }
}

/* The C locale has the point; which of two commas was meant nobody knows. */
static void
test_a_comma_is_understood (void)
{
  static const struct {
    const char *text, *meant;
  } cases[] = { { "-0,6", "-0.6" }, { " −0,6 ", "−0.6" }, { ",5", ".5" },
                { "-0.6", NULL },   { "1,234.5", NULL },  { "1,2,3", NULL },
                { "1,5x", NULL },   { ",", NULL },        { "", NULL } };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autofree char *meant = typed_number_meant (cases[i].text);

    g_assert_cmpstr (meant, ==, cases[i].meant);
  }
}

/* A million of each size would say no more. */
static void
test_text_reads_back_to_the_bit (void)
{
  static const double plain[] = { 0.0, -0.4, 535.0, 0.1 + 0.2, 1.0 / 3.0, 1e-7, 1e21 };

  for (guint i = 0; i < 20000; i++) {
    const double value =
        i < G_N_ELEMENTS (plain) ? plain[i] : g_test_rand_double_range (-1e4, 1e4);
    g_autofree char *text = typed_number_text (value);
    double again;

    g_assert_cmpint (typed_number_read (text, &again), ==, TYPED_NUMBER);
    g_assert_cmpfloat (again, ==, value);
  }
}

static void
test_text_is_no_longer_than_needed (void)
{
  static const struct {
    double value;
    const char *text;
  } cases[] = {
    { 535.0, "535" }, { -0.4, "-0.4" }, { 770.25, "770.25" }, { 1234567.5, "1234567.5" }
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autofree char *text = typed_number_text (cases[i].value);

    g_assert_cmpstr (text, ==, cases[i].text);
  }
}

static void
assert_list (const char *text, const double *wanted, guint n)
{
  g_autoptr (GArray) values = typed_numbers_read (text);

  g_assert_nonnull (values);
  g_assert_cmpuint (values->len, ==, n);
  for (guint i = 0; i < n; i++)
    g_assert_cmpfloat (g_array_index (values, double, i), ==, wanted[i]);
}

static void
test_reads_lists (void)
{
  static const double three[] = { 0.0, 45.5, -90.0 };

  assert_list ("0 45.5 -90", three, 3);
  assert_list ("0, 45.5, −90", three, 3);
  assert_list ("0,45.5,-90", three, 3);
  assert_list ("\t0\t45.5\r\n-90\n", three, 3);
  assert_list ("0;45.5; -90;", three, 3);
  assert_list (" \n", NULL, 0);
  g_assert_null (typed_numbers_read ("0 45 x"));
  g_assert_null (typed_numbers_read ("mm 12"));
}

static void
test_lists_are_written_as_they_are_read (void)
{
  static const double three[] = { 0.0, 45.5, -90.0 };
  g_autofree char *text = typed_numbers_text (three, 3);

  g_assert_cmpstr (text, ==, "0, 45.5, -90");
  assert_list (text, three, 3);
}

int
main (int argc, char **argv)
{
  setlocale (LC_NUMERIC, "C");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/typed-number/reads-what-people-type", test_reads_what_people_type);
  g_test_add_func ("/typed-number/a-comma-is-understood", test_a_comma_is_understood);
  g_test_add_func ("/typed-number/text-reads-back-to-the-bit",
                   test_text_reads_back_to_the_bit);
  g_test_add_func ("/typed-number/text-is-no-longer-than-needed",
                   test_text_is_no_longer_than_needed);
  g_test_add_func ("/typed-number/reads-lists", test_reads_lists);
  g_test_add_func ("/typed-number/lists-are-written-as-they-are-read",
                   test_lists_are_written_as_they_are_read);
  return g_test_run ();
}
