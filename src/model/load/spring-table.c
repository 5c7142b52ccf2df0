/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/load/spring-table.h"
#include "model/json/json-write.h"
#include "model/load/spring-table-text.h"
#include "model/spring/spring-figure.h"
#include "model/words/csv.h"

#include <math.h>
#include <stddef.h>

typedef struct {
  const char *key;
  gsize offset; /* of the double in a SpringStation */
  double scale;
} Column;

#define IN(member) offsetof (SpringStation, member)
#define DEGREES (180.0 / G_PI)

static const Column columns[] = {
  { "wheel_load_n", IN (load), 1.0 },
  { "wheel_rate_n_per_mm", IN (rate), 1.0 },
  { "geometric_rate_n_per_mm", IN (geometric_rate), 1.0 },
  { "unsprung_weight_n", IN (element_load[SPRING_UNSPRUNG]), 1.0 },
  { "torsion_bar_n", IN (element_load[SPRING_BAR]), 1.0 },
  { "coil_n", IN (element_load[SPRING_COIL]), 1.0 },
  { "helper_n", IN (element_load[SPRING_HELPER]), 1.0 },
  { "bump_stop_n", IN (element_load[SPRING_BUMP_STOP]), 1.0 },
  { "gas_n", IN (element_load[SPRING_GAS]), 1.0 },
  { "coil_length_mm", IN (coil_length), 1.0 },
  { "coil_force_n", IN (coil_force), 1.0 },
  { "coil_stress_n_per_mm2", IN (coil_stress), 1.0 },
  { "bar_twist_deg", IN (bar_twist), DEGREES },
  { "bar_torque_nmm", IN (bar_torque), 1.0 },
  { "bar_stress_n_per_mm2", IN (bar_stress), 1.0 },
};

static double
column_value (const SpringStation *station, guint column)
{
  const gconstpointer at = (const char *) station + columns[column].offset;

  return *(const double *) at * columns[column].scale;
}

void
spring_table_row (const SpringStudy *study,
                  guint setup,
                  double travel,
                  SpringStation *station)
{
  const SpringCorner *corner = &study->setups[setup];
  const Corner *linkage = &corner->corner->corner;
  Pose pose;
  const gboolean stands = pose_at_travel (linkage, travel, 0.0, NULL, &pose) == POSE_OK;

  spring_law_station (corner->law, linkage, stands ? &pose : NULL, station);
}

static void
write_csv (
    const SpringStudy *study, guint setup, TravelSteps steps, gsize n, GString *text)
{
  g_string_append (text, "wheel_travel_mm");
  for (guint c = 0; c < G_N_ELEMENTS (columns); c++)
    g_string_append_printf (text, ",%s", columns[c].key);
  g_string_append (text, "\r\n");
  for (gsize i = 0; i < n; i++) {
    const double travel = travel_steps_at (steps, i);
    SpringStation station;

    spring_table_row (study, setup, travel, &station);
    csv_append_number (text, travel);
    for (guint c = 0; c < G_N_ELEMENTS (columns); c++) {
      g_string_append_c (text, ',');
      csv_append_number (text, column_value (&station, c));
    }
    g_string_append (text, "\r\n");
  }
}

static void
write_json_head (const SpringStudy *study, guint setup, GString *text)
{
  const SpringCorner *corner = &study->setups[setup];

  g_string_append (text, "{\n  \"car\": ");
  json_write_string (text, study->car->name);
  g_string_append (text, ",\n  \"setup\": ");
  json_write_string (text, car_setup (study->car, setup)->name);
  g_string_append (text, ",\n  \"corner_weight_n\": ");
  json_write_number (text, study->corner_weight);
  for (guint i = 0; i < spring_figures_count (); i++) {
    const SpringFigure figure = spring_figure (corner, i);

    g_string_append_printf (text, ",\n  \"%s\": ", figure.key);
    json_write_number (text, figure.value);
  }
}

static void
write_json_events (const SpringCorner *corner, GString *text)
{
  g_string_append (text, ",\n  \"events\": [");
  for (gsize i = 0; i < corner->n_events; i++) {
    const SpringEvent *event = &corner->events[i];

    g_string_append_printf (text, "%s\n    { \"event\": \"%s\", \"wheel_travel_mm\": ",
                            i > 0 ? "," : "", spring_event_key (event->kind));
    json_write_number (text, event->travel);
    g_string_append (text, ", \"wheel_load_n\": ");
    json_write_number (text, event->load);
    g_string_append (text, " }");
  }
  g_string_append (text, corner->n_events > 0 ? "\n  ]" : "]");
}

static void
write_json (
    const SpringStudy *study, guint setup, TravelSteps steps, gsize n, GString *text)
{
  write_json_head (study, setup, text);
  write_json_events (&study->setups[setup], text);
  g_string_append (text, ",\n  \"stations\": [\n");
  for (gsize i = 0; i < n; i++) {
    const double travel = travel_steps_at (steps, i);
    SpringStation station;

    spring_table_row (study, setup, travel, &station);
    g_string_append (text, "    { \"wheel_travel_mm\": ");
    json_write_number (text, travel);
    for (guint c = 0; c < G_N_ELEMENTS (columns); c++) {
      g_string_append_printf (text, ", \"%s\": ", columns[c].key);
      json_write_number (text, column_value (&station, c));
    }
    g_string_append (text, i + 1 < n ? " },\n" : " }\n  ]\n}\n");
  }
}

void
spring_table_write (const SpringStudy *study,
                    guint setup,
                    TravelSteps steps,
                    TableFormat format,
                    GString *text)
{
  gsize n;

  g_return_if_fail (setup < study->n_setups && travel_steps_count (steps, &n, NULL));
  switch (format) {
  case TABLE_TEXT:
    spring_table_write_text (study, setup, steps, n, text);
    break;
  case TABLE_CSV:
    write_csv (study, setup, steps, n, text);
    break;
  case TABLE_JSON:
    write_json (study, setup, steps, n, text);
    break;
  }
}
