/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/card-window.h"
#include "window/card-window-page.h"
#include "window/card-window-print.h"
#include "window/paper-window.h"

#include <glib/gi18n-lib.h>

static gboolean
write_card (gpointer page, const char *path, GError **error)
{
  const FittingCard card = card_page_card (page);

  return fitting_card_write (&card, path, error);
}

static GtkPrintOperation *
print_card (gpointer page)
{
  return card_print_operation_new (page);
}

static void
free_page (gpointer page)
{
  card_page_free (page);
}

gboolean
card_window_can_open (SwChooser *chooser)
{
  const Plate *plate = sw_chooser_get_plate (chooser);
  const char *set = sw_bench_get_setup (sw_chooser_get_bench (chooser))->plate;

  return plate != NULL &&
         (sw_chooser_find_answer (chooser) >= 0 || g_strcmp0 (set, plate->name) == 0);
}

void
card_window_open (GtkWindow *parent, SwChooser *chooser)
{
  CardPage *page = card_page_new (chooser);

  if (page == NULL)
    return;
  paper_window_open (parent, (Paper){ .title = _ ("Fitting card"),
                                      .save_title = _ ("Save the card"),
                                      .file_name =
                                          g_strdup_printf ("%s – %s.pdf", page->car->name,
                                                           page->plate->name),
                                      .width = 700,
                                      .preview = card_preview_new (page),
                                      .paper = page,
                                      .write = write_card,
                                      .print = print_card,
                                      .free_paper = free_page });
}
