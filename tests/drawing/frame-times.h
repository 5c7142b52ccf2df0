/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What benchmarks of drawings say of their frames. */

#pragma once

#include <glib.h>

/* One line: median and 95th percentile of @n times in µs, beside the 16 ms that a frame
 * has at 60 to the second. Sorts @times. */
void frame_times_print (const char *what, gint64 *times, guint n);
