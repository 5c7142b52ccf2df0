/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dialog/dialog-answer.h"

GtkWidget *
dialog_add_answer (GtkWidget *dialog, const char *label, int response)
{
  GtkWidget *button = gtk_dialog_add_button (GTK_DIALOG (dialog), label, response);
  g_auto (GStrv) parts = g_strsplit (label, "_", -1);
  g_autofree char *name = g_strjoinv ("", parts);

  /* else the label inside is read after the name */
  gtk_accessible_reset_relation (GTK_ACCESSIBLE (button),
                                 GTK_ACCESSIBLE_RELATION_LABELLED_BY);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  name, -1);
  return button;
}

void
dialog_leave (GtkWindow *dialog)
{
  GtkWindow *parent = gtk_window_get_transient_for (dialog);

  gtk_window_destroy (dialog);
  if (parent != NULL)
    gtk_window_present (parent);
}
