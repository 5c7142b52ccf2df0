/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/study/measure-field.h"

#include "model/words/point-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

static const char *const point_paths[N_POINTS] = {
  [POINT_ARM_FRONT_PIVOT] = "corner.arm_front_pivot",
  [POINT_ARM_REAR_PIVOT] = "corner.arm_rear_pivot",
  [POINT_BALL_JOINT] = "corner.ball_joint",
  [POINT_UPPER_MOUNT] = "corner.upper_mount",
  [POINT_STRUT_FOOT] = "corner.strut_foot",
  [POINT_TIE_ROD_OUTER] = "corner.tie_rod_outer",
  [POINT_TIE_ROD_INNER] = "corner.tie_rod_inner",
  [POINT_WHEEL_CENTRE] = "corner.wheel_centre",
};

#define IN(member) offsetof (Car, member)
#define REQUIRED ((double) NAN)
#define NOT_GIVEN 0.0, N_ ("not given")

typedef struct {
  MeasureGroup group;
  const char *path, *name, *meaning, *unit;
  gsize offset;
  double absent;
  const char *when_empty;
} NumberRow;

static const NumberRow numbers[] = {
  { MEASURE_WHEEL, "alignment.camber_deg", N_ ("Camber"),
    N_ ("Static camber as a gauge on the rim reads it: negative when the top of the wheel "
        "leans in."),
    "°", IN (camber_deg), REQUIRED, NULL },
  { MEASURE_WHEEL, "alignment.toe_in_deg", N_ ("Toe-in, this wheel"),
    N_ ("Static toe of one wheel against straight ahead: positive when its front points "
        "in."),
    "°", IN (toe_in_deg), REQUIRED, NULL },
  { MEASURE_WHEEL, "tyre.loaded_radius_mm", N_ ("Loaded radius"),
    N_ ("From the ground to the hub's axis, along the wheel, with the car's weight on it."),
    "mm", IN (loaded_radius_mm), REQUIRED, NULL },
  { MEASURE_WHEEL, "tyre.section_width_mm", N_ ("Section width"),
    N_ ("Widest part of the tyre: the first number on its side wall."), "mm",
    IN (section_width_mm), CAR_DEFAULT_SECTION_WIDTH, NULL },
  { MEASURE_WHEEL, "tyre.unloaded_radius_mm", N_ ("Unloaded radius"),
    /* xgettext:no-c-format */
    N_ ("Half the diameter of the tyre off the ground; where it is not given, 3 % above the "
        "loaded one."),
    "mm", IN (unloaded_radius_mm), 0.0, N_ ("from the loaded") },
  { MEASURE_WHEEL, "tyre.rim_offset_mm", N_ ("Rim offset"),
    N_ ("Of the wheels that were on it when it was measured, as stamped on the rim."),
    "mm", IN (rim_offset_mm), 0.0, NULL },

  { MEASURE_BODY, "travel.bump_mm", N_ ("Travel in bump"),
    N_ ("How far the wheel goes up from the height at which it was measured."), "mm",
    IN (bump_mm), CAR_DEFAULT_TRAVEL, NULL },
  { MEASURE_BODY, "travel.droop_mm", N_ ("Travel in droop"),
    N_ ("How far the wheel goes down from the height at which it was measured."), "mm",
    IN (droop_mm), CAR_DEFAULT_TRAVEL, NULL },
  { MEASURE_BODY, "body.wheelbase_mm", N_ ("Wheelbase"),
    N_ ("From the front to the rear wheel centre."), "mm", IN (body.wheelbase_mm),
    CAR_DEFAULT_WHEELBASE, NULL },
  { MEASURE_BODY, "body.cg_height_mm", N_ ("Centre of gravity"),
    N_ ("Height of the car's centre of gravity above the ground."), "mm",
    IN (body.cg_height_mm), CAR_DEFAULT_CG_HEIGHT, NULL },
  { MEASURE_BODY, "body.front_mass_kg", N_ ("Mass on the front axle"),
    N_ ("Both front wheels on the scales, the car ready to drive."), "kg",
    IN (body.front_mass_kg), CAR_DEFAULT_FRONT_MASS, NULL },
  { MEASURE_BODY, "body.unsprung_corner_kg", N_ ("Unsprung mass"),
    N_ ("Wheel, brake, knuckle and half of arm and strut of one corner."), "kg",
    IN (body.unsprung_corner_kg), CAR_DEFAULT_UNSPRUNG, NULL },
  { MEASURE_BODY, "body.front_brake_share", N_ ("Front brake share"),
    N_ ("Part of the braking force at the front axle, from 0 to 1."), "",
    IN (body.front_brake_share), CAR_DEFAULT_BRAKE_SHARE, NULL },
  { MEASURE_BODY, "tie_rod.thread_pitch_mm", N_ ("Tie-rod thread pitch"),
    N_ ("How much longer one full turn of the tie-rod end makes the rod."), "mm",
    IN (thread_pitch_mm), CAR_DEFAULT_THREAD_PITCH, NULL },

  { MEASURE_TOWER, "tower.opening_diameter_mm", N_ ("Tower opening"),
    N_ ("Diameter of the opening in the strut tower in which the bearing can move."),
    "mm", IN (tower.opening_diameter_mm), NOT_GIVEN },
  { MEASURE_TOWER, "tower.opening_inboard_mm", N_ ("Opening, inboard"),
    N_ ("How far inboard of the upper mount the opening's centre lies."), "mm",
    IN (tower.opening_inboard_mm), 0.0, NULL },
  { MEASURE_TOWER, "tower.opening_rearward_mm", N_ ("Opening, rearward"),
    N_ ("How far behind the upper mount the opening's centre lies."), "mm",
    IN (tower.opening_rearward_mm), 0.0, NULL },
  { MEASURE_TOWER, "strut.tube_diameter_mm", N_ ("Strut tube"),
    N_ ("Outside diameter of the strut's tube."), "mm", IN (strut.tube_diameter_mm),
    NOT_GIVEN },
  { MEASURE_TOWER, "strut.tube_bottom_mm", N_ ("Tube, lower end"),
    N_ ("Height of the tube's lower end above the strut foot, along the strut."), "mm",
    IN (strut.tube_bottom_mm), 0.0, NULL },
  { MEASURE_TOWER, "strut.tube_top_mm", N_ ("Tube, upper end"),
    N_ ("Height of the tube's upper end above the strut foot, along the strut."), "mm",
    IN (strut.tube_top_mm), 0.0, NULL },
  { MEASURE_TOWER, "strut.seat_diameter_mm", N_ ("Spring seat"),
    N_ ("Outside diameter of the spring seat on the tube."), "mm",
    IN (strut.seat_diameter_mm), NOT_GIVEN },
  { MEASURE_TOWER, "strut.seat_height_mm", N_ ("Seat height"),
    N_ ("Height of the spring seat above the strut foot, along the strut."), "mm",
    IN (strut.seat_height_mm), 0.0, NULL },
  { MEASURE_TOWER, "strut.spring_diameter_mm", N_ ("Spring"),
    N_ ("Outside diameter of the coil spring, from the seat up to the mount."), "mm",
    IN (strut.spring_diameter_mm), NOT_GIVEN },

  { MEASURE_LIMITS, "limits.tyre_clearance_mm", N_ ("Tyre to strut, at least"),
    N_ ("Least room between the tyre and what the strut carries. 5 mm is common practice."),
    "mm", IN (limits.tyre_clearance_mm), CAR_DEFAULT_TYRE_CLEARANCE, NULL },
  { MEASURE_LIMITS, "limits.edge_margin_mm", N_ ("Bearing to edge, at least"),
    N_ ("Least room between the bearing and the edge of the tower's opening."), "mm",
    IN (limits.edge_margin_mm), CAR_DEFAULT_EDGE_MARGIN, NULL },
  { MEASURE_LIMITS, "limits.cross_camber_deg", N_ ("Cross-camber, at most"),
    N_ ("Largest difference of camber between the two sides."), "°",
    IN (limits.cross_camber_deg), CAR_DEFAULT_CROSS_CAMBER, NULL },
  { MEASURE_LIMITS, "limits.cross_caster_deg", N_ ("Cross-caster, at most"),
    N_ ("Largest difference of caster between the two sides."), "°",
    IN (limits.cross_caster_deg), CAR_DEFAULT_CROSS_CASTER, NULL },
  { MEASURE_LIMITS, "limits.camber_bolt_deg", N_ ("Camber bolt, at most"),
    N_ ("What the camber bolts that can be had give, either way."), "°",
    IN (limits.camber_bolt_deg), CAR_DEFAULT_CAMBER_BOLT, NULL },
  { MEASURE_LIMITS, "limits.travel_used_mm", N_ ("Travel looked at"),
    N_ ("Either way of the standing height: bump steer and clearance count over it."),
    "mm", IN (limits.travel_used_mm), CAR_DEFAULT_TRAVEL_USED, NULL },

  { MEASURE_RIGHT_WHEEL, "right.alignment.camber_deg", N_ ("Camber"),
    N_ ("Static camber of the right wheel: negative when the top of the wheel leans in."),
    "°", IN (right.camber_deg), REQUIRED, NULL },
  { MEASURE_RIGHT_WHEEL, "right.alignment.toe_in_deg", N_ ("Toe-in, this wheel"),
    N_ ("Static toe of the right wheel: positive when its front points in."), "°",
    IN (right.toe_in_deg), REQUIRED, NULL },
};

/* The form's order: points, the left side's numbers, the right side's points, its
 * numbers. */
#define N_NUMBERS G_N_ELEMENTS (numbers)
#define N_RIGHT_NUMBERS 2u
#define N_LEFT_NUMBERS (N_NUMBERS - N_RIGHT_NUMBERS)

guint
measure_n_fields (void)
{
  return 2 * N_COORDINATES + N_NUMBERS;
}

static MeasureField
coordinate (guint index, CarSide side)
{
  const PointName point = (PointName) (index / 3);
  const guint axis = index % 3;
  const gsize start = side == SIDE_LEFT ? IN (points) : IN (right.points);
  static const gsize parts[] = { offsetof (Vec3, x), offsetof (Vec3, y),
                                 offsetof (Vec3, z) };

  return (MeasureField){ .group =
                             side == SIDE_LEFT ? MEASURE_POINTS : MEASURE_RIGHT_POINTS,
                         .point = point,
                         .axis = axis,
                         .path = point_paths[point],
                         .name = point_title (point),
                         .meaning = point_meaning (point),
                         .unit = "mm",
                         .offset = start + point * sizeof (Vec3) + parts[axis],
                         .absent = REQUIRED };
}

static MeasureField
number (guint index)
{
  const NumberRow *row = &numbers[index];

  return (MeasureField){ .group = row->group,
                         .point = N_POINTS,
                         .path = row->path,
                         .name = _ (row->name),
                         .meaning = _ (row->meaning),
                         .unit = row->unit,
                         .offset = row->offset,
                         .absent = row->absent,
                         .when_empty =
                             row->when_empty != NULL ? _ (row->when_empty) : NULL };
}

MeasureField
measure_field (guint index)
{
  if (index < N_COORDINATES)
    return coordinate (index, SIDE_LEFT);
  index -= N_COORDINATES;
  if (index < N_LEFT_NUMBERS)
    return number (index);
  index -= N_LEFT_NUMBERS;
  if (index < N_COORDINATES)
    return coordinate (index, SIDE_RIGHT);
  return number (index - N_COORDINATES + N_LEFT_NUMBERS);
}

void
measure_group_span (MeasureGroup group, guint *first, guint *n)
{
  guint i = 0;

  while (measure_field (i).group != group)
    i++;
  *first = i;
  while (i < measure_n_fields () && measure_field (i).group == group)
    i++;
  *n = i - *first;
}

guint
measure_point_field (PointName point, CarSide side)
{
  return 3 * point + (side == SIDE_LEFT ? 0 : N_COORDINATES + N_LEFT_NUMBERS);
}

static gboolean
is_right (const MeasureField *field)
{
  return field->group == MEASURE_RIGHT_POINTS || field->group == MEASURE_RIGHT_WHEEL;
}

char *
measure_field_name (const MeasureField *field)
{
  /* Translators: a measured point, then which of its coordinates. */
  g_autofree char *name =
      field->point == N_POINTS
          ? g_strdup (field->name)
          : g_strdup_printf (_ ("%s, %s"), field->name, point_axis_name (field->axis));

  /* Translators: a number that was measured there. */
  return is_right (field) ? g_strdup_printf (_ ("Right side: %s"), name)
                          : g_steal_pointer (&name);
}

gboolean
measure_field_is_at (const MeasureField *field, const char *path)
{
  const gboolean on_right = g_str_has_prefix (path, "right.");
  g_autofree char *own = NULL;

  if (field->point == N_POINTS)
    return g_str_equal (field->path, path);
  if (on_right != is_right (field))
    return FALSE;
  path += on_right ? strlen ("right.") : 0;
  own = g_strdup_printf ("%s[%u]", field->path, field->axis);
  return g_str_equal (field->path, path) || g_str_equal (own, path);
}

double
measure_field_value (const MeasureField *field, const Car *car)
{
  return *(const double *) (gconstpointer) ((const char *) car + field->offset);
}

void
measure_field_set (const MeasureField *field, Car *car, double value)
{
  *(double *) (gpointer) ((char *) car + field->offset) = value;
}
