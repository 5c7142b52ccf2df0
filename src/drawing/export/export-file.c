/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/export/export-file.h"

#include "drawing/export/export-png.h"
#include "model/file/file-replace.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <glib/gi18n-lib.h>
#include <math.h>

#define DOTS_OF_A_WINDOW 96
#define POINTS_PER_PIXEL 0.75 /* 72 to the inch against 96 */

typedef enum {
  KIND_PNG,
  KIND_SVG,
  KIND_PDF
} Kind;

static gboolean
has_suffix (const char *path, const char *suffix)
{
  const gsize length = strlen (path), end = strlen (suffix);

  return length >= end && g_ascii_strcasecmp (path + length - end, suffix) == 0;
}

static gboolean
find_kind (const char *path, Kind *kind, GError **error)
{
  static const char *const suffixes[] = { ".png", ".svg", ".pdf" };

  for (guint i = 0; i < G_N_ELEMENTS (suffixes); i++)
    if (has_suffix (path, suffixes[i])) {
      *kind = (Kind) i;
      return TRUE;
    }

  g_autofree char *shown = g_filename_display_name (path);
  g_set_error (error, EXPORT_ERROR, EXPORT_ERROR_SUFFIX,
               _ ("“%s” does not end in .png, .svg or .pdf."), shown);
  return FALSE;
}

static gboolean
check_size (const ExportOptions *options, GError **error)
{
  if (MIN (options->width, options->height) >= EXPORT_LEAST_PIXELS &&
      MAX (options->width, options->height) <= EXPORT_MOST_PIXELS)
    return TRUE;
  g_set_error (error, EXPORT_ERROR, EXPORT_ERROR_SIZE,
               _ ("A drawing of %d × %d pixels is not possible: each side is %d to %d."),
               options->width, options->height, EXPORT_LEAST_PIXELS, EXPORT_MOST_PIXELS);
  return FALSE;
}

static cairo_status_t
append (void *bytes, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (bytes, data, length);
  return CAIRO_STATUS_SUCCESS;
}

/* What is drawn on: @width by @height in units of the drawing, with @scale pixels (PNG),
 * or units of the file (SVG) or points (PDF) to each. */
typedef struct {
  double width, height;
  double scale;
  cairo_format_t format; /* of a PNG, and … */
  int dots;              /* … its pixels to the inch */
  cairo_svg_unit_t unit; /* of an SVG */
} Paper;

static cairo_surface_t *
create_pdf (double width, double height, GByteArray *bytes)
{
  cairo_surface_t *surface =
      cairo_pdf_surface_create_for_stream (append, bytes, width, height);

  /* cairo puts the time of day there */
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, "");
  return surface;
}

static cairo_surface_t *
create_surface (Kind kind, const Paper *paper, GByteArray *bytes)
{
  const double width = paper->width * paper->scale, height = paper->height * paper->scale;
  cairo_surface_t *surface = NULL;

  switch (kind) {
  case KIND_PNG:
    return export_png_surface (paper->format, (int) ceil (width), (int) ceil (height));
  case KIND_SVG:
    surface = cairo_svg_surface_create_for_stream (append, bytes, width, height);
    cairo_svg_surface_set_document_unit (surface, paper->unit);
    return surface;
  case KIND_PDF:
    return create_pdf (width, height, bytes);
  }
  g_return_val_if_reached (NULL);
}

/* cairo numbers the group of a drawing through the life of the process: the second export
 * would differ from the first. */
static void
name_group (GByteArray *bytes)
{
  static const char numbered[] = "<g id=\"surface", named[] = "<g id=\"drawing\"";
  const char *start = g_strstr_len ((const char *) bytes->data, bytes->len, numbered);

  if (start == NULL)
    return;
  const guint at = (guint) (start - (const char *) bytes->data);
  guint end = at + sizeof numbered - 1;
  while (end < bytes->len && g_ascii_isdigit (bytes->data[end]))
    end++;

  const guint old = end + 1 - at, new = sizeof named - 1;
  g_autofree guint8 *rest = g_memdup2 (bytes->data + at + old, bytes->len - at - old);
  const guint n_rest = bytes->len - at - old;
  g_byte_array_set_size (bytes, at);
  g_byte_array_append (bytes, (const guint8 *) named, new);
  g_byte_array_append (bytes, rest, n_rest);
}

/* Draws into @bytes. */
static cairo_status_t
draw_bytes (
    ExportDraw draw, gconstpointer view, Kind kind, const Paper *paper, GByteArray *bytes)
{
  cairo_surface_t *surface = create_surface (kind, paper, bytes);
  cairo_t *cr = cairo_create (surface);

  if (paper->scale != 1.0)
    cairo_scale (cr, paper->scale, paper->scale);
  draw (cr, view, paper->width, paper->height);
  cairo_status_t status = cairo_status (cr);
  cairo_destroy (cr);

  if (status == CAIRO_STATUS_SUCCESS && kind == KIND_PNG)
    status = export_png (surface, paper->dots, bytes);
  cairo_surface_finish (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  if (kind == KIND_SVG)
    name_group (bytes);
  return status;
}

static gboolean
keep_bytes (const GByteArray *bytes,
            cairo_status_t status,
            const char *path,
            GError **error)
{
  if (status != CAIRO_STATUS_SUCCESS) {
    g_autofree char *shown = g_filename_display_name (path);

    g_set_error (error, EXPORT_ERROR, EXPORT_ERROR_DRAWING,
                 _ ("“%s” could not be drawn: %s."), shown,
                 cairo_status_to_string (status));
    return FALSE;
  }
  return file_replace (path, (const char *) bytes->data, bytes->len, error);
}

static gboolean
write_paper (ExportDraw draw,
             gconstpointer view,
             Kind kind,
             const Paper *paper,
             const char *path,
             GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  const cairo_status_t status = draw_bytes (draw, view, kind, paper, bytes);

  return keep_bytes (bytes, status, path, error);
}

gboolean
export_file_write (ExportDraw draw,
                   gconstpointer view,
                   const ExportOptions *options,
                   const char *path,
                   GError **error)
{
  Kind kind;

  if (!find_kind (path, &kind, error) || !check_size (options, error))
    return FALSE;
  const Paper paper = { .width = options->width,
                        .height = options->height,
                        .scale = kind == KIND_PDF ? POINTS_PER_PIXEL : 1.0,
                        .format = options->background == EXPORT_BACKGROUND_NONE
                                      ? CAIRO_FORMAT_ARGB32
                                      : CAIRO_FORMAT_RGB24,
                        .dots = DOTS_OF_A_WINDOW,
                        .unit = CAIRO_SVG_UNIT_PX };
  return write_paper (draw, view, kind, &paper, path, error);
}

gboolean
export_file_write_page (ExportDraw draw,
                        gconstpointer view,
                        double width,
                        double height,
                        const char *path,
                        GError **error)
{
  Kind kind;

  if (!find_kind (path, &kind, error))
    return FALSE;
  const Paper paper = { .width = width,
                        .height = height,
                        .scale = kind == KIND_PNG ? EXPORT_PAGE_DOTS / 72.0 : 1.0,
                        .format = CAIRO_FORMAT_RGB24,
                        .dots = EXPORT_PAGE_DOTS,
                        .unit = CAIRO_SVG_UNIT_PT };
  return write_paper (draw, view, kind, &paper, path, error);
}

static void
add_to_outline (cairo_surface_t *surface, const char *heading, guint page)
{
  g_autofree char *target = g_strdup_printf ("page=%u", page + 1);

  if (heading != NULL)
    cairo_pdf_surface_add_outline (surface, CAIRO_PDF_OUTLINE_ROOT, heading, target,
                                   CAIRO_PDF_OUTLINE_FLAG_OPEN);
}

static cairo_status_t
draw_pages (ExportDrawPage draw,
            gpointer pages,
            guint n_pages,
            ExportPages paper,
            GByteArray *bytes)
{
  cairo_surface_t *surface = create_pdf (paper.width, paper.height, bytes);
  cairo_t *cr = cairo_create (surface);

  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, paper.title);
  for (guint page = 0; page < n_pages; page++) {
    add_to_outline (surface, paper.heading (pages, page), page);
    draw (cr, pages, page);
    cairo_show_page (cr);
  }
  cairo_status_t status = cairo_status (cr);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  return status;
}

gboolean
export_file_write_pages (ExportDrawPage draw,
                         gpointer pages,
                         guint n_pages,
                         ExportPages paper,
                         const char *path,
                         GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();

  if (!has_suffix (path, ".pdf")) {
    g_set_error (error, EXPORT_ERROR, EXPORT_ERROR_SUFFIX,
                 _ ("“%s” does not end in .pdf."), path);
    return FALSE;
  }
  const cairo_status_t status = draw_pages (draw, pages, n_pages, paper, bytes);
  return keep_bytes (bytes, status, path, error);
}
