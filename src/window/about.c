/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/about.h"
#include "window/application.h"
#include "window/dialog/escape-key.h"

#include <glib/gi18n-lib.h>

void
about_present (GtkWindow *parent)
{
  gtk_show_about_dialog (
      parent, "program-name", "Strutwright", "logo-icon-name", SW_APPLICATION_ID,
      "version", VERSION, "license-type", GTK_LICENSE_GPL_3_0, "comments",
      _ ("Solves one MacPherson front corner exactly through wheel travel and shows what an "
         "upper mount does to it."),
      NULL);
}

static GtkWidget *
new_paragraph (const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 60);
  gtk_label_set_selectable (GTK_LABEL (label), TRUE);
  return label;
}

void
cautions_present (GtkWindow *parent)
{
  const char *const paragraphs[] = {
    _ ("Every figure is an estimate from the points that were entered. Check the car on an "
       "alignment rack before it goes on the road."),
    _ ("Support the car on stands on firm ground. Never work under a car that only a jack "
       "holds."),
    _ ("Springs and torsion bars under preload store dangerous energy. Leave them to trained "
       "hands with the right tools, and follow the maker's instructions."),
    _ ("Check the clearance of tyre, brake and steering on the car itself, through the full "
       "travel and from lock to lock."),
    _ ("Changes to ride height, track and mounts may need approval. Local rules and licensed "
       "practice come first."),
  };
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *window =
      g_object_new (GTK_TYPE_WINDOW, "transient-for", parent, "modal", TRUE, "title",
                    _ ("Cautions"), "resizable", FALSE, "child", box, NULL);
  GtkWidget *close = gtk_button_new_with_label (_ ("Close"));

  gtk_widget_add_css_class (box, "cautions");
  for (gsize i = 0; i < G_N_ELEMENTS (paragraphs); i++)
    gtk_box_append (GTK_BOX (box), new_paragraph (paragraphs[i]));
  gtk_widget_set_halign (close, GTK_ALIGN_END);
  gtk_box_append (GTK_BOX (box), close);
  g_signal_connect_swapped (close, "clicked", G_CALLBACK (gtk_window_close), window);
  gtk_window_set_focus (GTK_WINDOW (window), close);
  escape_key_closes (window);
  gtk_window_present (GTK_WINDOW (window));
}
