/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Written for one picture per run, where every millisecond is start-up: memory comes in
 * large pages, as touching a thousand small ones costs as much as the drawing itself.
 * Line drawings on a plain ground need no row filters: without them, at level 3, deflate
 * takes a fifth of the time of cairo's own writer for a file a tenth larger. */

#include "drawing/export/export-png.h"

#include <png.h>
#include <setjmp.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>

#define COMPRESSION_LEVEL 3
#define INCH 0.0254 /* m */
#define LARGE_PAGE ((size_t) 2 * 1024 * 1024)

cairo_surface_t *
export_png_surface (cairo_format_t format, int width, int height)
{
  static const cairo_user_data_key_t pixels_key;
  const int stride = cairo_format_stride_for_width (format, width);
  const size_t needed = (size_t) stride * (size_t) height;
  const size_t size = (needed + LARGE_PAGE - 1) / LARGE_PAGE * LARGE_PAGE;
  void *pixels = NULL;

  if (posix_memalign (&pixels, LARGE_PAGE, size) != 0)
    return cairo_image_surface_create (format, width, height);
#ifdef MADV_HUGEPAGE
  madvise (pixels, size, MADV_HUGEPAGE);
#endif
  memset (pixels, 0, needed);

  cairo_surface_t *surface =
      cairo_image_surface_create_for_data (pixels, format, width, height, stride);
  cairo_surface_set_user_data (surface, &pixels_key, pixels, free);
  return surface;
}

static void
append (png_structp png, png_bytep data, png_size_t length)
{
  g_byte_array_append (png_get_io_ptr (png), data, (guint) length);
}

static void
flush (png_structp png)
{
  (void) png;
}

/* From cairo's premultiplied 0xAARRGGBB to straight R, G, B, A. */
static void
unmultiply (png_structp png, png_row_infop row, png_bytep data)
{
  (void) png;
  for (png_size_t i = 0; i + 4 <= row->rowbytes; i += 4) {
    guint32 pixel;
    memcpy (&pixel, data + i, 4);

    const guint alpha = pixel >> 24, half = alpha / 2;
    for (guint c = 0; c < 3; c++) {
      const guint part = (pixel >> (16 - 8 * c)) & 0xff;
      data[i + c] = alpha == 0 ? 0 : (png_byte) ((part * 255 + half) / alpha);
    }
    data[i + 3] = (png_byte) alpha;
  }
}

/* From cairo's 0x00RRGGBB to R, G, B and a byte that is left out. */
static void
reorder (png_structp png, png_row_infop row, png_bytep data)
{
  (void) png;
  for (png_size_t i = 0; i + 4 <= row->rowbytes; i += 4) {
    guint32 pixel;
    memcpy (&pixel, data + i, 4);
    data[i] = (png_byte) (pixel >> 16);
    data[i + 1] = (png_byte) (pixel >> 8);
    data[i + 2] = (png_byte) pixel;
  }
}

static void
write_image (png_structp png, png_infop info, int dots, cairo_surface_t *image)
{
  const int height = cairo_image_surface_get_height (image);
  const int stride = cairo_image_surface_get_stride (image);
  const unsigned char *pixels = cairo_image_surface_get_data (image);
  const png_uint_32 per_metre = (png_uint_32) (dots / INCH + 0.5);
  const gboolean has_alpha =
      cairo_image_surface_get_format (image) == CAIRO_FORMAT_ARGB32;

  png_set_IHDR (png, info, (png_uint_32) cairo_image_surface_get_width (image),
                (png_uint_32) height, 8,
                has_alpha ? PNG_COLOR_TYPE_RGBA : PNG_COLOR_TYPE_RGB, PNG_INTERLACE_NONE,
                PNG_COMPRESSION_TYPE_DEFAULT, PNG_FILTER_TYPE_DEFAULT);
  png_set_pHYs (png, info, per_metre, per_metre, PNG_RESOLUTION_METER);
  png_set_compression_level (png, COMPRESSION_LEVEL);
  png_set_filter (png, PNG_FILTER_TYPE_BASE, PNG_FILTER_NONE);
  png_write_info (png, info);

  png_set_write_user_transform_fn (png, has_alpha ? unmultiply : reorder);
  if (!has_alpha)
    png_set_filler (png, 0, PNG_FILLER_AFTER);
  for (int row = 0; row < height; row++)
    png_write_row (png, pixels + (size_t) row * (size_t) stride);
  png_write_end (png, info);
}

cairo_status_t
export_png (cairo_surface_t *image, int dots, GByteArray *bytes)
{
  png_structp png = png_create_write_struct (PNG_LIBPNG_VER_STRING, NULL, NULL, NULL);
  png_infop info = png != NULL ? png_create_info_struct (png) : NULL;

  if (info == NULL || setjmp (png_jmpbuf (png)) != 0) {
    png_destroy_write_struct (&png, &info);
    return CAIRO_STATUS_WRITE_ERROR;
  }

  cairo_surface_flush (image);
  png_set_write_fn (png, bytes, append, flush);
  write_image (png, info, dots, image);
  png_destroy_write_struct (&png, &info);
  return CAIRO_STATUS_SUCCESS;
}
