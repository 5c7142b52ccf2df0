/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/card-window-print.h"
#include "window/paper-window.h"

static void
on_draw_page_cb (GtkPrintOperation *operation,
                 GtkPrintContext *context,
                 int page_number,
                 gpointer data)
{
  const FittingCard card = card_page_card (data);
  g_autoptr (TextCache) texts = text_cache_new ();

  (void) operation;
  (void) page_number;
  fitting_card_draw (texts, gtk_print_context_get_cairo_context (context), &card,
                     gtk_print_context_get_width (context),
                     gtk_print_context_get_height (context));
}

GtkPrintOperation *
card_print_operation_new (const CardPage *page)
{
  GtkPrintOperation *operation = gtk_print_operation_new ();
  g_autoptr (GtkPageSetup) setup = paper_page_setup (GTK_PAPER_NAME_A4);

  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_n_pages (operation, 1);
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_job_name (operation, page->plate->name);
  g_signal_connect_data (operation, "draw-page", G_CALLBACK (on_draw_page_cb),
                         card_page_copy (page),
                         (GClosureNotify) (void (*) (void)) card_page_free, 0);
  return operation;
}
