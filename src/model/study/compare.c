/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/study/compare.h"
#include "model/json/json-write.h"
#include "model/study/compare-text.h"
#include "model/study/quantity-info.h"
#include "model/words/csv.h"

#include <math.h>
#include <string.h>

static const Quantity rows[] = {
  QUANTITY_CAMBER,
  QUANTITY_TOE_IN,
  QUANTITY_CASTER,
  QUANTITY_SAI,
  QUANTITY_INCLUDED_ANGLE,
  QUANTITY_SCRUB_RADIUS,
  QUANTITY_TRAIL,
  QUANTITY_ROLL_CENTRE_HEIGHT,
  QUANTITY_SWING_ARM_LENGTH,
  QUANTITY_CAMBER_GAIN,
  QUANTITY_BUMP_STEER,
  QUANTITY_HALF_TRACK_CHANGE,
  QUANTITY_WHEELBASE_CHANGE,
  QUANTITY_STRUT_LENGTH,
  QUANTITY_STRUT_RATIO,
  QUANTITY_ANTI_DIVE,
};

const Quantity *
compare_rows (guint *n)
{
  *n = G_N_ELEMENTS (rows);
  return rows;
}

double
compare_value (const Study *study, guint setup, Quantity quantity)
{
  g_return_val_if_fail (setup < study->n_setups, NAN);

  const Station *station = &study->setups[setup].at_height;
  return quantity_edge_value (quantity, station->measures.value[quantity]);
}

double
compare_change (const Study *study, guint setup, Quantity quantity)
{
  return compare_value (study, setup, quantity) -
         compare_value (study, study->baseline, quantity);
}

/* The rows of a file: two of the setup itself, then the quantities. */
#define ROW_LOWERING 0
#define ROW_TIE_ROD 1
#define N_SETUP_ROWS 2
#define N_FILE_ROWS (N_SETUP_ROWS + (guint) G_N_ELEMENTS (rows))

static const char *
row_key (guint row)
{
  return row == ROW_LOWERING  ? "lowering_mm"
         : row == ROW_TIE_ROD ? "tie_rod_change_mm"
                              : quantity_info (rows[row - N_SETUP_ROWS]).key;
}

static const char *
row_unit (guint row)
{
  return row < N_SETUP_ROWS ? "mm" : quantity_info (rows[row - N_SETUP_ROWS]).unit;
}

static double
row_value (const Study *study, guint setup, guint row)
{
  const StudyCorner *corner = &study->setups[setup];

  if (row == ROW_LOWERING)
    return corner->lowering;
  if (row == ROW_TIE_ROD)
    return compare_tie_rod_change (study, setup);
  return compare_value (study, setup, rows[row - N_SETUP_ROWS]);
}

double
compare_tie_rod_change (const Study *study, guint setup)
{
  const StudyCorner *corner = &study->setups[setup];

  return corner->at_height.status == POSE_OK ? corner_tie_rod_change (&corner->corner)
                                             : NAN;
}

static double
row_change (const Study *study, guint setup, guint row)
{
  return row_value (study, setup, row) - row_value (study, study->baseline, row);
}

static void
write_csv_head (const Study *study, GString *text)
{
  const char *baseline = study->setups[study->baseline].name;

  g_string_append (text, "quantity,unit");
  for (guint s = 0; s < study->n_setups; s++) {
    const char *name = study->setups[s].name;
    g_autofree char *change = g_strdup_printf ("%s: change from %s", name, baseline);

    g_string_append_c (text, ',');
    csv_append_text (text, name);
    g_string_append_c (text, ',');
    csv_append_text (text, change);
  }
  g_string_append (text, "\r\n");
}

static void
write_csv (const Study *study, GString *text)
{
  write_csv_head (study, text);
  for (guint row = 0; row < N_FILE_ROWS; row++) {
    g_string_append_printf (text, "%s,%s", row_key (row), row_unit (row));
    for (guint s = 0; s < study->n_setups; s++) {
      g_string_append_c (text, ',');
      csv_append_number (text, row_value (study, s, row));
      g_string_append_c (text, ',');
      csv_append_number (text, row_change (study, s, row));
    }
    g_string_append (text, "\r\n");
  }
}

static void
write_json_numbers (const Study *study,
                    guint setup,
                    double (*number) (const Study *study, guint setup, guint row),
                    GString *text)
{
  for (guint row = 0; row < N_FILE_ROWS; row++) {
    const double value = number (study, setup, row);

    g_string_append_printf (text, "%s\n        \"%s\": ", row > 0 ? "," : "{",
                            row_key (row));
    json_write_number (text, value);
  }
  g_string_append (text, "\n      }");
}

static void
write_json (const Study *study, GString *text)
{
  g_string_append (text, "{\n  \"baseline\": ");
  json_write_string (text, study->setups[study->baseline].name);
  g_string_append (text, ",\n  \"setups\": [");
  for (guint s = 0; s < study->n_setups; s++) {
    g_string_append (text,
                     s > 0 ? ",\n    {\n      \"name\": " : "\n    {\n      \"name\": ");
    json_write_string (text, study->setups[s].name);
    g_string_append_printf (text, ",\n      \"is_baseline\": %s,\n      \"values\": ",
                            s == study->baseline ? "true" : "false");
    write_json_numbers (study, s, row_value, text);
    g_string_append (text, ",\n      \"changes\": ");
    write_json_numbers (study, s, row_change, text);
    g_string_append (text, "\n    }");
  }
  g_string_append (text, "\n  ]\n}\n");
}

void
compare_write (const Study *study, TableFormat format, GString *text)
{
  switch (format) {
  case TABLE_TEXT:
    compare_write_text (study, text);
    return;
  case TABLE_CSV:
    write_csv (study, text);
    return;
  case TABLE_JSON:
    write_json (study, text);
    return;
  }
}
