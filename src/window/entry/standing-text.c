/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/entry/standing-text.h"
#include "window/entry/typed-entry.h"

#define STANDING "standing-text"

static const char *
text_of (GtkWidget *entry)
{
  return gtk_editable_get_text (GTK_EDITABLE (entry));
}

static const char *
standing_of (GtkWidget *entry)
{
  return g_object_get_data (G_OBJECT (entry), STANDING);
}

static void
take_standing (GtkWidget *entry)
{
  if (standing_of (entry) == NULL || !gtk_widget_has_css_class (entry, "error"))
    g_object_set_data_full (G_OBJECT (entry), STANDING, g_strdup (text_of (entry)),
                            g_free);
  entry_forget_undo (entry);
}

static gboolean
on_key_pressed_cb (GtkWidget *entry, guint key, guint code, GdkModifierType state)
{
  const char *standing = standing_of (entry);

  (void) code;
  if (!is_undo_key (key, state) || standing == NULL ||
      g_str_equal (text_of (entry), standing))
    return FALSE;
  gtk_editable_set_text (GTK_EDITABLE (entry), standing);
  gtk_editable_set_position (GTK_EDITABLE (entry), -1);
  entry_forget_undo (entry);
  return TRUE;
}

void
standing_text_keep (GtkEntry *entry)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();

  g_signal_connect_swapped (focus, "enter", G_CALLBACK (take_standing), entry);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (take_standing), entry);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (on_key_pressed_cb), entry);
  gtk_widget_add_controller (GTK_WIDGET (entry), focus);
  gtk_widget_add_controller (GTK_WIDGET (entry), keys);
}
