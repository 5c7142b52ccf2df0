/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car/car-json-geometry.h"
#include "model/car/car-json-loads.h"
#include "model/car/car-json-members.h"
#include "model/car/car-json-points.h"
#include "model/car/car-json-right.h"
#include "model/car/car-json-setups.h"
#include "model/car/car-json-springs.h"
#include "model/car/car-json-targets.h"
#include "model/car/car-json.h"
#include "model/json/json-member.h"
#include "model/json/json-strict.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static gboolean
find_section (JsonObject *root, CarSection section, JsonObject **object, GError **error)
{
  const gboolean is_required = section == CAR_SECTION_CORNER ||
                               section == CAR_SECTION_ALIGNMENT ||
                               section == CAR_SECTION_TYRE;
  const char *name = car_section_names[section];

  if (section == CAR_SECTION_ROOT) {
    *object = root;
    return TRUE;
  }
  if (!member_find_object (root, "", name, object, error))
    return FALSE;
  if (*object == NULL && is_required)
    return member_refuse_missing (root, car_root_members, "", name, error);
  return TRUE;
}

static gboolean
read_car_number (JsonObject *object, const CarNumber *member, Car *car, GError **error)
{
  const char *section = car_section_names[member->section];
  double *value = car_number (car, member);
  g_autofree char *path = g_strconcat (section, ".", member->name, NULL);

  if (!json_object_has_member (object, member->name)) {
    g_autoptr (GPtrArray) known = car_section_members (member->section);

    return member->presence != MEMBER_REQUIRED ||
           member_refuse_missing (object, (const char *const *) known->pdata, section,
                                  member->name, error);
  }
  return member_read_number (object, section, member->name, value, error) &&
         member_check_range (member->range, *value, path, error);
}

static gboolean
read_section (JsonObject *root, CarSection section, Car *car, GError **error)
{
  JsonObject *object;

  if (!find_section (root, section, &object, error))
    return FALSE;
  if (object == NULL)
    return TRUE;
  if (section == CAR_SECTION_CORNER &&
      !car_read_points (object, "corner", car->points, error))
    return FALSE;
  for (gsize i = 0; i < n_car_numbers; i++)
    if (car_numbers[i].section == section &&
        !read_car_number (object, &car_numbers[i], car, error))
      return FALSE;
  section_keep_unknown (object, section, &car->unknown[section]);
  return section != CAR_SECTION_LOADS || loads_read (object, car, error);
}

static gboolean
check_format (JsonObject *root, GError **error)
{
  const MemberFormat format = { CAR_FILE_FORMAT, CAR_FILE_VERSION,
                                _ ("This is no car file: format is not \"%s\"."),
                                _ ("version is %g, which no car file ever had.") };

  return member_check_format (root, &format, error);
}

static gboolean
check_travel (const Car *car, GError **error)
{
  if (car->bump_mm > 0.0 || car->droop_mm > 0.0)
    return TRUE;
  g_set_error_literal (error, FILE_REFUSAL, FILE_REFUSAL_NUMBER,
                       _ ("travel.bump_mm and travel.droop_mm cannot both be zero."));
  return FALSE;
}

static gboolean
check_unloaded_radius (const Car *car, GError **error)
{
  if (car->unloaded_radius_mm == 0.0 || car->unloaded_radius_mm >= car->loaded_radius_mm)
    return TRUE;
  g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_NUMBER,
               _ ("tyre.unloaded_radius_mm is %g, but cannot be below "
                  "tyre.loaded_radius_mm, which is %g."),
               car->unloaded_radius_mm, car->loaded_radius_mm);
  return FALSE;
}

static gboolean
check_tube (const CarStrut *strut, GError **error)
{
  if (strut->tube_top_mm == 0.0 || strut->tube_top_mm > strut->tube_bottom_mm)
    return TRUE;
  g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_NUMBER,
               _ ("strut.tube_top_mm is %g, but must be above strut.tube_bottom_mm, "
                  "which is %g."),
               strut->tube_top_mm, strut->tube_bottom_mm);
  return FALSE;
}

/* An empty object says nothing, and is kept as it came. */
static gboolean
read_springs (JsonObject *root, Car *car, GError **error)
{
  const CarSprings none = car_springs_none ();

  if (!springs_read (root, "", &car->springs, &car->unknown_springs, error))
    return FALSE;
  if (json_object_has_member (root, "springs") && car->unknown_springs == NULL &&
      memcmp (&car->springs, &none, sizeof none) == 0)
    car->unknown_springs = json_object_new ();
  return TRUE;
}

static gboolean
read_parts (JsonObject *root, Car *car, GError **error)
{
  for (CarSection i = 0; i < N_CAR_SECTIONS; i++)
    if (!read_section (root, i, car, error))
      return FALSE;
  return check_travel (car, error) && check_unloaded_radius (car, error) &&
         check_tube (&car->strut, error) &&
         rod_check (&car->strut.rod, "strut", "rod_bore_mm", "rod_diameter_mm", error) &&
         read_springs (root, car, error) && car_read_right (root, car, error) &&
         car_read_targets (root, car, error) && car_read_setups (root, car, error) &&
         car_read_baseline (root, car, error);
}

Car *
car_from_json (const char *text, gsize length, GError **error)
{
  g_autoptr (JsonNode) node = json_strict_parse (text, length, error);
  g_autoptr (Car) car = car_new ();

  if (node == NULL)
    return NULL;
  if (!JSON_NODE_HOLDS_OBJECT (node)) {
    g_set_error_literal (error, FILE_REFUSAL, FILE_REFUSAL_TYPE,
                         _ ("This is no car file: it must be an object in braces."));
    return NULL;
  }

  JsonObject *root = json_node_get_object (node);
  if (!check_format (root, error) ||
      !member_read_text (root, "", "name", &car->name, error) ||
      !member_read_text (root, "", "notes", &car->notes, error) ||
      !read_parts (root, car, error) || !car_check_geometry (car, error) ||
      !springs_check_all_seats (car, error))
    return NULL;
  return g_steal_pointer (&car);
}
