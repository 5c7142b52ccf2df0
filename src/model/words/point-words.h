/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the measured points are called wherever people read of them. */

#pragma once

#include "kernel/corner.h"

#include <glib.h>

const char *point_title (PointName point);   /* translated: "Lower ball joint" */
const char *point_meaning (PointName point); /* translated: one sentence on where it is */
const char *point_axis_name (guint axis); /* translated: "x forward", "y left", "z up" */
