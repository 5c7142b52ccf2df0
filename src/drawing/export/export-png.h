/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside the drawing layer: an image to draw on, and its PNG. */

#pragma once

#include <cairo.h>
#include <glib.h>

/* An empty RGB24 or ARGB32 image. */
cairo_surface_t *export_png_surface (cairo_format_t format, int width, int height);

/* Appends a CAIRO_FORMAT_RGB24 or ARGB32 surface to @bytes, without a time or a text;
 * @dots pixels to the inch. */
cairo_status_t export_png (cairo_surface_t *image, int dots, GByteArray *bytes);
