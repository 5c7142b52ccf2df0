/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/mount/aims-panel-bound.h"
#include "window/entry/unit-spin.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* A spin button always has a value: the far end of its range stands for "open". */
#define FAR 1000.0 /* or nearer, where no aim may be so far */

typedef struct {
  double far, open, start;
  gboolean was_open;
} Bound;

static Bound *
bound_of (GtkWidget *spin)
{
  return g_object_get_data (G_OBJECT (spin), "range-bound");
}

static gboolean
is_open (GtkWidget *spin)
{
  return gtk_spin_button_get_value (GTK_SPIN_BUTTON (spin)) == bound_of (spin)->open;
}

/* Runs before whoever else listens: a step from far away lands at the start. */
static void
on_value_changed_cb (GtkSpinButton *spin)
{
  Bound *bound = bound_of (GTK_WIDGET (spin));
  const double value = gtk_spin_button_get_value (spin);
  const gboolean is_step_from_open = bound->was_open && value != bound->open &&
                                     fabs (value) > bound->far - bound->far / 20.0;

  bound->was_open = value == bound->open;
  if (is_step_from_open) {
    g_signal_stop_emission_by_name (spin, "value-changed");
    gtk_spin_button_set_value (spin, bound->start);
  }
}

GtkWidget *
range_bound_new (gboolean is_lower, const AimInfo *aim, const char *name)
{
  const double far = fmin (FAR, aim->furthest);
  GtkWidget *spin = gtk_spin_button_new_with_range (-far, far, aim->unit_size);
  GtkEditable *text = gtk_editable_get_delegate (GTK_EDITABLE (spin));
  Bound *bound = g_new0 (Bound, 1);

  bound->far = far;
  bound->open = is_lower ? -far : far;
  bound->was_open = TRUE;
  g_object_set_data_full (G_OBJECT (spin), "range-bound", bound, g_free);
  g_signal_connect (spin, "value-changed", G_CALLBACK (on_value_changed_cb), NULL);
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (spin), bound->open);
  unit_spin_begin (GTK_SPIN_BUTTON (spin), unit_kind_of (aim->unit), aim->decimals, NULL);
  unit_spin_set_open (GTK_SPIN_BUTTON (spin), bound->open);
  gtk_text_set_placeholder_text (GTK_TEXT (text), _ ("open"));
  unit_spin_set_name (GTK_SPIN_BUTTON (spin), name);
  return spin;
}

double
range_bound_get (GtkWidget *bound)
{
  if (is_open (bound))
    return bound_of (bound)->open < 0.0 ? -INFINITY : INFINITY;
  return gtk_spin_button_get_value (GTK_SPIN_BUTTON (bound));
}

void
range_bound_set (GtkWidget *bound, double value)
{
  const double far = bound_of (bound)->far;
  const double now = isfinite (value) ? CLAMP (value, -far, far) : bound_of (bound)->open;

  bound_of (bound)->was_open = FALSE; /* no step of a person's */
  if (gtk_spin_button_get_value (GTK_SPIN_BUTTON (bound)) != now)
    gtk_spin_button_set_value (GTK_SPIN_BUTTON (bound), now);
  bound_of (bound)->was_open = is_open (bound);
}

void
range_bound_set_start (GtkWidget *bound, double start)
{
  bound_of (bound)->start = start;
}
