/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/guide-window.h"
#include "window/paper-preview.h"
#include "window/paper-window.h"

#include "drawing/guide.h"

#include <glib/gi18n-lib.h>

#define PAGE_GAP 12

typedef struct {
  grefcount count; /* the window has it, and each operation of the printer */
  MeasuringGuide *guide;
  GuidePaper paper;
} GuidePages;

static void
release (gpointer data)
{
  GuidePages *self = data;

  if (!g_ref_count_dec (&self->count))
    return;
  measuring_guide_free (self->guide);
  g_free (self);
}

static void
release_closure (gpointer data, GClosure *closure)
{
  (void) closure;
  release (data);
}

static void
draw (gconstpointer paper,
      guint page,
      TextCache *texts,
      cairo_t *cr,
      double width,
      double height)
{
  const GuidePages *self = paper;

  measuring_guide_draw (self->guide, texts, cr, page, width, height);
}

static gboolean
write_guide (gpointer paper, const char *path, GError **error)
{
  const GuidePages *self = paper;

  return measuring_guide_write (self->guide, self->paper, path, error);
}

static void
on_draw_page_cb (GtkPrintOperation *operation,
                 GtkPrintContext *context,
                 int page_number,
                 gpointer data)
{
  g_autoptr (TextCache) texts = text_cache_new ();

  (void) operation;
  draw (data, (guint) page_number, texts, gtk_print_context_get_cairo_context (context),
        gtk_print_context_get_width (context), gtk_print_context_get_height (context));
}

static GtkPrintOperation *
print_guide (gpointer paper)
{
  GuidePages *self = paper;
  GtkPrintOperation *operation = gtk_print_operation_new ();
  g_autoptr (GtkPageSetup) setup = paper_page_setup (
      self->paper == GUIDE_A4 ? GTK_PAPER_NAME_A4 : GTK_PAPER_NAME_LETTER);

  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_n_pages (operation, (int) measuring_guide_n_pages ());
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_job_name (operation, _ ("Measuring guide"));
  g_ref_count_inc (&self->count);
  g_signal_connect_data (operation, "draw-page", G_CALLBACK (on_draw_page_cb), self,
                         release_closure, 0);
  return operation;
}

static GtkWidget *
new_preview (const GuidePages *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, PAGE_GAP);
  const guint n = measuring_guide_n_pages ();
  double width, height;

  guide_paper_size (self->paper, &width, &height);
  for (guint page = 0; page < n; page++) {
    g_autofree char *name =
        g_strdup_printf (_ ("Measuring guide, page %u of %u"), page + 1, n);

    gtk_box_append (GTK_BOX (box), sw_paper_preview_new ((PaperPage){ .name = name,
                                                                      .width = width,
                                                                      .height = height,
                                                                      .draw = draw,
                                                                      .paper = self,
                                                                      .page = page }));
  }
  return box;
}

/* What the desktop's country prints on. */
static GuidePaper
usual_paper (void)
{
  return g_str_equal (gtk_paper_size_get_default (), GTK_PAPER_NAME_LETTER) ? GUIDE_LETTER
                                                                            : GUIDE_A4;
}

void
guide_window_open (GtkWindow *parent, SwBench *bench)
{
  const Car *car = sw_document_get_car (sw_bench_get_document (bench));
  GuidePages *self = g_new0 (GuidePages, 1);

  g_ref_count_init (&self->count);
  self->guide = measuring_guide_new (car);
  self->paper = usual_paper ();
  paper_window_open (parent,
                     (Paper){ .title = _ ("Measuring guide"),
                              .save_title = _ ("Save the measuring guide"),
                              .file_name = g_strdup_printf ("%s – %s.pdf", car->name,
                                                            _ ("Measuring guide")),
                              .width = 760,
                              .preview = new_preview (self),
                              .paper = self,
                              .write = write_guide,
                              .print = print_guide,
                              .free_paper = release });
}
