/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every quantity of a corner from nothing but solved points, by formulas of its own; what
 * is a rate comes from differences of neighbouring solutions. */

#pragma once

#include "raw-corner.h"

#include "kernel/measure.h"

/* Solutions either side of the one that is measured. */
#define RAW_REACH 6
#define RAW_ROW (2 * RAW_REACH + 1)
/* Between them, mm. The differences are of sixth order: over lengths of some 250 mm the
 * part left out is (3/250)⁶, which is 3e-12. */
#define RAW_STEP 3.0

typedef struct {
  double value[N_QUANTITIES];
  double slope[N_QUANTITIES];
} RawMeasures;

/* @row[RAW_REACH] is the solution that is measured, its neighbours stand RAW_STEP apart
 * in travel. */
RawMeasures raw_measures (const RawCorner *raw, const RawPose row[RAW_ROW]);
Vec3 raw_contact (const RawCorner *raw, const RawPose *pose);
Vec3 raw_spin_axis (const RawCorner *raw, const RawPose *pose);

/* A wheel spacer: the wheel's centre @length outboard along its spin axis. */
void raw_space_wheel (RawCorner *raw, double length);
