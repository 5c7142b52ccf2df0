/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/entry/unit-spin.h"
#include "window/entry/left-to-right.h"
#include "window/entry/refusal-line.h"
#include "window/entry/refusal-words.h"
#include "window/entry/typed-entry.h"
#include "window/settings/units.h"

#include "model/words/typed-expression.h"

#include <math.h>

#define WIDTH_CHARS 6

typedef struct {
  GtkSpinButton *spin;
  GtkLabel *label; /* may be NULL */
  char *name;      /* or NULL: what its mnemonic label says */
  UnitKind kind;
  int decimals;
  double step, page;   /* in the stored unit */
  double open;         /* what nothing stands for, or NAN */
  char *shown;         /* the text of the value that stands */
  char *meaning;       /* the tooltip while nothing is refused */
  gboolean is_refused; /* while it is read */
  char *refused;       /* the text that was refused last, or NULL */
} UnitSpin;

static const char *
text_of (UnitSpin *self)
{
  return gtk_editable_get_text (GTK_EDITABLE (self->spin));
}

static void
mark (UnitSpin *self, const char *refusal)
{
  GtkWidget *widget = GTK_WIDGET (self->spin);

  if (refusal != NULL && !gtk_widget_has_css_class (widget, "error")) {
    g_free (self->meaning);
    self->meaning = g_strdup (gtk_widget_get_tooltip_text (widget));
  }
  if (refusal != NULL)
    gtk_widget_set_tooltip_text (widget, refusal);
  else if (gtk_widget_has_css_class (widget, "error"))
    gtk_widget_set_tooltip_text (widget, self->meaning);
  entry_mark (widget, refusal != NULL);
  refusal_line_show (widget, refusal);
}

static char *
name_of (UnitSpin *self)
{
  g_autoptr (GList) labels = gtk_widget_list_mnemonic_labels (GTK_WIDGET (self->spin));

  if (self->name != NULL || labels == NULL)
    return g_strdup (self->name);
  return g_strdup (gtk_label_get_text (labels->data));
}

/* A bound as it is shown may lie beyond it by less than its last digit. */
static gboolean
is_bound (UnitSpin *self, double typed, double bound)
{
  const int decimals = unit_decimals (self->kind, self->decimals);

  return unit_rounded (self->kind, unit_shown (self->kind, typed), decimals) ==
         unit_rounded (self->kind, unit_shown (self->kind, bound), decimals);
}

/* NULL where @value is inside its bounds; free with g_free (). */
static char *
refuse_beyond (UnitSpin *self, double value)
{
  double least, most;

  gtk_spin_button_get_range (self->spin, &least, &most);
  if (value >= least && value <= most)
    return NULL;

  const gboolean is_high = value > most;
  const double bound = is_high ? most : least;
  g_autofree char *name = name_of (self);
  g_autofree char *limit = unit_text (self->kind, bound, self->decimals);

  return is_bound (self, value, bound)
             ? NULL
             : refusal_of_bound (name != NULL ? name : "", text_of (self), is_high,
                                 limit);
}

/* Takes @why. */
static char *
refuse_piece (UnitSpin *self, char *why)
{
  g_autofree char *name = name_of (self), *reason = why;

  return name != NULL ? refusal_of_piece (name, text_of (self), reason)
                      : g_steal_pointer (&reason);
}

/* The text of the value itself gives back the value to the bit, not rounded. */
static int
on_input_cb (GtkSpinButton *spin, double *value, UnitSpin *self)
{
  g_autofree char *refusal = NULL;

  self->is_refused = FALSE;
  *value = gtk_spin_button_get_value (spin);
  if (g_strcmp0 (text_of (self), self->shown) == 0)
    return TRUE;

  double typed;
  const ExpressionStatus status =
      typed_expression_read (text_of (self), self->kind, &typed, &refusal);
  if (status == EXPRESSION_VALUE)
    refusal = refuse_beyond (self, typed);
  else if (status == EXPRESSION_REFUSED)
    refusal = refuse_piece (self, g_steal_pointer (&refusal));
  if (status == EXPRESSION_VALUE && refusal == NULL)
    *value = typed;
  else if (status == EXPRESSION_EMPTY && !isnan (self->open))
    *value = self->open;
  self->is_refused = refusal != NULL;
  mark (self, refusal);
  return TRUE;
}

static void
show_value (UnitSpin *self)
{
  const double value = gtk_spin_button_get_value (self->spin);
  char text[64] = "";

  if (value != self->open)
    unit_format (self->kind, value, self->decimals, FALSE, text, sizeof text);
  g_free (self->shown);
  self->shown = g_strdup (text);
  mark (self, NULL);
  if (!g_str_equal (text_of (self), text))
    gtk_editable_set_text (GTK_EDITABLE (self->spin), text);
  entry_forget_undo (GTK_WIDGET (self->spin));
}

static void
keep_refused (UnitSpin *self)
{
  g_free (self->refused);
  self->refused = g_strdup (text_of (self));
  entry_forget_undo (GTK_WIDGET (self->spin));
}

/* GTK asks for the text after every reading, also after one that was refused. */
static gboolean
on_output_cb (GtkSpinButton *spin, UnitSpin *self)
{
  (void) spin;
  if (self->is_refused)
    keep_refused (self);
  else
    show_value (self);
  self->is_refused = FALSE;
  return TRUE;
}

static void
on_units_changed_cb (UnitSpin *self)
{
  GtkAdjustment *adjustment = gtk_spin_button_get_adjustment (self->spin);

  gtk_adjustment_set_step_increment (adjustment,
                                     unit_round_step (self->kind, self->step));
  gtk_adjustment_set_page_increment (adjustment,
                                     unit_round_step (self->kind, self->page));
  if (self->label != NULL)
    gtk_label_set_label (self->label, unit_caption (self->kind));
  show_value (self);
}

static void
on_value_changed_cb (UnitSpin *self)
{
  self->is_refused = FALSE;
}

/* Undo takes a refused text back, as it does what was typed into it since. */
static gboolean
is_to_be_restored (UnitSpin *self, guint key, GdkModifierType state)
{
  if (is_undo_key (key, state))
    return gtk_widget_has_css_class (GTK_WIDGET (self->spin), "error") &&
           g_strcmp0 (text_of (self), self->refused) == 0;
  return key == GDK_KEY_Escape && g_strcmp0 (text_of (self), self->shown) != 0;
}

static gboolean
on_key_pressed_cb (GtkEventController *keys,
                   guint key,
                   guint code,
                   GdkModifierType state,
                   UnitSpin *self)
{
  (void) keys;
  (void) code;
  if (!is_to_be_restored (self, key, state))
    return FALSE;
  show_value (self);
  return TRUE;
}

static void
unit_spin_free (UnitSpin *self)
{
  g_free (self->name);
  g_free (self->shown);
  g_free (self->meaning);
  g_free (self->refused);
  g_free (self);
}

static void
listen (UnitSpin *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (on_key_pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self->spin), keys);
  g_signal_connect (self->spin, "input", G_CALLBACK (on_input_cb), self);
  g_signal_connect (self->spin, "output", G_CALLBACK (on_output_cb), self);
  g_signal_connect_swapped (self->spin, "value-changed", G_CALLBACK (on_value_changed_cb),
                            self);
}

static void
on_spin_units_changed_cb (GtkSpinButton *spin)
{
  on_units_changed_cb (g_object_get_data (G_OBJECT (spin), "unit-spin"));
}

void
unit_spin_begin (GtkSpinButton *spin, UnitKind kind, int decimals, GtkLabel *unit)
{
  UnitSpin *self = g_new0 (UnitSpin, 1);

  *self = (UnitSpin){
    .spin = spin, .label = unit, .kind = kind, .decimals = decimals, .open = NAN
  };
  gtk_spin_button_get_increments (spin, &self->step, &self->page);
  gtk_spin_button_set_numeric (spin, FALSE);
  keep_left_to_right (GTK_WIDGET (spin));
  gtk_editable_set_width_chars (GTK_EDITABLE (spin), WIDTH_CHARS);
  g_object_set_data_full (G_OBJECT (spin), "unit-spin", self,
                          (GDestroyNotify) unit_spin_free);
  listen (self);
  g_signal_connect_object (sw_units_get (), "changed",
                           G_CALLBACK (on_spin_units_changed_cb), spin,
                           G_CONNECT_SWAPPED);
  on_units_changed_cb (self);
}

void
unit_spin_set_open (GtkSpinButton *spin, double open)
{
  UnitSpin *self = g_object_get_data (G_OBJECT (spin), "unit-spin");

  self->open = open;
  show_value (self);
}

void
unit_spin_set_name (GtkSpinButton *spin, const char *name)
{
  UnitSpin *self = g_object_get_data (G_OBJECT (spin), "unit-spin");

  g_free (self->name);
  self->name = g_strdup (name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (spin), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  name, -1);
}

static void
on_label_units_changed_cb (GtkLabel *label)
{
  const guint kind = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (label), "unit-kind"));

  gtk_label_set_label (label, unit_caption ((UnitKind) kind));
}

GtkWidget *
unit_label_new (UnitKind kind)
{
  GtkWidget *label = gtk_label_new (unit_caption (kind));

  g_object_set_data (G_OBJECT (label), "unit-kind", GUINT_TO_POINTER (kind));
  g_signal_connect_object (sw_units_get (), "changed",
                           G_CALLBACK (on_label_units_changed_cb), label,
                           G_CONNECT_SWAPPED);
  return label;
}
