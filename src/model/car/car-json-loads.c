/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car/car-json-loads.h"
#include "model/car/car-json-members.h"
#include "model/car/car-json-spring-lists.h"
#include "model/car/car-json.h"
#include "model/json/json-numbers.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>
#include <string.h>

#define IN(member) offsetof (CarLoadCase, member)

/* Loads of a road car stay far inside these. */
static const NumberRow case_rows[] = {
  { "lateral_g", IN (lateral_g), FALSE, { -5, 5, FALSE } },
  { "braking_g", IN (braking_g), FALSE, { -5, 5, FALSE } },
  { "vertical", IN (vertical), FALSE, { -20, 20, FALSE } },
  { "rearward", IN (rearward), FALSE, { -20, 20, FALSE } },
};
static const NumberRows case_numbers = { case_rows, G_N_ELEMENTS (case_rows) };
const char *const load_case_members[] = { "name",     "lateral_g", "braking_g",
                                          "vertical", "rearward",  NULL };
static const CarLoadCase plain_case = { .vertical = 1.0 };

static gboolean
has_case (const Car *car, const char *name)
{
  for (gsize i = 0; i < car->n_load_cases; i++)
    if (g_str_equal (car->load_cases[i].name, name))
      return TRUE;
  return FALSE;
}

static gboolean
read_name (
    JsonObject *object, const char *path, const Car *car, char *name, GError **error)
{
  g_autofree char *text = NULL;

  if (!member_read_text (object, path, "name", &text, error))
    return FALSE;
  if (text == NULL)
    return member_refuse (error, FILE_REFUSAL_MISSING, _ ("%s is missing."), path,
                          "name");
  if (text[0] == '\0')
    return member_refuse (error, FILE_REFUSAL_NAME, _ ("%s is empty."), path, "name");
  if (has_case (car, text))
    return member_refuse (error, FILE_REFUSAL_NAME,
                          _ ("%s is that of an earlier case, too."), path, "name");
  if (g_strlcpy (name, text, LOAD_CASE_NAME) < LOAD_CASE_NAME)
    return TRUE;
  g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_NAME,
               _ ("%s.name is %u bytes long, but can have no more than %u."), path,
               (guint) strlen (text), LOAD_CASE_NAME - 1);
  return FALSE;
}

/* The object in the section's unknown members that has those of the cases, by name. */
static JsonObject *
kept_cases (const Car *car)
{
  JsonObject *kept = car->unknown[CAR_SECTION_LOADS];

  return kept != NULL && json_object_has_member (kept, "cases")
             ? json_object_get_object_member (kept, "cases")
             : NULL;
}

/* Takes @kept. */
static void
keep_of_case (Car *car, const char *name, JsonObject *kept)
{
  JsonObject **section = &car->unknown[CAR_SECTION_LOADS];

  if (*section == NULL)
    *section = json_object_new ();
  if (kept_cases (car) == NULL)
    json_object_set_object_member (*section, "cases", json_object_new ());
  json_object_set_object_member (kept_cases (car), name, kept);
}

static gboolean
read_case (JsonNode *node, const char *path, Car *car, GError **error)
{
  JsonObject *object = member_open_entry (node, path, error), *kept = NULL;
  CarLoadCase read = plain_case;

  if (object == NULL || !read_name (object, path, car, read.name, error) ||
      !number_rows_read (object, path, case_numbers, &read, error))
    return FALSE;
  car->load_cases[car->n_load_cases++] = read;
  member_keep_unknown (object, load_case_members, &kept);
  if (kept != NULL)
    keep_of_case (car, read.name, kept);
  return TRUE;
}

gboolean
loads_read (JsonObject *loads, Car *car, GError **error)
{
  JsonArray *list;

  if (!spring_find_list (loads, "loads", "cases", LOAD_CASES_MOST, &list, error))
    return FALSE;
  for (guint i = 0; list != NULL && i < json_array_get_length (list); i++) {
    g_autofree char *path = g_strdup_printf ("loads.cases[%u]", i);

    if (!read_case (json_array_get_element (list, i), path, car, error))
      return FALSE;
  }
  return TRUE;
}

static JsonObject *
case_object (const CarLoadCase *load_case, JsonObject *kept)
{
  JsonObject *object = json_object_new ();

  json_object_set_string_member (object, "name", load_case->name);
  number_rows_add (object, case_numbers, load_case, &plain_case);
  if (kept != NULL && json_object_has_member (kept, load_case->name))
    member_add_kept (object, json_object_get_object_member (kept, load_case->name));
  return object;
}

void
loads_add (JsonObject *loads, const Car *car)
{
  JsonArray *list = json_array_new ();

  for (gsize i = 0; i < car->n_load_cases; i++)
    json_array_add_object_element (list,
                                   case_object (&car->load_cases[i], kept_cases (car)));
  if (car->n_load_cases > 0)
    json_object_set_array_member (loads, "cases", json_array_ref (list));
  json_array_unref (list);
  if (car->unknown[CAR_SECTION_LOADS] != NULL)
    section_keep_unknown (car->unknown[CAR_SECTION_LOADS], CAR_SECTION_LOADS, &loads);
}

static void
take_cases (Car *car, const Car *from)
{
  JsonObject **unknown = &car->unknown[CAR_SECTION_LOADS];

  car->n_load_cases = from->n_load_cases;
  memcpy (car->load_cases, from->load_cases, sizeof car->load_cases);
  g_clear_pointer (unknown, json_object_unref);
  if (from->unknown[CAR_SECTION_LOADS] != NULL)
    *unknown = json_object_ref (from->unknown[CAR_SECTION_LOADS]);
}

gboolean
loads_renew (Car *car, const CarLoadCase *cases, gsize n, GError **error)
{
  g_return_val_if_fail (n <= LOAD_CASES_MOST, FALSE);

  g_autoptr (JsonObject) loads = json_object_new ();
  g_autoptr (Car) wanted = car_new (), read = car_new ();

  for (gsize i = 0; i < n; i++) {
    wanted->load_cases[i] = cases[i];
    number_rows_clear_negative_zeros (case_numbers, &wanted->load_cases[i]);
  }
  wanted->n_load_cases = n;
  if (car->unknown[CAR_SECTION_LOADS] != NULL)
    wanted->unknown[CAR_SECTION_LOADS] =
        json_object_ref (car->unknown[CAR_SECTION_LOADS]);
  loads_add (loads, wanted);
  section_keep_unknown (loads, CAR_SECTION_LOADS, &read->unknown[CAR_SECTION_LOADS]);
  if (!loads_read (loads, read, error))
    return FALSE;
  take_cases (car, read);
  return TRUE;
}

gboolean
car_check_load_cases (const CarLoadCase *cases, gsize n, GError **error)
{
  g_autoptr (Car) car = car_new ();

  return loads_renew (car, cases, n, error);
}
