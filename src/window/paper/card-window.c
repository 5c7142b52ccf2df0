/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/paper/card-window.h"
#include "window/paper/card-window-page.h"
#include "window/paper/paper-window.h"

#include <glib/gi18n-lib.h>

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
  GtkWidget *scrolled;
  PaperWindow *self;

  if (page == NULL)
    return;
  self = paper_window_new (parent, _ ("Fitting card"), &card_paper, page);
  scrolled = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), card_preview_new (page));
  paper_window_set_content (self, scrolled);
  g_object_set (paper_window_get_window (self), "default-width", 700, NULL);
  gtk_window_present (paper_window_get_window (self));
}
