/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Loads of a corner that is no setup: what the car was built with. */

#pragma once

#include "model/load/load-case.h"

void joint_loads_of_corner (const SpringStudy *study,
                            const SpringCorner *corner,
                            const CarLoadCase *load_case,
                            double travel,
                            SpringMode mode,
                            JointLoads *out);
