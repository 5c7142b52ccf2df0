/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/paper/paper-print.h"

PaperSize
paper_usual (void)
{
  return g_str_equal (gtk_paper_size_get_default (), GTK_PAPER_NAME_LETTER)
             ? paper_letter ()
             : paper_a4 ();
}

const char *
paper_toolkit_name (PaperSize paper)
{
  return paper.width == paper_letter ().width ? GTK_PAPER_NAME_LETTER : GTK_PAPER_NAME_A4;
}

typedef struct {
  const PaperKind *kind;
  gpointer pages;
} Job;

static void
free_job (gpointer data, GClosure *closure)
{
  Job *job = data;

  (void) closure;
  job->kind->free (job->pages);
  g_free (job);
}

/* The paper may be another than the one that was proposed. */
static void
on_begin_print_cb (GtkPrintOperation *operation, GtkPrintContext *context, Job *job)
{
  gtk_print_operation_set_n_pages (operation,
                                   (int) job->kind
                                       ->lay_out (job->pages,
                                                  gtk_print_context_get_width (context),
                                                  gtk_print_context_get_height (
                                                      context)));
}

static void
on_draw_page_cb (GtkPrintOperation *operation,
                 GtkPrintContext *context,
                 int page,
                 Job *job)
{
  (void) operation;
  job->kind->draw_page (job->pages, gtk_print_context_get_cairo_context (context),
                        (guint) page, gtk_print_context_get_width (context),
                        gtk_print_context_get_height (context));
}

static GtkPageSetup *
upright (const char *size)
{
  GtkPageSetup *setup = gtk_page_setup_new ();
  GtkPaperSize *paper = gtk_paper_size_new (size);

  gtk_page_setup_set_paper_size_and_default_margins (setup, paper);
  gtk_page_setup_set_orientation (setup, GTK_PAGE_ORIENTATION_PORTRAIT);
  gtk_paper_size_free (paper);
  return setup;
}

GtkPrintOperation *
paper_print_operation_new (const PaperKind *kind, gconstpointer pages)
{
  GtkPrintOperation *operation = gtk_print_operation_new ();
  g_autoptr (GtkPageSetup) setup = upright (kind->size (pages));
  g_autofree char *name = kind->name (pages);
  Job *job = g_new (Job, 1);

  job->kind = kind;
  job->pages = kind->copy (pages);
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_job_name (operation, name);
  g_signal_connect (operation, "draw-page", G_CALLBACK (on_draw_page_cb), job);
  g_signal_connect_data (operation, "begin-print", G_CALLBACK (on_begin_print_cb), job,
                         free_job, 0);
  return operation;
}
