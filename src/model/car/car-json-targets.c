/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car/car-json-targets.h"
#include "model/car/aim.h"
#include "model/car/car-json-members.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static gboolean
is_aimed_for (const Car *car, Aim aim)
{
  for (guint i = 0; i < car->targets->len; i++)
    if (g_array_index (car->targets, CarTarget, i).aim == aim)
      return TRUE;
  return FALSE;
}

static gboolean
refuse_aim (const char *path, GError **error)
{
  g_autoptr (GString) keys = g_string_new (NULL);

  for (Aim i = 0; i < N_AIMS; i++)
    g_string_append_printf (keys, "%s%s", i > 0 ? ", " : "", aim_info (i).key);
  /* Translators: the path of a member, and the words that may stand there. */
  g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_TYPE, _ ("%s.aim must be one of %s."),
               path, keys->str);
  return FALSE;
}

static gboolean
read_aim (
    JsonObject *object, const char *path, const Car *car, guint *aim, GError **error)
{
  g_autofree char *key = NULL;
  Aim found;

  if (!member_read_text (object, path, "aim", &key, error))
    return FALSE;
  if (key == NULL)
    return member_refuse (error, FILE_REFUSAL_MISSING, _ ("%s is missing."), path, "aim");
  if (!aim_from_key (key, &found))
    return refuse_aim (path, error);
  if (is_aimed_for (car, found))
    return member_refuse (error, FILE_REFUSAL_NAME,
                          _ ("%s is that of an earlier target, too."), path, "aim");
  *aim = found;
  return TRUE;
}

static gboolean
check_bounds (const CarTarget *target, const char *path, GError **error)
{
  if (target->least == -INFINITY && target->most == INFINITY) {
    g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_MISSING,
                 _ ("%s gives neither least nor most."), path);
    return FALSE;
  }
  if (target->least <= target->most)
    return TRUE;
  g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_NUMBER,
               _ ("%s.least is %g, but cannot be above most, which is %g."), path,
               target->least, target->most);
  return FALSE;
}

/* @target is of a known aim. */
static gboolean
read_bounds (JsonObject *object, const char *path, CarTarget *target, GError **error)
{
  const double furthest = aim_info (target->aim).furthest;
  const NumberRange limits = { .least = -furthest, .most = furthest };

  return (!json_object_has_member (object, "least") ||
          member_read_number_within (object, path, "least", limits, &target->least,
                                     error)) &&
         (!json_object_has_member (object, "most") ||
          member_read_number_within (object, path, "most", limits, &target->most, error));
}

static gboolean
read_target (JsonObject *object, const char *path, Car *car, GError **error)
{
  const NumberRange weights = { .least = 0.0,
                                .most = CAR_MOST_WEIGHT,
                                .is_above_least = TRUE };
  CarTarget target = { .least = -INFINITY, .most = INFINITY, .weight = 1.0 };

  if (!read_aim (object, path, car, &target.aim, error) ||
      !read_bounds (object, path, &target, error) ||
      !check_bounds (&target, path, error) ||
      !member_read_number_within (object, path, "weight", weights, &target.weight, error))
    return FALSE;
  member_keep_unknown (object, car_target_members, &target.unknown);
  g_array_append_val (car->targets, target);
  return TRUE;
}

gboolean
car_read_targets (JsonObject *root, Car *car, GError **error)
{
  JsonArray *array;

  if (!member_find_list (root, "", "targets", &array, error))
    return FALSE;
  for (guint i = 0; array != NULL && i < json_array_get_length (array); i++) {
    JsonNode *element = json_array_get_element (array, i);
    g_autofree char *path = g_strdup_printf ("targets[%u]", i);

    if (!JSON_NODE_HOLDS_OBJECT (element)) {
      g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_TYPE,
                   _ ("%s must be an object in braces."), path);
      return FALSE;
    }
    if (!read_target (json_node_get_object (element), path, car, error))
      return FALSE;
  }
  return TRUE;
}
