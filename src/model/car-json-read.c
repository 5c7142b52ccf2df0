/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car-json-geometry.h"
#include "model/car-json-members.h"
#include "model/car-json.h"
#include "model/json-path.h"
#include "model/json-strict.h"

#include <glib/gi18n-lib.h>

/* @sentence has one %s, for the path of @name inside @parent. */
static gboolean
fail (GError **error,
      CarError code,
      const char *sentence,
      const char *parent,
      const char *name)
{
  g_autoptr (GString) path = g_string_new (parent);

  json_path_append_member (path, name);
  g_set_error (error, CAR_ERROR, code, sentence, path->str);
  return FALSE;
}

static gboolean
get_number (JsonNode *node, double *value)
{
  const GType type = JSON_NODE_HOLDS_VALUE (node) ? json_node_get_value_type (node) : 0;

  if (type == G_TYPE_INT64)
    *value = (double) json_node_get_int (node);
  else if (type == G_TYPE_DOUBLE)
    *value = json_node_get_double (node);
  else
    return FALSE;
  return TRUE;
}

/* Leaves @value where @name is missing. */
static gboolean
read_number (JsonObject *object,
             const char *parent,
             const char *name,
             double *value,
             GError **error)
{
  JsonNode *node = json_object_get_member (object, name);

  if (node != NULL && !get_number (node, value))
    return fail (error, CAR_ERROR_TYPE, _ ("%s must be a number."), parent, name);
  return TRUE;
}

/* Leaves @text where @name is missing. */
static gboolean
read_text (
    JsonObject *object, const char *parent, const char *name, char **text, GError **error)
{
  JsonNode *node = json_object_get_member (object, name);

  if (node == NULL)
    return TRUE;
  if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_STRING)
    return fail (error, CAR_ERROR_TYPE, _ ("%s must be a text."), parent, name);
  g_free (*text);
  *text = json_node_dup_string (node);
  return TRUE;
}

/* @section is NULL where @name is missing. */
static gboolean
find_object (JsonObject *object,
             const char *parent,
             const char *name,
             JsonObject **section,
             GError **error)
{
  JsonNode *node = json_object_get_member (object, name);

  *section = NULL;
  if (node == NULL)
    return TRUE;
  if (!JSON_NODE_HOLDS_OBJECT (node))
    return fail (error, CAR_ERROR_TYPE,
                 _ ("%s must be an object in braces."), parent, name);
  *section = json_node_get_object (node);
  return TRUE;
}

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
  if (!find_object (root, "", name, object, error))
    return FALSE;
  if (*object == NULL && is_required)
    return fail (error, CAR_ERROR_MISSING, _ ("%s is missing."), "", name);
  return TRUE;
}

static void
keep_member (JsonObject **kept, const char *name, JsonNode *value)
{
  if (*kept == NULL)
    *kept = json_object_new ();
  json_object_set_member (*kept, name, json_node_copy (value));
}

static void
keep_unknown (JsonObject *object, CarSection section, JsonObject **kept)
{
  JsonObjectIter iter;
  const char *name;
  JsonNode *value;

  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &name, &value))
    if (!car_section_knows (section, name))
      keep_member (kept, name, value);
}

static void
keep_unknown_of_setup (JsonObject *object, CarSetup *setup)
{
  JsonObjectIter iter;
  const char *name;
  JsonNode *value;

  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &name, &value))
    if (!g_strv_contains (car_setup_members, name))
      keep_member (&setup->unknown, name, value);
}

static void
keep_unknown_of_mount (JsonObject *object, CarSetup *setup)
{
  JsonObjectIter iter;
  const char *name;
  JsonNode *value;

  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &name, &value))
    if (!car_mount_knows (name))
      keep_member (&setup->unknown_mount, name, value);
}

static gboolean
check_range (const CarNumber *member, double value, const char *path, GError **error)
{
  const char *sentence =
      member->is_above_least ? _ ("%s is %g, but must be above %g and not above %g.")
                             : _ ("%s is %g, but must lie between %g and %g.");

  if (value <= member->most &&
      (value > member->least || (value == member->least && !member->is_above_least)))
    return TRUE;
  g_set_error (error, CAR_ERROR, CAR_ERROR_NUMBER, sentence, path, value, member->least,
               member->most);
  return FALSE;
}

static gboolean
read_car_number (JsonObject *object, const CarNumber *member, Car *car, GError **error)
{
  const char *section = car_section_names[member->section];
  double *value = (double *) (gpointer) ((char *) car + member->offset);
  g_autofree char *path = g_strconcat (section, ".", member->name, NULL);

  if (!json_object_has_member (object, member->name))
    return !member->is_required ||
           fail (error, CAR_ERROR_MISSING, _ ("%s is missing."), section, member->name);
  return read_number (object, section, member->name, value, error) &&
         check_range (member, *value, path, error);
}

static gboolean
read_coordinate (
    JsonArray *array, guint index, const char *point, double *value, GError **error)
{
  static const CarNumber limits = { .least = -10000.0, .most = 10000.0 };
  g_autofree char *path = g_strdup_printf ("corner.%s[%u]", point, index);

  if (index >= json_array_get_length (array)) {
    g_set_error (error, CAR_ERROR, CAR_ERROR_MISSING, _ ("%s is missing."), path);
    return FALSE;
  }
  if (!get_number (json_array_get_element (array, index), value)) {
    g_set_error (error, CAR_ERROR, CAR_ERROR_TYPE, _ ("%s must be a number."), path);
    return FALSE;
  }
  return check_range (&limits, *value, path, error);
}

static gboolean
read_point (JsonObject *corner, const char *name, Vec3 *point, GError **error)
{
  JsonNode *node = json_object_get_member (corner, name);

  if (node == NULL)
    return fail (error, CAR_ERROR_MISSING, _ ("%s is missing."), "corner", name);
  if (!JSON_NODE_HOLDS_ARRAY (node) ||
      json_array_get_length (json_node_get_array (node)) > 3)
    return fail (error, CAR_ERROR_TYPE,
                 _ ("%s must be a list of three numbers: forward, left and up."),
                    "corner", name);

  JsonArray *array = json_node_get_array (node);
  return read_coordinate (array, 0, name, &point->x, error) &&
         read_coordinate (array, 1, name, &point->y, error) &&
         read_coordinate (array, 2, name, &point->z, error);
}

static gboolean
read_section (JsonObject *root, CarSection section, Car *car, GError **error)
{
  JsonObject *object;

  if (!find_section (root, section, &object, error))
    return FALSE;
  if (object == NULL)
    return TRUE;
  if (section == CAR_SECTION_CORNER)
    for (PointName i = 0; i < N_POINTS; i++)
      if (!read_point (object, car_point_names[i], &car->points[i], error))
        return FALSE;
  for (gsize i = 0; i < n_car_numbers; i++)
    if (car_numbers[i].section == section &&
        !read_car_number (object, &car_numbers[i], car, error))
      return FALSE;
  keep_unknown (object, section, &car->unknown[section]);
  return TRUE;
}

/* A move of the mount or of the body. */
static gboolean
read_move (JsonObject *object,
           const char *parent,
           const char *name,
           double *value,
           GError **error)
{
  static const CarNumber limits = { .least = -CAR_FURTHEST_MOVE,
                                    .most = CAR_FURTHEST_MOVE };
  g_autofree char *path = g_strconcat (parent, ".", name, NULL);

  return read_number (object, parent, name, value, error) &&
         check_range (&limits, *value, path, error);
}

static gboolean
read_mount (JsonObject *object, const char *parent, CarSetup *setup, GError **error)
{
  g_autofree char *path = g_strconcat (parent, ".mount", NULL);
  JsonObject *mount;

  if (!find_object (object, parent, "mount", &mount, error))
    return FALSE;
  if (mount == NULL)
    return TRUE;
  for (gsize i = 0; i < G_N_ELEMENTS (mount_numbers); i++) {
    double *value =
        (double *) (gpointer) ((char *) &setup->mount + mount_numbers[i].offset);

    if (!read_move (mount, path, mount_numbers[i].name, value, error))
      return FALSE;
  }
  keep_unknown_of_mount (mount, setup);
  return TRUE;
}

static gboolean
read_toe (JsonObject *object, const char *parent, ToeMode *toe, GError **error)
{
  g_autofree char *word = g_strdup (toe_mode_names[*toe]);

  if (!read_text (object, parent, "toe", &word, error))
    return FALSE;
  for (gsize i = 0; i < G_N_ELEMENTS (toe_mode_names); i++)
    if (g_str_equal (word, toe_mode_names[i])) {
      *toe = (ToeMode) i;
      return TRUE;
    }
  return fail (error, CAR_ERROR_TYPE,
               _ ("%s must be \"as-moved\" or \"reset\"."), parent, "toe");
}

static gboolean
read_setup (JsonNode *node, guint index, CarSetup *setup, GError **error)
{
  g_autofree char *path = g_strdup_printf ("setups[%u]", index);

  if (!JSON_NODE_HOLDS_OBJECT (node)) {
    g_set_error (error, CAR_ERROR, CAR_ERROR_TYPE,
                 _ ("%s must be an object in braces."), path);
    return FALSE;
  }

  JsonObject *object = json_node_get_object (node);
  setup->name = g_strdup_printf (_ ("Setup %u"), index + 1);
  if (!read_text (object, path, "name", &setup->name, error) ||
      !read_mount (object, path, setup, error) ||
      !read_move (object, path, "lowering_mm", &setup->lowering_mm, error) ||
      !read_toe (object, path, &setup->toe, error))
    return FALSE;
  keep_unknown_of_setup (object, setup);
  return TRUE;
}

/* A file without setups keeps the one of car_new (). */
static gboolean
read_setups (JsonObject *root, Car *car, GError **error)
{
  JsonNode *node = json_object_get_member (root, "setups");

  if (node == NULL)
    return TRUE;
  if (!JSON_NODE_HOLDS_ARRAY (node))
    return fail (error, CAR_ERROR_TYPE,
                 _ ("%s must be a list in brackets."), "", "setups");

  JsonArray *array = json_node_get_array (node);
  const guint n = json_array_get_length (array);
  if (n == 0)
    return TRUE;
  g_array_set_size (car->setups, 0);
  g_array_set_size (car->setups, n);
  for (guint i = 0; i < n; i++)
    if (!read_setup (json_array_get_element (array, i), i, car_setup (car, i), error))
      return FALSE;
  return TRUE;
}

static gboolean
check_format (JsonObject *root, GError **error)
{
  JsonNode *format = json_object_get_member (root, "format");
  double version;

  if (format == NULL || !JSON_NODE_HOLDS_VALUE (format) ||
      json_node_get_value_type (format) != G_TYPE_STRING ||
      !g_str_equal (json_node_get_string (format), CAR_FILE_FORMAT)) {
    g_set_error (error, CAR_ERROR, CAR_ERROR_VERSION,
                 _ ("This is no car file: format is not \"%s\"."), CAR_FILE_FORMAT);
    return FALSE;
  }
  if (!json_object_has_member (root, "version"))
    return fail (error, CAR_ERROR_MISSING, _ ("%s is missing."), "", "version");
  if (!read_number (root, "", "version", &version, error))
    return FALSE;
  if (version > CAR_FILE_VERSION) {
    g_set_error (error, CAR_ERROR, CAR_ERROR_VERSION,
                 _ ("The file is from a newer Strutwright: its version is %g, and this "
                    "program reads up to version %d."),
                    version, CAR_FILE_VERSION);
    return FALSE;
  }
  if (version != CAR_FILE_VERSION) {
    g_set_error (error, CAR_ERROR, CAR_ERROR_VERSION,
                 _ ("version is %g, which no car file ever had."), version);
    return FALSE;
  }
  return TRUE;
}

static gboolean
check_travel (const Car *car, GError **error)
{
  if (car->bump_mm > 0.0 || car->droop_mm > 0.0)
    return TRUE;
  g_set_error_literal (error, CAR_ERROR, CAR_ERROR_NUMBER,
                       _ ("travel.bump_mm and travel.droop_mm cannot both be zero."));
  return FALSE;
}

Car *
car_from_json (const char *text, gsize length, GError **error)
{
  g_autoptr (JsonNode) node = json_strict_parse (text, length, error);
  g_autoptr (Car) car = car_new ();

  if (node == NULL)
    return NULL;
  if (!JSON_NODE_HOLDS_OBJECT (node)) {
    g_set_error_literal (error, CAR_ERROR, CAR_ERROR_TYPE,
                         _ ("This is no car file: it must be an object in braces."));
    return NULL;
  }

  JsonObject *root = json_node_get_object (node);
  if (!check_format (root, error) || !read_text (root, "", "name", &car->name, error) ||
      !read_text (root, "", "notes", &car->notes, error))
    return NULL;
  for (CarSection i = 0; i < N_CAR_SECTIONS; i++)
    if (!read_section (root, i, car, error))
      return NULL;
  if (!check_travel (car, error) || !read_setups (root, car, error) ||
      !car_check_geometry (car, error))
    return NULL;
  return g_steal_pointer (&car);
}
