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
