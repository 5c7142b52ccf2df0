/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/paper/guide-window.h"
#include "window/paper/paper-preview.h"
#include "window/paper/paper-print.h"
#include "window/paper/paper-window.h"

#include "drawing/guide/guide.h"

#include <glib/gi18n-lib.h>

#define PAGE_GAP 12

typedef struct {
  Car *car;
  MeasuringGuide *guide;
  PaperSize paper;
} GuidePages;

static GuidePages *
pages_new (const Car *car, PaperSize paper)
{
  GuidePages *self = g_new0 (GuidePages, 1);

  self->car = car_copy (car);
  self->guide = measuring_guide_new (self->car);
  self->paper = paper;
  return self;
}

static gpointer
copy_pages (gconstpointer pages)
{
  const GuidePages *self = pages;

  return pages_new (self->car, self->paper);
}

static void
free_pages (gpointer pages)
{
  GuidePages *self = pages;

  measuring_guide_free (self->guide);
  car_free (self->car);
  g_free (self);
}

static const char *
paper_size (gconstpointer pages)
{
  const GuidePages *self = pages;

  return paper_toolkit_name (self->paper);
}

static guint
lay_out (gpointer pages, double width, double height)
{
  (void) pages;
  (void) width;
  (void) height;
  return measuring_guide_n_pages ();
}

static void
draw (gconstpointer pages,
      guint page,
      TextCache *texts,
      cairo_t *cr,
      double width,
      double height)
{
  const GuidePages *self = pages;

  measuring_guide_draw (self->guide, texts, cr, page, width, height);
}

static void
draw_page (gpointer pages, cairo_t *cr, guint page, double width, double height)
{
  g_autoptr (TextCache) texts = text_cache_new ();

  draw (pages, page, texts, cr, width, height);
}

static gboolean
write_pages (gpointer pages, const char *path, GError **error)
{
  const GuidePages *self = pages;

  return measuring_guide_write (self->guide, self->paper, path, error);
}

static char *
pages_name (gconstpointer pages)
{
  const GuidePages *self = pages;

  return g_strdup_printf ("%s – %s", self->car->name, _ ("Measuring guide"));
}

static const PaperKind guide_paper = { .size = paper_size,
                                       .lay_out = lay_out,
                                       .draw_page = draw_page,
                                       .write = write_pages,
                                       .name = pages_name,
                                       .copy = copy_pages,
                                       .free = free_pages };

static GtkWidget *
new_preview (const GuidePages *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, PAGE_GAP);
  const guint n = measuring_guide_n_pages ();

  for (guint page = 0; page < n; page++) {
    g_autofree char *name =
        g_strdup_printf (_ ("Measuring guide, page %u of %u"), page + 1, n);

    gtk_box_append (GTK_BOX (box),
                    sw_paper_preview_new ((PaperPage){ .name = name,
                                                       .width = self->paper.width,
                                                       .height = self->paper.height,
                                                       .draw = draw,
                                                       .paper = self,
                                                       .page = page }));
  }
  return box;
}

void
guide_window_open (GtkWindow *parent, SwBench *bench)
{
  const Car *car = sw_document_get_car (sw_bench_get_document (bench));
  GuidePages *pages = pages_new (car, paper_usual ());
  PaperWindow *self =
      paper_window_new (parent, _ ("Measuring guide"), &guide_paper, pages);
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), new_preview (pages));
  paper_window_set_content (self, scrolled);
  g_object_set (paper_window_get_window (self), "default-width", 760, NULL);
  gtk_window_present (paper_window_get_window (self));
}
