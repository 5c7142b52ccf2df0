/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a drawing wrote, as bytes: pictures and pages are looked at by what is in them. */

#pragma once

#include <glib.h>

/* Of a file that must be there. */
GBytes *written_bytes (const char *path);
/* How often @part stands in it. */
guint written_count (GBytes *bytes, const char *part);
