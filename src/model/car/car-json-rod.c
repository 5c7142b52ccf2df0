/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car/car-json-spring-checks.h"
#include "model/car/car-json-springs.h"
#include "model/car/car-json.h"

#include <glib/gi18n-lib.h>

gboolean
rod_check (const CarRod *rod,
           const char *path,
           const char *bore,
           const char *diameter,
           GError **error)
{
  return spring_check_below (path, bore, rod->bore_mm, diameter, rod->diameter_mm, error);
}

static void
keep_unknown (JsonObject *object, JsonObject **kept)
{
  JsonObjectIter iter;
  const char *name;
  JsonNode *value;

  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &name, &value))
    if (!number_rows_know (rod_numbers, name))
      member_keep (kept, name, value);
}

gboolean
rod_read (JsonObject *parent,
          const char *parent_path,
          CarRod *rod,
          JsonObject **unknown,
          GError **error)
{
  g_autofree char *path = member_path (parent_path, "rod");
  CarRod read = car_rod_none ();
  JsonObject *object;

  if (!member_find_object (parent, parent_path, "rod", &object, error))
    return FALSE;
  if (object == NULL)
    return TRUE;
  if (!number_rows_read (object, path, rod_numbers, &read, error) ||
      !rod_check (&read, path, "bore_mm", "diameter_mm", error))
    return FALSE;
  *rod = read;
  keep_unknown (object, unknown);
  return TRUE;
}

JsonObject *
rod_object (const CarRod *rod, JsonObject *unknown)
{
  const CarRod plain = car_rod_none ();
  JsonObject *object = json_object_new ();

  number_rows_add (object, rod_numbers, rod, &plain);
  member_add_kept (object, unknown);
  return object;
}

gboolean
rod_renew (const CarRod *wanted, CarRod *rod, GError **error)
{
  g_autoptr (JsonObject) holder = json_object_new ();
  JsonObject *unknown = NULL;
  CarRod clean = *wanted;

  number_rows_clear_negative_zeros (rod_numbers, &clean);
  json_object_set_object_member (holder, "rod", rod_object (&clean, NULL));
  return rod_read (holder, "", rod, &unknown, error);
}

gboolean
car_check_rod (const CarRod *rod, GError **error)
{
  CarRod read;

  return rod_renew (rod, &read, error);
}
