/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/springs/springs-panel-reading.h"
#include "window/springs/springs-panel-number.h"

#include "model/spring/spring-law.h"
#include "model/words/number-text.h"

#include <glib/gi18n-lib.h>

#define DEGREE (G_PI / 180.0)

typedef struct {
  SpringsEdit *edit;
  SpringsReading reading;
  GtkWidget *label;
} Reading;

static char *
bar_words (const SpringLaw *law, const SpringSet *set)
{
  g_autofree char *rate =
      unit_text (UNIT_TWIST_RATE, spring_law_bar_rate (law) * DEGREE / 1000.0, 2);

  return springs_ask_bar_sizes (set) ? g_strdup_printf ("= %s", rate) : NULL;
}

/* The way of the lever's end, and the splines that it is moved by. */
static char *
adjuster_words (const SpringSet *set)
{
  const CarTorsionBar *bar = &set->springs.bar;
  g_autofree char *way =
      unit_text (UNIT_LENGTH, bar->lever_mm * bar->clamp_angle_deg * DEGREE, 1);
  g_autofree char *steps =
      number_text (bar->clamp_angle_deg * (double) bar->n_splines / 360.0, 2);

  if (!bar->is_there || (bar->lever_mm == 0.0 && bar->n_splines == 0))
    return NULL;
  if (bar->n_splines == 0)
    return g_strdup_printf (_ ("= %s at the lever"), way);
  if (bar->lever_mm == 0.0)
    return g_strdup_printf (_ ("= %s splines"), steps);
  return g_strdup_printf (_ ("= %s at the lever, %s splines"), way, steps);
}

static char *
coil_words (const SpringLaw *law, const SpringSet *set)
{
  const double solid = spring_law_coil_solid (law);
  g_autofree char *rate = unit_text (UNIT_RATE, spring_law_coil_rate (law, 1.0), 2);
  g_autofree char *length = unit_text (UNIT_LENGTH, solid, 1);

  if (!springs_ask_coil_sizes (set))
    return NULL;
  return solid > 0.0 ? g_strdup_printf (_ ("= %s, solid at %s"), rate, length)
                     : g_strdup_printf ("= %s", rate);
}

static char *
anti_roll_words (const SpringLaw *law, const SpringSet *set)
{
  g_autofree char *rate = unit_text (UNIT_RATE, spring_law_link_rate (law), 2);

  return springs_ask_anti_roll_sizes (set) ? g_strdup_printf (_ ("= %s of one end"), rate)
                                           : NULL;
}

char *
springs_reading_words (SpringsReading reading, const Car *car, const SpringSet *set)
{
  g_autoptr (SpringLaw) law = spring_law_new (car, &set->springs);

  switch (reading) {
  case READING_BAR:
    return bar_words (law, set);
  case READING_ADJUSTER:
    return adjuster_words (set);
  case READING_COIL:
    return coil_words (law, set);
  default:
    return anti_roll_words (law, set);
  }
}

static void
show (gpointer part)
{
  Reading *self = part;
  g_autofree char *words =
      springs_reading_words (self->reading, springs_edit_car (self->edit),
                             springs_edit_now (self->edit));

  gtk_widget_set_visible (self->label, words != NULL);
  if (words != NULL && g_strcmp0 (gtk_label_get_label (GTK_LABEL (self->label)), words))
    gtk_label_set_label (GTK_LABEL (self->label), words);
}

int
springs_reading_add (SpringsEdit *edit, SpringsReading reading, GtkGrid *grid, int at)
{
  Reading *self = g_new0 (Reading, 1);

  self->edit = edit;
  self->reading = reading;
  self->label = springs_label_new ("", "dim-label");
  gtk_grid_attach (grid, self->label, 0, at, 3, 1);
  springs_edit_add_part (edit, show, self);
  return 1;
}
