/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car/car-json-setups.h"
#include "model/car/car-json-members.h"
#include "model/car/car-json-springs.h"

#include <glib/gi18n-lib.h>

static const NumberRange furthest_move = { .least = -CAR_FURTHEST_MOVE,
                                           .most = CAR_FURTHEST_MOVE };

static void
keep_unknown_of_part (JsonObject *object, const SetupPart *part, CarSetup *setup)
{
  JsonObjectIter iter;
  const char *name;
  JsonNode *value;

  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &name, &value))
    if (!setup_part_knows (part, name))
      member_keep (setup_part_unknown (part, setup), name, value);
}

static gboolean
read_part (JsonObject *object,
           const char *parent,
           const SetupPart *part,
           CarSetup *setup,
           GError **error)
{
  g_autofree char *path = g_strconcat (parent, ".", part->name, NULL);
  JsonObject *values;

  if (!member_find_object (object, parent, part->name, &values, error))
    return FALSE;
  if (values == NULL)
    return TRUE;
  for (gsize i = 0; i < part->n_numbers; i++) {
    const SetupNumber *number = &part->numbers[i];
    const NumberRange range = { .least = -number->most, .most = number->most };

    if (!member_read_number_within (values, path, number->name, range,
                                    setup_number (setup, number), error))
      return FALSE;
  }
  keep_unknown_of_part (values, part, setup);
  return TRUE;
}

static gboolean
read_plate (JsonObject *object, const char *parent, CarSetup *setup, GError **error)
{
  g_autofree char *path = g_strconcat (parent, ".plate", NULL);
  JsonObject *plate;

  if (!member_find_object (object, parent, "plate", &plate, error))
    return FALSE;
  if (plate == NULL)
    return TRUE;
  if (!member_read_text (plate, path, "name", &setup->plate, error) ||
      !member_read_flag (plate, path, "swapped", &setup->is_plate_swapped, error))
    return FALSE;
  if (setup->plate == NULL)
    return member_refuse (error, FILE_REFUSAL_MISSING, _ ("%s is missing."), path,
                          "name");
  if (setup->plate[0] == '\0')
    return member_refuse (error, FILE_REFUSAL_NAME, _ ("%s is empty."), path, "name");
  member_keep_unknown (plate, setup_plate_members, &setup->unknown_plate);
  return TRUE;
}

static gboolean
read_right (JsonObject *object, const char *parent, CarSetup *setup, GError **error)
{
  setup->right.is_own = json_object_has_member (object, setup_right.name);
  return read_part (object, parent, &setup_right, setup, error);
}

static gboolean
read_springs (JsonObject *object, const char *parent, CarSetup *setup, GError **error)
{
  setup->has_springs = json_object_has_member (object, "springs");
  setup->has_rod = json_object_has_member (object, "rod");
  return springs_read (object, parent, &setup->springs, &setup->unknown_springs, error) &&
         rod_read (object, parent, &setup->rod, &setup->unknown_rod, error);
}

static gboolean
read_toe (JsonObject *object, const char *parent, ToeMode *toe, GError **error)
{
  g_autofree char *word = g_strdup (toe_mode_names[*toe]);

  if (!member_read_text (object, parent, "toe", &word, error))
    return FALSE;
  for (gsize i = 0; i < G_N_ELEMENTS (toe_mode_names); i++)
    if (g_str_equal (word, toe_mode_names[i])) {
      *toe = (ToeMode) i;
      return TRUE;
    }
  return member_refuse (error, FILE_REFUSAL_TYPE,
                        _ ("%s must be \"as-moved\" or \"reset\"."), parent, "toe");
}

static gboolean
read_setup (JsonNode *node, guint index, CarSetup *setup, GError **error)
{
  g_autofree char *path = g_strdup_printf ("setups[%u]", index);

  JsonObject *object = member_open_entry (node, path, error);

  if (object == NULL)
    return FALSE;
  setup->name = g_strdup_printf (_ ("Setup %u"), index + 1);
  if (!member_read_text (object, path, "name", &setup->name, error) ||
      !read_part (object, path, &setup_mount, setup, error) ||
      !member_read_number_within (object, path, "lowering_mm", furthest_move,
                                  &setup->lowering_mm, error) ||
      !read_toe (object, path, &setup->toe, error) ||
      !read_part (object, path, &setup_corrections, setup, error) ||
      !read_plate (object, path, setup, error) ||
      !read_right (object, path, setup, error) ||
      !member_read_flag (object, path, "hidden", &setup->is_hidden, error) ||
      !read_springs (object, path, setup, error))
    return FALSE;
  member_keep_unknown (object, car_setup_members, &setup->unknown);
  return TRUE;
}

gboolean
car_read_setups (JsonObject *root, Car *car, GError **error)
{
  JsonArray *array;

  if (!member_find_list (root, "", "setups", &array, error))
    return FALSE;

  const guint n = array != NULL ? json_array_get_length (array) : 0;
  if (n == 0)
    return TRUE;
  if (n > CAR_MOST_SETUPS) {
    g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_TOO_LARGE,
                 _ ("%s has more than %d entries."), "setups", CAR_MOST_SETUPS);
    return FALSE;
  }
  g_array_set_size (car->setups, 0);
  g_array_set_size (car->setups, n);
  for (guint i = 0; i < n; i++)
    if (!read_setup (json_array_get_element (array, i), i, car_setup (car, i), error))
      return FALSE;
  return TRUE;
}

gboolean
car_read_baseline (JsonObject *root, Car *car, GError **error)
{
  g_autofree char *name = NULL;

  if (!member_read_text (root, "", "baseline", &name, error))
    return FALSE;
  if (name == NULL || car_find_setup (car, name, &car->baseline))
    return TRUE;
  return member_refuse (error, FILE_REFUSAL_NAME, _ ("%s names none of the setups."), "",
                        "baseline");
}
