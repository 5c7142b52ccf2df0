/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/json/json-write.h"
#include "model/plate/plate-json-members.h"
#include "model/plate/plate-json.h"

#include <string.h>

static void
add_numbers (JsonObject *root, const Plate *plate)
{
  for (gsize i = 0; i < n_plate_numbers; i++)
    if (plate_kind_has (plate->kind, plate_numbers[i].name))
      member_add_number (root, plate_numbers[i].name,
                         plate_number_value (plate, plate_numbers[i].offset));
}

/* Only what says something, to the bit: −0.0 does. */
static void
add_extras (JsonObject *root, const Plate *plate)
{
  const double nothing = 0.0;

  for (gsize i = 0; i < n_plate_extras; i++) {
    const PlateNumber *extra = &plate_extras[i];
    const double value = plate_number_value (plate, extra->offset);
    const gboolean is_there = extra->offset == offsetof (Plate, swap_turn_deg)
                                  ? plate->can_swap
                                  : memcmp (&value, &nothing, sizeof value) != 0;

    if (is_there)
      member_add_number (root, extra->name, value);
  }
}

static void
add_pairs (JsonObject *root, const Plate *plate)
{
  for (gsize i = 0; i < n_plate_pairs; i++) {
    const PlatePair *pair = &plate_pairs[i];
    JsonArray *array;

    if (!plate_kind_has (plate->kind, pair->name))
      continue;
    array = json_array_sized_new (2);
    json_array_add_element (array,
                            member_number_node (plate_number_value (plate, pair->least)));
    json_array_add_element (array,
                            member_number_node (plate_number_value (plate, pair->most)));
    json_object_set_array_member (root, pair->name, array);
  }
}

static void
add_turns (JsonObject *root, const GArray *turns)
{
  JsonArray *array = json_array_sized_new (turns->len);

  for (guint i = 0; i < turns->len; i++)
    json_array_add_element (array, member_number_node (g_array_index (turns, double, i)));
  json_object_set_array_member (root, "turns_deg", array);
}

static JsonObject *
hole_object (const PlateHole *hole)
{
  JsonObject *object = json_object_new ();

  json_object_set_string_member (object, "label", hole->label);
  member_add_number (object, "inboard_mm", hole->inboard_mm);
  member_add_number (object, "rearward_mm", hole->rearward_mm);
  member_add_kept (object, hole->unknown);
  return object;
}

static void
add_holes (JsonObject *root, const GArray *holes)
{
  JsonArray *array = json_array_sized_new (holes->len);

  for (guint i = 0; i < holes->len; i++)
    json_array_add_object_element (array,
                                   hole_object (&g_array_index (holes, PlateHole, i)));
  json_object_set_array_member (root, "holes", array);
}

static void
add_lists (JsonObject *root, const Plate *plate)
{
  if (plate->kind == PLATE_HOLES)
    add_holes (root, plate->holes);
  else if (plate->kind == PLATE_ECCENTRIC && plate->turns_deg->len > 0)
    add_turns (root, plate->turns_deg);
  else
    add_pairs (root, plate);
}

char *
plate_to_json (const Plate *plate, gsize *length)
{
  g_autoptr (JsonObject) root = json_object_new ();
  g_autoptr (JsonNode) node = json_node_init_object (json_node_alloc (), root);
  GString *text = g_string_sized_new (512);

  json_object_set_string_member (root, "format", PLATE_FILE_FORMAT);
  json_object_set_int_member (root, "version", PLATE_FILE_VERSION);
  json_object_set_string_member (root, "name", plate->name);
  json_object_set_string_member (root, "notes", plate->notes);
  json_object_set_string_member (root, "kind", plate_kind_words[plate->kind]);
  add_numbers (root, plate);
  add_lists (root, plate);
  add_extras (root, plate);
  member_add_kept (root, plate->unknown);

  json_write_node (text, node);
  g_string_append_c (text, '\n');
  if (length != NULL)
    *length = text->len;
  return g_string_free (text, FALSE);
}
