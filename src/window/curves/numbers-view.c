/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/curves/numbers-view.h"
#include "window/canvas/canvas-copy.h"
#include "window/canvas/quantity-menu.h"
#include "window/canvas/travel-keys.h"

#include "drawing/chart/number-table.h"
#include "model/study/compare.h"
#include "model/study/quantity-info.h"

#include <glib/gi18n-lib.h>

struct _SwNumbersView {
  SwCanvas parent_instance;

  SwBench *bench;
  NumberTable *table;
  Quantity rows[N_QUANTITIES];
  guint n_rows;
  gboolean is_side_by_side;
};

G_DEFINE_FINAL_TYPE (SwNumbersView, sw_numbers_view, SW_TYPE_CANVAS)

static const Quantity usual[] = {
  QUANTITY_CAMBER,
  QUANTITY_CASTER,
  QUANTITY_SAI,
  QUANTITY_INCLUDED_ANGLE,
  QUANTITY_TOE_IN,
  QUANTITY_SCRUB_RADIUS,
  QUANTITY_TRAIL,
  QUANTITY_ROLL_CENTRE_HEIGHT,
  QUANTITY_SWING_ARM_LENGTH,
  QUANTITY_HALF_TRACK_CHANGE,
  QUANTITY_WHEELBASE_CHANGE,
  QUANTITY_STRUT_LENGTH,
  QUANTITY_STRUT_RATIO,
  QUANTITY_CAMBER_GAIN,
  QUANTITY_BUMP_STEER,
  QUANTITY_ARM_RATIO,
  QUANTITY_SIDE_VIEW_SLOPE,
  QUANTITY_ANTI_DIVE,
};

static gboolean
has_row (SwNumbersView *self, Quantity quantity)
{
  for (guint i = 0; i < self->n_rows; i++)
    if (self->rows[i] == quantity)
      return TRUE;
  return FALSE;
}

/* The usual rows, and whatever else has a curve. */
static void
choose_rows (SwNumbersView *self)
{
  self->n_rows = G_N_ELEMENTS (usual);
  memcpy (self->rows, usual, sizeof usual);
  for (Quantity q = 0; q < N_QUANTITIES; q++)
    if (sw_bench_is_chosen (self->bench, q) && !has_row (self, q))
      self->rows[self->n_rows++] = q;
}

static NumberTableView
table_view (SwNumbersView *self)
{
  return (NumberTableView){
    .study = sw_bench_get_study (self->bench),
    .theme = sw_canvas_get_theme (SW_CANVAS (self)),
    .quantities = self->rows,
    .n_quantities = self->n_rows,
    .lit = sw_bench_get_lit (self->bench),
    .side_by_side = self->is_side_by_side,
  };
}

static void
sw_numbers_view_draw (SwCanvas *canvas, cairo_t *cr, double width, double height)
{
  SwNumbersView *self = SW_NUMBERS_VIEW (canvas);
  const NumberTableView view = table_view (self);

  number_table_draw (self->table, cr, &view, width, height);
}

static void
sw_numbers_view_measure (GtkWidget *widget,
                         GtkOrientation orientation,
                         int for_size,
                         int *minimum,
                         int *natural,
                         int *minimum_baseline,
                         int *natural_baseline)
{
  SwNumbersView *self = SW_NUMBERS_VIEW (widget);
  const NumberTableView view = table_view (self);

  *minimum_baseline = *natural_baseline = -1;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    *minimum = *natural = (int) (32.0 * view.theme.text);
  else
    *minimum = *natural =
        (int) ceil (number_table_height (&view, for_size > 0 ? for_size : 1200));
}

static GtkSizeRequestMode
sw_numbers_view_get_request_mode (GtkWidget *widget)
{
  (void) widget;
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static char *
describe_row (SwNumbersView *self, Quantity q)
{
  const Study *study = sw_bench_get_study (self->bench);
  const QuantityInfo info = quantity_info (q);
  const double value = study_in_hand (study)->now.measures.value[q];
  g_autofree char *is = quantity_spoken_text (q, value);
  char was[64];

  quantity_format (q, study_reference (study)->now.measures.value[q], FALSE, was,
                   sizeof was);
  /* Translators: a quantity, what it is compared with and its value there, its value
   * now, what its sign means. */
  return g_strdup_printf (_ ("%s: %s %s, this setup %s. %s"), info.name,
                          study_reference (study)->title, was, is,
                          quantity_sign_words (q, value));
}

static void
describe (SwNumbersView *self)
{
  const int lit = sw_bench_get_lit (self->bench);
  g_autofree char *text = lit >= 0 ? describe_row (self, (Quantity) lit) : g_strdup ("");

  gtk_accessible_update_property (GTK_ACCESSIBLE (self),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
}

static void
on_bench_changed_cb (SwNumbersView *self)
{
  sw_canvas_invalidate (SW_CANVAS (self));
  if (gtk_widget_has_focus (GTK_WIDGET (self)))
    describe (self);
}

static void
on_bench_chosen_cb (SwNumbersView *self)
{
  choose_rows (self);
  gtk_widget_queue_resize (GTK_WIDGET (self));
  sw_canvas_invalidate (SW_CANVAS (self));
}

static void
on_motion_cb (SwNumbersView *self, double x, double y)
{
  sw_bench_set_lit (self->bench, number_table_hit (self->table, x, y));
}

static void
on_leave_cb (SwNumbersView *self)
{
  sw_bench_set_lit (self->bench, -1);
}

static void
on_pressed_cb (SwNumbersView *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self));
}

static int
quantity_at (GtkWidget *widget, double x, double y)
{
  return number_table_hit (SW_NUMBERS_VIEW (widget)->table, x, y);
}

static gboolean
on_query_tooltip_cb (
    SwNumbersView *self, int x, int y, gboolean keyboard, GtkTooltip *tooltip)
{
  const int q =
      keyboard ? sw_bench_get_lit (self->bench) : number_table_hit (self->table, x, y);

  if (q < 0)
    return FALSE;
  gtk_tooltip_set_text (tooltip, quantity_info ((Quantity) q).meaning);
  return TRUE;
}

static gboolean
on_key_pressed_cb (SwNumbersView *self, guint key, guint code, GdkModifierType state)
{
  const int lit = sw_bench_get_lit (self->bench), n = (int) self->n_rows;
  const int step = key == GDK_KEY_Down ? 1 : -1;
  int place = step > 0 ? -1 : n;

  (void) code;
  if (key != GDK_KEY_Up && key != GDK_KEY_Down)
    return travel_key (self->bench, key, state);
  for (int i = 0; i < n; i++)
    if ((int) self->rows[i] == lit)
      place = i;
  sw_bench_set_lit (self->bench, (int) self->rows[(place + step + n) % n]);
  return TRUE;
}

static void
add_input (SwNumbersView *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  g_signal_connect_swapped (motion, "motion", G_CALLBACK (on_motion_cb), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (on_leave_cb), self);
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (on_pressed_cb), self);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (on_key_pressed_cb), self);
  gtk_widget_add_controller (widget, motion);
  gtk_widget_add_controller (widget, keys);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (click));
  gtk_widget_set_has_tooltip (widget, TRUE);
  g_signal_connect (widget, "query-tooltip", G_CALLBACK (on_query_tooltip_cb), NULL);
}

static void
on_copy_picture_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action;
  (void) parameter;
  canvas_copy_whole (SW_CANVAS (data));
}

static void
add_copying (SwNumbersView *self)
{
  static const GActionEntry entries[] = { { .name = "picture",
                                            .activate = on_copy_picture_cb } };
  GSimpleActionGroup *actions = g_simple_action_group_new ();
  g_autoptr (GMenu) menu = g_menu_new ();

  g_action_map_add_action_entries (G_ACTION_MAP (actions), entries,
                                   G_N_ELEMENTS (entries), self);
  g_menu_append (menu, _ ("Copy Numbers"), "win.copy-numbers");
  g_menu_append (menu, _ ("Copy as a Picture"), "copy.picture");
  canvas_copy_add (SW_CANVAS (self), G_MENU_MODEL (menu), G_ACTION_GROUP (actions), NULL);
}

static void
sw_numbers_view_dispose (GObject *object)
{
  g_clear_object (&SW_NUMBERS_VIEW (object)->bench);
  G_OBJECT_CLASS (sw_numbers_view_parent_class)->dispose (object);
}

static void
sw_numbers_view_finalize (GObject *object)
{
  number_table_free (SW_NUMBERS_VIEW (object)->table);
  G_OBJECT_CLASS (sw_numbers_view_parent_class)->finalize (object);
}

static void
sw_numbers_view_class_init (SwNumbersViewClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_numbers_view_dispose;
  G_OBJECT_CLASS (class)->finalize = sw_numbers_view_finalize;
  SW_CANVAS_CLASS (class)->draw = sw_numbers_view_draw;
  SW_CANVAS_CLASS (class)->is_opaque = TRUE;
  widget_class->measure = sw_numbers_view_measure;
  widget_class->get_request_mode = sw_numbers_view_get_request_mode;
  gtk_widget_class_set_css_name (widget_class, "numbers");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
sw_numbers_view_init (SwNumbersView *self)
{
  self->table = number_table_new ();
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Numbers at the travel in hand"), -1);
  g_signal_connect (self, "notify::has-focus", G_CALLBACK (on_bench_changed_cb), NULL);
  add_input (self);
}

GtkWidget *
sw_numbers_view_new (SwBench *bench)
{
  SwNumbersView *self = g_object_new (SW_TYPE_NUMBERS_VIEW, NULL);

  self->bench = g_object_ref (bench);
  choose_rows (self);
  quantity_menu_add (GTK_WIDGET (self), bench, quantity_at);
  add_copying (self);
  g_signal_connect_object (bench, "solved", G_CALLBACK (on_bench_changed_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (bench, "lit", G_CALLBACK (on_bench_changed_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (bench, "chosen", G_CALLBACK (on_bench_chosen_cb), self,
                           G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}

void
sw_numbers_view_set_side_by_side (SwNumbersView *self, gboolean side_by_side)
{
  self->is_side_by_side = side_by_side;
  gtk_widget_queue_resize (GTK_WIDGET (self));
  sw_canvas_invalidate (SW_CANVAS (self));
}

static double
shown_number (Quantity q, double kernel_value)
{
  return unit_shown (quantity_unit_kind (q), quantity_edge_value (q, kernel_value));
}

static void
append_rows (SwNumbersView *self, const Study *study, GString *text)
{
  for (guint i = 0; i < self->n_rows; i++) {
    const Quantity q = self->rows[i];
    const double was = shown_number (q, study_reference (study)->now.measures.value[q]);
    const double is = shown_number (q, study_in_hand (study)->now.measures.value[q]);
    const char *unit = quantity_symbol (q);

    /* a spreadsheet takes decimals, so degrees and minutes are written as degrees */
    g_string_append_printf (text, "%s\t%s\t%.10g\t%.10g\t%.10g\n", quantity_info (q).name,
                            unit_is_sexagesimal (quantity_unit_kind (q)) ? "°" : unit,
                            was, is, is - was);
  }
}

char *
sw_numbers_view_get_text (SwNumbersView *self)
{
  const Study *study = sw_bench_get_study (self->bench);
  GString *text = g_string_new (NULL);

  if (self->is_side_by_side) {
    compare_write (study, TABLE_CSV, text);
  } else {
    g_string_append_printf (text, "%s\t%s\t%s\t%s\t%s\n", _ ("quantity"), _ ("unit"),
                            study_reference (study)->title, study_in_hand (study)->title,
                            _ ("change"));
    append_rows (self, study, text);
  }
  return g_string_free (text, FALSE);
}
