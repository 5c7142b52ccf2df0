/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car/car-json-spring-lists.h"
#include "model/car/car-json-spring-checks.h"
#include "model/json/json-numbers.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

gboolean
spring_find_list (JsonObject *object,
                  const char *parent,
                  const char *name,
                  guint most,
                  JsonArray **list,
                  GError **error)
{
  if (!member_find_list (object, parent, name, list, error))
    return FALSE;

  const guint n = *list != NULL ? json_array_get_length (*list) : 0;
  if (n <= most)
    return TRUE;
  g_autofree char *path = member_path (parent, name);
  g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_NUMBER,
               _ ("%s has %u entries, but can have no more than %u."), path, n, most);
  return FALSE;
}

static gboolean
read_number (JsonArray *pair,
             const char *path,
             guint index,
             NumberRange range,
             double *value,
             GError **error)
{
  g_autofree char *entry = g_strdup_printf ("%s[%u]", path, index);

  return member_read_entry (pair, path, index, value, error) &&
         member_check_range (range, *value, entry, error);
}

static gboolean
read_pair (JsonNode *node,
           const char *path,
           SpringTableForm form,
           double *x,
           double *y,
           GError **error)
{
  if (!JSON_NODE_HOLDS_ARRAY (node) ||
      json_array_get_length (json_node_get_array (node)) > 2) {
    g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_TYPE,
                 _ ("%s must be a list of two numbers."), path);
    return FALSE;
  }

  JsonArray *pair = json_node_get_array (node);
  return read_number (pair, path, 0, form.x, x, error) &&
         read_number (pair, path, 1, form.y, y, error);
}

/* Between two points a law is a spline that keeps their order; a force that fell would
 * be a spring that pushes back less the more it is squashed. */
static gboolean
check_order (const SpringTable *table, gsize i, const char *path, GError **error)
{
  const double x = table->x[i], before = table->x[i - 1];
  const double y = table->y[i], force_before = table->y[i - 1];

  if (x > before && y >= force_before)
    return TRUE;
  if (!(x > before))
    g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_NUMBER,
                 _ ("%s is at %g, but must lie beyond the point before it, at %g."), path,
                 x, before);
  else
    g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_NUMBER,
                 _ ("%s gives %g N, but cannot give less than the point before it, "
                    "%g N."),
                 path, y, force_before);
  return FALSE;
}

static gboolean
check_start (const SpringTable *table,
             SpringTableForm form,
             const char *path,
             GError **error)
{
  if (!form.from_zero || (table->x[0] == 0.0 && table->y[0] == 0.0))
    return TRUE;
  g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_NUMBER,
               _ ("%s must begin with the point [0, 0]."), path);
  return FALSE;
}

static gboolean
read_points (JsonArray *list,
             const char *path,
             SpringTableForm form,
             SpringTable *table,
             GError **error)
{
  table->n = json_array_get_length (list);
  for (guint i = 0; i < table->n; i++) {
    g_autofree char *entry = g_strdup_printf ("%s[%u]", path, i);

    if (!read_pair (json_array_get_element (list, i), entry, form, &table->x[i],
                    &table->y[i], error) ||
        (i > 0 && !check_order (table, i, entry, error)))
      return FALSE;
  }
  return check_start (table, form, path, error);
}

gboolean
spring_table_read (JsonObject *object,
                   const char *parent,
                   SpringTableForm form,
                   SpringTable *table,
                   GError **error)
{
  g_autofree char *path = member_path (parent, "table");
  JsonArray *list;

  if (!spring_find_list (object, parent, "table", SPRING_TABLE_MOST, &list, error))
    return FALSE;
  if (list == NULL)
    return TRUE;
  if (json_array_get_length (list) >= 2)
    return read_points (list, path, form, table, error);
  g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_NUMBER,
               _ ("%s must have at least two points."), path);
  return FALSE;
}

JsonArray *
spring_table_array (const SpringTable *table)
{
  JsonArray *list = json_array_sized_new ((guint) table->n);

  for (gsize i = 0; i < table->n; i++) {
    JsonArray *pair = json_array_sized_new (2);

    json_array_add_element (pair, member_number_node (table->x[i]));
    json_array_add_element (pair, member_number_node (table->y[i]));
    json_array_add_array_element (list, pair);
  }
  return list;
}

#define SECTION_AT offsetof (CarTorsionBar, sections)
#define IN(member) offsetof (CarTorsionBar, sections[0].member) - SECTION_AT

static const NumberRow section_rows[] = {
  { "outer_mm", IN (outer_mm), TRUE, { 0, 200, TRUE } },
  { "inner_mm", IN (inner_mm), FALSE, { 0, 200, FALSE } },
  { "length_mm", IN (length_mm), TRUE, { 0, 5000, TRUE } },
};
static const NumberRows section_numbers = { section_rows, G_N_ELEMENTS (section_rows) };
const char *const bar_section_members[] = { "outer_mm", "inner_mm", "length_mm", NULL };

/* Takes @kept, or puts an empty object in its place, so that indices stay. */
static void
keep_in_list (JsonArray **list, guint index, JsonObject *kept)
{
  if (*list == NULL && kept == NULL)
    return;
  if (*list == NULL)
    *list = json_array_new ();
  while (json_array_get_length (*list) < index)
    json_array_add_object_element (*list, json_object_new ());
  json_array_add_object_element (*list, kept != NULL ? kept : json_object_new ());
}

static gboolean
read_section (
    JsonNode *node, const char *path, gpointer section, JsonObject **kept, GError **error)
{
  JsonObject *object = member_open_entry (node, path, error);

  if (object == NULL || !number_rows_read (object, path, section_numbers, section, error))
    return FALSE;
  member_keep_unknown (object, bar_section_members, kept);
  return TRUE;
}

gboolean
bar_sections_read (JsonObject *object,
                   const char *parent,
                   CarTorsionBar *bar,
                   JsonArray **unknown,
                   GError **error)
{
  JsonArray *list;

  if (!spring_find_list (object, parent, "sections", BAR_SECTIONS_MOST, &list, error))
    return FALSE;
  bar->n_sections = list != NULL ? json_array_get_length (list) : 0;
  if (list != NULL && bar->n_sections == 0)
    return member_refuse (error, FILE_REFUSAL_MISSING, _ ("%s is empty."), parent,
                          "sections");
  for (guint i = 0; i < bar->n_sections; i++) {
    g_autofree char *path = g_strdup_printf ("%s.sections[%u]", parent, i);
    JsonObject *kept = NULL;

    if (!read_section (json_array_get_element (list, i), path, &bar->sections[i], &kept,
                       error) ||
        !spring_check_below (path, "inner_mm", bar->sections[i].inner_mm, "outer_mm",
                             bar->sections[i].outer_mm, error)) {
      g_clear_pointer (&kept, json_object_unref);
      return FALSE;
    }
    keep_in_list (unknown, i, kept);
  }
  return TRUE;
}

JsonArray *
bar_sections_array (const CarTorsionBar *bar, JsonArray *unknown)
{
  JsonArray *list = json_array_sized_new ((guint) bar->n_sections);
  const guint n_unknown = unknown != NULL ? json_array_get_length (unknown) : 0;
  const double plain[] = { 0.0, 0.0, 0.0 };

  G_STATIC_ASSERT (sizeof plain == sizeof bar->sections[0]);
  for (guint i = 0; i < bar->n_sections; i++) {
    JsonObject *object = json_object_new ();

    number_rows_add (object, section_numbers, &bar->sections[i], plain);
    if (i < n_unknown)
      member_add_kept (object, json_array_get_object_element (unknown, i));
    json_array_add_object_element (list, object);
  }
  return list;
}
