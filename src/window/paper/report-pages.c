/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/paper/report-pages.h"
#include "window/paper/paper-print.h"
#include "window/paper/today.h"

#include <glib/gi18n-lib.h>

static ReportPages *
new_pages (const Car *car)
{
  ReportPages *pages = g_new0 (ReportPages, 1);

  pages->car = car_copy (car);
  pages->report.car = pages->car;
  return pages;
}

ReportPages *
report_pages_new (SwBench *bench)
{
  ReportPages *pages = new_pages (sw_document_get_car (sw_bench_get_document (bench)));
  Report *report = &pages->report;
  CarLoadCase cases[LOAD_CASES_MOST];

  car_load_cases (pages->car, cases);
  pages->today = today ();
  report->in_hand = sw_bench_get_setup_index (bench);
  report->choice = sw_bench_get_choice (bench);
  report->load_case = cases[0];
  report->date = pages->today;
  report->paper = paper_usual ();
  for (ReportPart part = 0; part < N_REPORT_PARTS; part++)
    report->has[part] = report_part_is_given (report, part);
  report_pages_lay_out (pages);
  return pages;
}

void
report_pages_lay_out (ReportPages *pages)
{
  g_clear_pointer (&pages->press, report_press_free);
  pages->press = report_press_new (&pages->report);
}

static gpointer
copy_pages (gconstpointer data)
{
  const ReportPages *pages = data;
  ReportPages *copy = new_pages (pages->car);

  copy->report = pages->report;
  copy->report.car = copy->car;
  copy->today = g_strdup (pages->today);
  copy->report.date = pages->report.date != NULL ? copy->today : NULL;
  report_pages_lay_out (copy);
  return copy;
}

static void
free_pages (gpointer data)
{
  ReportPages *pages = data;

  report_press_free (pages->press);
  g_free (pages->today);
  car_free (pages->car);
  g_free (pages);
}

static const char *
paper_size (gconstpointer data)
{
  const ReportPages *pages = data;

  return paper_toolkit_name (pages->report.paper);
}

static guint
lay_out (gpointer data, double width, double height)
{
  ReportPages *pages = data;

  pages->report.paper = (PaperSize){ width, height };
  report_pages_lay_out (pages);
  return report_n_pages (pages->press);
}

static void
draw_page (gpointer data, cairo_t *cr, guint page, double width, double height)
{
  const ReportPages *pages = data;

  (void) width;
  (void) height;
  report_draw_page (pages->press, cr, page);
}

static gboolean
write_pages (gpointer data, const char *path, GError **error)
{
  const ReportPages *pages = data;

  return report_write (&pages->report, path, error);
}

static char *
pages_name (gconstpointer data)
{
  const ReportPages *pages = data;

  return g_strdup_printf ("%s – %s", pages->car->name, C_ ("file name", "report"));
}

const PaperKind report_paper = { .size = paper_size,
                                 .lay_out = lay_out,
                                 .draw_page = draw_page,
                                 .write = write_pages,
                                 .name = pages_name,
                                 .copy = copy_pages,
                                 .free = free_pages };

struct _SwReportPreview {
  SwCanvas parent_instance;

  const ReportPages *pages;
  guint page;
};

G_DEFINE_FINAL_TYPE (SwReportPreview, sw_report_preview, SW_TYPE_CANVAS)

static void
sw_report_preview_draw (SwCanvas *canvas, cairo_t *cr, double width, double height)
{
  SwReportPreview *self = SW_REPORT_PREVIEW (canvas);
  const PaperSize paper = self->pages->report.paper;
  const double scale = MIN (width / paper.width, height / paper.height);

  cairo_set_operator (cr, CAIRO_OPERATOR_CLEAR);
  cairo_paint (cr);
  cairo_set_operator (cr, CAIRO_OPERATOR_OVER);
  if (self->page >= report_n_pages (self->pages->press))
    return;
  cairo_translate (cr, (width - paper.width * scale) / 2.0,
                   (height - paper.height * scale) / 2.0);
  cairo_scale (cr, scale, scale);
  cairo_rectangle (cr, 0, 0, paper.width, paper.height);
  cairo_clip (cr);
  report_draw_page (self->pages->press, cr, self->page);
}

static void
sw_report_preview_class_init (SwReportPreviewClass *class)
{
  SW_CANVAS_CLASS (class)->draw = sw_report_preview_draw;
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (class),
                                        GTK_ACCESSIBLE_ROLE_IMG);
}

static void
sw_report_preview_init (SwReportPreview *self)
{
  gtk_widget_set_size_request (GTK_WIDGET (self), 380, 420);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Preview"), -1);
}

GtkWidget *
sw_report_preview_new (const ReportPages *pages)
{
  SwReportPreview *self = g_object_new (SW_TYPE_REPORT_PREVIEW, NULL);

  self->pages = pages;
  return GTK_WIDGET (self);
}

void
sw_report_preview_set_page (SwReportPreview *self, guint page)
{
  self->page = page;
  sw_canvas_invalidate (SW_CANVAS (self));
}
