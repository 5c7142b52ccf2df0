/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car/car-unknown.h"
#include "model/car/car-json-loads.h"
#include "model/car/car-json-members.h"
#include "model/car/car-json-spring-lists.h"
#include "model/car/car-json-spring-members.h"
#include "model/words/near-word.h"

static void
unknown_free (gpointer data)
{
  CarUnknown *unknown = data;

  g_free (unknown->path);
  g_free (unknown);
}

/* Names of members, NULL behind the last once they are known. */
typedef GPtrArray Names;

static void
add_name (Names *names, const char *name)
{
  g_ptr_array_add (names, (gpointer) name);
}

static void
add_rows (Names *names, NumberRows rows)
{
  for (gsize i = 0; i < rows.n; i++)
    add_name (names, rows.rows[i].name);
}

/* What was kept of the object at @path; what is known in it was kept for its own members'
 * sake. */
static void
note (GPtrArray *found, const char *path, JsonObject *kept, const char *const *known)
{
  JsonObjectIter iter;
  const char *name;
  JsonNode *value;

  if (kept == NULL)
    return;
  json_object_iter_init_ordered (&iter, kept);
  while (json_object_iter_next_ordered (&iter, &name, &value)) {
    if (g_strv_contains (known, name))
      continue;

    CarUnknown *unknown = g_new (CarUnknown, 1);
    unknown->path = member_path (path, name);
    unknown->meant = near_member (name, known);
    g_ptr_array_add (found, unknown);
  }
}

static void
note_named (GPtrArray *found, const char *path, JsonObject *kept, Names *names)
{
  add_name (names, NULL);
  note (found, path, kept, (const char *const *) names->pdata);
}

static JsonObject *
object_in (JsonObject *kept, const char *name)
{
  JsonNode *node = kept != NULL ? json_object_get_member (kept, name) : NULL;

  return node != NULL && JSON_NODE_HOLDS_OBJECT (node) ? json_node_get_object (node)
                                                       : NULL;
}

static void
note_section (GPtrArray *found, const char *path, JsonObject *kept, CarSection section)
{
  g_autoptr (GPtrArray) names = car_section_members (section);

  note (found, path, kept, (const char *const *) names->pdata);
}

/* Kept by the cases' names. */
static void
note_cases (GPtrArray *found, const Car *car)
{
  JsonObject *cases = object_in (car->unknown[CAR_SECTION_LOADS], "cases");

  for (gsize i = 0; i < car->n_load_cases; i++) {
    g_autofree char *path = g_strdup_printf ("loads.cases[%u]", (guint) i);

    note (found, path, object_in (cases, car->load_cases[i].name), load_case_members);
  }
}

static void
note_bar_sections (GPtrArray *found, const char *bar_path, JsonObject *kept)
{
  JsonNode *node = kept != NULL ? json_object_get_member (kept, "sections") : NULL;
  JsonArray *list =
      node != NULL && JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;
  const guint n = list != NULL ? json_array_get_length (list) : 0;

  for (guint i = 0; i < n; i++) {
    g_autofree char *path = g_strdup_printf ("%s.sections[%u]", bar_path, i);

    note (found, path, json_array_get_object_element (list, i), bar_section_members);
  }
}

static void
note_spring_part (GPtrArray *found,
                  const char *set_path,
                  JsonObject *set,
                  const SpringPart *part)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();
  g_autofree char *path = member_path (set_path, part->name);
  JsonObject *kept = object_in (set, part->name);

  add_rows (names, part->numbers);
  for (gsize i = 0; part->others[i] != NULL; i++)
    add_name (names, part->others[i]);
  if (part->table_offset != SPRING_NO_TABLE)
    add_name (names, "table");
  note_named (found, path, kept, names);
  if (part == &spring_parts[SPRING_PART_BAR])
    note_bar_sections (found, path, kept);
}

static void
note_springs (GPtrArray *found, const char *parent, JsonObject *kept)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();
  g_autofree char *path = member_path (parent, "springs");

  for (SpringPartName i = 0; i < N_SPRING_PARTS; i++) {
    add_name (names, spring_parts[i].name);
    note_spring_part (found, path, kept, &spring_parts[i]);
  }
  add_rows (names, spring_set_numbers);
  note_named (found, path, kept, names);
}

static void
note_right (GPtrArray *found, const CarMeasuredRight *right)
{
  note (found, "right", right->unknown, car_right_members);
  note_section (found, "right.corner", right->unknown_corner, CAR_SECTION_CORNER);
  note_section (found, "right.alignment", right->unknown_alignment,
                CAR_SECTION_ALIGNMENT);
}

static void
note_setup_part (GPtrArray *found,
                 const char *parent,
                 CarSetup *setup,
                 const SetupPart *part)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();
  g_autofree char *path = member_path (parent, part->name);

  for (gsize i = 0; i < part->n_numbers; i++)
    add_name (names, part->numbers[i].name);
  note_named (found, path, *setup_part_unknown (part, setup), names);
}

static void
note_setup (GPtrArray *found, const Car *car, guint index)
{
  CarSetup *setup = car_setup (car, index);
  g_autoptr (GPtrArray) of_rod = g_ptr_array_new ();
  g_autofree char *path = g_strdup_printf ("setups[%u]", index);
  g_autofree char *plate = member_path (path, "plate"), *rod = member_path (path, "rod");

  note (found, path, setup->unknown, car_setup_members);
  note_setup_part (found, path, setup, &setup_mount);
  note_setup_part (found, path, setup, &setup_corrections);
  note_setup_part (found, path, setup, &setup_right);
  note (found, plate, setup->unknown_plate, setup_plate_members);
  note_springs (found, path, setup->unknown_springs);
  add_rows (of_rod, rod_numbers);
  note_named (found, rod, setup->unknown_rod, of_rod);
}

GPtrArray *
car_unknown_members (const Car *car)
{
  GPtrArray *found = g_ptr_array_new_with_free_func (unknown_free);

  for (CarSection i = 0; i < N_CAR_SECTIONS; i++)
    note_section (found, car_section_names[i], car->unknown[i], i);
  note_cases (found, car);
  note_springs (found, "", car->unknown_springs);
  note_right (found, &car->right);
  for (guint i = 0; i < car->targets->len; i++) {
    g_autofree char *path = g_strdup_printf ("targets[%u]", i);

    note (found, path, g_array_index (car->targets, CarTarget, i).unknown,
          car_target_members);
  }
  for (guint i = 0; i < car->setups->len; i++)
    note_setup (found, car, i);
  return found;
}
