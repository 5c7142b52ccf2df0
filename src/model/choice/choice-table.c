/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/choice/choice-table.h"

#include "model/choice/choice-table-text.h"
#include "model/json/json-write.h"
#include "model/words/csv.h"

#include <math.h>
#include <string.h>

static const char *const side_names[] = { [SIDE_LEFT] = "left", [SIDE_RIGHT] = "right" };

static const struct {
  ChoiceFault fault;
  const char *name;
} faults[] = { { CHOICE_TYRE_TOO_NEAR, "tyre-too-near" },
               { CHOICE_EDGE_TOO_NEAR, "edge-too-near" },
               { CHOICE_BEARING_TILTS_TOO_FAR, "bearing-tilts-too-far" },
               { CHOICE_NOT_ASSEMBLED, "not-assembled" },
               { CHOICE_MISSES_AIM, "misses-aim" } };

static const char *
file_of (const ChoiceTable *table, const Plate *plate)
{
  for (guint i = 0; i < table->n_plates; i++)
    if (table->plates[i] == plate)
      return table->files[i];
  return "";
}

static void
append_csv_number (GString *text, double value)
{
  csv_append_number (text, value);
  g_string_append_c (text, ',');
}

/* A number of an answer as files have it: what a search leaves of zero is zero. */
static double
settled (const ChoiceAnswer *answer, double value)
{
  const gboolean is_searched = plate_n_ways (answer->plate) > 0 || answer->has_bolt;

  return is_searched && fabs (value) < CHOICE_FOUND_TO ? 0.0 : value;
}

static double
cross_deg (const ChoiceAnswer *answer, double radians)
{
  return settled (answer, radians * 180.0 / G_PI);
}

static const char *
truth (gboolean value)
{
  return value ? "true" : "false";
}

static void
write_csv_head (GString *text)
{
  g_string_append (text, "rank,plate,file,swapped,side,setting,");
  for (ChoiceNumber i = 0; i < N_CHOICE_NUMBERS; i++)
    g_string_append_printf (text, "%s,", choice_number_info (i).key);
  g_string_append (text, "faults,cross_camber_deg,cross_caster_deg,within_cross,fits,"
                         "meets,verdict\r\n");
}

static void
append_csv_faults (GString *text, guint set)
{
  const char *gap = "";

  for (gsize i = 0; i < G_N_ELEMENTS (faults); i++)
    if ((set & faults[i].fault) != 0) {
      g_string_append_printf (text, "%s%s", gap, faults[i].name);
      gap = " ";
    }
  g_string_append_c (text, ',');
}

static void
write_csv_row (const ChoiceTable *table,
               guint rank,
               CarSide side,
               const char *verdict,
               GString *text)
{
  const ChoiceAnswer *answer = &g_array_index (table->answers, ChoiceAnswer, rank);
  const ChoicePlace *place = &answer->side[side];
  g_autofree char *setting = plate_describe_setting (answer->plate, place->setting);

  g_string_append_printf (text, "%u,", rank + 1);
  csv_append_text (text, answer->plate->name);
  g_string_append_c (text, ',');
  csv_append_text (text, file_of (table, answer->plate));
  g_string_append_printf (text, ",%s,%s,", truth (answer->is_swapped), side_names[side]);
  csv_append_text (text, setting);
  g_string_append_c (text, ',');
  for (ChoiceNumber i = 0; i < N_CHOICE_NUMBERS; i++)
    append_csv_number (text, settled (answer, choice_number (place, i)));
  append_csv_faults (text, place->faults);
  append_csv_number (text, cross_deg (answer, answer->cross_camber));
  append_csv_number (text, cross_deg (answer, answer->cross_caster));
  g_string_append_printf (text, "%s,%s,%s,", truth (answer->is_within_cross),
                          truth (answer->fits), truth (answer->meets));
  csv_append_text (text, verdict);
  g_string_append (text, "\r\n");
}

static void
write_csv (const ChoiceTable *table, GString *text)
{
  write_csv_head (text);
  for (guint rank = 0; rank < table->answers->len; rank++) {
    g_autofree char *verdict =
        choice_sentence (table->car, &g_array_index (table->answers, ChoiceAnswer, rank));

    for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++)
      write_csv_row (table, rank, side, verdict, text);
  }
}

static void
append_string (GString *text, const char *key, const char *value)
{
  g_string_append_printf (text, "\"%s\": ", key);
  json_write_string (text, value);
}

static void
append_number (GString *text, const char *key, double value)
{
  g_string_append_printf (text, "\"%s\": ", key);
  json_write_number (text, value);
}

static void
append_target (GString *text, const CarTarget *target)
{
  const AimInfo info = aim_info (target->aim);
  const gboolean is_angle = g_str_equal (info.unit, "°");

  g_string_append (text, "{ ");
  append_string (text, "aim", info.key);
  g_string_append (text, ", ");
  append_number (text, is_angle ? "least_deg" : "least_mm", target->least);
  g_string_append (text, ", ");
  append_number (text, is_angle ? "most_deg" : "most_mm", target->most);
  g_string_append (text, ", ");
  append_number (text, "weight", target->weight);
  g_string_append (text, " }");
}

static void
write_json_head (const ChoiceTable *table, GString *text)
{
  const Car *car = table->car;

  g_string_append (text, "{\n  ");
  append_string (text, "car", car->name);
  g_string_append (text, ",\n  ");
  append_string (text, "setup", car_setup (car, table->question.setup)->name);
  g_string_append (text, ",\n  ");
  append_string (text, "spring",
                 table->question.carrier == CARRIED_BY_COIL ? "coil" : "torsion");
  g_string_append (text, ",\n  \"targets\": [");
  for (guint i = 0; i < car->targets->len; i++) {
    g_string_append (text, i > 0 ? ",\n    " : "\n    ");
    append_target (text, &g_array_index (car->targets, CarTarget, i));
  }
  g_string_append (text, car->targets->len > 0 ? "\n  ],\n" : "],\n");
}

static void
append_json_faults (GString *text, guint set)
{
  const char *gap = "";

  g_string_append (text, "\"faults\": [");
  for (gsize i = 0; i < G_N_ELEMENTS (faults); i++)
    if ((set & faults[i].fault) != 0) {
      g_string_append_printf (text, "%s\"%s\"", gap, faults[i].name);
      gap = ", ";
    }
  g_string_append_c (text, ']');
}

static void
write_json_side (const ChoiceAnswer *answer, CarSide side, GString *text)
{
  const ChoicePlace *place = &answer->side[side];
  g_autofree char *setting = plate_describe_setting (answer->plate, place->setting);

  g_string_append (text, "        { ");
  append_string (text, "side", side_names[side]);
  g_string_append (text, ", ");
  append_string (text, "setting", setting);
  for (ChoiceNumber i = 0; i < N_CHOICE_NUMBERS; i++) {
    g_string_append (text, i % 4 == 0 ? ",\n          " : ", ");
    append_number (text, choice_number_info (i).key,
                   settled (answer, choice_number (place, i)));
  }
  g_string_append (text, ",\n          ");
  append_json_faults (text, place->faults);
  g_string_append (text, " }");
}

static void
write_json_answer (const ChoiceTable *table, guint rank, GString *text)
{
  const ChoiceAnswer *answer = &g_array_index (table->answers, ChoiceAnswer, rank);
  g_autofree char *verdict = choice_sentence (table->car, answer);

  g_string_append_printf (text, "    {\n      \"rank\": %u,\n      ", rank + 1);
  append_string (text, "plate", answer->plate->name);
  g_string_append (text, ",\n      ");
  append_string (text, "file", file_of (table, answer->plate));
  g_string_append_printf (text, ",\n      \"swapped\": %s,\n      ",
                          truth (answer->is_swapped));
  append_number (text, "cross_camber_deg", cross_deg (answer, answer->cross_camber));
  g_string_append (text, ",\n      ");
  append_number (text, "cross_caster_deg", cross_deg (answer, answer->cross_caster));
  g_string_append_printf (text,
                          ",\n      \"within_cross\": %s,\n      \"fits\": %s,\n"
                          "      \"meets\": %s,\n      ",
                          truth (answer->is_within_cross), truth (answer->fits),
                          truth (answer->meets));
  append_string (text, "verdict", verdict);
  g_string_append (text, ",\n      \"sides\": [\n");
  write_json_side (answer, SIDE_LEFT, text);
  g_string_append (text, ",\n");
  write_json_side (answer, SIDE_RIGHT, text);
  g_string_append (text, "\n      ]\n    }");
}

static void
write_json (const ChoiceTable *table, GString *text)
{
  write_json_head (table, text);
  g_string_append (text, "  \"answers\": [");
  for (guint rank = 0; rank < table->answers->len; rank++) {
    g_string_append (text, rank > 0 ? ",\n" : "\n");
    write_json_answer (table, rank, text);
  }
  g_string_append (text, table->answers->len > 0 ? "\n  ]\n}\n" : "]\n}\n");
}

void
choice_table_write (const ChoiceTable *table, TableFormat format, GString *text)
{
  switch (format) {
  case TABLE_TEXT:
    choice_table_write_text (table, text);
    break;
  case TABLE_CSV:
    write_csv (table, text);
    break;
  case TABLE_JSON:
    write_json (table, text);
    break;
  }
}
