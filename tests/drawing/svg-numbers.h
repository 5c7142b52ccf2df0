/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a drawing asks of cairo, read back from an SVG: a coordinate that is not a number
 * comes out as one at the end of cairo's range, ±2²³. */

#pragma once

#include <cairo-svg.h>
#include <glib.h>
#include <math.h>

static inline cairo_status_t
svg_append (void *text, const unsigned char *data, unsigned int length)
{
  g_string_append_len (text, (const char *) data, length);
  return CAIRO_STATUS_SUCCESS;
}

/* The largest number in any path. */
static inline double
svg_largest_number (const GString *svg)
{
  double largest = 0.0;

  for (const char *d = strstr (svg->str, " d=\""); d != NULL; d = strstr (d, " d=\"")) {
    for (d += 4; *d != '"' && *d != '\0';) {
      char *end;
      const double value = g_ascii_strtod (d, &end);

      g_assert_true (isfinite (value));
      largest = fmax (largest, fabs (value));
      d = end > d ? end : d + 1;
    }
  }
  return largest;
}
