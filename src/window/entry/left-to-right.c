/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/entry/left-to-right.h"

void
keep_left_to_right (GtkWidget *widget)
{
  GtkEditable *text =
      GTK_IS_EDITABLE (widget) ? gtk_editable_get_delegate (GTK_EDITABLE (widget)) : NULL;

  gtk_widget_set_direction (text != NULL ? GTK_WIDGET (text) : widget, GTK_TEXT_DIR_LTR);
}
