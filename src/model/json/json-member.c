/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/json/json-member.h"
#include "model/json/json-path.h"
#include "model/words/near-word.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define LARGEST_EXACT 9007199254740992.0 /* 2^53 */

char *
member_path (const char *parent, const char *name)
{
  GString *path = g_string_new (parent);

  json_path_append_member (path, name);
  return g_string_free (path, FALSE);
}

gboolean
member_refuse (GError **error,
               FileRefusal code,
               const char *sentence,
               const char *parent,
               const char *name)
{
  g_autofree char *path = member_path (parent, name);

  g_set_error (error, FILE_REFUSAL, code, sentence, path);
  return FALSE;
}

const char *
member_misspelt (JsonObject *object, const char *const *known, const char *name)
{
  const char *const wanted[] = { name, NULL };
  g_autoptr (GList) members = json_object_get_members (object);

  for (GList *member = members; member != NULL; member = member->next)
    if (!g_strv_contains (known, member->data) &&
        near_member (member->data, wanted) != NULL)
      return member->data;
  return NULL;
}

gboolean
member_refuse_missing (JsonObject *object,
                       const char *const *known,
                       const char *parent,
                       const char *name,
                       GError **error)
{
  const char *misspelt = member_misspelt (object, known, name);

  if (misspelt == NULL)
    return member_refuse (error, FILE_REFUSAL_MISSING, _ ("%s is missing."), parent,
                          name);
  g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_MISSING,
               _ ("Unknown member “%s%s%s”; did you mean “%s”?"), parent,
               parent[0] != '\0' ? "." : "", misspelt, name);
  return FALSE;
}

gboolean
member_get_number (JsonNode *node, double *value)
{
  const GType type = JSON_NODE_HOLDS_VALUE (node) ? json_node_get_value_type (node) : 0;

  if (type == G_TYPE_INT64)
    *value = (double) json_node_get_int (node);
  else if (type == G_TYPE_DOUBLE)
    *value = json_node_get_double (node);
  else
    return FALSE;
  return TRUE;
}

gboolean
member_read_number (JsonObject *object,
                    const char *parent,
                    const char *name,
                    double *value,
                    GError **error)
{
  JsonNode *node = json_object_get_member (object, name);

  if (node != NULL && !member_get_number (node, value))
    return member_refuse (error, FILE_REFUSAL_TYPE, _ ("%s must be a number."), parent,
                          name);
  return TRUE;
}

gboolean
member_read_entry (
    JsonArray *list, const char *path, guint index, double *value, GError **error)
{
  const gboolean is_there = index < json_array_get_length (list);

  if (is_there && member_get_number (json_array_get_element (list, index), value))
    return TRUE;
  g_autofree char *entry = g_strdup_printf ("%s[%u]", path, index);
  if (is_there)
    g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_TYPE, _ ("%s must be a number."),
                 entry);
  else
    g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_MISSING, _ ("%s is missing."), entry);
  return FALSE;
}

gboolean
member_read_text (
    JsonObject *object, const char *parent, const char *name, char **text, GError **error)
{
  JsonNode *node = json_object_get_member (object, name);

  if (node == NULL)
    return TRUE;
  if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_STRING)
    return member_refuse (error, FILE_REFUSAL_TYPE, _ ("%s must be a text."), parent,
                          name);
  g_free (*text);
  *text = json_node_dup_string (node);
  return TRUE;
}

gboolean
member_find_object (JsonObject *object,
                    const char *parent,
                    const char *name,
                    JsonObject **section,
                    GError **error)
{
  JsonNode *node = json_object_get_member (object, name);

  *section = NULL;
  if (node == NULL)
    return TRUE;
  if (!JSON_NODE_HOLDS_OBJECT (node))
    return member_refuse (error, FILE_REFUSAL_TYPE, _ ("%s must be an object in braces."),
                          parent, name);
  *section = json_node_get_object (node);
  return TRUE;
}

gboolean
member_find_list (JsonObject *object,
                  const char *parent,
                  const char *name,
                  JsonArray **list,
                  GError **error)
{
  JsonNode *node = json_object_get_member (object, name);

  *list = NULL;
  if (node == NULL)
    return TRUE;
  if (!JSON_NODE_HOLDS_ARRAY (node))
    return member_refuse (error, FILE_REFUSAL_TYPE, _ ("%s must be a list in brackets."),
                          parent, name);
  *list = json_node_get_array (node);
  return TRUE;
}

void
member_keep (JsonObject **kept, const char *name, JsonNode *value)
{
  if (*kept == NULL)
    *kept = json_object_new ();
  json_object_set_member (*kept, name, json_node_copy (value));
}

gboolean
member_check_range (NumberRange range, double value, const char *path, GError **error)
{
  const char *sentence = range.is_above_least
                             ? _ ("%s is %g, but must be above %g and not above %g.")
                             : _ ("%s is %g, but must lie between %g and %g.");

  if (value <= range.most &&
      (value > range.least || (value == range.least && !range.is_above_least)))
    return TRUE;
  g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_NUMBER, sentence, path, value,
               range.least, range.most);
  return FALSE;
}

gboolean
member_read_flag (JsonObject *object,
                  const char *parent,
                  const char *name,
                  gboolean *flag,
                  GError **error)
{
  JsonNode *node = json_object_get_member (object, name);

  if (node == NULL)
    return TRUE;
  if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_BOOLEAN)
    return member_refuse (error, FILE_REFUSAL_TYPE, _ ("%s must be true or false."),
                          parent, name);
  *flag = json_node_get_boolean (node);
  return TRUE;
}

gboolean
member_read_number_within (JsonObject *object,
                           const char *parent,
                           const char *name,
                           NumberRange range,
                           double *value,
                           GError **error)
{
  g_autofree char *path = member_path (parent, name);

  return member_read_number (object, parent, name, value, error) &&
         member_check_range (range, *value, path, error);
}

void
member_keep_unknown (JsonObject *object, const char *const *known, JsonObject **kept)
{
  JsonObjectIter iter;
  const char *name;
  JsonNode *value;

  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &name, &value))
    if (!g_strv_contains (known, name))
      member_keep (kept, name, value);
}

gboolean
member_same_number (double a, double b)
{
  return memcmp (&a, &b, sizeof a) == 0;
}

JsonNode *
member_number_node (double value)
{
  JsonNode *node = json_node_alloc ();

  if (!isfinite (value))
    return json_node_init_null (node);
  if (value == floor (value) && fabs (value) < LARGEST_EXACT &&
      !(value == 0.0 && signbit (value)))
    return json_node_init_int (node, (gint64) value);
  return json_node_init_double (node, value);
}

void
member_add_number (JsonObject *object, const char *name, double value)
{
  json_object_set_member (object, name, member_number_node (value));
}

void
member_add_kept (JsonObject *object, JsonObject *kept)
{
  JsonObjectIter iter;
  const char *name;
  JsonNode *value;

  if (kept == NULL)
    return;
  json_object_iter_init_ordered (&iter, kept);
  while (json_object_iter_next_ordered (&iter, &name, &value))
    json_object_set_member (object, name, json_node_copy (value));
}

gboolean
member_check_format (JsonObject *root, const MemberFormat *kind, GError **error)
{
  JsonNode *format = json_object_get_member (root, "format");
  double version;

  if (format == NULL || !JSON_NODE_HOLDS_VALUE (format) ||
      json_node_get_value_type (format) != G_TYPE_STRING ||
      !g_str_equal (json_node_get_string (format), kind->format)) {
    g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_VERSION, kind->no_file, kind->format);
    return FALSE;
  }
  if (!json_object_has_member (root, "version"))
    return member_refuse (error, FILE_REFUSAL_MISSING, _ ("%s is missing."), "",
                          "version");
  if (!member_read_number (root, "", "version", &version, error))
    return FALSE;
  if (version > kind->version) {
    g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_VERSION,
                 _ ("The file is from a newer Strutwright: its version is %g, and this "
                    "program reads up to version %d."),
                 version, kind->version);
    return FALSE;
  }
  if (version != kind->version) {
    g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_VERSION, kind->never, version);
    return FALSE;
  }
  return TRUE;
}

JsonObject *
member_open_entry (JsonNode *node, const char *path, GError **error)
{
  if (JSON_NODE_HOLDS_OBJECT (node))
    return json_node_get_object (node);
  g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_TYPE,
               _ ("%s must be an object in braces."), path);
  return NULL;
}
