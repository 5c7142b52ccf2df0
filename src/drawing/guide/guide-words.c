/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/guide/guide-private.h"

#include "model/words/number-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define DEGREES (180.0 / G_PI)

static const char *const methods[N_POINTS] = {
  [POINT_ARM_FRONT_PIVOT] = N_ (
      "Hold the string against the front and then the rear face of the bush, mark the "
      "floor under both, and halve: that is x and y. Take z with the tape from the "
      "floor up to the middle of the bolt. On a bush that stands upright, the middle "
      "of its height counts."),
  [POINT_ARM_REAR_PIVOT] = N_ (
      "As the front pivot, from the same marks and with the same tape. Both pivots "
      "together make the axis about which the arm swings, so an error that both share "
      "does less harm than a difference between them."),
  [POINT_BALL_JOINT] = N_ (
      "The ball’s centre lies hidden in its housing. Drop the bob on both sides of the "
      "housing and halve for x and y. For z take the height of a face that can be "
      "reached, and find how far the centre lies from it on a loose joint of the same "
      "kind."),
  [POINT_UPPER_MOUNT] = N_ (
      "Lay a straight edge across both towers: half the distance between the two rod "
      "ends is y. Let it stand out over the wing and drop the bob from it: its height "
      "above the floor, less the way down to the bearing’s centre, is z. The bob at "
      "the wing, in line with the rod, gives x. Do not loosen the rod’s nut: the "
      "spring pushes against it."),
  [POINT_STRUT_FOOT] = N_ (
      "Choose a height near the lower end of the tube and write it down as z. At that "
      "height measure to both sides of the tube and halve: across for y, lengthways "
      "for x. Any height will do, but the lower it is, the truer is the axis."),
  [POINT_TIE_ROD_OUTER] = N_ (
      "As the ball joint: the bob on both sides of the housing, halved, for x and y; z "
      "by way of a face that can be reached and a loose joint. The wheels point "
      "straight ahead. Take its height and that of the inner end from the same spot "
      "of the floor."),
  [POINT_TIE_ROD_INNER] = N_ (
      "The ball sits in its boot at the end of the rack. With the wheels straight ahead "
      "feel for it through the boot, mark its middle, and drop the bob from the mark. "
      "Measure the other side too: with the rack in the middle both lie alike."),
  [POINT_WHEEL_CENTRE] = N_ (
      "z is the height of the hub’s middle. For y hold a straight edge upright against "
      "the rim, drop the bob from it at hub height, and go inboard by half the width "
      "of the rim from edge to edge. x is 0 if the front axle’s line was laid through "
      "both wheel centres."),
};

const char *
guide_point_method (PointName point)
{
  return _ (methods[point]);
}

/* What the gauge reads between two points: the way from one to the other and what to say
 * where it rises and where it falls. */
typedef struct {
  PointName from, to;
  gboolean is_side; /* seen from the side, rearward; else from the front, inward */
  const char *rises, *falls;
} Slope;

static const Slope arm_slope = {
  POINT_BALL_JOINT, POINT_ARM_FRONT_PIVOT, FALSE,
  N_ ("Seen from the front, the line from the ball joint to this pivot rises inward by "
      "%s°."),
  N_ ("Seen from the front, the line from the ball joint to this pivot falls inward by "
      "%s°.")
};
static const Slope hinge_slope = {
  POINT_ARM_FRONT_PIVOT, POINT_ARM_REAR_PIVOT, TRUE,
  N_ ("Seen from the side, the line through both pivots rises rearward by %s°."),
  N_ ("Seen from the side, the line through both pivots falls rearward by %s°.")
};
static const Slope tie_rod_slope = {
  POINT_TIE_ROD_OUTER, POINT_TIE_ROD_INNER, FALSE,
  N_ ("An angle gauge on the tie rod, held across the car, shows that it rises inward by "
      "%s°."),
  N_ ("An angle gauge on the tie rod, held across the car, shows that it falls inward by "
      "%s°.")
};

static char *
slope_sentence (const Vec3 *at, const Slope *slope)
{
  const Vec3 way = vec3_sub (at[slope->to], at[slope->from]);
  const double angle = DEGREES * atan2 (way.z, fabs (slope->is_side ? way.x : way.y));
  g_autofree char *text = number_text (fabs (angle), 1);

  return g_strdup_printf (angle >= 0.0 ? _ (slope->rises) : _ (slope->falls), text);
}

static char *
strut_sentence (const Vec3 *at)
{
  const Vec3 way = vec3_sub (at[POINT_STRUT_FOOT], at[POINT_UPPER_MOUNT]);
  g_autofree char *inward = number_text (DEGREES * atan2 (way.y, -way.z), 1);
  g_autofree char *rearward = number_text (DEGREES * atan2 (way.x, -way.z), 1);

  return g_strdup_printf (
      _ ("An angle gauge on the tube reads %s° inward seen from the front and %s° rearward "
         "seen from the side; a minus means the other way."),
      inward, rearward);
}

static char *
axis_sentence (const MeasuringGuide *guide)
{
  const Measures *measures = &guide->study->measured.now.measures;
  g_autofree char *caster = number_text (DEGREES * measures->value[QUANTITY_CASTER], 2);
  g_autofree char *sai = number_text (DEGREES * measures->value[QUANTITY_SAI], 2);

  return g_strdup_printf (
      _ ("Ball joint and upper mount make a caster of %s° and a steering-axis inclination "
         "of %s°: compare both with an alignment rack."),
      caster, sai);
}

static char *
radius_sentence (const Car *car)
{
  g_autofree char *radius = number_text (car->loaded_radius_mm, 1);

  return g_strdup_printf (
      _ ("Its height is the tyre’s loaded radius, which the car’s file has as %s mm."),
      radius);
}

char *
guide_point_check (const MeasuringGuide *guide, PointName point)
{
  const Vec3 *at = guide->car->points;

  switch (point) {
  case POINT_ARM_FRONT_PIVOT:
    return slope_sentence (at, &arm_slope);
  case POINT_ARM_REAR_PIVOT:
    return slope_sentence (at, &hinge_slope);
  case POINT_STRUT_FOOT:
    return strut_sentence (at);
  case POINT_TIE_ROD_OUTER:
  case POINT_TIE_ROD_INNER:
    return slope_sentence (at, &tie_rod_slope);
  case POINT_WHEEL_CENTRE:
    return radius_sentence (guide->car);
  case POINT_BALL_JOINT:
  case POINT_UPPER_MOUNT:
  default:
    return axis_sentence (guide);
  }
}

const char *
guide_caution (void)
{
  return _ (
      "Measure with the car on its wheels on level ground, on a pit or a drive-on "
      "lift made for it, brakes set and wheels chocked. Never reach or lie under a "
      "car that a jack alone holds; where a wheel has to come off, stands carry the "
      "car. Undo nothing: a strut’s spring and a torsion bar are under load and can "
      "kill, and no point needs them loose. Keep hands out of coils and joints while "
      "the car is being settled; let brakes and exhaust cool first.");
}

char *
guide_tolerance (const MeasuringGuide *guide, PointName point, int axis)
{
  if (!guide->is_computed)
    return g_strdup ("–");
  g_autofree char *text =
      number_text (fmin (guide->sensitivity.points[point].tolerance[axis], GUIDE_LOOSEST),
                   1);
  return g_strconcat ("±", text, NULL);
}
