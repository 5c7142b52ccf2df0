/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/json/json-path.h"
#include "model/json/json-strict.h"
#include "model/plate/plate-json-check.h"
#include "model/plate/plate-json-members.h"
#include "model/plate/plate-json.h"
#include "model/words/near-word.h"

#include <glib/gi18n-lib.h>

static gboolean
check_format (JsonObject *root, GError **error)
{
  const MemberFormat format = { PLATE_FILE_FORMAT, PLATE_FILE_VERSION,
                                _ ("This is no plate file: format is not \"%s\"."),
                                _ ("version is %g, which no plate file ever had.") };

  return member_check_format (root, &format, error);
}

/* @parent is "" or the path of a hole. */
static gboolean
refuse_missing (JsonObject *object, const char *parent, const char *name, GError **error)
{
  const char *const *known = parent[0] == '\0' ? plate_members : plate_hole_members;

  return member_refuse_missing (object, known, parent, name, error);
}

/* A text that must be there. */
static gboolean
read_text (
    JsonObject *object, const char *parent, const char *name, char **text, GError **error)
{
  if (!json_object_has_member (object, name))
    return refuse_missing (object, parent, name, error);
  return member_read_text (object, parent, name, text, error);
}

static gboolean
read_number (JsonObject *object,
             const char *parent,
             const char *name,
             double *value,
             GError **error)
{
  if (!json_object_has_member (object, name))
    return refuse_missing (object, parent, name, error);
  return member_read_number (object, parent, name, value, error);
}

static gboolean
refuse_kind (const char *word, GError **error)
{
  const char *kinds[N_PLATE_KINDS + 1] = { NULL };

  for (PlateKind kind = 0; kind < N_PLATE_KINDS; kind++)
    kinds[kind] = plate_kind_words[kind];

  const char *near = near_word (word, kinds);
  if (near == NULL)
    return member_refuse (error, FILE_REFUSAL_TYPE,
                          _ ("%s must be \"fixed\", \"slot\", \"crossed-slots\", "
                             "\"eccentric\" or \"holes\"."),
                          "", "kind");
  g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_TYPE,
               _ ("Unknown kind “%s”; did you mean “%s”?"), word, near);
  return FALSE;
}

static gboolean
read_kind (JsonObject *root, PlateKind *kind, GError **error)
{
  g_autofree char *word = NULL;

  if (!read_text (root, "", "kind", &word, error))
    return FALSE;
  for (*kind = 0; *kind < N_PLATE_KINDS; (*kind)++)
    if (g_str_equal (word, plate_kind_words[*kind]))
      return TRUE;
  return refuse_kind (word, error);
}

static gboolean
check_members_of_kind (JsonObject *root, PlateKind kind, GError **error)
{
  for (gsize i = 0; plate_members[i] != NULL; i++)
    if (json_object_has_member (root, plate_members[i]) &&
        !plate_kind_has (kind, plate_members[i])) {
      g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_TYPE,
                   _ ("%s does not belong to a plate of kind %s."), plate_members[i],
                   plate_kind_words[kind]);
      return FALSE;
    }
  return TRUE;
}

static gboolean
read_numbers (JsonObject *root,
              Plate *plate,
              const PlateNumber *numbers,
              gsize n_numbers,
              GError **error)
{
  for (gsize i = 0; i < n_numbers; i++) {
    double *value = plate_number (plate, numbers[i].offset);

    if (!plate_kind_has (plate->kind, numbers[i].name))
      continue;
    if (numbers[i].is_required
            ? !read_number (root, "", numbers[i].name, value, error)
            : !member_read_number (root, "", numbers[i].name, value, error))
      return FALSE;
  }
  return TRUE;
}

static gboolean
read_pair (JsonObject *root, const PlatePair *pair, Plate *plate, GError **error)
{
  JsonNode *node = json_object_get_member (root, pair->name);

  if (node == NULL)
    return refuse_missing (root, "", pair->name, error);
  if (!JSON_NODE_HOLDS_ARRAY (node) ||
      json_array_get_length (json_node_get_array (node)) > 2)
    return member_refuse (error, FILE_REFUSAL_TYPE,
                          _ ("%s must be a list of two numbers: least and most."), "",
                          pair->name);

  JsonArray *array = json_node_get_array (node);
  return member_read_entry (array, pair->name, 0, plate_number (plate, pair->least),
                            error) &&
         member_read_entry (array, pair->name, 1, plate_number (plate, pair->most),
                            error);
}

static gboolean
find_list (JsonObject *root, const char *name, JsonArray **list, GError **error)
{
  JsonNode *node = json_object_get_member (root, name);

  if (node == NULL)
    return refuse_missing (root, "", name, error);
  if (!JSON_NODE_HOLDS_ARRAY (node))
    return member_refuse (error, FILE_REFUSAL_TYPE, _ ("%s must be a list in brackets."),
                          "", name);
  *list = json_node_get_array (node);
  return plate_check_count (name, json_array_get_length (*list), error);
}

static gboolean
read_turns (JsonObject *root, Plate *plate, GError **error)
{
  JsonArray *list;

  if (!find_list (root, "turns_deg", &list, error))
    return FALSE;
  for (guint i = 0; i < json_array_get_length (list); i++) {
    double turn;

    if (!member_read_entry (list, "turns_deg", i, &turn, error))
      return FALSE;
    g_array_append_val (plate->turns_deg, turn);
  }
  return TRUE;
}

/* An eccentric has either its indexed turns or the range of its turn. */
static gboolean
check_turn_members (JsonObject *root, GError **error)
{
  const gboolean has_turns = json_object_has_member (root, "turns_deg");
  const gboolean has_range = json_object_has_member (root, "turn_range_deg");

  if (has_turns != has_range)
    return TRUE;
  if (!has_turns && member_misspelt (root, plate_members, "turns_deg") != NULL)
    return refuse_missing (root, "", "turns_deg", error);
  if (!has_range && member_misspelt (root, plate_members, "turn_range_deg") != NULL)
    return refuse_missing (root, "", "turn_range_deg", error);
  g_set_error_literal (error, FILE_REFUSAL,
                       has_turns ? FILE_REFUSAL_TYPE : FILE_REFUSAL_MISSING,
                       has_turns
                           ? _ ("A plate has turns_deg or turn_range_deg, and not both.")
                           : _ ("turns_deg or turn_range_deg is missing."));
  return FALSE;
}

static gboolean
read_hole (JsonNode *node, guint index, PlateHole *hole, GError **error)
{
  g_autofree char *path = g_strdup_printf ("holes[%u]", index);

  JsonObject *object = member_open_entry (node, path, error);

  if (object == NULL)
    return FALSE;
  member_keep_unknown (object, plate_hole_members, &hole->unknown);
  return read_text (object, path, "label", &hole->label, error) &&
         read_number (object, path, "inboard_mm", &hole->inboard_mm, error) &&
         read_number (object, path, "rearward_mm", &hole->rearward_mm, error);
}

static gboolean
read_holes (JsonObject *root, Plate *plate, GError **error)
{
  JsonArray *list;

  if (!find_list (root, "holes", &list, error))
    return FALSE;
  const guint n = json_array_get_length (list);
  g_array_set_size (plate->holes, n);
  for (guint i = 0; i < n; i++)
    if (!read_hole (json_array_get_element (list, i), i,
                    &g_array_index (plate->holes, PlateHole, i), error))
      return FALSE;
  return TRUE;
}

static gboolean
read_pairs (JsonObject *root, Plate *plate, GError **error)
{
  for (gsize i = 0; i < n_plate_pairs; i++)
    if (plate_kind_has (plate->kind, plate_pairs[i].name) &&
        !read_pair (root, &plate_pairs[i], plate, error))
      return FALSE;
  return TRUE;
}

/* What goes with the kind: lists and pairs. */
static gboolean
read_lists (JsonObject *root, Plate *plate, GError **error)
{
  if (plate->kind == PLATE_HOLES)
    return read_holes (root, plate, error);
  if (plate->kind != PLATE_ECCENTRIC)
    return read_pairs (root, plate, error);
  if (!check_turn_members (root, error))
    return FALSE;
  return json_object_has_member (root, "turns_deg") ? read_turns (root, plate, error)
                                                    : read_pairs (root, plate, error);
}

static gboolean
read_plate (JsonObject *root, Plate *plate, GError **error)
{
  if (!check_format (root, error) || !read_text (root, "", "name", &plate->name, error) ||
      !member_read_text (root, "", "notes", &plate->notes, error) ||
      !read_kind (root, &plate->kind, error) ||
      !check_members_of_kind (root, plate->kind, error) ||
      !read_numbers (root, plate, plate_numbers, n_plate_numbers, error) ||
      !read_lists (root, plate, error) ||
      !read_numbers (root, plate, plate_extras, n_plate_extras, error))
    return FALSE;
  plate->can_swap = json_object_has_member (root, "swap_turn_deg");
  member_keep_unknown (root, plate_members, &plate->unknown);
  return plate_check_values (plate, error);
}

Plate *
plate_from_json (const char *text, gsize length, GError **error)
{
  g_autoptr (JsonNode) node = json_strict_parse (text, length, error);
  g_autoptr (Plate) plate = plate_new ();

  if (node == NULL)
    return NULL;
  if (!JSON_NODE_HOLDS_OBJECT (node)) {
    g_set_error_literal (error, FILE_REFUSAL, FILE_REFUSAL_TYPE,
                         _ ("This is no plate file: it must be an object in braces."));
    return NULL;
  }
  return read_plate (json_node_get_object (node), plate, error) ? g_steal_pointer (&plate)
                                                                : NULL;
}
