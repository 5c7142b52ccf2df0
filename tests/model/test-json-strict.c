/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car/car-json.h"
#include "model/json/json-strict.h"

#include <math.h>
#include <string.h>

static JsonNode *
parse (const char *text)
{
  return json_strict_parse (text, strlen (text), NULL);
}

/* RFC 8259, sections 2 to 7 and 13: its own examples, and the corners of its grammar. */
static void
test_what_the_standard_allows (void)
{
  static const char *const texts[] = {
    "\"Hello world!\"",
    "42",
    "true",
    "false",
    "null",
    "[]",
    "{}",
    " \t\r\n[ ] \n",
    "-0",
    "0",
    "-1",
    "1e5",
    "1E+5",
    "1.5e-5",
    "0.1",
    "\"\"",
    "\"\\u00e9\"",
    "\"\\/\"",
    "[116, 943, 234, 38793]",
    "{\"Width\":800,\"Animated\":false,\"IDs\":[116,943]}",
    "{\"\":0}",
    "\"\x7f\"",
    "1e-999",
  };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++) {
    g_autoptr (GError) error = NULL;
    g_autoptr (JsonNode) node = json_strict_parse (texts[i], strlen (texts[i]), &error);

    g_test_message ("text %u", (guint) i);
    g_assert_no_error (error);
    g_assert_nonnull (node);
  }
}

static void
test_what_the_standard_forbids (void)
{
  static const char *const texts[] = {
    "",
    " ",
    "01",
    "-",
    "-a",
    "1.",
    ".5",
    "1.e5",
    "1e",
    "1e+",
    "+1",
    "0x1",
    "1_000",
    "NaN",
    "-Infinity",
    "tru",
    "True",
    "truefalse",
    "[1,]",
    "[,1]",
    "[1 2]",
    "[",
    "]",
    "{",
    "}",
    "{\"a\"}",
    "{\"a\":}",
    "{\"a\":1,}",
    "{a:1}",
    "{1:1}",
    "{\"a\" 1}",
    "'a'",
    "\"a",
    "\"\n\"",
    "\"\\x41\"",
    "\"\\u12\"",
    "\"\\u12g4\"",
    "\"\\ud800\"",
    "\"\\udc00\"",
    "\"\\ud800\\u0041\"",
    "\"\\u0000\"",
    "1 1",
    "[1]]",
    "// c\n1",
    "/* c */1",
    "1 // c",
    "\xEF\xBB\xBF"
    "1",
    "\"\xFF\"",
    "\"\xED\xA0\x80\"",
    "nul",
    "var a = 1;",
    "\v1",
    "\f1",
    "\xC2\xA0"
    "1",
    "\"\\",
  };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++) {
    g_autofree char *shown = g_strescape (texts[i], NULL);
    g_autoptr (GError) error = NULL;

    g_test_message ("%s", shown);
    g_assert_null (json_strict_parse (texts[i], strlen (texts[i]), &error));
    g_assert_error (error, FILE_REFUSAL, FILE_REFUSAL_SYNTAX);
    g_assert_true (g_str_has_suffix (error->message, "."));
  }
}

/* Every cut of a sound text is refused or sound itself, and never read past its end. */
static void
test_no_cut_reads_past_the_end (void)
{
  static const char text[] = "{\"a\": [1, -2.5e-3, true, null, \"\\ud83d\\udc26 \\n\"]}";

  for (gsize n = 0; n < strlen (text); n++) {
    g_autofree char *cut = g_memdup2 (text, MAX (n, 1)); /* no byte behind it to find */
    g_autoptr (GError) error = NULL;

    g_assert_null (json_strict_parse (cut, n, &error));
    g_assert_error (error, FILE_REFUSAL, FILE_REFUSAL_SYNTAX);
  }
}

static void
test_integers_and_doubles_stay_apart (void)
{
  g_autoptr (JsonNode) integer = parse ("1"), whole = parse ("1.0"), zero = parse ("-0");
  g_autoptr (JsonNode) largest = parse ("9223372036854775807");
  g_autoptr (JsonNode) least = parse ("-9223372036854775808");

  g_assert_true (json_node_get_value_type (integer) == G_TYPE_INT64);
  g_assert_true (json_node_get_value_type (whole) == G_TYPE_DOUBLE);
  g_assert_true (json_node_get_value_type (zero) == G_TYPE_DOUBLE);
  g_assert_true (signbit (json_node_get_double (zero)));
  g_assert_cmpint (json_node_get_int (largest), ==, G_MAXINT64);
  g_assert_cmpint (json_node_get_int (least), ==, G_MININT64);
}

static void
test_members_keep_their_order (void)
{
  g_autoptr (JsonNode) node = parse ("{\"z\": 1, \"a\": 2, \"m\": 3}");
  g_autoptr (GList) names = json_object_get_members (json_node_get_object (node));

  g_assert_cmpstr (names->data, ==, "z");
  g_assert_cmpstr (names->next->data, ==, "a");
  g_assert_cmpstr (names->next->next->data, ==, "m");
}

static void
check_refusal (const char *text, FileRefusal code, const char *sentence)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (json_strict_parse (text, strlen (text), &error));
  g_assert_error (error, FILE_REFUSAL, (int) code);
  g_assert_cmpstr (error->message, ==, sentence);
}

static void
test_refusals_name_their_place (void)
{
  check_refusal ("{\n  \"é\": ?}", FILE_REFUSAL_SYNTAX,
                 "Line 2, column 8: A value is expected.");
  check_refusal ("{\"a\": [{\"b\": 1, \"b\": 1}]}", FILE_REFUSAL_SYNTAX,
                 "a[0].b appears twice.");
  check_refusal ("[[1, 1e999]]", FILE_REFUSAL_NUMBER, "[0][1] is too large a number.");
  check_refusal ("1e999", FILE_REFUSAL_NUMBER, "The only value is too large a number.");
  check_refusal ("{\"a\\nb\": 1e999}", FILE_REFUSAL_NUMBER, "a?b is too large a number.");
  check_refusal ("{\"a\": 1e999, \"b\": 2}", FILE_REFUSAL_NUMBER,
                 "a is too large a number.");
  check_refusal ("{\"0123456789012345678901234567890123456789x\": 1e999}",
                 FILE_REFUSAL_NUMBER,
                 "0123456789012345678901234567890123456789… is too large a number.");
}

static void
test_thirty_two_levels_and_no_more (void)
{
  for (gsize depth = 31; depth <= 33; depth++) {
    g_autofree char *open = g_strnfill (depth, '['), *close = g_strnfill (depth, ']');
    g_autofree char *text = g_strconcat (open, close, NULL);
    g_autoptr (GError) error = NULL;
    g_autoptr (JsonNode) node = json_strict_parse (text, 2 * depth, &error);

    if (depth <= FILE_DEEPEST)
      g_assert_no_error (error);
    else
      g_assert_error (error, FILE_REFUSAL, FILE_REFUSAL_TOO_LARGE);
  }
}

/* Names that g_str_hash () cannot tell apart ("Ez" and "FY" are alike to it): as many as
 * fit in a file took minutes. */
static void
test_names_that_collide_are_soon_refused (void)
{
  g_autoptr (GString) text = g_string_new ("{\"a\": {\"b\": {");
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < 100000; i++) {
    g_string_append_c (text, '"');
    for (guint bit = 0; bit < 17; bit++)
      g_string_append (text, (i >> bit & 1) != 0 ? "Ez" : "FY");
    g_string_append (text, "\":0,");
  }
  g_autoptr (GTimer) timer = g_timer_new ();
  g_assert_null (json_strict_parse (text->str, text->len, &error));
  g_assert_cmpfloat (g_timer_elapsed (timer, NULL), <, 10.0);
  g_assert_error (error, FILE_REFUSAL, FILE_REFUSAL_TOO_LARGE);
  g_assert_cmpstr (error->message, ==, "a.b has more than 1000 entries.");
}

static void
test_a_thousand_members_and_no_more (void)
{
  for (guint n = 999; n <= 1001; n++) {
    g_autoptr (GString) text = g_string_new ("{");
    g_autoptr (GError) error = NULL;

    for (guint i = 0; i < n; i++)
      g_string_append_printf (text, "%s\"%u\":0", i == 0 ? "" : ",", i);
    g_string_append_c (text, '}');
    g_autoptr (JsonNode) node = json_strict_parse (text->str, text->len, &error);

    if (n <= FILE_MOST_MEMBERS)
      g_assert_no_error (error);
    else
      g_assert_cmpstr (error->message, ==, "The only value has more than 1000 entries.");
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/json-strict/allowed", test_what_the_standard_allows);
  g_test_add_func ("/json-strict/forbidden", test_what_the_standard_forbids);
  g_test_add_func ("/json-strict/cut", test_no_cut_reads_past_the_end);
  g_test_add_func ("/json-strict/numbers", test_integers_and_doubles_stay_apart);
  g_test_add_func ("/json-strict/order", test_members_keep_their_order);
  g_test_add_func ("/json-strict/places", test_refusals_name_their_place);
  g_test_add_func ("/json-strict/depth", test_thirty_two_levels_and_no_more);
  g_test_add_func ("/json-strict/members", test_a_thousand_members_and_no_more);
  g_test_add_func ("/json-strict/collisions", test_names_that_collide_are_soon_refused);
  return g_test_run ();
}
