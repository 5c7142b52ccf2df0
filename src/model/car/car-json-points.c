/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car/car-json-points.h"
#include "model/car/car-json-members.h"

#include <glib/gi18n-lib.h>

static gboolean
read_coordinate (
    JsonArray *array, guint index, const char *point, double *value, GError **error)
{
  const NumberRange limits = { .least = -10000.0, .most = 10000.0 };
  g_autofree char *path = g_strdup_printf ("%s[%u]", point, index);

  return member_read_entry (array, point, index, value, error) &&
         member_check_range (limits, *value, path, error);
}

gboolean
car_read_point (
    JsonObject *object, const char *parent, const char *name, Vec3 *point, GError **error)
{
  JsonNode *node = json_object_get_member (object, name);
  g_autofree char *path = g_strconcat (parent, ".", name, NULL);

  if (node == NULL)
    return member_refuse (error, FILE_REFUSAL_MISSING, _ ("%s is missing."), parent,
                          name);
  if (!JSON_NODE_HOLDS_ARRAY (node) ||
      json_array_get_length (json_node_get_array (node)) > 3)
    return member_refuse (error, FILE_REFUSAL_TYPE,
                          _ ("%s must be a list of three numbers: forward, left and up."),
                          parent, name);

  JsonArray *array = json_node_get_array (node);
  return read_coordinate (array, 0, path, &point->x, error) &&
         read_coordinate (array, 1, path, &point->y, error) &&
         read_coordinate (array, 2, path, &point->z, error);
}

gboolean
car_read_points (JsonObject *object, const char *parent, Vec3 *points, GError **error)
{
  g_autoptr (GPtrArray) known = car_section_members (CAR_SECTION_CORNER);

  for (PointName i = 0; i < N_POINTS; i++) {
    const char *name = car_point_names[i];

    if (!json_object_has_member (object, name))
      return member_refuse_missing (object, (const char *const *) known->pdata, parent,
                                    name, error);
    if (!car_read_point (object, parent, name, &points[i], error))
      return FALSE;
  }
  return TRUE;
}

void
car_add_point (JsonObject *object, const char *name, Vec3 point)
{
  JsonArray *array = json_array_sized_new (3);

  json_array_add_element (array, member_number_node (point.x));
  json_array_add_element (array, member_number_node (point.y));
  json_array_add_element (array, member_number_node (point.z));
  json_object_set_array_member (object, name, array);
}
