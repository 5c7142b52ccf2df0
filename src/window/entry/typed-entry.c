/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/entry/typed-entry.h"
#include "window/entry/left-to-right.h"
#include "window/entry/refusal-words.h"
#include "window/entry/typed-number.h"

#define WIDTH_CHARS 6

#define KIND "typed-kind"
#define KEPT "typed-kept"

static Typed
read_spin (GtkSpinButton *spin, double *value)
{
  const guint kind = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (spin), KIND));

  return typed_measure_read (gtk_editable_get_text (GTK_EDITABLE (spin)), (UnitKind) kind,
                             value);
}

void
typed_spin_set_kind (GtkSpinButton *spin, UnitKind kind)
{
  g_object_set_data (G_OBJECT (spin), KIND, GUINT_TO_POINTER (kind));
}

static gboolean
is_beyond (GtkSpinButton *spin, double value)
{
  double least, most;

  gtk_spin_button_get_range (spin, &least, &most);
  return value < least || value > most;
}

static void
keep_text (GtkSpinButton *spin, gboolean is_kept)
{
  g_object_set_data (G_OBJECT (spin), KEPT, GINT_TO_POINTER (is_kept));
}

/* What is no number gives way to the one that stood there; one beyond the bounds stays to
 * be corrected, and whoever reads it says so. */
static int
on_input_cb (GtkSpinButton *spin, double *value, gpointer data)
{
  const Typed typed = read_spin (spin, value);
  const gboolean is_kept = typed != TYPED_NONSENSE && is_beyond (spin, *value);

  (void) data;
  keep_text (spin, is_kept);
  if (typed == TYPED_NONSENSE || is_kept)
    *value = gtk_spin_button_get_value (spin);
  return TRUE;
}

/* GTK asks for the text after every reading. */
static gboolean
on_output_cb (GtkSpinButton *spin, gpointer data)
{
  g_autofree char *text = typed_number_text (gtk_spin_button_get_value (spin));
  const gboolean is_kept = g_object_get_data (G_OBJECT (spin), KEPT) != NULL;

  (void) data;
  keep_text (spin, FALSE);
  if (is_kept)
    return TRUE;
  if (!g_str_equal (gtk_editable_get_text (GTK_EDITABLE (spin)), text))
    gtk_editable_set_text (GTK_EDITABLE (spin), text);
  return TRUE;
}

gboolean
typed_spin_is_sound (GtkSpinButton *spin)
{
  double value;

  return read_spin (spin, &value) != TYPED_NONSENSE && !is_beyond (spin, value);
}

/* Return would put another number there and save that. */
static gboolean
on_key_pressed_cb (
    GtkEventController *keys, guint key, guint code, GdkModifierType state, gpointer data)
{
  (void) code;
  (void) state;
  (void) data;
  return (key == GDK_KEY_Return || key == GDK_KEY_KP_Enter || key == GDK_KEY_ISO_Enter) &&
         !typed_spin_is_sound (GTK_SPIN_BUTTON (gtk_event_controller_get_widget (keys)));
}

GtkSpinButton *
typed_spin_new (double least, double most, double step, const char *label)
{
  GtkWidget *spin = gtk_spin_button_new_with_range (least, most, step);
  GtkEditable *text = gtk_editable_get_delegate (GTK_EDITABLE (spin));
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_spin_button_set_numeric (GTK_SPIN_BUTTON (spin), FALSE); /* as many decimals */
  keep_left_to_right (spin);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (on_key_pressed_cb), NULL);
  gtk_widget_add_controller (spin, keys);
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
  double value;

  return read_spin (spin, &value) == TYPED_NONSENSE ? gtk_spin_button_get_value (spin)
                                                    : value;
}

void
entry_forget_undo (GtkWidget *entry)
{
  gtk_editable_set_enable_undo (GTK_EDITABLE (entry), FALSE); /* empties it */
  gtk_editable_set_enable_undo (GTK_EDITABLE (entry), TRUE);
}

gboolean
is_undo_key (guint key, GdkModifierType state)
{
  return (key == GDK_KEY_z || key == GDK_KEY_Z) &&
         (state & gtk_accelerator_get_default_mod_mask ()) == GDK_CONTROL_MASK;
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

char *
typed_spin_refusal (GtkSpinButton *spin, const char *name)
{
  double value;

  if (!gtk_widget_is_sensitive (GTK_WIDGET (spin)) ||
      read_spin (spin, &value) != TYPED_NONSENSE)
    return NULL;
  entry_mark (GTK_WIDGET (spin), TRUE);
  return refusal_of_number (name, gtk_editable_get_text (GTK_EDITABLE (spin)));
}
