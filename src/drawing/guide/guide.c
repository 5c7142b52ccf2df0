/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/guide/guide-private.h"

#include "drawing/export/export-file.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define MARGIN 40.0 /* points: more than printers leave white, and room to punch */
#define TYPE 0.84   /* of the theme's, which is for windows */
#define POINTS_A_PAGE 2
#define N_POINT_PAGES (N_POINTS / POINTS_A_PAGE)
#define N_PAGES (1 + N_POINT_PAGES + 1)

MeasuringGuide *
measuring_guide_new (const Car *car)
{
  MeasuringGuide *guide = g_new0 (MeasuringGuide, 1);
  const MeasuredCorner measured = car_measured_corner (car);

  guide->car = car_without_setups (car);
  guide->study = study_new ();
  study_solve (guide->study, guide->car, 0, 0.0);
  guide->is_computed = point_sensitivity_solve (&measured, &guide->sensitivity);
  return guide;
}

void
measuring_guide_free (MeasuringGuide *guide)
{
  if (guide == NULL)
    return;
  study_free (guide->study);
  car_free (guide->car);
  g_free (guide);
}

guint
measuring_guide_n_pages (void)
{
  return N_PAGES;
}

void
guide_line (GuidePage *page, FittingStyle style, const char *text)
{
  const double line = fitting_line_height (&page->pen, style);

  fitting_write (&page->pen, style, text, page->x, page->y + 0.78 * line, page->width,
                 FITTING_LEFT);
  page->y += line;
}

void
guide_paragraph (GuidePage *page, FittingStyle style, const char *text)
{
  page->y += fitting_paragraph (&page->pen, style, text, page->x, page->y, page->width);
}

static void
draw_head (GuidePage *page)
{
  const FittingPen *pen = &page->pen;
  const char *title = _ ("Measuring guide");
  const double line = fitting_line_height (pen, FITTING_HEADING);
  const double wide = fitting_text_width (pen, FITTING_HEADING, title) + 12.0;

  fitting_ink (pen, pen->theme.ink);
  fitting_write (pen, FITTING_HEADING, title, page->x, page->y + 0.78 * line, page->width,
                 FITTING_LEFT);
  fitting_ink (pen, pen->theme.soft_ink);
  fitting_write (pen, FITTING_TEXT, page->guide->car->name, page->x + wide,
                 page->y + 0.78 * line, page->width - wide, FITTING_RIGHT);
  page->y += line + GUIDE_GAP;
}

static void
draw_foot (const GuidePage *page, guint number)
{
  /* Translators: this page and how many there are. */
  g_autofree char *text = g_strdup_printf (_ ("Page %u of %u"), number + 1, N_PAGES);

  fitting_ink (&page->pen, page->pen.theme.soft_ink);
  fitting_write (&page->pen, FITTING_SMALL, text, page->x, page->bottom + 16.0,
                 page->width, FITTING_RIGHT);
}

static void
draw_points (GuidePage *page, guint first)
{
  const double bottom = page->bottom, high = bottom - page->y;

  for (guint i = 0; i < POINTS_A_PAGE; i++) {
    page->y = bottom - high * (POINTS_A_PAGE - i) / POINTS_A_PAGE;
    page->bottom = page->y + high / POINTS_A_PAGE - 2.0 * GUIDE_GAP;
    guide_point_block (page, (PointName) (first + i));
  }
  page->bottom = bottom;
}

static void
fill_page (GuidePage *page, guint number)
{
  draw_head (page);
  if (number == 0)
    guide_setting_page (page);
  else if (number <= N_POINT_PAGES)
    draw_points (page, (number - 1) * POINTS_A_PAGE);
  else
    guide_record_page (page);
  page->is_full |= page->y > page->bottom;
}

static GuidePage
new_page (const MeasuringGuide *guide,
          TextCache *texts,
          double width,
          double height,
          double type)
{
  return (
      GuidePage){ .guide = guide,
                  .pen = { .texts = texts,
                           .theme = theme_scaled (theme_paper (), TYPE * type * height /
                                                                      PAPER_A4_HEIGHT) },
                  .x = MARGIN,
                  .y = MARGIN,
                  .width = width - 2.0 * MARGIN,
                  .bottom = height - MARGIN };
}

/* The largest type with which every page holds what it says: languages differ. */
static double
fit_type (const MeasuringGuide *guide, TextCache *texts, double width, double height)
{
  static const double sizes[] = { 1.0, 0.95, 0.9, 0.85, 0.8, 0.75 };

  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++) {
    gboolean is_full = FALSE;

    for (guint number = 0; number < N_PAGES && !is_full; number++) {
      GuidePage page = new_page (guide, texts, width, height, sizes[i]);

      fill_page (&page, number);
      is_full = page.is_full;
    }
    if (!is_full)
      return sizes[i];
  }
  return sizes[G_N_ELEMENTS (sizes) - 1];
}

void
measuring_guide_draw (const MeasuringGuide *guide,
                      TextCache *texts,
                      cairo_t *cr,
                      guint number,
                      double width,
                      double height)
{
  GuidePage page =
      new_page (guide, texts, width, height, fit_type (guide, texts, width, height));

  g_return_if_fail (number < N_PAGES);
  page.pen.cr = cr;
  theme_use (cr, page.pen.theme.ground);
  cairo_paint (cr);
  fill_page (&page, number);
  draw_foot (&page, number);
}

typedef struct {
  const MeasuringGuide *guide;
  double width, height;
} GuideSheets;

static void
draw_page (cairo_t *cr, gpointer data, guint page)
{
  const GuideSheets *sheets = data;
  g_autoptr (TextCache) texts = text_cache_new ();

  measuring_guide_draw (sheets->guide, texts, cr, page, sheets->width, sheets->height);
}

static const char *
no_heading (gpointer sheets, guint page)
{
  (void) sheets;
  (void) page;
  return NULL;
}

gboolean
measuring_guide_write (const MeasuringGuide *guide,
                       PaperSize paper,
                       const char *path,
                       GError **error)
{
  GuideSheets sheets = { guide, paper.width, paper.height };
  const ExportPages pages = { sheets.width, sheets.height, _ ("Measuring guide"),
                              no_heading };
  return export_file_write_pages (draw_page, &sheets, N_PAGES, pages, path, error);
}
