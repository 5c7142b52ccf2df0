/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside car-json and plate-json only: members of an object, by name. What cannot be
 * taken is refused in one sentence that names the member by its path, @name inside
 * @parent. */

#pragma once

#include "model/json/file-refusal.h"

#include <json-glib/json-glib.h>

typedef struct {
  double least, most;
  gboolean is_above_least; /* @least itself is not allowed */
} NumberRange;

/* Sets @error and returns FALSE. @sentence has one %s, for the path. */
gboolean member_refuse (GError **error,
                        FileRefusal code,
                        const char *sentence,
                        const char *parent,
                        const char *name);

/* The member of @object that may be meant by @name, of those that are not among the
 * NULL-terminated @known; or NULL. */
const char *
member_misspelt (JsonObject *object, const char *const *known, const char *name);
/* @name is missing from @object: refuses as above, and names what may be meant by it. */
gboolean member_refuse_missing (JsonObject *object,
                                const char *const *known,
                                const char *parent,
                                const char *name,
                                GError **error);

gboolean member_get_number (JsonNode *node, double *value);
gboolean
member_check_range (NumberRange range, double value, const char *path, GError **error);

/* A kind of file: its mark, and what is said of one that is another. */
typedef struct {
  const char *format;  /* the text of its member "format" */
  int version;         /* the newest that can be read, and the only one there was */
  const char *no_file; /* sentence with one %s, for @format */
  const char *never;   /* sentence with one %g, for a version that never was */
} MemberFormat;
gboolean
member_check_format (JsonObject *root, const MemberFormat *format, GError **error);

/* The object that @node at @path must be, or NULL and @error. */
JsonObject *member_open_entry (JsonNode *node, const char *path, GError **error);

/* These leave the value as it is where @name is missing. */
gboolean member_read_number (JsonObject *object,
                             const char *parent,
                             const char *name,
                             double *value,
                             GError **error);
gboolean member_read_number_within (JsonObject *object,
                                    const char *parent,
                                    const char *name,
                                    NumberRange range,
                                    double *value,
                                    GError **error);
/* An entry of the list at @path, which must be there. */
gboolean member_read_entry (
    JsonArray *list, const char *path, guint index, double *value, GError **error);
gboolean member_read_text (JsonObject *object,
                           const char *parent,
                           const char *name,
                           char **text,
                           GError **error);
gboolean member_read_flag (JsonObject *object,
                           const char *parent,
                           const char *name,
                           gboolean *flag,
                           GError **error);
/* @section is NULL where @name is missing. */
gboolean member_find_object (JsonObject *object,
                             const char *parent,
                             const char *name,
                             JsonObject **section,
                             GError **error);

/* @list is NULL where @name is missing. */
gboolean member_find_list (JsonObject *object,
                           const char *parent,
                           const char *name,
                           JsonArray **list,
                           GError **error);
/* @name inside @parent, as sentences name it. */
char *member_path (const char *parent, const char *name);

/* Copies a member into @kept, which is made when it is NULL. */
void member_keep (JsonObject **kept, const char *name, JsonNode *value);
/* Copies every member that is not among the NULL-terminated @known. */
void
member_keep_unknown (JsonObject *object, const char *const *known, JsonObject **kept);

/* To the bit: −0.0 is not 0.0, as saving keeps every bit. */
gboolean member_same_number (double a, double b);

/* 270 rather than 270.0, as a hand would write it; -0.0 keeps its sign. What is not
 * finite becomes null, which reading refuses by its path. */
JsonNode *member_number_node (double value);
void member_add_number (JsonObject *object, const char *name, double value);
/* What member_keep () kept; @kept may be NULL. */
void member_add_kept (JsonObject *object, JsonObject *kept);
