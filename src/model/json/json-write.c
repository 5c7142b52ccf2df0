/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/json/json-write.h"
#include "model/words/number-text.h"

#include <math.h>
#include <string.h>

#define INDENT 2
#define WIDEST 90 /* bytes of an object on one line, indent and all */

static void write_node (GString *text, JsonNode *node, int level);

void
json_write_string (GString *text, const char *string)
{
  g_autoptr (JsonNode) node = json_node_init_string (json_node_alloc (), string);
  g_autofree char *escaped = json_to_string (node, FALSE);

  g_string_append (text, escaped);
}

void
json_write_double (GString *text, double value)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  /* 17 significant digits tell all doubles apart (IEEE 754-2019, 5.12.2). */
  for (int n = 15; n <= 17; n++) {
    char format[] = "%.15g";

    format[3] = (char) ('0' + n % 10);
    g_ascii_formatd (digits, sizeof digits, format, value);
    if (g_ascii_strtod (digits, NULL) == value)
      break;
  }
  g_string_append (text, digits);
  if (strpbrk (digits, ".e") == NULL)
    g_string_append (text, ".0");
}

static void
write_scalar (GString *text, JsonNode *node)
{
  switch (json_node_get_value_type (node)) {
  case G_TYPE_INT64:
    g_string_append_printf (text, "%" G_GINT64_FORMAT, json_node_get_int (node));
    return;
  case G_TYPE_DOUBLE:
    json_write_double (text, json_node_get_double (node));
    return;
  case G_TYPE_BOOLEAN:
    g_string_append (text, json_node_get_boolean (node) ? "true" : "false");
    return;
  case G_TYPE_STRING:
    json_write_string (text, json_node_get_string (node));
    return;
  default:
    g_string_append (text, "null");
  }
}

static gboolean
is_plain (JsonNode *node)
{
  return JSON_NODE_TYPE (node) == JSON_NODE_VALUE ||
         JSON_NODE_TYPE (node) == JSON_NODE_NULL;
}

static gboolean
is_list_of_plain (JsonNode *node)
{
  JsonArray *array = JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;

  if (array == NULL)
    return FALSE;
  for (guint i = 0; i < json_array_get_length (array); i++)
    if (!is_plain (json_array_get_element (array, i)))
      return FALSE;
  return TRUE;
}

static void
break_line (GString *text, int level)
{
  g_string_append_printf (text, "\n%*s", level * INDENT, "");
}

static void
write_array (GString *text, JsonNode *node, int level)
{
  JsonArray *array = json_node_get_array (node);
  const gboolean on_one_line = is_list_of_plain (node);
  const guint n = json_array_get_length (array);

  g_string_append_c (text, '[');
  for (guint i = 0; i < n; i++) {
    if (i > 0)
      g_string_append (text, on_one_line ? ", " : ",");
    if (!on_one_line)
      break_line (text, level + 1);
    write_node (text, json_array_get_element (array, i), level + 1);
  }
  if (!on_one_line)
    break_line (text, level);
  g_string_append_c (text, ']');
}

/* Appends the object on one line and says so, or leaves @text as it was. */
static gboolean
write_object_on_one_line (GString *text, JsonObject *object, gsize most)
{
  const gsize start = text->len;
  JsonObjectIter iter;
  const char *name;
  JsonNode *value;

  g_string_append_c (text, '{');
  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &name, &value)) {
    if (!is_plain (value) || text->len - start > most) {
      g_string_truncate (text, start);
      return FALSE;
    }
    g_string_append (text, text->len == start + 1 ? " " : ", ");
    json_write_string (text, name);
    g_string_append (text, ": ");
    write_scalar (text, value);
  }
  g_string_append (text, json_object_get_size (object) > 0 ? " }" : "}");
  if (text->len - start > most)
    g_string_truncate (text, start);
  return text->len > start;
}

static gsize
room_in_line (const GString *text)
{
  const char *line = g_strrstr_len (text->str, (gssize) text->len, "\n");
  const gsize used =
      line != NULL ? text->len - (gsize) (line + 1 - text->str) : text->len;

  return used < WIDEST ? WIDEST - used : 0;
}

static void
write_object (GString *text, JsonNode *node, int level)
{
  JsonObject *object = json_node_get_object (node);
  JsonObjectIter iter;
  const char *name, *separator = "";
  JsonNode *value;

  if (level > 0 && write_object_on_one_line (text, object, room_in_line (text)))
    return;
  g_string_append_c (text, '{');
  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &name, &value)) {
    g_string_append (text, separator);
    separator = ",";
    break_line (text, level + 1);
    json_write_string (text, name);
    g_string_append (text, ": ");
    write_node (text, value, level + 1);
  }
  break_line (text, level);
  g_string_append_c (text, '}');
}

static void
write_node (GString *text, JsonNode *node, int level)
{
  if (JSON_NODE_HOLDS_OBJECT (node))
    write_object (text, node, level);
  else if (JSON_NODE_HOLDS_ARRAY (node))
    write_array (text, node, level);
  else
    write_scalar (text, node);
}

void
json_write_node (GString *text, JsonNode *node)
{
  write_node (text, node, 0);
}

void
json_write_number (GString *text, double value)
{
  if (isfinite (value))
    append_exact_number (text, value);
  else
    g_string_append (text, "null");
}
