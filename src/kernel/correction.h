/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the kernel only: what each correction of a setup does to a worked-out corner. A
 * correction of 0 leaves the corner as it is, to the bit. */

#pragma once

#include "kernel/corner.h"

void correct_arm (const Corrections *corrections,
                  const MeasuredCorner *measured,
                  Corner *corner);
void correct_knuckle (const Corrections *corrections, Corner *corner);
void correct_wheel (const Corrections *corrections, Corner *corner);
void correct_tie_rod (const Corrections *corrections, Corner *corner);

/* A point of the lower arm that was measured at @place: in the body at arm angle 0. */
Vec3 corrected_on_arm (const Corner *corner, Vec3 place);
/* A point of the strut's tube that was measured at @place: as a knuckle vector. */
Vec3 corrected_on_tube (const Corner *corner, Vec3 place);
