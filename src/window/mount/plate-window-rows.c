/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/mount/plate-window-rows.h"

#include "model/plate/plate-json.h"

#include <glib/gi18n-lib.h>

#define OF(kind) (1u << (kind))
#define ANY (OF (N_PLATE_KINDS) - 1)
#define WITH_SCALE (OF (PLATE_SLOT) | OF (PLATE_CROSSED_SLOTS))
#define WITH_PLACE (ANY & ~OF (PLATE_HOLES))

#define IN(member) offsetof (Plate, member)
#define FAR PLATE_FURTHEST

const PlateRow plate_rows[N_PLATE_ROWS] = {
  { "inboard_mm", N_ ("Inboard"),
    N_ ("From the mount as measured towards the centre of the car: of the fixed place, of the "
        "scales' zero, or of the circle's centre"),
    "mm", IN (inboard_mm), PLATE_ROW_SINGLE, -FAR, FAR, 0.5, WITH_PLACE },
  { "rearward_mm", N_ ("Rearward"),
    N_ ("From the mount as measured towards the rear of the car: of the fixed place, of the "
        "scales' zero, or of the circle's centre"),
    "mm", IN (rearward_mm), PLATE_ROW_SINGLE, -FAR, FAR, 0.5, WITH_PLACE },
  { "direction_deg", N_ ("Direction"),
    N_ ("Where the scale points in plan: 0° inboard, 90° rearward. A second slot stands 90° "
        "further"),
    "°", IN (direction_deg), PLATE_ROW_SINGLE, -360.0, 360.0, 5.0, WITH_SCALE },
  { "along_mm", N_ ("Scale"), N_ ("The least and the most that can be read on the scale"),
    "mm", IN (along.least), IN (along.most), -FAR, FAR, 1.0, WITH_SCALE },
  { "across_mm", N_ ("Second scale"),
    N_ ("The least and the most that can be read on the scale of the second slot"), "mm",
    IN (across.least), IN (across.most), -FAR, FAR, 1.0, OF (PLATE_CROSSED_SLOTS) },
  { "radius_mm", N_ ("Radius"), N_ ("Of the circle on which the bearing's centre moves"),
    "mm", IN (radius_mm), PLATE_ROW_SINGLE, 0.0, FAR, 0.5, OF (PLATE_ECCENTRIC) },
  { "turn_range_deg", N_ ("Turn"),
    N_ ("From where to where it can be turned: 0° puts the bearing inboard of the circle's "
        "centre, 90° rearward"),
    "°", IN (turn_least_deg), IN (turn_most_deg), -360.0, 360.0, 5.0,
    OF (PLATE_ECCENTRIC) },
  { "raises_mm", N_ ("Raises the bearing"),
    N_ ("How much higher the bearing sits than as measured; below zero lower"), "mm",
    IN (raises_mm), PLATE_ROW_SINGLE, -FAR, FAR, 0.5, ANY },
  { "thickness_mm", N_ ("Thickness"), N_ ("Of the plate itself, for the fitter's card"),
    "mm", IN (thickness_mm), PLATE_ROW_SINGLE, 0.0, 100.0, 0.5, ANY },
  { "bearing_diameter_mm", N_ ("Bearing diameter"),
    N_ ("Outside diameter of what moves in the tower's opening; 0 where it is not known"),
    "mm", IN (bearing_diameter_mm), PLATE_ROW_SINGLE, 0.0, 500.0, 1.0, ANY },
  { "bearing_tilt_deg", N_ ("Bearing tilts"),
    N_ ("How far the bearing may tilt either way; 0 where it is not known"), "°",
    IN (bearing_tilt_deg), PLATE_ROW_SINGLE, 0.0, 45.0, 1.0, ANY },
};

gboolean
plate_row_is_of (const PlateRow *row, PlateKind kind)
{
  return (row->kinds & OF (kind)) != 0;
}
