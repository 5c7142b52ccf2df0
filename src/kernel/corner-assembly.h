/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the kernel only: corner_assemble () in two halves, for one who hangs the same
 * corner on mount after mount. */

#pragma once

#include "kernel/corner.h"

/* All that the place of the mount has no part in. The verdict is corner_assemble ()'s. */
CornerVerdict corner_prepare (const MeasuredCorner *measured,
                              const Adjustment *adjustment,
                              Corner *corner);

/* The place in the body where @mount puts the strut's top bearing. */
Vec3 corner_mount_at (const MeasuredCorner *measured, MountOffset mount);

/* A prepared corner hung on the mount of @adjustment: its start position and, if that is
 * asked, the tie rod that brings its toe back. */
void corner_hang (const MeasuredCorner *measured,
                  const Adjustment *adjustment,
                  Corner *corner);
