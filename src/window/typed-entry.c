/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/typed-entry.h"
#include "window/typed-number.h"

#define WIDTH_CHARS 6

static int
on_input_cb (GtkSpinButton *spin, double *value, gpointer data)
{
  (void) data;
  return typed_number_read (gtk_editable_get_text (GTK_EDITABLE (spin)), value) ==
                 TYPED_NUMBER
             ? TRUE
             : GTK_INPUT_ERROR;
}

static gboolean
on_output_cb (GtkSpinButton *spin, gpointer data)
{
  g_autofree char *text = typed_number_text (gtk_spin_button_get_value (spin));

  (void) data;
  if (!g_str_equal (gtk_editable_get_text (GTK_EDITABLE (spin)), text))
    gtk_editable_set_text (GTK_EDITABLE (spin), text);
  return TRUE;
}

GtkSpinButton *
typed_spin_new (double least, double most, double step, const char *label)
{
  GtkWidget *spin = gtk_spin_button_new_with_range (least, most, step);
  GtkEditable *text = gtk_editable_get_delegate (GTK_EDITABLE (spin));

  gtk_spin_button_set_digits (GTK_SPIN_BUTTON (spin), 2);
  gtk_editable_set_width_chars (GTK_EDITABLE (spin), WIDTH_CHARS);
  gtk_text_set_activates_default (GTK_TEXT (text), TRUE);
  g_signal_connect (spin, "input", G_CALLBACK (on_input_cb), NULL);
  g_signal_connect (spin, "output", G_CALLBACK (on_output_cb), NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (spin), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  label, -1);
  return GTK_SPIN_BUTTON (spin);
}

double
typed_spin_get (GtkSpinButton *spin)
{
  double value, least, most;

  if (typed_number_read (gtk_editable_get_text (GTK_EDITABLE (spin)), &value) !=
      TYPED_NUMBER)
    return gtk_spin_button_get_value (spin);
  gtk_spin_button_get_range (spin, &least, &most);
  return CLAMP (value, least, most);
}

void
entry_mark (GtkWidget *entry, gboolean is_at_fault)
{
  if (is_at_fault == gtk_widget_has_css_class (entry, "error"))
    return;
  if (is_at_fault)
    gtk_widget_add_css_class (entry, "error");
  else
    gtk_widget_remove_css_class (entry, "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID,
                               is_at_fault ? GTK_ACCESSIBLE_INVALID_TRUE
                                           : GTK_ACCESSIBLE_INVALID_FALSE,
                               -1);
}
