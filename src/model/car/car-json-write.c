/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car/aim.h"
#include "model/car/car-json-loads.h"
#include "model/car/car-json-members.h"
#include "model/car/car-json-points.h"
#include "model/car/car-json-springs.h"
#include "model/car/car-json.h"
#include "model/json/json-write.h"

#include <math.h>
#include <string.h>

static void
add_points (JsonObject *object, const Vec3 *points)
{
  for (PointName i = 0; i < N_POINTS; i++)
    car_add_point (object, car_point_names[i], points[i]);
}

static void
add_car_number (JsonObject *object,
                const CarNumber *number,
                const Car *car,
                const Car *plain)
{
  const double value = car_number_value (car, number);

  if (number->presence != MEMBER_WHERE_GIVEN ||
      !member_same_number (value, car_number_value (plain, number)))
    member_add_number (object, number->name, value);
}

/* @plain has the defaults. */
static void
add_section (JsonObject *root, const Car *car, const Car *plain, CarSection section)
{
  g_autoptr (JsonObject) object = json_object_new ();
  const gboolean is_always_there = section < CAR_SECTION_TOWER;

  if (section == CAR_SECTION_CORNER)
    add_points (object, car->points);
  for (gsize i = 0; i < n_car_numbers; i++)
    if (car_numbers[i].section == section)
      add_car_number (object, &car_numbers[i], car, plain);
  if (section == CAR_SECTION_LOADS)
    loads_add (object, car);
  else
    member_add_kept (object, car->unknown[section]);
  if (is_always_there || json_object_get_size (object) > 0)
    json_object_set_object_member (root, car_section_names[section],
                                   g_steal_pointer (&object));
}

static JsonObject *
right_corner_object (const CarMeasuredRight *right)
{
  JsonObject *object = json_object_new ();

  add_points (object, right->points);
  member_add_kept (object, right->unknown_corner);
  return object;
}

static JsonObject *
right_alignment_object (const CarMeasuredRight *right)
{
  JsonObject *object = json_object_new ();

  member_add_number (object, "camber_deg", right->camber_deg);
  member_add_number (object, "toe_in_deg", right->toe_in_deg);
  member_add_kept (object, right->unknown_alignment);
  return object;
}

static void
add_right (JsonObject *root, const CarMeasuredRight *right)
{
  g_autoptr (JsonObject) object = json_object_new ();

  if (right->has_points)
    json_object_set_object_member (object, "corner", right_corner_object (right));
  if (right->has_alignment)
    json_object_set_object_member (object, "alignment", right_alignment_object (right));
  member_add_kept (object, right->unknown);
  if (json_object_get_size (object) > 0)
    json_object_set_object_member (root, "right", g_steal_pointer (&object));
}

static JsonObject *
target_object (const CarTarget *target)
{
  JsonObject *object = json_object_new ();

  json_object_set_string_member (object, "aim", aim_info (target->aim).key);
  if (target->least != -INFINITY)
    member_add_number (object, "least", target->least);
  if (target->most != INFINITY)
    member_add_number (object, "most", target->most);
  if (target->weight != 1.0)
    member_add_number (object, "weight", target->weight);
  member_add_kept (object, target->unknown);
  return object;
}

static void
add_targets (JsonObject *root, const Car *car)
{
  JsonArray *array;

  if (car->targets->len == 0)
    return;
  array = json_array_sized_new (car->targets->len);
  for (guint i = 0; i < car->targets->len; i++)
    json_array_add_object_element (array, target_object (&g_array_index (car->targets,
                                                                         CarTarget, i)));
  json_object_set_array_member (root, "targets", array);
}

static void
add_part (JsonObject *object, const SetupPart *part, CarSetup *setup)
{
  JsonObject *values = json_object_new ();

  for (gsize i = 0; i < part->n_numbers; i++) {
    const SetupNumber *number = &part->numbers[i];
    const double value = *setup_number (setup, number);

    if (number->presence != MEMBER_WHERE_GIVEN || !member_same_number (value, 0.0))
      member_add_number (values, number->name, value);
  }
  member_add_kept (values, *setup_part_unknown (part, setup));
  json_object_set_object_member (object, part->name, values);
}

static gboolean
has_corrections (const CarSetup *setup)
{
  const CarCorrections none = { 0 };

  return setup->unknown_corrections != NULL ||
         memcmp (&setup->corrections, &none, sizeof none) != 0;
}

static JsonObject *
plate_object (const CarSetup *setup)
{
  JsonObject *object = json_object_new ();

  json_object_set_string_member (object, "name", setup->plate);
  if (setup->is_plate_swapped)
    json_object_set_boolean_member (object, "swapped", TRUE);
  member_add_kept (object, setup->unknown_plate);
  return object;
}

static JsonObject *
setup_object (CarSetup *setup)
{
  JsonObject *object = json_object_new ();

  json_object_set_string_member (object, "name", setup->name);
  add_part (object, &setup_mount, setup);
  member_add_number (object, "lowering_mm", setup->lowering_mm);
  json_object_set_string_member (object, "toe", toe_mode_names[setup->toe]);
  if (has_corrections (setup))
    add_part (object, &setup_corrections, setup);
  if (setup->plate != NULL)
    json_object_set_object_member (object, "plate", plate_object (setup));
  if (setup->right.is_own)
    add_part (object, &setup_right, setup);
  if (setup->is_hidden)
    json_object_set_boolean_member (object, "hidden", TRUE);
  if (setup->has_springs)
    json_object_set_object_member (object, "springs",
                                   springs_object (&setup->springs,
                                                   setup->unknown_springs));
  if (setup->has_rod)
    json_object_set_object_member (object, "rod",
                                   rod_object (&setup->rod, setup->unknown_rod));
  member_add_kept (object, setup->unknown);
  return object;
}

static void
add_setups (JsonObject *root, const Car *car)
{
  JsonArray *array = json_array_sized_new (car->setups->len);

  for (guint i = 0; i < car->setups->len; i++)
    json_array_add_object_element (array, setup_object (car_setup (car, i)));
  json_object_set_array_member (root, "setups", array);
}

/* Behind the setups, where a program that did not know them left them. */
static void
add_springs (JsonObject *root, const Car *car, const Car *plain)
{
  if (car->unknown_springs != NULL ||
      memcmp (&car->springs, &plain->springs, sizeof car->springs) != 0)
    json_object_set_object_member (root, "springs",
                                   springs_object (&car->springs, car->unknown_springs));
  add_section (root, car, plain, CAR_SECTION_LOADS);
}

char *
car_to_json (const Car *car, gsize *length)
{
  g_autoptr (JsonObject) root = json_object_new ();
  g_autoptr (JsonNode) node = json_node_init_object (json_node_alloc (), root);
  g_autoptr (Car) plain = car_new ();
  GString *text = g_string_sized_new (2048);

  json_object_set_string_member (root, "format", CAR_FILE_FORMAT);
  json_object_set_int_member (root, "version", CAR_FILE_VERSION);
  json_object_set_string_member (root, "name", car->name);
  json_object_set_string_member (root, "notes", car->notes);
  for (CarSection i = CAR_SECTION_ROOT + 1; i < CAR_SECTION_LOADS; i++)
    add_section (root, car, plain, i);
  add_right (root, &car->right);
  add_targets (root, car);
  add_setups (root, car);
  if (car->baseline > 0)
    json_object_set_string_member (root, "baseline",
                                   car_setup (car, car->baseline)->name);
  add_springs (root, car, plain);
  member_add_kept (root, car->unknown[CAR_SECTION_ROOT]);

  json_write_node (text, node);
  g_string_append_c (text, '\n');
  if (length != NULL)
    *length = text->len;
  return g_string_free (text, FALSE);
}
