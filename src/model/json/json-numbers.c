/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/json/json-numbers.h"

#include <glib/gi18n-lib.h>

static double *
number_in (gpointer record, const NumberRow *row)
{
  return (double *) (gpointer) ((char *) record + row->offset);
}

static double
value_in (gconstpointer record, const NumberRow *row)
{
  return *(const double *) (gconstpointer) ((const char *) record + row->offset);
}

gboolean
number_rows_read (JsonObject *object,
                  const char *path,
                  NumberRows rows,
                  gpointer record,
                  GError **error)
{
  for (const NumberRow *row = rows.rows; row < rows.rows + rows.n; row++) {
    if (json_object_has_member (object, row->name)) {
      if (!member_read_number_within (object, path, row->name, row->range,
                                      number_in (record, row), error))
        return FALSE;
    } else if (row->is_required)
      return member_refuse (error, FILE_REFUSAL_MISSING, _ ("%s is missing."), path,
                            row->name);
  }
  return TRUE;
}

static gboolean
is_given (const NumberRow *row, double value, double plain)
{
  if (row->is_required)
    return TRUE;
  if (row->range.is_above_least && value == 0.0)
    return FALSE;
  return !member_same_number (value, plain);
}

void
number_rows_add (JsonObject *object,
                 NumberRows rows,
                 gconstpointer record,
                 gconstpointer plain)
{
  for (const NumberRow *row = rows.rows; row < rows.rows + rows.n; row++) {
    const double value = value_in (record, row);

    if (is_given (row, value, value_in (plain, row)))
      member_add_number (object, row->name, value);
  }
}

gboolean
number_rows_know (NumberRows rows, const char *name)
{
  for (gsize i = 0; i < rows.n; i++)
    if (g_str_equal (rows.rows[i].name, name))
      return TRUE;
  return FALSE;
}

void
number_rows_clear_negative_zeros (NumberRows rows, gpointer record)
{
  for (gsize i = 0; i < rows.n; i++)
    *number_in (record, &rows.rows[i]) += 0.0;
}
