/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car/car-json-geometry.h"
#include "model/car/car-json-members.h"
#include "model/car/car-json.h"

#include <glib/gi18n-lib.h>

/* The sentence for what the kernel says of measured points; "%1$s" and "%2$s" are paths.
 */
static const char *
verdict_sentence (CornerStatus status)
{
  switch (status) {
  case CORNER_OK:
    return "";
  case CORNER_NOT_FINITE:
    return _ ("%1$s is not a finite number.");
  case CORNER_BAD_RADIUS:
    return _ ("tyre.loaded_radius_mm must be above zero.");
  case CORNER_BAD_ANGLE:
    return _ (
        "alignment.camber_deg and alignment.toe_in_deg must lie between −45 and 45.");
  case CORNER_COINCIDENT:
    return _ ("%1$s and %2$s are the same place.");
  case CORNER_BALL_ON_HINGE:
    return _ ("corner.ball_joint lies on the line through corner.arm_front_pivot and "
              "corner.arm_rear_pivot, so the arm cannot carry it.");
  case CORNER_ARM_CANNOT_LIFT:
    return _ (
        "Turning the lower arm does not lift the wheel: check corner.arm_front_pivot, "
        "corner.arm_rear_pivot and corner.ball_joint.");
  case CORNER_STRUT_UPSIDE_DOWN:
    return _ (
        "corner.upper_mount must lie above corner.strut_foot and corner.ball_joint.");
  case CORNER_TIE_ROD_ON_AXIS:
    return _ (
        "corner.tie_rod_outer or corner.tie_rod_inner lies on the steering axis, the "
        "line from corner.ball_joint to corner.upper_mount.");
  case CORNER_TIE_ROD_DEAD:
    return _ ("The tie rod stands at its dead point and cannot steer: check "
              "corner.tie_rod_outer and corner.tie_rod_inner.");
  }
  g_return_val_if_reached ("");
}

static char *
point_path (PointName point, CarSide side)
{
  const char *corner = side == SIDE_RIGHT ? "right.corner" : "corner";

  return point < N_POINTS ? g_strconcat (corner, ".", car_point_names[point], NULL)
                          : g_strdup (corner);
}

/* Paths are the same in every language. */
static char *
in_right (const char *sentence)
{
  GString *text = g_string_new (sentence);

  g_string_replace (text, "corner.", "right.corner.", 0);
  g_string_replace (text, "alignment.", "right.alignment.", 0);
  return g_string_free (text, FALSE);
}

static gboolean
check_side (const Car *car, CarSide side, GError **error)
{
  const MeasuredCorner measured = car_measured_side (car, side);
  const Adjustment none = { 0 };
  Corner corner;
  const CornerVerdict verdict = corner_assemble (&measured, &none, &corner);

  if (verdict.status == CORNER_OK)
    return TRUE;

  const char *left = verdict_sentence (verdict.status);
  g_autofree char *sentence = side == SIDE_LEFT ? g_strdup (left) : in_right (left);
  g_autofree char *first = point_path (verdict.first, side);
  g_autofree char *second = point_path (verdict.second, side);
  g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_GEOMETRY, sentence, first, second);
  return FALSE;
}

gboolean
car_check_geometry (const Car *car, GError **error)
{
  return check_side (car, SIDE_LEFT, error) &&
         (!car_has_right (car) || check_side (car, SIDE_RIGHT, error));
}
