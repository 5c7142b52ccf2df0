/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/plate/plate-json-members.h"
#include "model/plate/plate-json.h"

#include <stddef.h>

#define IN(member) offsetof (Plate, member)
#define OF(kind) (1u << (kind))
#define ANY (OF (N_PLATE_KINDS) - 1)
#define WITH_PLACE (ANY & ~OF (PLATE_HOLES))
#define WITH_SCALE (OF (PLATE_SLOT) | OF (PLATE_CROSSED_SLOTS))
#define FAR PLATE_FURTHEST

const char *const plate_kind_words[N_PLATE_KINDS] = {
  [PLATE_FIXED] = "fixed",
  [PLATE_SLOT] = "slot",
  [PLATE_CROSSED_SLOTS] = "crossed-slots",
  [PLATE_ECCENTRIC] = "eccentric",
  [PLATE_HOLES] = "holes",
};

/* Where the bearing can go; they stand before the lists, … */
const PlateNumber plate_numbers[] = {
  { "inboard_mm", IN (inboard_mm), WITH_PLACE, TRUE, { -FAR, FAR, FALSE } },
  { "rearward_mm", IN (rearward_mm), WITH_PLACE, TRUE, { -FAR, FAR, FALSE } },
  { "direction_deg", IN (direction_deg), WITH_SCALE, TRUE, { -360, 360, FALSE } },
  { "radius_mm", IN (radius_mm), OF (PLATE_ECCENTRIC), TRUE, { 0, FAR, TRUE } },
};
const gsize n_plate_numbers = G_N_ELEMENTS (plate_numbers);

/* … and these behind them. */
const PlateNumber plate_extras[] = {
  { "raises_mm", IN (raises_mm), ANY, FALSE, { -FAR, FAR, FALSE } },
  { "thickness_mm", IN (thickness_mm), ANY, FALSE, { 0, 100, FALSE } },
  { "bearing_diameter_mm", IN (bearing_diameter_mm), ANY, FALSE, { 0, 500, FALSE } },
  { "bearing_tilt_deg", IN (bearing_tilt_deg), ANY, FALSE, { 0, 45, FALSE } },
  { "swap_turn_deg", IN (swap_turn_deg), ANY, FALSE, { -180, 180, FALSE } },
};
const gsize n_plate_extras = G_N_ELEMENTS (plate_extras);

const PlatePair plate_pairs[] = {
  { "along_mm", IN (along.least), IN (along.most), WITH_SCALE, { -FAR, FAR, FALSE } },
  { "across_mm",
    IN (across.least),
    IN (across.most),
    OF (PLATE_CROSSED_SLOTS),
    { -FAR, FAR, FALSE } },
  { "turn_range_deg",
    IN (turn_least_deg),
    IN (turn_most_deg),
    OF (PLATE_ECCENTRIC),
    { -360, 360, FALSE } },
};
const gsize n_plate_pairs = G_N_ELEMENTS (plate_pairs);

const NumberRange plate_turn_range = { .least = -360, .most = 360 };
const NumberRange plate_hole_range = { .least = -FAR, .most = FAR };

const char *const plate_members[] = { "format",
                                      "version",
                                      "name",
                                      "notes",
                                      "kind",
                                      "inboard_mm",
                                      "rearward_mm",
                                      "direction_deg",
                                      "radius_mm",
                                      "along_mm",
                                      "across_mm",
                                      "turn_range_deg",
                                      "turns_deg",
                                      "holes",
                                      "raises_mm",
                                      "thickness_mm",
                                      "bearing_diameter_mm",
                                      "bearing_tilt_deg",
                                      "swap_turn_deg",
                                      NULL };

const char *const plate_hole_members[] = { "label", "inboard_mm", "rearward_mm", NULL };

static guint
kinds_with (const char *name)
{
  for (gsize i = 0; i < n_plate_numbers; i++)
    if (g_str_equal (plate_numbers[i].name, name))
      return plate_numbers[i].kinds;
  for (gsize i = 0; i < n_plate_pairs; i++)
    if (g_str_equal (plate_pairs[i].name, name))
      return plate_pairs[i].kinds;
  if (g_str_equal (name, "turns_deg"))
    return OF (PLATE_ECCENTRIC);
  if (g_str_equal (name, "holes"))
    return OF (PLATE_HOLES);
  return ANY;
}

gboolean
plate_kind_has (PlateKind kind, const char *name)
{
  return (kinds_with (name) & OF (kind)) != 0;
}

double *
plate_number (Plate *plate, gsize offset)
{
  return (double *) (gpointer) ((char *) plate + offset);
}

double
plate_number_value (const Plate *plate, gsize offset)
{
  return *(const double *) (gconstpointer) ((const char *) plate + offset);
}
