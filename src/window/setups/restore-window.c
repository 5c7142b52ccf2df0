/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/setups/restore-window.h"
#include "window/dialog/escape-key.h"
#include "window/entry/unit-spin.h"

#include "model/advice/restore.h"

#include <glib/gi18n-lib.h>

#define WIDTH 560
#define MOST_HEIGHT 560 /* pixels, where the text is large */

/* One goal: its heading, its limits, its answer. */
typedef struct {
  SwBench *bench;
  RestoreGoal goal;
  RestoreAnswer answer;
  GtkLabel *sentence;
  GtkSpinButton *most;
  GtkWidget *box, *fit;
} GoalRow;

static gboolean
is_baseline (SwBench *bench)
{
  return sw_bench_get_study (bench)->baseline == sw_bench_get_setup_index (bench);
}

static const char *
heading (RestoreGoal goal)
{
  switch (goal) {
  case RESTORE_ROLL_CENTRE:
    return _ ("Roll-centre height, by a ball-joint spacer");
  case RESTORE_CAMBER_GAIN:
    return _ ("Camber gain, by a ball-joint spacer");
  case RESTORE_BUMP_STEER_BY_SPACER:
    return _ ("Bump steer, by a tie-rod-end spacer");
  default:
    return _ ("Bump steer, by the height of the rack");
  }
}

static void
solve (GoalRow *row)
{
  const double most = gtk_spin_button_get_value (row->most);

  gtk_widget_set_visible (row->box, !is_baseline (row->bench));
  if (is_baseline (row->bench))
    return;

  const double least = restore_usual_limits (row->goal).least < 0.0 ? -most : 0.0;
  const Car *car = sw_document_get_car (sw_bench_get_document (row->bench));

  row->answer = restore_solve (car, sw_bench_get_setup_index (row->bench), row->goal,
                               (RestoreLimits){ least, most }, RESTORE_USUAL_TRAVEL);

  g_autofree char *sentence = restore_sentence (row->goal, &row->answer);
  gtk_label_set_label (row->sentence, sentence);
  gtk_widget_set_sensitive (row->fit, row->answer.status == RESTORE_OK);
}

static void
on_fit_clicked_cb (GtkButton *button, GoalRow *row)
{
  SwDocument *document = sw_bench_get_document (row->bench);
  CarSetup setup = *sw_bench_get_setup (row->bench);

  (void) button;
  restore_apply (&setup, row->goal, row->answer.value);
  sw_document_set_corrections (document, sw_bench_get_setup_index (row->bench),
                               &setup.corrections, _ ("Fit a correction"));
}

static void
free_row (gpointer data)
{
  GoalRow *row = data;

  g_signal_handlers_disconnect_by_data (row->bench, row);
  g_object_unref (row->bench);
  g_free (row);
}

static GtkWidget *
new_goal_row (SwBench *bench, RestoreGoal goal)
{
  GoalRow *row = g_new0 (GoalRow, 1);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6), *bar = gtk_box_new (0, 8);
  GtkWidget *title = gtk_label_new (heading (goal)),
            *limit = gtk_label_new (_ ("at most"));
  GtkWidget *sentence = gtk_label_new (NULL), *unit = gtk_label_new (NULL);

  row->bench = g_object_ref (bench);
  row->goal = goal;
  row->box = box;
  row->sentence = GTK_LABEL (sentence);
  row->most = GTK_SPIN_BUTTON (gtk_spin_button_new_with_range (1.0, 200.0, 1.0));
  row->fit = gtk_button_new_with_label (_ ("Fit it"));
  gtk_label_set_xalign (GTK_LABEL (title), 0.0f);
  gtk_widget_add_css_class (title, "heading");
  gtk_label_set_xalign (row->sentence, 0.0f);
  gtk_label_set_wrap (row->sentence, TRUE);
  gtk_label_set_max_width_chars (row->sentence, 64);
  gtk_widget_set_hexpand (limit, TRUE);
  gtk_label_set_xalign (GTK_LABEL (limit), 1.0f);
  gtk_spin_button_set_value (row->most, restore_usual_limits (goal).most);
  unit_spin_begin (row->most, UNIT_LENGTH, 0, GTK_LABEL (unit));
  unit_spin_set_name (row->most, _ ("Limit of the part"));
  gtk_box_append (GTK_BOX (bar), limit);
  gtk_box_append (GTK_BOX (bar), GTK_WIDGET (row->most));
  gtk_box_append (GTK_BOX (bar), unit);
  gtk_box_append (GTK_BOX (bar), row->fit);
  gtk_box_append (GTK_BOX (box), title);
  gtk_box_append (GTK_BOX (box), sentence);
  gtk_box_append (GTK_BOX (box), bar);
  g_signal_connect_swapped (row->most, "value-changed", G_CALLBACK (solve), row);
  g_signal_connect_swapped (bench, "solved", G_CALLBACK (solve), row);
  g_signal_connect (row->fit, "clicked", G_CALLBACK (on_fit_clicked_cb), row);
  g_object_set_data_full (G_OBJECT (box), "row", row, free_row);
  solve (row);
  return box;
}

/* The window is as high as what it shows. */
static void
show_for_baseline (GtkWidget *label, SwBench *bench)
{
  GtkRoot *window = gtk_widget_get_root (label);
  const gboolean was_shown = gtk_widget_get_visible (label);

  gtk_widget_set_visible (label, is_baseline (bench));
  if (window != NULL && was_shown != is_baseline (bench))
    gtk_window_set_default_size (GTK_WINDOW (window), WIDTH, -1);
}

/* In place of the goals: the baseline has nothing to be put back to. */
static GtkWidget *
new_baseline_label (SwBench *bench)
{
  GtkWidget *label = gtk_label_new (_ ("This setup is the baseline: take another one in "
                                       "hand, or add a copy of it."));

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  g_signal_connect_object (bench, "solved", G_CALLBACK (show_for_baseline), label,
                           G_CONNECT_SWAPPED);
  show_for_baseline (label, bench);
  return label;
}

/* One at a time for each window. */
static void
on_destroy_cb (GtkWidget *window, SwBench *bench)
{
  (void) window;
  g_object_set_data (G_OBJECT (bench), "restore-window", NULL);
}

void
restore_window_present (GtkWindow *parent, SwBench *bench)
{
  GtkWindow *open = g_object_get_data (G_OBJECT (bench), "restore-window");

  if (open != NULL) {
    gtk_window_present (open);
    return;
  }

  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 14);
  GtkWidget *scrolled =
      g_object_new (GTK_TYPE_SCROLLED_WINDOW, "child", box, "hscrollbar-policy",
                    GTK_POLICY_NEVER, "propagate-natural-height", TRUE,
                    "max-content-height", MOST_HEIGHT, NULL);
  GtkWidget *window = g_object_new (GTK_TYPE_WINDOW, "transient-for", parent, "title",
                                    _ ("What would put it back?"), "default-width", WIDTH,
                                    "child", scrolled, NULL);

  gtk_widget_add_css_class (box, "panel");
  gtk_box_append (GTK_BOX (box), new_baseline_label (bench));
  for (RestoreGoal goal = 0; goal < N_RESTORE_GOALS; goal++)
    gtk_box_append (GTK_BOX (box), new_goal_row (bench, goal));
  escape_key_closes (window);
  g_object_set_data (G_OBJECT (bench), "restore-window", window);
  g_signal_connect_object (window, "destroy", G_CALLBACK (on_destroy_cb), bench, 0);
  gtk_window_present (GTK_WINDOW (window));
}
