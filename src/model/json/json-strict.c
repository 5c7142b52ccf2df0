/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/json/json-strict.h"
#include "model/json/file-refusal.h"
#include "model/json/json-path.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

typedef struct {
  const char *start, *at, *end;
  GString *path; /* of the value being read */
  guint depth;
  GError **error;
} Scan;

static JsonNode *read_value (Scan *scan);

/* Both count from 1; a column is a character. */
static void
find_place (const Scan *scan, int *line, int *column)
{
  const char *line_start = scan->start;

  *line = 1;
  for (const char *p = scan->start; p < scan->at; p++)
    if (*p == '\n') {
      (*line)++;
      line_start = p + 1;
    }
  *column = 1 + (int) g_utf8_strlen (line_start, scan->at - line_start);
}

static gboolean
fail_at (Scan *scan, const char *sentence)
{
  int line, column;

  find_place (scan, &line, &column);
  /* Translators: a place in a file and a whole sentence on what is wrong there. */
  g_set_error (scan->error, FILE_REFUSAL, FILE_REFUSAL_SYNTAX,
               _ ("Line %d, column %d: %s"), line, column, sentence);
  return FALSE;
}

static gboolean
fail_number (Scan *scan, const char *sentence)
{
  const char *path = scan->path->len > 0 ? scan->path->str : _ ("The only value");

  g_set_error (scan->error, FILE_REFUSAL, FILE_REFUSAL_NUMBER, sentence, path);
  return FALSE;
}

static gboolean
check_room (Scan *scan, JsonObject *object)
{
  if (json_object_get_size (object) < FILE_MOST_MEMBERS)
    return TRUE;
  g_set_error (scan->error, FILE_REFUSAL, FILE_REFUSAL_TOO_LARGE,
               _ ("%s has more than %d entries."),
               scan->path->len > 0 ? scan->path->str : _ ("The only value"),
               FILE_MOST_MEMBERS);
  return FALSE;
}

static void
skip_space (Scan *scan)
{
  while (scan->at < scan->end && memchr (" \t\n\r", *scan->at, 4) != NULL)
    scan->at++;
}

static gboolean
take (Scan *scan, char c)
{
  if (scan->at == scan->end || *scan->at != c)
    return FALSE;
  scan->at++;
  return TRUE;
}

static gsize
take_digits (Scan *scan)
{
  const char *first = scan->at;

  while (scan->at < scan->end && g_ascii_isdigit (*scan->at))
    scan->at++;
  return (gsize) (scan->at - first);
}

static gboolean
read_hex (Scan *scan, gunichar *code)
{
  *code = 0;
  for (int i = 0; i < 4; i++, scan->at++) {
    if (scan->at == scan->end || !g_ascii_isxdigit (*scan->at))
      return fail_at (scan, _ ("\\u needs four hexadecimal digits."));
    *code = *code * 16 + (gunichar) g_ascii_xdigit_value (*scan->at);
  }
  return TRUE;
}

static gboolean
is_low_surrogate (gunichar code)
{
  return code >= 0xDC00 && code <= 0xDFFF;
}

/* Behind "\u". A character past 16 bits comes as two of them. */
static gboolean
read_unicode_escape (Scan *scan, GString *text)
{
  gunichar code, low;

  if (!read_hex (scan, &code))
    return FALSE;
  if (code == 0)
    return fail_at (scan, _ ("A text cannot hold the character zero."));
  if (code >= 0xD800 && code <= 0xDBFF) {
    if (!take (scan, '\\') || !take (scan, 'u'))
      return fail_at (scan, _ ("Half a surrogate pair is no character."));
    if (!read_hex (scan, &low))
      return FALSE;
    if (!is_low_surrogate (low))
      return fail_at (scan, _ ("Half a surrogate pair is no character."));
    code = 0x10000 + ((code - 0xD800) << 10) + (low - 0xDC00);
  } else if (is_low_surrogate (code)) {
    return fail_at (scan, _ ("Half a surrogate pair is no character."));
  }
  g_string_append_unichar (text, code);
  return TRUE;
}

static gboolean
read_escape (Scan *scan, GString *text)
{
  static const char letters[] = "\"\\/bfnrt", meanings[] = "\"\\/\b\f\n\r\t";
  const char *found = scan->at < scan->end ? memchr (letters, *scan->at, 8) : NULL;

  if (take (scan, 'u'))
    return read_unicode_escape (scan, text);
  if (found == NULL)
    return fail_at (scan, _ ("This is no escape that JSON knows."));
  g_string_append_c (text, meanings[found - letters]);
  scan->at++;
  return TRUE;
}

/* Behind the opening quote; NULL on failure. */
static char *
read_string (Scan *scan)
{
  g_autoptr (GString) text = g_string_new (NULL);

  while (!take (scan, '"')) {
    if (scan->at == scan->end) {
      fail_at (scan, _ ("A text is not closed."));
      return NULL;
    }
    if ((guchar) *scan->at < 0x20) {
      fail_at (scan, _ ("A text cannot hold a bare control character or line end."));
      return NULL;
    }
    if (!take (scan, '\\'))
      g_string_append_c (text, *scan->at++);
    else if (!read_escape (scan, text))
      return NULL;
  }
  return g_strdup (text->str);
}

/* Moves past a number; whether it is one, and whether it has neither fraction nor
 * exponent. */
static gboolean
skip_number (Scan *scan, gboolean *is_integer)
{
  *is_integer = TRUE;
  take (scan, '-');
  if (!take (scan, '0') && take_digits (scan) == 0)
    return FALSE;
  if (take (scan, '.')) {
    *is_integer = FALSE;
    if (take_digits (scan) == 0)
      return FALSE;
  }
  if (take (scan, 'e') || take (scan, 'E')) {
    *is_integer = FALSE;
    if (!take (scan, '+'))
      take (scan, '-');
    if (take_digits (scan) == 0)
      return FALSE;
  }
  return scan->at == scan->end ||
         !(g_ascii_isalnum (*scan->at) || memchr ("+-._", *scan->at, 4) != NULL);
}

static JsonNode *
read_integer (Scan *scan, const char *digits)
{
  errno = 0;
  const gint64 value = g_ascii_strtoll (digits, NULL, 10);

  if (errno == ERANGE) {
    fail_number (scan, _ ("%s is an integer of more than 64 bits, which cannot be kept "
                          "exactly."));
    return NULL;
  }
  return json_node_init_int (json_node_alloc (), value);
}

static JsonNode *
read_number (Scan *scan)
{
  const char *first = scan->at;
  gboolean is_integer;

  if (!skip_number (scan, &is_integer)) {
    fail_at (scan, _ ("This is no number as JSON writes one."));
    return NULL;
  }

  g_autofree char *digits = g_strndup (first, (gsize) (scan->at - first));
  /* "-0" has a sign that no integer keeps. */
  if (is_integer && !g_str_equal (digits, "-0"))
    return read_integer (scan, digits);

  const double value = g_ascii_strtod (digits, NULL);
  if (!isfinite (value)) {
    fail_number (scan, _ ("%s is too large a number."));
    return NULL;
  }
  return json_node_init_double (json_node_alloc (), value);
}

/* One member with its comma's absence or presence left to the caller. */
static gboolean
read_member (Scan *scan, JsonObject *object)
{
  const gsize outer = scan->path->len;

  skip_space (scan);
  if (!take (scan, '"'))
    return fail_at (scan, _ ("A member name in double quotes is expected."));

  g_autofree char *name = read_string (scan);
  if (name == NULL)
    return FALSE;
  json_path_append_member (scan->path, name);
  if (json_object_has_member (object, name)) {
    g_set_error (scan->error, FILE_REFUSAL, FILE_REFUSAL_SYNTAX, _ ("%s appears twice."),
                 scan->path->str);
    return FALSE;
  }
  skip_space (scan);
  if (!take (scan, ':'))
    return fail_at (scan, _ ("A colon is expected behind the member name."));

  JsonNode *value = read_value (scan);
  if (value == NULL)
    return FALSE;
  json_object_set_member (object, name, value);
  g_string_truncate (scan->path, outer);
  return TRUE;
}

static gboolean
read_element (Scan *scan, JsonArray *array)
{
  const gsize outer = scan->path->len;

  json_path_append_index (scan->path, json_array_get_length (array));

  JsonNode *value = read_value (scan);
  if (value == NULL)
    return FALSE;
  json_array_add_element (array, value);
  g_string_truncate (scan->path, outer);
  return TRUE;
}

static JsonNode *
read_object (Scan *scan)
{
  g_autoptr (JsonObject) object = json_object_new ();

  skip_space (scan);
  if (!take (scan, '}')) {
    do {
      if (!check_room (scan, object) || !read_member (scan, object))
        return NULL;
      skip_space (scan);
    } while (take (scan, ','));
    if (!take (scan, '}')) {
      fail_at (scan, _ ("A comma or a closing brace is expected."));
      return NULL;
    }
  }
  return json_node_init_object (json_node_alloc (), object);
}

static JsonNode *
read_array (Scan *scan)
{
  g_autoptr (JsonArray) array = json_array_new ();

  skip_space (scan);
  if (!take (scan, ']')) {
    do {
      if (!read_element (scan, array))
        return NULL;
      skip_space (scan);
    } while (take (scan, ','));
    if (!take (scan, ']')) {
      fail_at (scan, _ ("A comma or a closing bracket is expected."));
      return NULL;
    }
  }
  return json_node_init_array (json_node_alloc (), array);
}

/* Names the member of the root: the whole path is too long to read. */
static void
fail_depth (Scan *scan)
{
  const gsize length = strcspn (scan->path->str, ".[");
  g_autofree char *member = g_strndup (scan->path->str, length);

  g_set_error (scan->error, FILE_REFUSAL, FILE_REFUSAL_TOO_LARGE,
               _ ("%s is nested more than %d levels deep."),
               length > 0 ? member : _ ("The only value"), FILE_DEEPEST);
}

static JsonNode *
read_nested (Scan *scan, JsonNode *(*read) (Scan *) )
{
  if (scan->depth == FILE_DEEPEST) {
    fail_depth (scan);
    return NULL;
  }
  scan->depth++;
  scan->at++;
  JsonNode *node = read (scan);
  scan->depth--;
  return node;
}

static gboolean
take_word (Scan *scan, const char *word)
{
  const gsize length = strlen (word);

  if ((gsize) (scan->end - scan->at) < length || memcmp (scan->at, word, length) != 0)
    return FALSE;
  scan->at += length;
  return TRUE;
}

static JsonNode *
read_value (Scan *scan)
{
  skip_space (scan);
  const char c = scan->at < scan->end ? *scan->at : '\0';

  if (c == '{')
    return read_nested (scan, read_object);
  if (c == '[')
    return read_nested (scan, read_array);
  if (c == '-' || g_ascii_isdigit (c))
    return read_number (scan);
  if (take (scan, '"')) {
    g_autofree char *text = read_string (scan);
    return text != NULL ? json_node_init_string (json_node_alloc (), text) : NULL;
  }
  if (take_word (scan, "true"))
    return json_node_init_boolean (json_node_alloc (), TRUE);
  if (take_word (scan, "false"))
    return json_node_init_boolean (json_node_alloc (), FALSE);
  if (take_word (scan, "null"))
    return json_node_init_null (json_node_alloc ());
  fail_at (scan, _ ("A value is expected."));
  return NULL;
}

static gboolean
check_bytes (Scan *scan)
{
  const gsize length = (gsize) (scan->end - scan->start);
  const char *bad;

  if (length > FILE_MOST_BYTES) {
    g_set_error (scan->error, FILE_REFUSAL, FILE_REFUSAL_TOO_LARGE,
                 _ ("The file is larger than %d MiB."), FILE_MOST_BYTES >> 20);
    return FALSE;
  }
  if (length >= 3 && memcmp (scan->start, "\xEF\xBB\xBF", 3) == 0)
    return fail_at (scan, _ ("JSON starts without a byte-order mark."));
  if (!g_utf8_validate_len (scan->start, length, &bad)) {
    scan->at = bad;
    return fail_at (scan, _ ("The file is not UTF-8 text."));
  }
  return TRUE;
}

JsonNode *
json_strict_parse (const char *text, gsize length, GError **error)
{
  g_autoptr (GString) path = g_string_new (NULL);
  Scan scan = { text, text, text + length, path, 0, error };

  if (!check_bytes (&scan))
    return NULL;

  g_autoptr (JsonNode) root = read_value (&scan);
  if (root == NULL)
    return NULL;
  skip_space (&scan);
  if (scan.at != scan.end) {
    fail_at (&scan, _ ("Nothing may follow the closing brace."));
    return NULL;
  }
  return g_steal_pointer (&root);
}

char *
json_strict_read (GFile *file, gsize *length, GError **error)
{
  g_autoptr (GFileInputStream) stream = g_file_read (file, NULL, error);
  g_autofree char *text = NULL;

  if (stream == NULL)
    return NULL;
  text = g_malloc (FILE_MOST_BYTES + 1);
  if (!g_input_stream_read_all (G_INPUT_STREAM (stream), text, FILE_MOST_BYTES + 1,
                                length, NULL, error))
    return NULL;
  return g_steal_pointer (&text);
}
