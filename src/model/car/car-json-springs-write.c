/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car/car-json-points.h"
#include "model/car/car-json-spring-checks.h"
#include "model/car/car-json-spring-members.h"
#include "model/car/car-json-springs.h"

/* The member @name of @kept that is an object, or NULL. */
static JsonObject *
kept_part (JsonObject *kept, const char *name)
{
  JsonNode *node = kept != NULL ? json_object_get_member (kept, name) : NULL;

  return node != NULL && JSON_NODE_HOLDS_OBJECT (node) ? json_node_get_object (node)
                                                       : NULL;
}

static void
add_bar (JsonObject *object, const CarTorsionBar *bar, JsonObject *kept)
{
  JsonArray *sections = kept != NULL && json_object_has_member (kept, "sections")
                            ? json_object_get_array_member (kept, "sections")
                            : NULL;

  if (bar->n_sections > 0)
    json_object_set_array_member (object, "sections", bar_sections_array (bar, sections));
  if (bar->n_splines > 0)
    json_object_set_int_member (object, "splines", (gint64) bar->n_splines);
}

static void
add_link (JsonObject *object, const CarAntiRollBar *bar)
{
  json_object_set_string_member (object, "link_on",
                                 link_carrier_names[bar->link_carrier]);
  if (bar->has_link_point)
    car_add_point (object, "link_point", bar->link_point);
}

static void
add_others (JsonObject *object,
            SpringPartName name,
            const CarSprings *springs,
            JsonObject *kept)
{
  if (name == SPRING_PART_BAR)
    add_bar (object, &springs->bar, kept);
  else if (name == SPRING_PART_HELPER)
    json_object_set_string_member (object, "in",
                                   helper_place_names[springs->helper.place]);
  else if (name == SPRING_PART_ANTI_ROLL_BAR)
    add_link (object, &springs->anti_roll_bar);
}

static JsonObject *
part_object (SpringPartName name, CarSprings *springs, JsonObject *kept)
{
  const SpringPart *part = &spring_parts[name];
  const SpringTable *table = spring_part_table (part, springs);
  const CarSprings plain = car_springs_none ();
  JsonObject *object = json_object_new ();

  add_others (object, name, springs, kept);
  number_rows_add (object, part->numbers, springs, &plain);
  if (table != NULL && table->n > 0)
    json_object_set_array_member (object, "table", spring_table_array (table));
  if (kept != NULL)
    spring_part_keep_unknown (part, kept, &object);
  return object;
}

static void
add_part (JsonObject *set, SpringPartName name, CarSprings *springs, JsonObject *unknown)
{
  const SpringPart *part = &spring_parts[name];
  const gsize *flag = spring_part_flag (part, springs);

  if (flag != NULL && !*flag)
    return;

  g_autoptr (JsonObject) object =
                 part_object (name, springs, kept_part (unknown, part->name));
  if (flag != NULL || json_object_get_size (object) > 0)
    json_object_set_object_member (set, part->name, g_steal_pointer (&object));
}

JsonObject *
springs_object (const CarSprings *springs, JsonObject *unknown)
{
  const CarSprings plain = car_springs_none ();
  CarSprings copy = *springs;
  JsonObject *set = json_object_new ();

  for (SpringPartName i = 0; i < N_SPRING_PARTS; i++)
    add_part (set, i, &copy, unknown);
  number_rows_add (set, spring_set_numbers, springs, &plain);
  if (unknown != NULL)
    spring_set_keep_unknown (unknown, set);
  return set;
}

static CarSprings
without_negative_zeros (const CarSprings *springs)
{
  CarSprings copy = *springs;

  for (SpringPartName i = 0; i < N_SPRING_PARTS; i++)
    number_rows_clear_negative_zeros (spring_parts[i].numbers, &copy);
  number_rows_clear_negative_zeros (spring_set_numbers, &copy);
  return copy;
}

static gboolean
lists_fit (const CarSprings *s)
{
  return s->bar.n_sections <= BAR_SECTIONS_MOST && s->coil.table.n <= SPRING_TABLE_MOST &&
         s->bump_stop.table.n <= SPRING_TABLE_MOST &&
         s->damper.table.n <= SPRING_TABLE_MOST &&
         s->helper.place <= HELPER_IN_PARALLEL &&
         s->anti_roll_bar.link_carrier <= LINK_ON_STRUT;
}

gboolean
springs_renew (const CarSprings *wanted,
               JsonObject *old_unknown,
               CarSprings *springs,
               JsonObject **unknown,
               GError **error)
{
  g_return_val_if_fail (lists_fit (wanted), FALSE);

  const CarSprings clean = without_negative_zeros (wanted);
  g_autoptr (JsonObject) holder = json_object_new ();

  json_object_set_object_member (holder, "springs", springs_object (&clean, old_unknown));
  return springs_read (holder, "", springs, unknown, error);
}

static double
strut_length (const Car *car)
{
  return vec3_distance (car->points[POINT_UPPER_MOUNT], car->points[POINT_STRUT_FOOT]);
}

gboolean
car_check_spring_seats (const Car *car, const CarSprings *springs, GError **error)
{
  return spring_check_seats (springs, strut_length (car), "springs", error);
}

gboolean
springs_check_all_seats (const Car *car, GError **error)
{
  if (!car_check_spring_seats (car, &car->springs, error))
    return FALSE;
  for (guint i = 0; i < car->setups->len; i++) {
    const CarSetup *setup = car_setup (car, i);
    g_autofree char *path = g_strdup_printf ("setups[%u].springs", i);

    if (setup->has_springs &&
        !spring_check_seats (&setup->springs, strut_length (car), path, error))
      return FALSE;
  }
  return TRUE;
}

gboolean
car_check_springs (const CarSprings *springs, GError **error)
{
  JsonObject *unknown = NULL;
  CarSprings read;

  return springs_renew (springs, NULL, &read, &unknown, error);
}
