/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/curves/board-view.h"
#include "window/canvas/canvas-copy.h"
#include "window/canvas/plot-input.h"

#include "model/study/quantity-info.h"

#include <glib/gi18n-lib.h>

struct _SwBoardView {
  SwTallCanvas parent_instance;

  SwBench *bench;
  Board *board;
  int asked; /* the curve that was lit up when its copy was asked for */
};

G_DEFINE_FINAL_TYPE (SwBoardView, sw_board_view, SW_TYPE_TALL_CANVAS)

static void
sw_board_view_draw (SwCanvas *canvas, cairo_t *cr, double width, double height)
{
  SwBoardView *self = SW_BOARD_VIEW (canvas);
  const BoardView view = {
    .study = sw_bench_get_study (self->bench),
    .choice = sw_bench_get_choice (self->bench),
    .theme = sw_canvas_get_theme (canvas),
    .lit = sw_bench_get_lit (self->bench),
    .show_cursor = true,
    .pixel_scale = gtk_widget_get_scale_factor (GTK_WIDGET (canvas)),
    .hold_axes = sw_bench_is_dragging (self->bench),
  };

  board_draw (self->board, cr, &view, width, height);
}

static double
sw_board_view_least_height (SwTallCanvas *canvas, double width)
{
  const BoardChoice choice = sw_bench_get_choice (SW_BOARD_VIEW (canvas)->bench);
  const Theme theme = sw_canvas_get_theme (SW_CANVAS (canvas));

  return board_height (&choice, &theme, width);
}

static void
describe (SwBoardView *self)
{
  const int lit = sw_bench_get_lit (self->bench);
  const Study *study = sw_bench_get_study (self->bench);
  g_autofree char *text = NULL;

  if (lit >= 0) {
    g_autofree char *travel = unit_text (UNIT_LENGTH, study->travel, 1);
    g_autofree char *value =
        quantity_spoken_text ((Quantity) lit,
                              study_in_hand (study)->now.measures.value[lit]);

    text = g_strdup_printf (_ ("%s: %s at wheel travel %s"),
                            quantity_info ((Quantity) lit).name, value, travel);
  }
  gtk_accessible_update_property (GTK_ACCESSIBLE (self),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  text != NULL ? text : "", -1);
}

static void
on_bench_changed_cb (SwBoardView *self)
{
  sw_canvas_invalidate (SW_CANVAS (self));
  if (gtk_widget_has_focus (GTK_WIDGET (self)))
    describe (self);
}

static void
on_bench_chosen_cb (SwBoardView *self)
{
  sw_tall_canvas_renew (SW_TALL_CANVAS (self));
}

static PlotHit
hit (GtkWidget *widget, double x, double y)
{
  const BoardHit at = board_hit (SW_BOARD_VIEW (widget)->board, x, y);

  return (PlotHit){ at.quantity, -1, at.travel, at.on_plot };
}

/* With the title above the plot. */
static void
scroll_to (SwBoardView *self, Quantity quantity)
{
  GtkWidget *scrolled =
      gtk_widget_get_ancestor (GTK_WIDGET (self), GTK_TYPE_SCROLLED_WINDOW);
  const double air = 2.0 * sw_canvas_get_theme (SW_CANVAS (self)).text;
  double x, y, width, height;

  if (scrolled != NULL && board_frame (self->board, quantity, &x, &y, &width, &height))
    gtk_adjustment_clamp_page (gtk_scrolled_window_get_vadjustment (
                                   GTK_SCROLLED_WINDOW (scrolled)),
                               y - air, y + height + air);
}

static void
light_neighbour (SwBoardView *self, int step)
{
  const BoardChoice c = sw_bench_get_choice (self->bench);
  const int n = (int) (c.n_large + c.n_small), lit = sw_bench_get_lit (self->bench);
  int place = step > 0 ? -1 : n;

  for (int i = 0; i < n; i++)
    if ((int) (i < (int) c.n_large ? c.large[i] : c.small[i - (int) c.n_large]) == lit)
      place = i;
  place = (place + step + n) % n;

  const Quantity next =
      place < (int) c.n_large ? c.large[place] : c.small[place - (int) c.n_large];
  sw_bench_set_lit (self->bench, (int) next);
  scroll_to (self, next);
}

/* The travel keys are the plots' own. */
static gboolean
on_key_pressed_cb (SwBoardView *self, guint key, guint code, GdkModifierType state)
{
  (void) code;
  (void) state;
  if (key != GDK_KEY_Up && key != GDK_KEY_Down)
    return FALSE;
  light_neighbour (self, key == GDK_KEY_Down ? 1 : -1);
  return TRUE;
}

#define CURVE_WIDTH 640.0
#define CURVE_HEIGHT 420.0

/* One curve by itself, as large as a page of text has room for. */
static void
paint_curve (SwCanvas *canvas, gpointer part, cairo_t *cr, double width, double height)
{
  SwBoardView *self = SW_BOARD_VIEW (canvas);
  g_autoptr (Board) board = board_new ();
  const BoardView view = {
    .study = sw_bench_get_study (self->bench),
    .choice = { .large = { *(const Quantity *) part }, .n_large = 1 },
    .theme = sw_canvas_get_theme (canvas),
    .lit = -1,
    .show_cursor = true,
  };

  board_draw (board, cr, &view, width, height);
}

static void
on_copy_asked (SwCanvas *canvas)
{
  SW_BOARD_VIEW (canvas)->asked = sw_bench_get_lit (SW_BOARD_VIEW (canvas)->bench);
}

/* The one that was lit up, or all of them. */
static void
on_copy_curve_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SwBoardView *self = SW_BOARD_VIEW (data);
  Quantity asked = (Quantity) self->asked;

  (void) action;
  (void) parameter;
  if (self->asked < 0)
    canvas_copy_whole (SW_CANVAS (self));
  else
    canvas_copy_picture (SW_CANVAS (self), paint_curve, &asked, CURVE_WIDTH,
                         CURVE_HEIGHT);
}

static void
on_copy_board_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action;
  (void) parameter;
  canvas_copy_whole (SW_CANVAS (data));
}

static void
add_copying (SwBoardView *self)
{
  static const GActionEntry entries[] = {
    { .name = "curve", .activate = on_copy_curve_cb },
    { .name = "board", .activate = on_copy_board_cb },
  };
  GSimpleActionGroup *actions = g_simple_action_group_new ();
  g_autoptr (GMenu) menu = g_menu_new ();

  g_action_map_add_action_entries (G_ACTION_MAP (actions), entries,
                                   G_N_ELEMENTS (entries), self);
  g_menu_append (menu, _ ("Copy Curve as a Picture"), "copy.curve");
  g_menu_append (menu, _ ("Copy All Curves as a Picture"), "copy.board");
  g_menu_append (menu, _ ("Save Table…"), "win.save-table");
  g_menu_append (menu, _ ("Curves as a Table"), "win.curve-table");
  canvas_copy_add (SW_CANVAS (self), G_MENU_MODEL (menu), G_ACTION_GROUP (actions),
                   on_copy_asked);
}

static void
sw_board_view_dispose (GObject *object)
{
  SwBoardView *self = SW_BOARD_VIEW (object);

  g_clear_object (&self->bench);
  G_OBJECT_CLASS (sw_board_view_parent_class)->dispose (object);
}

static void
sw_board_view_finalize (GObject *object)
{
  board_free (SW_BOARD_VIEW (object)->board);
  G_OBJECT_CLASS (sw_board_view_parent_class)->finalize (object);
}

static void
sw_board_view_class_init (SwBoardViewClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sw_board_view_dispose;
  G_OBJECT_CLASS (class)->finalize = sw_board_view_finalize;
  SW_CANVAS_CLASS (class)->draw = sw_board_view_draw;
  SW_CANVAS_CLASS (class)->is_opaque = TRUE;
  SW_TALL_CANVAS_CLASS (class)->least_height = sw_board_view_least_height;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "board");
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (class),
                                        GTK_ACCESSIBLE_ROLE_IMG);
}

static void
sw_board_view_init (SwBoardView *self)
{
  self->board = board_new ();
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Curves against wheel travel"), -1);
  g_signal_connect (self, "notify::has-focus", G_CALLBACK (on_bench_changed_cb), NULL);
}

static GtkWidget *
new_view (SwBench *bench)
{
  SwBoardView *self = g_object_new (SW_TYPE_BOARD_VIEW, NULL);
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->bench = g_object_ref (bench);
  plot_input_add (GTK_WIDGET (self), bench, hit);
  add_copying (self);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (on_key_pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  g_signal_connect_object (bench, "solved", G_CALLBACK (on_bench_changed_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (bench, "lit", G_CALLBACK (on_bench_changed_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (bench, "chosen", G_CALLBACK (on_bench_chosen_cb), self,
                           G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}

GtkWidget *
board_page_new (SwBench *bench)
{
  GtkWidget *page = tall_canvas_scrolled_new (new_view (bench));

  gtk_widget_add_css_class (page, "board-page");
  return page;
}
