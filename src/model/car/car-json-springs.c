/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car/car-json-springs.h"
#include "model/car/car-json-points.h"
#include "model/car/car-json-spring-checks.h"
#include "model/car/car-json-spring-members.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* One of two words, or as it is where @name is missing. @sentence has one %s. */
static gboolean
read_word (JsonObject *object,
           const char *path,
           const char *name,
           const char *const words[2],
           const char *sentence,
           gsize *value,
           GError **error)
{
  g_autofree char *word = g_strdup (words[*value]);

  if (!member_read_text (object, path, name, &word, error))
    return FALSE;
  for (gsize i = 0; i < 2; i++)
    if (g_str_equal (word, words[i])) {
      *value = i;
      return TRUE;
    }
  return member_refuse (error, FILE_REFUSAL_TYPE, sentence, path, name);
}

static gboolean
read_splines (JsonObject *object, const char *path, gsize *n, GError **error)
{
  double value = 0.0;

  if (!json_object_has_member (object, "splines"))
    return TRUE;
  if (!member_read_number_within (object, path, "splines", spring_splines_range, &value,
                                  error))
    return FALSE;
  *n = (gsize) value;
  return value == floor (value) ||
         member_refuse (error, FILE_REFUSAL_NUMBER, _ ("%s must be a whole number."),
                        path, "splines");
}

static gboolean
read_bar (JsonObject *object,
          const char *path,
          CarTorsionBar *bar,
          JsonObject **unknown,
          GError **error)
{
  JsonArray *kept = NULL;
  const gboolean is_read = bar_sections_read (object, path, bar, &kept, error);

  if (kept != NULL) {
    if (*unknown == NULL)
      *unknown = json_object_new ();
    json_object_set_array_member (*unknown, "sections", kept);
  }
  return is_read && read_splines (object, path, &bar->n_splines, error);
}

static gboolean
read_helper (JsonObject *object, const char *path, CarHelper *helper, GError **error)
{
  if (!json_object_has_member (object, "in"))
    return member_refuse (error, FILE_REFUSAL_MISSING, _ ("%s is missing."), path, "in");
  return read_word (object, path, "in", helper_place_names,
                    _ ("%s must be \"series\" or \"parallel\"."), &helper->place, error);
}

static gboolean
read_link (JsonObject *object, const char *path, CarAntiRollBar *bar, GError **error)
{
  bar->has_link_point = json_object_has_member (object, "link_point");
  return read_word (object, path, "link_on", link_carrier_names,
                    _ ("%s must be \"arm\" or \"strut\"."), &bar->link_carrier, error) &&
         (!bar->has_link_point ||
          car_read_point (object, path, "link_point", &bar->link_point, error));
}

/* What is no number and no table. */
static gboolean
read_others (SpringPartName name,
             JsonObject *object,
             const char *path,
             CarSprings *springs,
             JsonObject **unknown,
             GError **error)
{
  switch (name) {
  case SPRING_PART_BAR:
    return read_bar (object, path, &springs->bar, unknown, error);
  case SPRING_PART_HELPER:
    return read_helper (object, path, &springs->helper, error);
  case SPRING_PART_ANTI_ROLL_BAR:
    return read_link (object, path, &springs->anti_roll_bar, error);
  case SPRING_PART_COIL:
  case SPRING_PART_BUMP_STOP:
  case SPRING_PART_DAMPER:
  case N_SPRING_PARTS:
    break;
  }
  return TRUE;
}

static gboolean
read_part (SpringPartName name,
           JsonObject *object,
           const char *path,
           CarSprings *springs,
           JsonObject **kept,
           GError **error)
{
  const SpringPart *part = &spring_parts[name];
  SpringTable *table = spring_part_table (part, springs);
  gsize *flag = spring_part_flag (part, springs);

  if (!number_rows_read (object, path, part->numbers, springs, error) ||
      (table != NULL && !spring_table_read (object, path, part->table, table, error)) ||
      !read_others (name, object, path, springs, kept, error) ||
      !spring_check_part (name, springs, path, error))
    return FALSE;
  if (flag != NULL)
    *flag = TRUE;
  spring_part_keep_unknown (part, object, kept);
  return TRUE;
}

static gboolean
find_and_read_part (SpringPartName name,
                    JsonObject *set,
                    const char *set_path,
                    CarSprings *springs,
                    JsonObject *unknown,
                    GError **error)
{
  const char *part = spring_parts[name].name;
  g_autofree char *path = member_path (set_path, part);
  g_autoptr (JsonObject) kept = NULL;
  JsonObject *object;

  if (!member_find_object (set, set_path, part, &object, error))
    return FALSE;
  if (object == NULL)
    return TRUE;
  if (!read_part (name, object, path, springs, &kept, error))
    return FALSE;
  if (kept != NULL)
    json_object_set_object_member (unknown, part, g_steal_pointer (&kept));
  return TRUE;
}

static gboolean
read_set (JsonObject *set,
          const char *path,
          CarSprings *springs,
          JsonObject *unknown,
          GError **error)
{
  for (SpringPartName i = 0; i < N_SPRING_PARTS; i++)
    if (!find_and_read_part (i, set, path, springs, unknown, error))
      return FALSE;
  spring_set_keep_unknown (set, unknown);
  return number_rows_read (set, path, spring_set_numbers, springs, error) &&
         spring_check_set (springs, path, error);
}

gboolean
springs_read (JsonObject *parent,
              const char *parent_path,
              CarSprings *springs,
              JsonObject **unknown,
              GError **error)
{
  g_autofree char *path = member_path (parent_path, "springs");
  g_autoptr (JsonObject) kept = json_object_new ();
  CarSprings read = car_springs_none ();
  JsonObject *set;

  if (!member_find_object (parent, parent_path, "springs", &set, error))
    return FALSE;
  if (set == NULL)
    return TRUE;
  if (!read_set (set, path, &read, kept, error))
    return FALSE;
  *springs = read;
  if (json_object_get_size (kept) > 0)
    *unknown = g_steal_pointer (&kept);
  return TRUE;
}
