/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/bench/chooser.h"
#include "window/layout/whole-text.h"
#include "window/mount/answers-view.h"
#include "window/paper/card-window.h"

#include "model/words/unit.h"

#include <glib/gi18n-lib.h>
#include <math.h>

typedef struct {
  SwBench *bench;
  SwChooser *chooser;
  GtkWidget *box, *sentence, *fit, *card;
} Tools;

static Tools *
tools_of (GtkWidget *box)
{
  return g_object_get_data (G_OBJECT (box), "answers-tools");
}

#define OFF_PLATE 0.05 /* mm: nearer is on it, as far as a scale can be read */

/* How far the setup in hand stands from what its plate can reach. */
static double
way_off_plate (const CarSetup *setup, const Plate *plate)
{
  double most = 0.0;

  for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++) {
    const MountOffset mount = car_side_adjustment (setup, side).mount;
    const MountOffset near =
        plate_place (plate, plate_nearest (plate, mount, setup->is_plate_swapped));

    most =
        MAX (most,
             hypot (hypot (mount.inboard - near.inboard, mount.rearward - near.rearward),
                    mount.up - near.up));
  }
  return most;
}

/* Moved by hand, a setup keeps the name of its plate. Or NULL. */
static char *
off_plate_sentence (Tools *self)
{
  const CarSetup *setup = sw_bench_get_setup (self->bench);
  const Plate *plate = sw_chooser_get_plate (self->chooser);

  if (plate == NULL || g_strcmp0 (setup->plate, plate->name) != 0 ||
      way_off_plate (setup, plate) < OFF_PLATE)
    return NULL;

  g_autofree char *way = unit_text (UNIT_LENGTH, way_off_plate (setup, plate), 1);
  return g_strdup_printf (_ ("“%s” stands %s off its plate."), setup->name, way);
}

/* Of what the table says of the plate in hand, which it names, or of all. */
static char *
answer_sentence (Tools *self)
{
  const GArray *answers = sw_chooser_peek_answers (self->chooser);
  const int found = sw_chooser_find_answer (self->chooser);
  const Car *car = sw_document_get_car (sw_bench_get_document (self->bench));

  if (found < 0)
    return choice_count_sentence (car, answers);

  const ChoiceAnswer *answer = &g_array_index (answers, ChoiceAnswer, found);
  g_autofree char *sentence = choice_sentence (car, answer);
  /* Translators: the name of a plate, then what it comes to, a sentence. */
  return g_strdup_printf (answer->is_swapped ? _ ("%s, swapped: %s") : _ ("%s: %s"),
                          answer->plate->name, sentence);
}

static void
on_changed_cb (GtkWidget *box)
{
  Tools *self = tools_of (box);
  const int found = sw_chooser_find_answer (self->chooser);
  g_autofree char *off_plate = off_plate_sentence (self);
  g_autofree char *sentence =
      off_plate != NULL ? g_steal_pointer (&off_plate) : answer_sentence (self);

  gtk_label_set_label (GTK_LABEL (self->sentence), sentence);
  gtk_widget_set_sensitive (self->fit, found >= 0);
  gtk_widget_set_sensitive (self->card,
                            found >= 0 || card_window_can_open (self->chooser));
}

static void
on_solved_cb (GtkWidget *box)
{
  if (!sw_bench_is_dragging (tools_of (box)->bench))
    on_changed_cb (box);
}

static void
on_fit_clicked_cb (Tools *self)
{
  const int found = sw_chooser_find_answer (self->chooser);

  if (found >= 0)
    sw_chooser_fit (self->chooser, (guint) found);
}

static void
on_card_clicked_cb (Tools *self)
{
  card_window_open (GTK_WINDOW (gtk_widget_get_root (self->box)), self->chooser);
}

static void
free_tools (gpointer data)
{
  Tools *self = data;

  g_object_unref (self->chooser);
  g_object_unref (self->bench);
  g_free (self);
}

static GtkWidget *
add_button (Tools *self, const char *label, const char *tooltip, GCallback on_clicked)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_widget_set_tooltip_text (button, tooltip);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  g_signal_connect_swapped (button, "clicked", on_clicked, self);
  gtk_box_append (GTK_BOX (self->box), button);
  return button;
}

GtkWidget *
answers_tools_new (SwBench *bench)
{
  Tools *self = g_new0 (Tools, 1);

  self->bench = g_object_ref (bench);
  self->chooser = g_object_ref (sw_chooser_of (bench));
  self->box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  g_object_set_data_full (G_OBJECT (self->box), "answers-tools", self, free_tools);
  self->sentence = gtk_label_new ("");
  gtk_label_set_xalign (GTK_LABEL (self->sentence), 0.0f);
  gtk_label_set_ellipsize (GTK_LABEL (self->sentence), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (self->sentence, TRUE);
  whole_text_tooltip_add (GTK_LABEL (self->sentence));
  gtk_box_append (GTK_BOX (self->box), self->sentence);
  self->fit = add_button (self, _ ("Fit This"),
                          _ ("A new setup with this plate, set as the table says"),
                          G_CALLBACK (on_fit_clicked_cb));
  self->card = add_button (self, _ ("Card…"), _ ("One page to fit the plate by"),
                           G_CALLBACK (on_card_clicked_cb));
  g_signal_connect_object (self->chooser, "answered", G_CALLBACK (on_changed_cb),
                           self->box, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->chooser, "changed", G_CALLBACK (on_changed_cb),
                           self->box, G_CONNECT_SWAPPED);
  g_signal_connect_object (bench, "solved", G_CALLBACK (on_solved_cb), self->box,
                           G_CONNECT_SWAPPED);
  on_changed_cb (self->box);
  return self->box;
}
