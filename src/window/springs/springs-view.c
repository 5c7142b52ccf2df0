/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/springs/springs-view.h"
#include "window/canvas/plot-input.h"

#include "drawing/springs/springs-board.h"
#include "model/load/spring-verdict.h"
#include "model/words/unit.h"

#include <glib/gi18n-lib.h>

struct _SwSpringsView {
  SwTallCanvas parent_instance;

  SwBench *bench;
  SpringsBoard *board;
  int lit; /* the SpringElement under the pointer, or -1 */
};

G_DEFINE_FINAL_TYPE (SwSpringsView, sw_springs_view, SW_TYPE_TALL_CANVAS)

/* Free the sentences with g_free (); they last as long as @verdicts. */
static SpringsView
view_of (SwSpringsView *self, GPtrArray *verdicts)
{
  return (SpringsView){
    .springs = sw_bench_get_springs (self->bench),
    .verdicts = spring_verdict_sentences (verdicts),
    .theme = sw_canvas_get_theme (SW_CANVAS (self)),
    .lit = self->lit,
    .show_cursor = true,
    .hold_axes = sw_bench_is_dragging (self->bench),
    .caution_stands_beside = true,
  };
}

static GPtrArray *
verdicts_of (SwSpringsView *self)
{
  return spring_verdicts (sw_bench_get_springs (self->bench),
                          sw_bench_get_setup_index (self->bench));
}

static void
sw_springs_view_draw (SwCanvas *canvas, cairo_t *cr, double width, double height)
{
  SwSpringsView *self = SW_SPRINGS_VIEW (canvas);
  g_autoptr (GPtrArray) verdicts = verdicts_of (self);
  const SpringsView view = view_of (self, verdicts);

  springs_draw (self->board, cr, &view, width, height);
  g_free ((gpointer) view.verdicts);
}

static double
sw_springs_view_least_height (SwTallCanvas *canvas, double width)
{
  SwSpringsView *self = SW_SPRINGS_VIEW (canvas);
  g_autoptr (GPtrArray) verdicts = verdicts_of (self);
  const SpringsView view = view_of (self, verdicts);
  const double height = springs_height (self->board, &view, width);

  g_free ((gpointer) view.verdicts);
  return height;
}

/* Places keep still under a hand that drags. */
static void
on_solved_cb (SwSpringsView *self)
{
  if (sw_bench_is_dragging (self->bench))
    sw_canvas_invalidate (SW_CANVAS (self));
  else
    sw_tall_canvas_renew (SW_TALL_CANVAS (self));
}

static char *
reading (const char *name, UnitKind kind, double value, int decimals, const char *travel)
{
  g_autofree char *text = unit_text (kind, value, decimals);

  return g_strdup_printf (_ ("%s: %s at wheel travel %s"), name, text, travel);
}

/* What the drawing says in words, when it is looked at and at rest. */
static void
describe (SwSpringsView *self)
{
  if (!gtk_widget_get_mapped (GTK_WIDGET (self)) || sw_bench_is_dragging (self->bench))
    return;
  const SpringStudy *springs = sw_bench_get_springs (self->bench);
  const SpringCorner *hand = spring_study_in_hand (springs);
  if (hand->stands == STANDS_NOT_GIVEN) {
    gtk_accessible_reset_property (GTK_ACCESSIBLE (self),
                                   GTK_ACCESSIBLE_PROPERTY_DESCRIPTION);
    return;
  }
  const SpringStation *now = &hand->now;
  g_autofree char *travel = unit_text (UNIT_LENGTH, springs->study->travel, 1);
  g_autofree char *load = reading (_ ("Wheel load"), UNIT_FORCE, now->load, 0, travel);
  g_autofree char *rate = reading (_ ("Wheel rate"), UNIT_RATE, now->rate, 2, travel);
  g_autoptr (GPtrArray) verdicts =
                 spring_verdicts (springs, sw_bench_get_setup_index (self->bench));
  g_autofree const char **sentences = spring_verdict_sentences (verdicts);
  g_autofree char *said = g_strjoinv (" ", (char **) sentences);
  g_autofree char *text = g_strdup_printf ("%s. %s. %s", load, rate, said);

  gtk_accessible_update_property (GTK_ACCESSIBLE (self),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
}

static PlotHit
hit (GtkWidget *widget, double x, double y)
{
  const SpringsHit at = springs_hit (SW_SPRINGS_VIEW (widget)->board, x, y);

  return (PlotHit){ -1, at.setup, at.travel, at.on_plot };
}

static void
set_lit (SwSpringsView *self, int element)
{
  if (element == self->lit)
    return;
  self->lit = element;
  sw_canvas_invalidate (SW_CANVAS (self));
}

static void
on_motion_cb (SwSpringsView *self, double x, double y)
{
  set_lit (self, springs_hit (self->board, x, y).element);
}

static void
on_leave_cb (SwSpringsView *self)
{
  set_lit (self, -1);
}

static void
sw_springs_view_dispose (GObject *object)
{
  g_clear_object (&SW_SPRINGS_VIEW (object)->bench);
  G_OBJECT_CLASS (sw_springs_view_parent_class)->dispose (object);
}

static void
sw_springs_view_finalize (GObject *object)
{
  springs_board_free (SW_SPRINGS_VIEW (object)->board);
  G_OBJECT_CLASS (sw_springs_view_parent_class)->finalize (object);
}

static void
sw_springs_view_class_init (SwSpringsViewClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sw_springs_view_dispose;
  G_OBJECT_CLASS (class)->finalize = sw_springs_view_finalize;
  SW_CANVAS_CLASS (class)->draw = sw_springs_view_draw;
  SW_CANVAS_CLASS (class)->is_opaque = TRUE;
  SW_TALL_CANVAS_CLASS (class)->least_height = sw_springs_view_least_height;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "board");
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (class),
                                        GTK_ACCESSIBLE_ROLE_IMG);
}

static void
sw_springs_view_init (SwSpringsView *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  GtkEventController *motion = gtk_event_controller_motion_new ();

  self->board = springs_board_new ();
  self->lit = -1;
  g_signal_connect_swapped (motion, "motion", G_CALLBACK (on_motion_cb), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (on_leave_cb), self);
  gtk_widget_add_controller (widget, motion);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("What carries the wheel through its travel"), -1);
}

static GtkWidget *
sw_springs_view_new (SwBench *bench)
{
  SwSpringsView *self = g_object_new (SW_TYPE_SPRINGS_VIEW, NULL);

  self->bench = g_object_ref (bench);
  g_signal_connect (self, "map", G_CALLBACK (describe), NULL);
  g_signal_connect_object (bench, "solved", G_CALLBACK (describe), self,
                           G_CONNECT_SWAPPED);
  plot_input_add (GTK_WIDGET (self), bench, hit);
  g_signal_connect_object (bench, "solved", G_CALLBACK (on_solved_cb), self,
                           G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}

GtkWidget *
springs_page_new (SwBench *bench)
{
  return tall_canvas_page_new (sw_springs_view_new (bench));
}
