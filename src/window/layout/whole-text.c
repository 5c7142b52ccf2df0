/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/layout/whole-text.h"

static gboolean
on_query_tooltip_cb (
    GtkLabel *label, int x, int y, gboolean keyboard, GtkTooltip *tooltip)
{
  (void) x;
  (void) y;
  (void) keyboard;
  if (!pango_layout_is_ellipsized (gtk_label_get_layout (label)))
    return FALSE;
  gtk_tooltip_set_text (tooltip, gtk_label_get_text (label));
  return TRUE;
}

void
whole_text_tooltip_add (GtkLabel *label)
{
  gtk_widget_set_has_tooltip (GTK_WIDGET (label), TRUE);
  g_signal_connect (label, "query-tooltip", G_CALLBACK (on_query_tooltip_cb), NULL);
}
