/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car/car-json-spring-members.h"

#include "model/car/car-json.h"

#include <stddef.h>
#include <string.h>

#define IN(member) offsetof (CarSprings, member)
#define ROWS(rows)                                                                       \
  {                                                                                      \
    rows, G_N_ELEMENTS (rows)                                                            \
  }

/* Limits only keep slips of the keyboard and of units out; they are far from any car. */
static const NumberRow bar_rows[] = {
  { "rate_nm_per_deg", IN (bar.rate_nm_per_deg), FALSE, { 0, 10000, TRUE } },
  { "shear_modulus_gpa", IN (bar.shear_modulus_gpa), FALSE, { 10, 200, FALSE } },
  { "clamp_angle_deg", IN (bar.clamp_angle_deg), FALSE, { -180, 180, FALSE } },
  { "lever_mm", IN (bar.lever_mm), FALSE, { 0, 1000, TRUE } },
};

static const NumberRow coil_rows[] = {
  { "rate_n_per_mm", IN (coil.rate_n_per_mm), FALSE, { 0, 2000, TRUE } },
  { "wire_mm", IN (coil.wire_mm), FALSE, { 0, 100, TRUE } },
  { "mean_diameter_mm", IN (coil.mean_diameter_mm), FALSE, { 0, 500, TRUE } },
  { "active_coils", IN (coil.active_coils), FALSE, { 0, 100, TRUE } },
  { "total_coils", IN (coil.total_coils), FALSE, { 0, 100, TRUE } },
  { "shear_modulus_gpa", IN (coil.shear_modulus_gpa), FALSE, { 10, 200, FALSE } },
  { "free_length_mm", IN (coil.free_length_mm), TRUE, { 0, 2000, TRUE } },
  { "solid_length_mm", IN (coil.solid_length_mm), FALSE, { 0, 2000, TRUE } },
  { "perch_mm", IN (coil.perch_mm), TRUE, { 0, 1000, FALSE } },
  { "upper_drop_mm", IN (coil.upper_drop_mm), FALSE, { -1000, 1000, FALSE } },
  { "lower_outboard_mm", IN (coil.lower_outboard_mm), FALSE, { -500, 500, FALSE } },
  { "lower_forward_mm", IN (coil.lower_forward_mm), FALSE, { -500, 500, FALSE } },
  { "upper_outboard_mm", IN (coil.upper_outboard_mm), FALSE, { -500, 500, FALSE } },
  { "upper_forward_mm", IN (coil.upper_forward_mm), FALSE, { -500, 500, FALSE } },
};

static const NumberRow helper_rows[] = {
  { "rate_n_per_mm", IN (helper.rate_n_per_mm), TRUE, { 0, 2000, TRUE } },
  { "free_length_mm", IN (helper.free_length_mm), TRUE, { 0, 2000, TRUE } },
  { "solid_length_mm", IN (helper.solid_length_mm), FALSE, { 0, 2000, TRUE } },
  { "perch_mm", IN (helper.perch_mm), FALSE, { 0, 1000, FALSE } },
  { "upper_drop_mm", IN (helper.upper_drop_mm), FALSE, { -1000, 1000, FALSE } },
};

static const NumberRow bump_stop_rows[] = {
  { "gap_mm", IN (bump_stop.gap_mm), TRUE, { -500, 500, FALSE } },
};

static const NumberRow anti_roll_bar_rows[] = {
  { "rate_n_per_mm", IN (anti_roll_bar.rate_n_per_mm), FALSE, { 0, 2000, TRUE } },
  { "diameter_mm", IN (anti_roll_bar.diameter_mm), FALSE, { 0, 200, TRUE } },
  { "bore_mm", IN (anti_roll_bar.bore_mm), FALSE, { 0, 200, FALSE } },
  { "length_mm", IN (anti_roll_bar.length_mm), FALSE, { 0, 5000, TRUE } },
  { "arm_mm", IN (anti_roll_bar.arm_mm), FALSE, { 0, 2000, TRUE } },
  { "shear_modulus_gpa",
    IN (anti_roll_bar.shear_modulus_gpa),
    FALSE,
    { 10, 200, FALSE } },
};

static const NumberRow damper_rows[] = {
  { "gas_force_n", IN (damper.gas_force_n), FALSE, { 0, 10000, FALSE } },
};

static const NumberRow set_rows[] = {
  { "droop_stop_mm", IN (droop_stop_mm), FALSE, { 0, 500, TRUE } },
  { "tyre_rate_n_per_mm", IN (tyre_rate_n_per_mm), FALSE, { 1, 5000, FALSE } },
};
const NumberRows spring_set_numbers = ROWS (set_rows);

#define NO_TABLE .table_offset = SPRING_NO_TABLE

const SpringPart spring_parts[N_SPRING_PARTS] = {
  [SPRING_PART_BAR] = { "torsion_bar", .flag = IN (bar.is_there),
                        .numbers = ROWS (bar_rows), NO_TABLE,
                        .others = { "sections", "splines" } },
  [SPRING_PART_COIL] = { "coil", .flag = IN (coil.is_there), .numbers = ROWS (coil_rows),
                         .table = { .x = { 0, 2000, FALSE },
                                    .y = { 0, 500000, FALSE },
                                    .from_zero = TRUE },
                         .table_offset = IN (coil.table) },
  [SPRING_PART_HELPER] = { "helper", .flag = IN (helper.is_there),
                           .numbers = ROWS (helper_rows), NO_TABLE, .others = { "in" } },
  [SPRING_PART_BUMP_STOP] = { "bump_stop", .flag = IN (bump_stop.is_there),
                              .numbers = ROWS (bump_stop_rows),
                              .table = { .x = { 0, 500, FALSE },
                                         .y = { 0, 500000, FALSE },
                                         .from_zero = TRUE },
                              .table_offset = IN (bump_stop.table) },
  [SPRING_PART_ANTI_ROLL_BAR] = { "anti_roll_bar", .flag = IN (anti_roll_bar.is_there),
                                  .numbers = ROWS (anti_roll_bar_rows), NO_TABLE,
                                  .others = { "link_on", "link_point" } },
  [SPRING_PART_DAMPER] = { "damper", .flag = SPRING_NO_FLAG,
                           .numbers = ROWS (damper_rows),
                           .table = { .x = { -20, 20, FALSE },
                                      .y = { -100000, 100000, FALSE } },
                           .table_offset = IN (damper.table) },
};

#undef IN
#define IN(member) offsetof (CarRod, member)

static const NumberRow rod_rows[] = {
  { "diameter_mm", IN (diameter_mm), FALSE, { 0, 200, FALSE } },
  { "bore_mm", IN (bore_mm), FALSE, { 0, 200, FALSE } },
  { "guide_height_mm", IN (guide_height_mm), FALSE, { -1000, 1000, FALSE } },
  { "piston_drop_mm", IN (piston_drop_mm), FALSE, { 0, 1000, FALSE } },
  { "bush_spacing_mm", IN (bush_spacing_mm), FALSE, { 0, 1000, FALSE } },
  { "modulus_gpa", IN (modulus_gpa), FALSE, { 10, 1000, FALSE } },
  { "friction", IN (friction), FALSE, { 0, 1, FALSE } },
};
const NumberRows rod_numbers = ROWS (rod_rows);

const NumberRange spring_splines_range = { 2, 1000, FALSE };

const char *const helper_place_names[2] = {
  [HELPER_IN_SERIES] = "series", [HELPER_IN_PARALLEL] = "parallel"
};

const char *const link_carrier_names[2] = {
  [LINK_ON_ARM] = "arm", [LINK_ON_STRUT] = "strut"
};

static const NumberRange *
find_range (NumberRows rows, const char *name)
{
  for (gsize i = 0; i < rows.n; i++)
    if (g_str_equal (rows.rows[i].name, name))
      return &rows.rows[i].range;
  return NULL;
}

static const NumberRange *
range_of (const char *path)
{
  if (g_str_has_prefix (path, "rod."))
    return find_range (rod_numbers, path + strlen ("rod."));
  for (SpringPartName i = 0; i < N_SPRING_PARTS; i++) {
    const gsize length = strlen (spring_parts[i].name);

    if (g_str_has_prefix (path, spring_parts[i].name) && path[length] == '.')
      return find_range (spring_parts[i].numbers, path + length + 1);
  }
  return find_range (spring_set_numbers, path);
}

gboolean
car_spring_bounds (const char *path, double *least, double *most, gboolean *is_open)
{
  const NumberRange *range = range_of (path);

  if (range == NULL)
    return FALSE;
  *least = range->least;
  *most = range->most;
  *is_open = range->is_above_least;
  return TRUE;
}

static gboolean
part_knows (const SpringPart *part, const char *name)
{
  if (part->table_offset != SPRING_NO_TABLE && g_str_equal (name, "table"))
    return TRUE;
  return g_strv_contains (part->others, name) || number_rows_know (part->numbers, name);
}

static gboolean
set_knows (const char *name)
{
  for (SpringPartName i = 0; i < N_SPRING_PARTS; i++)
    if (g_str_equal (spring_parts[i].name, name))
      return TRUE;
  return number_rows_know (spring_set_numbers, name);
}

void
spring_part_keep_unknown (const SpringPart *part, JsonObject *from, JsonObject **kept)
{
  JsonObjectIter iter;
  const char *name;
  JsonNode *value;

  json_object_iter_init_ordered (&iter, from);
  while (json_object_iter_next_ordered (&iter, &name, &value))
    if (!part_knows (part, name))
      member_keep (kept, name, value);
}

void
spring_set_keep_unknown (JsonObject *from, JsonObject *kept)
{
  JsonObjectIter iter;
  const char *name;
  JsonNode *value;

  json_object_iter_init_ordered (&iter, from);
  while (json_object_iter_next_ordered (&iter, &name, &value))
    if (!set_knows (name))
      member_keep (&kept, name, value);
}

gsize *
spring_part_flag (const SpringPart *part, CarSprings *springs)
{
  return part->flag != SPRING_NO_FLAG
             ? (gsize *) (gpointer) ((char *) springs + part->flag)
             : NULL;
}

SpringTable *
spring_part_table (const SpringPart *part, CarSprings *springs)
{
  return part->table_offset != SPRING_NO_TABLE
             ? (SpringTable *) (gpointer) ((char *) springs + part->table_offset)
             : NULL;
}
