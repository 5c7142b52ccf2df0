/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside car-json only: lists in a set of springs, the points of a law and the sections
 * of a bar. */

#pragma once

#include "model/car/car.h"
#include "model/json/json-member.h"

/* What the points of a law may be. */
typedef struct {
  NumberRange x, y;
  gboolean from_zero; /* it begins with the point 0, 0 */
} SpringTableForm;

/* @list is NULL where @name is missing. */
gboolean spring_find_list (JsonObject *object,
                           const char *parent,
                           const char *name,
                           guint most,
                           JsonArray **list,
                           GError **error);

/* The member "table" of @object at @parent; @table stays as it is where it is missing. */
gboolean spring_table_read (JsonObject *object,
                            const char *parent,
                            SpringTableForm form,
                            SpringTable *table,
                            GError **error);
JsonArray *spring_table_array (const SpringTable *table);

extern const char *const bar_section_members[]; /* NULL-terminated */

/* The member "sections" of the bar. @unknown gets a list that has an object for each
 * section, or stays NULL where none has members that are not known here. */
gboolean bar_sections_read (JsonObject *object,
                            const char *parent,
                            CarTorsionBar *bar,
                            JsonArray **unknown,
                            GError **error);
JsonArray *bar_sections_array (const CarTorsionBar *bar, JsonArray *unknown);
