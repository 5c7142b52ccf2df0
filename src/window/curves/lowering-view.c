/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/curves/lowering-view.h"
#include "window/canvas/plot-input.h"
#include "window/curves/lowering-play.h"

#include "drawing/board/lowering-words.h"
#include "drawing/board/lowering.h"

#include <glib/gi18n-lib.h>

struct _SwLoweringView {
  SwCanvas parent_instance;

  SwBench *bench;
  Lowering *lowering;
};

G_DEFINE_FINAL_TYPE (SwLoweringView, sw_lowering_view, SW_TYPE_CANVAS)

static void
sw_lowering_view_draw (SwCanvas *canvas, cairo_t *cr, double width, double height)
{
  SwLoweringView *self = SW_LOWERING_VIEW (canvas);
  const LoweringView view = {
    .study = sw_bench_get_study (self->bench),
    .theme = sw_canvas_get_theme (canvas),
    .lit = sw_bench_get_lit (self->bench),
    .show_cursor = true,
    .hold_axes = sw_bench_is_dragging (self->bench),
  };

  lowering_draw (self->lowering, cr, &view, width, height);
}

static PlotHit
hit (GtkWidget *widget, double x, double y)
{
  const LoweringHit at = lowering_hit (SW_LOWERING_VIEW (widget)->lowering, x, y);

  return (PlotHit){ at.quantity, at.setup, at.lowering, at.on_plot };
}

/* What the drawing says in words, when it is looked at and at rest. */
static void
describe (SwLoweringView *self)
{
  const Study *study = sw_bench_get_study (self->bench);
  const StudyCorner *hand = study_in_hand (study);

  if (!gtk_widget_get_mapped (GTK_WIDGET (self)) || sw_bench_is_dragging (self->bench))
    return;
  const LoweringEffect effect = lowering_effect (hand, study->cg_height);
  g_autofree char *sentence = lowering_sentence (&effect);
  g_autofree char *difference = lowering_difference_sentence (hand);
  g_autofree char *text = g_strjoin (" ", sentence, difference, NULL);

  gtk_accessible_update_property (GTK_ACCESSIBLE (self),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
}

static void
sw_lowering_view_dispose (GObject *object)
{
  g_clear_object (&SW_LOWERING_VIEW (object)->bench);
  G_OBJECT_CLASS (sw_lowering_view_parent_class)->dispose (object);
}

static void
sw_lowering_view_finalize (GObject *object)
{
  lowering_free (SW_LOWERING_VIEW (object)->lowering);
  G_OBJECT_CLASS (sw_lowering_view_parent_class)->finalize (object);
}

static void
sw_lowering_view_class_init (SwLoweringViewClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sw_lowering_view_dispose;
  G_OBJECT_CLASS (class)->finalize = sw_lowering_view_finalize;
  SW_CANVAS_CLASS (class)->draw = sw_lowering_view_draw;
  SW_CANVAS_CLASS (class)->is_opaque = TRUE;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "board");
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (class),
                                        GTK_ACCESSIBLE_ROLE_IMG);
}

static void
sw_lowering_view_init (SwLoweringView *self)
{
  self->lowering = lowering_new ();
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Roll centre against lowering"), -1);
}

GtkWidget *
sw_lowering_view_new (SwBench *bench)
{
  SwLoweringView *self = g_object_new (SW_TYPE_LOWERING_VIEW, NULL);

  self->bench = g_object_ref (bench);
  g_signal_connect (self, "map", G_CALLBACK (describe), NULL);
  g_signal_connect_object (bench, "solved", G_CALLBACK (describe), self,
                           G_CONNECT_SWAPPED);
  plot_input_add (GTK_WIDGET (self), bench, hit);
  g_signal_connect_object (bench, "solved", G_CALLBACK (sw_canvas_invalidate), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (bench, "lit", G_CALLBACK (sw_canvas_invalidate), self,
                           G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}

static void
on_play_clicked_cb (GtkButton *button, SwBench *bench)
{
  lowering_play (GTK_WIDGET (button), bench);
}

GtkWidget *
lowering_tools_new (SwBench *bench)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *play = gtk_button_new_with_label (_ ("Play"));
  GtkWidget *explain = gtk_button_new_with_label (_ ("Explain…"));

  gtk_widget_set_tooltip_text (play, _ ("Lower the car and raise it again, as motion"));
  gtk_widget_set_tooltip_text (
      explain, _ ("The roll centre constructed step by step, large, for a class"));
  g_signal_connect_object (play, "clicked", G_CALLBACK (on_play_clicked_cb), bench, 0);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (explain), "win.explain");
  gtk_box_append (GTK_BOX (box), play);
  gtk_box_append (GTK_BOX (box), explain);
  return box;
}
