/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/car/car-json-right.h"
#include "model/car/car-json-members.h"
#include "model/car/car-json-points.h"

#include <glib/gi18n-lib.h>

/* The tie rod of a rack with a take-off in the middle may begin on the other side. */
static gboolean
check_side (const Vec3 *points, GError **error)
{
  for (PointName i = 0; i < N_POINTS; i++)
    if (points[i].y >= 0.0 && i != POINT_TIE_ROD_INNER) {
      g_set_error (error, FILE_REFUSAL, FILE_REFUSAL_NUMBER,
                   _ ("right.corner.%s[1] is %g, but must be below zero on the right "
                      "side."),
                   car_point_names[i], points[i].y);
      return FALSE;
    }
  return TRUE;
}

static gboolean
read_corner (JsonObject *object, CarMeasuredRight *right, GError **error)
{
  if (!car_read_points (object, "right.corner", right->points, error) ||
      !check_side (right->points, error))
    return FALSE;
  section_keep_unknown (object, CAR_SECTION_CORNER, &right->unknown_corner);
  right->has_points = TRUE;
  return TRUE;
}

static gboolean
read_angle (JsonObject *object, const char *name, double *value, GError **error)
{
  const NumberRange limits = { .least = -45.0, .most = 45.0 };
  const char *parent = "right.alignment";

  if (!json_object_has_member (object, name))
    return member_refuse (error, FILE_REFUSAL_MISSING, _ ("%s is missing."), parent,
                          name);
  return member_read_number_within (object, parent, name, limits, value, error);
}

static gboolean
read_alignment (JsonObject *object, CarMeasuredRight *right, GError **error)
{
  if (!read_angle (object, "camber_deg", &right->camber_deg, error) ||
      !read_angle (object, "toe_in_deg", &right->toe_in_deg, error))
    return FALSE;
  section_keep_unknown (object, CAR_SECTION_ALIGNMENT, &right->unknown_alignment);
  right->has_alignment = TRUE;
  return TRUE;
}

gboolean
car_read_right (JsonObject *root, Car *car, GError **error)
{
  JsonObject *right, *corner, *alignment;

  if (!member_find_object (root, "", "right", &right, error))
    return FALSE;
  if (right == NULL)
    return TRUE;
  if (!member_find_object (right, "right", "corner", &corner, error) ||
      !member_find_object (right, "right", "alignment", &alignment, error))
    return FALSE;
  if (corner != NULL && !read_corner (corner, &car->right, error))
    return FALSE;
  if (alignment != NULL && !read_alignment (alignment, &car->right, error))
    return FALSE;
  member_keep_unknown (right, car_right_members, &car->right.unknown);
  return TRUE;
}
