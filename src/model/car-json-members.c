/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car-json-members.h"

#include <stddef.h>

const char *const car_section_names[N_CAR_SECTIONS] = {
  [CAR_SECTION_ROOT] = "",
  [CAR_SECTION_CORNER] = "corner",
  [CAR_SECTION_ALIGNMENT] = "alignment",
  [CAR_SECTION_TYRE] = "tyre",
  [CAR_SECTION_TRAVEL] = "travel",
  [CAR_SECTION_BODY] = "body",
};

const char *const car_point_names[N_POINTS] = {
  [POINT_ARM_FRONT_PIVOT] = "arm_front_pivot", [POINT_ARM_REAR_PIVOT] = "arm_rear_pivot",
  [POINT_BALL_JOINT] = "ball_joint",           [POINT_UPPER_MOUNT] = "upper_mount",
  [POINT_STRUT_FOOT] = "strut_foot",           [POINT_TIE_ROD_OUTER] = "tie_rod_outer",
  [POINT_TIE_ROD_INNER] = "tie_rod_inner",     [POINT_WHEEL_CENTRE] = "wheel_centre",
};

#define IN(member) offsetof (Car, member)

/* The upper limits only keep slips of the keyboard out; they are far from any car. */
const CarNumber car_numbers[] = {
  { CAR_SECTION_ALIGNMENT, "camber_deg", IN (camber_deg), TRUE, { -45, 45, FALSE } },
  { CAR_SECTION_ALIGNMENT, "toe_in_deg", IN (toe_in_deg), TRUE, { -45, 45, FALSE } },
  { CAR_SECTION_TYRE,
    "loaded_radius_mm",
    IN (loaded_radius_mm),
    TRUE,
    { 0, 2000, TRUE } },
  { CAR_SECTION_TYRE,
    "section_width_mm",
    IN (section_width_mm),
    FALSE,
    { 0, 2000, TRUE } },
  { CAR_SECTION_TRAVEL, "bump_mm", IN (bump_mm), FALSE, { 0, 500, FALSE } },
  { CAR_SECTION_TRAVEL, "droop_mm", IN (droop_mm), FALSE, { 0, 500, FALSE } },
  { CAR_SECTION_BODY, "wheelbase_mm", IN (body.wheelbase_mm), FALSE, { 0, 20000, TRUE } },
  { CAR_SECTION_BODY, "cg_height_mm", IN (body.cg_height_mm), FALSE, { 0, 5000, TRUE } },
  { CAR_SECTION_BODY,
    "front_mass_kg",
    IN (body.front_mass_kg),
    FALSE,
    { 0, 50000, FALSE } },
  { CAR_SECTION_BODY,
    "unsprung_corner_kg",
    IN (body.unsprung_corner_kg),
    FALSE,
    { 0, 5000, FALSE } },
  { CAR_SECTION_BODY,
    "front_brake_share",
    IN (body.front_brake_share),
    FALSE,
    { 0, 1, FALSE } },
};
const gsize n_car_numbers = G_N_ELEMENTS (car_numbers);

#undef IN
#define IN(member) offsetof (CarSetup, member)

static const SetupNumber mount_numbers[] = {
  { "inboard_mm", IN (mount.inboard), CAR_FURTHEST_MOVE },
  { "rearward_mm", IN (mount.rearward), CAR_FURTHEST_MOVE },
  { "up_mm", IN (mount.up), CAR_FURTHEST_MOVE },
};
const SetupPart setup_mount = { "mount", mount_numbers, G_N_ELEMENTS (mount_numbers),
                                IN (unknown_mount) };

static const SetupNumber correction_numbers[] = {
  { "camber_bolt_deg", IN (corrections.camber_bolt_deg), CAR_MOST_CAMBER_BOLT },
  { "ball_joint_spacer_mm", IN (corrections.ball_joint_spacer_mm), CAR_MOST_CORRECTION },
  { "tie_rod_end_spacer_mm", IN (corrections.tie_rod_end_spacer_mm),
    CAR_MOST_CORRECTION },
  { "front_pivot_raise_mm", IN (corrections.front_pivot_raise_mm), CAR_MOST_CORRECTION },
  { "rear_pivot_raise_mm", IN (corrections.rear_pivot_raise_mm), CAR_MOST_CORRECTION },
  { "pivot_outboard_mm", IN (corrections.pivot_outboard_mm), CAR_MOST_CORRECTION },
  { "rack_raise_mm", IN (corrections.rack_raise_mm), CAR_MOST_CORRECTION },
  { "tie_rod_length_mm", IN (corrections.tie_rod_length_mm), CAR_MOST_CORRECTION },
};
const SetupPart setup_corrections = { "corrections", correction_numbers,
                                      G_N_ELEMENTS (correction_numbers),
                                      IN (unknown_corrections) };

const char *const car_root_members[] = { "format", "version",   "name",     "notes",
                                         "corner", "alignment", "tyre",     "travel",
                                         "body",   "setups",    "baseline", NULL };

const char *const car_setup_members[] = { "name",        "mount",  "lowering_mm", "toe",
                                          "corrections", "hidden", NULL };

const char *const toe_mode_names[2] = {
  [TOE_AS_MOVED] = "as-moved", [TOE_RESET] = "reset"
};

static gboolean
is_point (const char *name)
{
  for (PointName i = 0; i < N_POINTS; i++)
    if (g_str_equal (car_point_names[i], name))
      return TRUE;
  return FALSE;
}

gboolean
car_section_knows (CarSection section, const char *name)
{
  if (section == CAR_SECTION_ROOT)
    return g_strv_contains (car_root_members, name);
  if (section == CAR_SECTION_CORNER)
    return is_point (name);
  for (gsize i = 0; i < n_car_numbers; i++)
    if (car_numbers[i].section == section && g_str_equal (car_numbers[i].name, name))
      return TRUE;
  return FALSE;
}

gboolean
setup_part_knows (const SetupPart *part, const char *name)
{
  for (gsize i = 0; i < part->n_numbers; i++)
    if (g_str_equal (part->numbers[i].name, name))
      return TRUE;
  return FALSE;
}

double *
setup_number (CarSetup *setup, const SetupNumber *number)
{
  return (double *) (gpointer) ((char *) setup + number->offset);
}

JsonObject **
setup_part_unknown (const SetupPart *part, CarSetup *setup)
{
  return (JsonObject **) (gpointer) ((char *) setup + part->unknown);
}
