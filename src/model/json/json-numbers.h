/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside car-json only: numbers of a plain struct as members of an object, by rows. */

#pragma once

#include "model/json/json-member.h"

/* A double. Where its range begins above 0, a 0 in memory is "not given". */
typedef struct {
  const char *name;
  gsize offset;         /* in the struct */
  gboolean is_required; /* and so always written; else only where it is no default */
  NumberRange range;
} NumberRow;

typedef struct {
  const NumberRow *rows;
  gsize n;
} NumberRows;

/* Members that are missing stay in @record as they are. */
gboolean number_rows_read (JsonObject *object,
                           const char *path,
                           NumberRows rows,
                           gpointer record,
                           GError **error);
/* @plain has the defaults. */
void number_rows_add (JsonObject *object,
                      NumberRows rows,
                      gconstpointer record,
                      gconstpointer plain);
gboolean number_rows_know (NumberRows rows, const char *name);
/* −0.0, as a drag through zero leaves it, becomes 0.0. */
void number_rows_clear_negative_zeros (NumberRows rows, gpointer record);
