/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car/car-json-members.h"
#include "model/car/car-json.h"

#include <stddef.h>

const char *const car_section_names[N_CAR_SECTIONS] = {
  [CAR_SECTION_ROOT] = "",
  [CAR_SECTION_CORNER] = "corner",
  [CAR_SECTION_ALIGNMENT] = "alignment",
  [CAR_SECTION_TYRE] = "tyre",
  [CAR_SECTION_TRAVEL] = "travel",
  [CAR_SECTION_BODY] = "body",
  [CAR_SECTION_TOWER] = "tower",
  [CAR_SECTION_STRUT] = "strut",
  [CAR_SECTION_TIE_ROD] = "tie_rod",
  [CAR_SECTION_LIMITS] = "limits",
  [CAR_SECTION_LOADS] = "loads",
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
  { CAR_SECTION_ALIGNMENT,
    "camber_deg",
    IN (camber_deg),
    MEMBER_REQUIRED,
    { -45, 45, FALSE } },
  { CAR_SECTION_ALIGNMENT,
    "toe_in_deg",
    IN (toe_in_deg),
    MEMBER_REQUIRED,
    { -45, 45, FALSE } },
  { CAR_SECTION_TYRE,
    "loaded_radius_mm",
    IN (loaded_radius_mm),
    MEMBER_REQUIRED,
    { 0, 2000, TRUE } },
  { CAR_SECTION_TYRE,
    "section_width_mm",
    IN (section_width_mm),
    MEMBER_WRITTEN,
    { 0, 2000, TRUE } },
  { CAR_SECTION_TYRE,
    "unloaded_radius_mm",
    IN (unloaded_radius_mm),
    MEMBER_WHERE_GIVEN,
    { 0, 2000, FALSE } },
  { CAR_SECTION_TYRE,
    "rim_offset_mm",
    IN (rim_offset_mm),
    MEMBER_WHERE_GIVEN,
    { -200, 200, FALSE } },
  { CAR_SECTION_TRAVEL, "bump_mm", IN (bump_mm), MEMBER_WRITTEN, { 0, 500, FALSE } },
  { CAR_SECTION_TRAVEL, "droop_mm", IN (droop_mm), MEMBER_WRITTEN, { 0, 500, FALSE } },
  { CAR_SECTION_BODY,
    "wheelbase_mm",
    IN (body.wheelbase_mm),
    MEMBER_WRITTEN,
    { 0, 20000, TRUE } },
  { CAR_SECTION_BODY,
    "cg_height_mm",
    IN (body.cg_height_mm),
    MEMBER_WRITTEN,
    { 0, 5000, TRUE } },
  { CAR_SECTION_BODY,
    "front_mass_kg",
    IN (body.front_mass_kg),
    MEMBER_WRITTEN,
    { 0, 50000, FALSE } },
  { CAR_SECTION_BODY,
    "unsprung_corner_kg",
    IN (body.unsprung_corner_kg),
    MEMBER_WRITTEN,
    { 0, 5000, FALSE } },
  { CAR_SECTION_BODY,
    "front_brake_share",
    IN (body.front_brake_share),
    MEMBER_WRITTEN,
    { 0, 1, FALSE } },
  { CAR_SECTION_BODY,
    "rear_mass_kg",
    IN (body.rear_mass_kg),
    MEMBER_WHERE_GIVEN,
    { 0, 50000, FALSE } },
  { CAR_SECTION_TOWER,
    "opening_diameter_mm",
    IN (tower.opening_diameter_mm),
    MEMBER_WHERE_GIVEN,
    { 0, 1000, FALSE } },
  { CAR_SECTION_TOWER,
    "opening_inboard_mm",
    IN (tower.opening_inboard_mm),
    MEMBER_WHERE_GIVEN,
    { -1000, 1000, FALSE } },
  { CAR_SECTION_TOWER,
    "opening_rearward_mm",
    IN (tower.opening_rearward_mm),
    MEMBER_WHERE_GIVEN,
    { -1000, 1000, FALSE } },
  { CAR_SECTION_STRUT,
    "tube_diameter_mm",
    IN (strut.tube_diameter_mm),
    MEMBER_WHERE_GIVEN,
    { 0, 500, FALSE } },
  { CAR_SECTION_STRUT,
    "tube_bottom_mm",
    IN (strut.tube_bottom_mm),
    MEMBER_WHERE_GIVEN,
    { -1000, 1000, FALSE } },
  { CAR_SECTION_STRUT,
    "tube_top_mm",
    IN (strut.tube_top_mm),
    MEMBER_WHERE_GIVEN,
    { -1000, 1000, FALSE } },
  { CAR_SECTION_STRUT,
    "seat_diameter_mm",
    IN (strut.seat_diameter_mm),
    MEMBER_WHERE_GIVEN,
    { 0, 500, FALSE } },
  { CAR_SECTION_STRUT,
    "seat_height_mm",
    IN (strut.seat_height_mm),
    MEMBER_WHERE_GIVEN,
    { -1000, 1000, FALSE } },
  { CAR_SECTION_STRUT,
    "spring_diameter_mm",
    IN (strut.spring_diameter_mm),
    MEMBER_WHERE_GIVEN,
    { 0, 500, FALSE } },
  { CAR_SECTION_STRUT,
    "rod_diameter_mm",
    IN (strut.rod.diameter_mm),
    MEMBER_WHERE_GIVEN,
    { 0, 200, FALSE } },
  { CAR_SECTION_STRUT,
    "rod_bore_mm",
    IN (strut.rod.bore_mm),
    MEMBER_WHERE_GIVEN,
    { 0, 200, FALSE } },
  { CAR_SECTION_STRUT,
    "guide_height_mm",
    IN (strut.rod.guide_height_mm),
    MEMBER_WHERE_GIVEN,
    { -1000, 1000, FALSE } },
  { CAR_SECTION_STRUT,
    "piston_drop_mm",
    IN (strut.rod.piston_drop_mm),
    MEMBER_WHERE_GIVEN,
    { 0, 1000, FALSE } },
  { CAR_SECTION_STRUT,
    "bush_spacing_mm",
    IN (strut.rod.bush_spacing_mm),
    MEMBER_WHERE_GIVEN,
    { 0, 1000, FALSE } },
  { CAR_SECTION_STRUT,
    "rod_modulus_gpa",
    IN (strut.rod.modulus_gpa),
    MEMBER_WHERE_GIVEN,
    { 10, 1000, FALSE } },
  { CAR_SECTION_STRUT,
    "guide_friction",
    IN (strut.rod.friction),
    MEMBER_WHERE_GIVEN,
    { 0, 1, FALSE } },
  { CAR_SECTION_TIE_ROD,
    "thread_pitch_mm",
    IN (thread_pitch_mm),
    MEMBER_WHERE_GIVEN,
    { 0, CAR_MOST_THREAD_PITCH, TRUE } },
  { CAR_SECTION_LIMITS,
    "tyre_clearance_mm",
    IN (limits.tyre_clearance_mm),
    MEMBER_WHERE_GIVEN,
    { 0, 200, FALSE } },
  { CAR_SECTION_LIMITS,
    "edge_margin_mm",
    IN (limits.edge_margin_mm),
    MEMBER_WHERE_GIVEN,
    { 0, 200, FALSE } },
  { CAR_SECTION_LIMITS,
    "cross_camber_deg",
    IN (limits.cross_camber_deg),
    MEMBER_WHERE_GIVEN,
    { 0, 45, FALSE } },
  { CAR_SECTION_LIMITS,
    "cross_caster_deg",
    IN (limits.cross_caster_deg),
    MEMBER_WHERE_GIVEN,
    { 0, 45, FALSE } },
  { CAR_SECTION_LIMITS,
    "camber_bolt_deg",
    IN (limits.camber_bolt_deg),
    MEMBER_WHERE_GIVEN,
    { 0, CAR_MOST_CAMBER_BOLT, FALSE } },
  { CAR_SECTION_LIMITS,
    "travel_used_mm",
    IN (limits.travel_used_mm),
    MEMBER_WHERE_GIVEN,
    { 0, 500, FALSE } },
};
const gsize n_car_numbers = G_N_ELEMENTS (car_numbers);

#undef IN
#define IN(member) offsetof (CarSetup, member)

static const SetupNumber mount_numbers[] = {
  { "inboard_mm", IN (mount.inboard), CAR_FURTHEST_MOVE, MEMBER_WRITTEN },
  { "rearward_mm", IN (mount.rearward), CAR_FURTHEST_MOVE, MEMBER_WRITTEN },
  { "up_mm", IN (mount.up), CAR_FURTHEST_MOVE, MEMBER_WRITTEN },
};
const SetupPart setup_mount = { "mount", mount_numbers, G_N_ELEMENTS (mount_numbers),
                                IN (unknown_mount) };

static const SetupNumber correction_numbers[] = {
  { "camber_bolt_deg", IN (corrections.camber_bolt_deg), CAR_MOST_CAMBER_BOLT,
    MEMBER_WRITTEN },
  { "ball_joint_spacer_mm", IN (corrections.ball_joint_spacer_mm), CAR_MOST_CORRECTION,
    MEMBER_WRITTEN },
  { "tie_rod_end_spacer_mm", IN (corrections.tie_rod_end_spacer_mm), CAR_MOST_CORRECTION,
    MEMBER_WRITTEN },
  { "front_pivot_raise_mm", IN (corrections.front_pivot_raise_mm), CAR_MOST_CORRECTION,
    MEMBER_WRITTEN },
  { "rear_pivot_raise_mm", IN (corrections.rear_pivot_raise_mm), CAR_MOST_CORRECTION,
    MEMBER_WRITTEN },
  { "pivot_outboard_mm", IN (corrections.pivot_outboard_mm), CAR_MOST_CORRECTION,
    MEMBER_WRITTEN },
  { "rack_raise_mm", IN (corrections.rack_raise_mm), CAR_MOST_CORRECTION,
    MEMBER_WRITTEN },
  { "tie_rod_length_mm", IN (corrections.tie_rod_length_mm), CAR_MOST_CORRECTION,
    MEMBER_WRITTEN },
  { "wheel_spacer_mm", IN (corrections.wheel_spacer_mm), CAR_MOST_CORRECTION,
    MEMBER_WHERE_GIVEN },
};
const SetupPart setup_corrections = { "corrections", correction_numbers,
                                      G_N_ELEMENTS (correction_numbers),
                                      IN (unknown_corrections) };

static const SetupNumber right_numbers[] = {
  { "inboard_mm", IN (right.mount.inboard), CAR_FURTHEST_MOVE, MEMBER_WRITTEN },
  { "rearward_mm", IN (right.mount.rearward), CAR_FURTHEST_MOVE, MEMBER_WRITTEN },
  { "up_mm", IN (right.mount.up), CAR_FURTHEST_MOVE, MEMBER_WRITTEN },
  { "camber_bolt_deg", IN (right.camber_bolt_deg), CAR_MOST_CAMBER_BOLT, MEMBER_WRITTEN },
};
const SetupPart setup_right = { "right", right_numbers, G_N_ELEMENTS (right_numbers),
                                IN (unknown_right) };

const char *const car_root_members[] = { "format",   "version",   "name",    "notes",
                                         "corner",   "alignment", "tyre",    "travel",
                                         "body",     "tower",     "strut",   "tie_rod",
                                         "limits",   "right",     "targets", "setups",
                                         "baseline", "springs",   "loads",   NULL };

const char *const car_setup_members[] = { "name",        "mount", "lowering_mm", "toe",
                                          "corrections", "plate", "right",       "hidden",
                                          "springs",     "rod",   NULL };

const char *const setup_plate_members[] = { "name", "swapped", NULL };

const char *const car_target_members[] = { "aim", "least", "most", "weight", NULL };

const char *const car_right_members[] = { "corner", "alignment", NULL };

const char *const toe_mode_names[2] = {
  [TOE_AS_MOVED] = "as-moved", [TOE_RESET] = "reset"
};

static void
add_name (GPtrArray *names, const char *name)
{
  g_ptr_array_add (names, (gpointer) name);
}

GPtrArray *
car_section_members (CarSection section)
{
  GPtrArray *names = g_ptr_array_new ();

  for (gsize i = 0; section == CAR_SECTION_ROOT && car_root_members[i] != NULL; i++)
    add_name (names, car_root_members[i]);
  for (PointName i = 0; section == CAR_SECTION_CORNER && i < N_POINTS; i++)
    add_name (names, car_point_names[i]);
  if (section == CAR_SECTION_LOADS)
    add_name (names, "cases");
  for (gsize i = 0; i < n_car_numbers; i++)
    if (car_numbers[i].section == section)
      add_name (names, car_numbers[i].name);
  add_name (names, NULL);
  return names;
}

gboolean
car_section_knows (CarSection section, const char *name)
{
  g_autoptr (GPtrArray) names = car_section_members (section);

  return g_strv_contains ((const char *const *) names->pdata, name);
}

gboolean
setup_part_knows (const SetupPart *part, const char *name)
{
  for (gsize i = 0; i < part->n_numbers; i++)
    if (g_str_equal (part->numbers[i].name, name))
      return TRUE;
  return FALSE;
}

void
section_keep_unknown (JsonObject *object, CarSection section, JsonObject **kept)
{
  JsonObjectIter iter;
  const char *name;
  JsonNode *value;

  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &name, &value))
    if (!car_section_knows (section, name))
      member_keep (kept, name, value);
}

double
car_number_value (const Car *car, const CarNumber *number)
{
  return *(const double *) (gconstpointer) ((const char *) car + number->offset);
}

double *
car_number (Car *car, const CarNumber *number)
{
  return (double *) (gpointer) ((char *) car + number->offset);
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
