/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The keys that move the travel cursor, the same on curves, table and wheel handle. */

#pragma once

#include "window/bench/bench.h"

#include <gtk/gtk.h>

/* Left and right step by 1 mm, with Shift 10, with Ctrl 0.1; Home goes to the standing
 * height; Page Up and Page Down to full bump and droop. TRUE when the key was one of
 * them. */
gboolean travel_key (SwBench *bench, guint key, GdkModifierType state);
