/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The window for other eyes and hands: large text, high contrast, reduced motion, from
 * right to left, and targets that a finger meets. The least target, 24 pixels either way,
 * is WCAG 2.2, 2.5.8; text at 200 % without loss is WCAG 2.1, 1.4.4. */

#include "demo-window.h"

#include "window/canvas/dark.h"
#include "window/canvas/point-handle.h"
#include "window/curves/curve-window.h"
#include "window/curves/lowering-play.h"
#include "window/window-private.h"

#define LEAST_TARGET 24
#define SMALL_WIDTH 1024
#define SMALL_HEIGHT 640

static GtkApplication *application;

static const char *const pages[] = { "travel", "height", "mount", "springs", "loads" };

typedef void (*Look) (GtkWidget *widget, gpointer data);

static void
show_page (SwWindow *window, const char *name)
{
  g_action_group_change_action_state (G_ACTION_GROUP (window), "question",
                                      g_variant_new_string (name));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  run_idle ();
}

/* What a person aims at; not the parts inside one of them, nor what is not shown. */
static gboolean
is_target (GtkWidget *widget)
{
  return GTK_IS_BUTTON (widget) || GTK_IS_CHECK_BUTTON (widget) ||
         GTK_IS_ENTRY (widget) || GTK_IS_SPIN_BUTTON (widget) ||
         GTK_IS_MENU_BUTTON (widget) || GTK_IS_DROP_DOWN (widget) ||
         GTK_IS_SCALE (widget) || GTK_IS_EXPANDER (widget) ||
         GTK_IS_LIST_BOX_ROW (widget) || SW_IS_POINT_HANDLE (widget);
}

static void
each_target (GtkWidget *widget, Look look, gpointer data)
{
  if (!gtk_widget_get_mapped (widget))
    return;
  if (is_target (widget))
    look (widget, data);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    each_target (child, look, data);
}

static void
check_size (GtkWidget *widget, gpointer data)
{
  int *n = data;
  GtkAllocation box;

  gtk_widget_get_allocation (widget, &box);
  if (box.width < LEAST_TARGET || box.height < LEAST_TARGET)
    g_test_message ("%s %s is %d × %d", G_OBJECT_TYPE_NAME (widget),
                    gtk_widget_get_tooltip_text (widget), box.width, box.height);
  g_assert_cmpint (box.width, >=, LEAST_TARGET);
  g_assert_cmpint (box.height, >=, LEAST_TARGET);
  (*n)++;
}

static void
test_targets_are_large_enough (void)
{
  SwWindow *window = demo_window_open (application, "dunnock.swcar");

  for (gsize i = 0; i < G_N_ELEMENTS (pages); i++) {
    int n = 0;

    show_page (window, pages[i]);
    each_target (GTK_WIDGET (window), check_size, &n);
    g_assert_cmpint (n, >, 30);
  }
  demo_window_close (window);
}

static void
use_text_dpi (int dpi)
{
  g_object_set (gtk_settings_get_default (), "gtk-xft-dpi", dpi * 1024, NULL);
  run_idle ();
}

/* Inside what @scrolled can bring into view. */
static void
check_within (GtkWidget *widget, GtkScrolledWindow *scrolled)
{
  GtkAdjustment *across = gtk_scrolled_window_get_hadjustment (scrolled);
  GtkAdjustment *down = gtk_scrolled_window_get_vadjustment (scrolled);
  GtkPolicyType along_policy, down_policy;
  graphene_rect_t box;

  gtk_scrolled_window_get_policy (scrolled, &along_policy, &down_policy);
  g_assert_true (
      gtk_widget_compute_bounds (widget, gtk_scrolled_window_get_child (scrolled), &box));
  g_assert_cmpfloat (box.origin.x + gtk_adjustment_get_value (across), >=, -1.0);
  g_assert_cmpfloat (box.origin.x + gtk_adjustment_get_value (across) + box.size.width,
                     <=, gtk_adjustment_get_upper (across) + 1.0);
  g_assert_cmpfloat (box.origin.y + gtk_adjustment_get_value (down) + box.size.height, <=,
                     gtk_adjustment_get_upper (down) + 1.0);
  if (along_policy == GTK_POLICY_NEVER)
    g_assert_cmpfloat (gtk_adjustment_get_upper (across), <=,
                       gtk_adjustment_get_page_size (across) + 0.5);
}

static void
check_reach (GtkWidget *widget, gpointer data)
{
  GtkWidget *window = GTK_WIDGET (data), *seen = widget;
  graphene_rect_t box;

  for (GtkWidget *parent = gtk_widget_get_parent (widget); parent != NULL;
       parent = gtk_widget_get_parent (parent))
    if (GTK_IS_SCROLLED_WINDOW (parent)) {
      check_within (seen, GTK_SCROLLED_WINDOW (parent));
      seen = parent;
    }
  g_assert_true (gtk_widget_compute_bounds (seen, window, &box));
  g_assert_cmpfloat (box.origin.x, >=, -0.5);
  g_assert_cmpfloat (box.origin.y, >=, -0.5);
  g_assert_cmpfloat (box.origin.x + box.size.width, <=, SMALL_WIDTH + 0.5);
  g_assert_cmpfloat (box.origin.y + box.size.height, <=, SMALL_HEIGHT + 0.5);
}

static SwWindow *
open_small (const char *car)
{
  g_autoptr (GFile) file = demo_file (car);
  SwWindow *window = sw_window_new (application);

  gtk_window_set_default_size (GTK_WINDOW (window), SMALL_WIDTH, SMALL_HEIGHT);
  g_assert_true (sw_window_open (window, file));
  gtk_window_present (GTK_WINDOW (window));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  return window;
}

static void
test_large_text_leaves_everything_in_reach (void)
{
  SwWindow *window;

  use_text_dpi (192);
  window = open_small ("dunnock.swcar");
  for (gsize i = 0; i < G_N_ELEMENTS (pages); i++) {
    show_page (window, pages[i]);
    g_assert_cmpint (gtk_widget_get_width (GTK_WIDGET (window)), <=, SMALL_WIDTH);
    g_assert_cmpint (gtk_widget_get_height (GTK_WIDGET (window)), <=, SMALL_HEIGHT);
    each_target (GTK_WIDGET (window), check_reach, window);
  }
  demo_window_close (window);
  use_text_dpi (96);
}

/* As the text of the labels, so the text of the drawings, and the room for it. */
static void
test_drawings_follow_the_text (void)
{
  SwWindow *window = open_small ("wren.swcar");
  SwCanvas *sheet = SW_CANVAS (window->sheet);
  const double usual = sw_canvas_get_theme (sheet).text;
  const int height = gtk_widget_get_height (GTK_WIDGET (sheet));

  g_assert_cmpint (gtk_orientable_get_orientation (GTK_ORIENTABLE (window->panes)), ==,
                   GTK_ORIENTATION_HORIZONTAL);
  use_text_dpi (192);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  /* Pango counts in parts of 1024 */
  g_assert_cmpfloat_with_epsilon (sw_canvas_get_theme (sheet).text, 2.0 * usual, 2e-3);
  g_assert_cmpint (gtk_orientable_get_orientation (GTK_ORIENTABLE (window->panes)), ==,
                   GTK_ORIENTATION_VERTICAL);
  g_assert_cmpint (gtk_widget_get_height (GTK_WIDGET (sheet)), >, height);
  g_assert_cmpint (gtk_widget_get_height (GTK_WIDGET (sheet)), >=, 520);
  use_text_dpi (96);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  g_assert_cmpint (gtk_orientable_get_orientation (GTK_ORIENTABLE (window->panes)), ==,
                   GTK_ORIENTATION_HORIZONTAL);
  demo_window_close (window);
}

static void
use_theme (const char *name)
{
  if (name != NULL)
    g_object_set (gtk_settings_get_default (), "gtk-theme-name", name, NULL);
  else
    gtk_settings_reset_property (gtk_settings_get_default (), "gtk-theme-name");
  run_idle ();
}

static void
test_drawings_follow_high_contrast (void)
{
  SwWindow *window = demo_window_open (application, "wren.swcar");
  SwCanvas *canvases[] = { SW_CANVAS (window->sheet), SW_CANVAS (window->numbers) };

  for (gsize i = 0; i < G_N_ELEMENTS (canvases); i++) {
    use_theme (NULL);
    const Theme usual = sw_canvas_get_theme (canvases[i]);
    use_theme ("Default-hc");
    const Theme high = sw_canvas_get_theme (canvases[i]);
    use_theme ("Default-hc-dark");
    const Theme dark = sw_canvas_get_theme (canvases[i]);

    g_assert_false (usual.is_high_contrast);
    g_assert_true (high.is_high_contrast);
    g_assert_false (high.is_dark);
    g_assert_cmpfloat (colour_contrast (high.soft_ink, high.ground), >=, 7.0);
    g_assert_cmpfloat (high.thin, >, usual.thin);
    g_assert_true (dark.is_high_contrast);
    g_assert_true (dark.is_dark);
  }
  use_theme (NULL);
  demo_window_close (window);
}

/* What a desktop asks for stands in the settings' file, whose part the default plays. */
static void
test_dark_alone_is_no_high_contrast (void)
{
  SwWindow *window = demo_window_open (application, "wren.swcar");

  dark_use (TRUE);
  run_idle ();
  g_assert_true (sw_canvas_get_theme (SW_CANVAS (window->sheet)).is_dark);
  g_assert_false (sw_canvas_get_theme (SW_CANVAS (window->sheet)).is_high_contrast);
  dark_use (FALSE);
  run_idle ();
  g_assert_false (sw_canvas_get_theme (SW_CANVAS (window->sheet)).is_dark);
  demo_window_close (window);
}

/* No frame between: the wheel is there when the call is back. */
static void
test_without_motion_lowering_is_one_step (void)
{
  SwWindow *window = demo_window_open (application, "wren.swcar");
  SwBench *bench = sw_window_get_bench (window);

  g_object_set (gtk_settings_get_default (), "gtk-enable-animations", FALSE, NULL);
  lowering_play (GTK_WIDGET (window->sheet), bench);
  g_assert_cmpfloat (sw_bench_get_study (bench)->travel, ==, 40.0);
  run_idle ();
  g_assert_cmpfloat (sw_bench_get_study (bench)->travel, ==, 40.0);
  lowering_play (GTK_WIDGET (window->sheet), bench);
  g_assert_cmpfloat (sw_bench_get_study (bench)->travel, ==, 0.0);
  sw_window_show_message (window, "A sentence.");
  g_assert_true (gtk_revealer_get_child_revealed (window->message));
  demo_window_close (window);
}

/* Motion that is under way when the desktop asks for less ends where it was going. */
static void
test_motion_stops_when_it_is_no_longer_wanted (void)
{
  SwWindow *window = demo_window_open (application, "wren.swcar");
  SwBench *bench = sw_window_get_bench (window);
  const gint64 end = g_get_monotonic_time () + 60 * G_USEC_PER_SEC;

  g_object_set (gtk_settings_get_default (), "gtk-enable-animations", TRUE, NULL);
  lowering_play (GTK_WIDGET (window->sheet), bench);
  while (sw_bench_get_study (bench)->travel < 0.1 && g_get_monotonic_time () < end)
    g_main_context_iteration (NULL, TRUE);
  g_assert_cmpfloat (sw_bench_get_study (bench)->travel, <, 40.0);
  g_object_set (gtk_settings_get_default (), "gtk-enable-animations", FALSE, NULL);
  gtk_widget_queue_draw (GTK_WIDGET (window->sheet));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  g_assert_cmpfloat (sw_bench_get_study (bench)->travel, ==, 0.0);
  demo_window_close (window);
}

static graphene_rect_t
bounds_in (GtkWidget *widget, GtkWidget *of)
{
  graphene_rect_t box;

  g_assert_true (gtk_widget_compute_bounds (widget, of, &box));
  return box;
}

typedef struct {
  GtkWidget *sheet;
  int n;
  graphene_rect_t box[16];
} Handles;

static void
note_handle (GtkWidget *widget, gpointer data)
{
  Handles *handles = data;

  if (SW_IS_POINT_HANDLE (widget) && gtk_widget_get_parent (widget) == handles->sheet)
    handles->box[handles->n++] = bounds_in (widget, handles->sheet);
}

static Handles
handles_of (SwWindow *window)
{
  Handles handles = { GTK_WIDGET (window->sheet), 0, { { { 0, 0 }, { 0, 0 } } } };

  each_target (GTK_WIDGET (window->sheet), note_handle, &handles);
  return handles;
}

/* Parts change sides; the sheet, its handles and the way of the travel do not. */
static void
test_right_to_left_mirrors_the_parts_alone (void)
{
  SwWindow *window = demo_window_open (application, "wren.swcar");
  const Handles usual = handles_of (window);

  g_assert_cmpfloat (bounds_in (window->panel_place, GTK_WIDGET (window)).origin.x, <,
                     bounds_in (window->sheet_place, GTK_WIDGET (window)).origin.x);
  demo_window_close (window);

  gtk_widget_set_default_direction (GTK_TEXT_DIR_RTL);
  window = demo_window_open (application, "wren.swcar");
  const Handles mirrored = handles_of (window);
  const float sheet = bounds_in (window->sheet_place, GTK_WIDGET (window)).origin.x;

  g_assert_cmpfloat (bounds_in (window->panel_place, GTK_WIDGET (window)).origin.x, >,
                     sheet);
  g_assert_cmpfloat (bounds_in (GTK_WIDGET (window->questions), GTK_WIDGET (window))
                         .origin.x,
                     <, sheet);
  g_assert_cmpint (usual.n, >, 3);
  g_assert_cmpint (mirrored.n, ==, usual.n);
  for (int i = 0; i < usual.n; i++) {
    g_assert_cmpfloat_with_epsilon (mirrored.box[i].origin.x, usual.box[i].origin.x, 1.5);
    g_assert_cmpfloat_with_epsilon (mirrored.box[i].origin.y, usual.box[i].origin.y, 1.5);
  }
  g_assert_cmpint (gtk_widget_get_direction (GTK_WIDGET (window->travel)), ==,
                   GTK_TEXT_DIR_LTR);
  demo_window_close (window);
  gtk_widget_set_default_direction (GTK_TEXT_DIR_LTR);
}

static void
look_for_mirrored_number (GtkWidget *widget, gpointer data)
{
  if (!GTK_IS_SPIN_BUTTON (widget))
    return;
  GtkWidget *text = GTK_WIDGET (gtk_editable_get_delegate (GTK_EDITABLE (widget)));
  g_assert_cmpint (gtk_widget_get_direction (widget), ==, GTK_TEXT_DIR_RTL);
  g_assert_cmpint (gtk_widget_get_direction (text), ==, GTK_TEXT_DIR_LTR);
  (*(int *) data)++;
}

/* Or the sign of −12.5 would stand behind it. */
static void
test_numbers_run_from_left_to_right (void)
{
  SwWindow *window;
  int n = 0;

  gtk_widget_set_default_direction (GTK_TEXT_DIR_RTL);
  window = demo_window_open (application, "wren.swcar");
  each_target (GTK_WIDGET (window), look_for_mirrored_number, &n);
  g_assert_cmpint (n, >=, 5);
  demo_window_close (window);
  gtk_widget_set_default_direction (GTK_TEXT_DIR_LTR);
}

static GtkWidget *
find_type (GtkWidget *widget, GType type)
{
  if (G_TYPE_CHECK_INSTANCE_TYPE (widget, type) && gtk_widget_get_mapped (widget))
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child)) {
    GtkWidget *found = find_type (child, type);

    if (found != NULL)
      return found;
  }
  return NULL;
}

/* The rank and the plate, which come first, are in sight on the right. */
static void
test_tables_begin_on_the_right (void)
{
  SwWindow *window;
  const gint64 end = g_get_monotonic_time () + 60 * G_USEC_PER_SEC;
  GtkAdjustment *across;

  gtk_widget_set_default_direction (GTK_TEXT_DIR_RTL);
  window = open_small ("fieldfare.swcar");
  show_page (window, "mount");
  GtkWidget *table = find_type (GTK_WIDGET (window->strips), GTK_TYPE_COLUMN_VIEW);
  across = gtk_scrollable_get_hadjustment (GTK_SCROLLABLE (table));
  while (gtk_adjustment_get_value (across) == 0.0 && g_get_monotonic_time () < end)
    g_main_context_iteration (NULL, TRUE);
  gtk_test_widget_wait_for_draw (table);
  g_assert_cmpfloat (gtk_adjustment_get_value (across), >, 0.0);
  g_assert_cmpfloat_with_epsilon (gtk_adjustment_get_value (across) +
                                      gtk_adjustment_get_page_size (across),
                                  gtk_adjustment_get_upper (across), 1.0);
  demo_window_close (window);
  gtk_widget_set_default_direction (GTK_TEXT_DIR_LTR);
}

static guint
rows_of (GtkWidget *table)
{
  return g_list_model_get_n_items (
      G_LIST_MODEL (gtk_column_view_get_model (GTK_COLUMN_VIEW (table))));
}

static guint
columns_of (GtkWidget *table)
{
  return g_list_model_get_n_items (gtk_column_view_get_columns (GTK_COLUMN_VIEW (table)));
}

/* It follows the curves that are chosen, and dies with its window. */
static void
test_the_table_of_curves_follows_and_dies (void)
{
  SwWindow *window = demo_window_open (application, "dunnock.swcar");
  SwBench *bench = sw_window_get_bench (window);
  const BoardChoice choice = sw_bench_get_choice (bench);
  const guint n = (guint) (choice.n_large + choice.n_small);

  curve_window_present (GTK_WINDOW (window), bench, FALSE);
  curve_window_present (GTK_WINDOW (window), bench, TRUE);
  g_autoptr (GListModel) shown = g_object_ref (gtk_window_get_toplevels ());
  GtkWidget *tables[2] = { NULL, NULL };

  for (guint i = 0, found = 0; i < g_list_model_get_n_items (shown); i++) {
    g_autoptr (GtkWindow) top = g_list_model_get_item (shown, i);
    GtkWidget *child = gtk_window_get_child (top);

    if (gtk_window_get_transient_for (top) == GTK_WINDOW (window) && found < 2)
      tables[found++] = gtk_scrolled_window_get_child (GTK_SCROLLED_WINDOW (child));
  }
  g_assert_cmpuint (MAX (columns_of (tables[0]), columns_of (tables[1])), ==, n + 1);
  g_assert_cmpuint (MIN (columns_of (tables[0]), columns_of (tables[1])), ==, 3);
  g_assert_cmpuint (rows_of (tables[0]), ==, STUDY_STATIONS);
  g_assert_true (sw_bench_choose (bench, choice.small[0], FALSE));
  g_assert_cmpuint (MAX (columns_of (tables[0]), columns_of (tables[1])), ==, n);
  sw_bench_set_mount (bench, (MountOffset){ 10, 0, 0 });
  g_assert_cmpuint (rows_of (tables[1]), ==, STUDY_STATIONS);
  gtk_test_widget_wait_for_draw (tables[0]);

  g_object_add_weak_pointer (G_OBJECT (bench), (gpointer *) &bench);
  demo_window_close (window);
  g_assert_null (bench);
}

int
main (int argc, char **argv)
{
  int status;

  application = demo_application (&argc, &argv);
  g_test_add_func ("/eyes/targets-are-large-enough", test_targets_are_large_enough);
  g_test_add_func ("/eyes/large-text-leaves-everything-in-reach",
                   test_large_text_leaves_everything_in_reach);
  g_test_add_func ("/eyes/drawings-follow-the-text", test_drawings_follow_the_text);
  g_test_add_func ("/eyes/drawings-follow-high-contrast",
                   test_drawings_follow_high_contrast);
  g_test_add_func ("/eyes/dark-alone-is-no-high-contrast",
                   test_dark_alone_is_no_high_contrast);
  g_test_add_func ("/eyes/without-motion-lowering-is-one-step",
                   test_without_motion_lowering_is_one_step);
  g_test_add_func ("/eyes/motion-stops-when-it-is-no-longer-wanted",
                   test_motion_stops_when_it_is_no_longer_wanted);
  g_test_add_func ("/eyes/right-to-left-mirrors-the-parts-alone",
                   test_right_to_left_mirrors_the_parts_alone);
  g_test_add_func ("/eyes/numbers-run-from-left-to-right",
                   test_numbers_run_from_left_to_right);
  g_test_add_func ("/eyes/tables-begin-on-the-right", test_tables_begin_on_the_right);
  g_test_add_func ("/eyes/the-table-of-curves-follows-and-dies",
                   test_the_table_of_curves_follows_and_dies);
  status = g_test_run ();
  g_object_unref (application);
  return status;
}
