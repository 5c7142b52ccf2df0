/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The dialogs with entries, in process: they hand over once, die when they are closed,
 * and leave what they stand before as it was. */

#include "demo-window.h"

#include "window/layout/form-halves.h"
#include "window/measure/measure-window.h"
#include "window/mount/plate-window.h"

#include <string.h>

static GtkWindow *
only_window (void)
{
  GListModel *windows = gtk_window_get_toplevels ();

  g_assert_cmpuint (g_list_model_get_n_items (windows), ==, 1);
  g_autoptr (GtkWindow) window = g_list_model_get_item (windows, 0);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  return window;
}

/* The first part with that text on or in it, in the order of the screen. */
static GtkWidget *
find_part (GtkWidget *root, GType type, const char *text)
{
  const char *own = NULL;

  if (GTK_IS_BUTTON (root))
    own = gtk_button_get_label (GTK_BUTTON (root));
  else if (GTK_IS_EDITABLE (root))
    own = gtk_editable_get_text (GTK_EDITABLE (root));
  if (g_type_is_a (G_OBJECT_TYPE (root), type) && g_strcmp0 (own, text) == 0)
    return root;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child)) {
    GtkWidget *found = find_part (child, type, text);

    if (found != NULL)
      return found;
  }
  return NULL;
}

static void
press (GtkWindow *window, const char *label)
{
  GtkWidget *button = find_part (GTK_WIDGET (window), GTK_TYPE_BUTTON, label);

  g_assert_nonnull (button);
  g_assert_true (gtk_widget_is_sensitive (button));
  g_signal_emit_by_name (button, "clicked");
  run_idle ();
}

static void
take_car (Car *car, gpointer data)
{
  Car **taken = data;

  g_assert_null (*taken);
  *taken = car;
}

/* A block goes into the first coordinate; the three entries left are those behind it. */
static void
test_a_new_car_is_handed_over_once (void)
{
  g_autoptr (SwBench) bench = demo_bench ("lapwing.swcar");
  const Car *like = sw_document_get_car (sw_bench_get_document (bench));
  g_autoptr (GString) block = g_string_new (NULL);
  g_autoptr (Car) taken = NULL;

  for (PointName i = 0; i < N_POINTS; i++)
    g_string_append_printf (block, "%.17g %.17g %.17g\n", like->points[i].x,
                            like->points[i].y, like->points[i].z);
  measure_window_open_new (NULL, take_car, &taken);
  GtkWindow *window = only_window ();
  const char *const texts[] = { "Snipe", "a note", block->str, "-0.5", "0.1", "280" };
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++) {
    GtkWidget *entry = find_part (GTK_WIDGET (window), GTK_TYPE_ENTRY, "");
    int at = 0;

    gtk_editable_insert_text (GTK_EDITABLE (entry), texts[i], -1, &at);
  }
  g_object_add_weak_pointer (G_OBJECT (window), (gpointer *) &window);
  press (window, "Create");
  g_assert_null (window);
  g_assert_nonnull (taken);
  g_assert_cmpstr (taken->name, ==, "Snipe");
  g_assert_cmpint (memcmp (taken->points, like->points, sizeof taken->points), ==, 0);
  g_assert_cmpfloat (taken->loaded_radius_mm, ==, 280.0);
}

static void
test_an_open_car_comes_through_unchanged (void)
{
  g_autoptr (SwBench) bench = demo_bench ("lapwing.swcar");
  SwDocument *document = sw_bench_get_document (bench);
  g_autoptr (Car) before = car_copy (sw_document_get_car (document));

  measure_window_open_car (NULL, bench);
  GtkWindow *window = only_window ();
  g_object_add_weak_pointer (G_OBJECT (window), (gpointer *) &window);
  press (window, "Apply");
  g_assert_null (window);
  g_assert_true (car_equal (sw_document_get_car (document), before));
  g_assert_null (sw_document_get_undo_label (document));
}

static void
test_windows_die_when_closed (void)
{
  g_autoptr (SwBench) bench = demo_bench ("lapwing.swcar");
  SwChooser *chooser = sw_chooser_of (bench);
  const PlateLibrary *library = sw_chooser_get_library (chooser);

  g_assert_cmpuint (library->plates->len, >, 0);
  for (guint i = 0; i <= library->plates->len; i++) {
    plate_window_open (NULL, chooser,
                       i < library->plates->len ? library->plates->pdata[i] : NULL);
    GtkWindow *window = only_window ();
    g_object_add_weak_pointer (G_OBJECT (window), (gpointer *) &window);
    gtk_window_close (window);
    run_idle ();
    g_assert_null (window);
  }
  measure_window_open_car (NULL, bench);
  GtkWindow *window = only_window ();
  g_object_add_weak_pointer (G_OBJECT (window), (gpointer *) &window);
  gtk_window_close (window);
  run_idle ();
  g_assert_null (window);
}

static GtkWidget *
new_part (int width, int height)
{
  GtkWidget *part = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_widget_set_size_request (part, width, height);
  return part;
}

static double
top_of (GtkWidget *part, GtkWidget *window)
{
  graphene_rect_t bounds;

  g_assert_true (gtk_widget_compute_bounds (part, window, &bounds));
  return bounds.origin.y;
}

/* 400 and 300 pixels have no room in 600: the drawing then stands below all of the form.
 */
static void
test_a_drawing_goes_below_its_form (void)
{
  static const struct {
    int width;
    gboolean is_below;
  } cases[] = { { 800, FALSE }, { 600, TRUE } };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) {
    GtkWidget *form = new_part (400, 500), *drawing = new_part (300, 200);
    GtkWidget *window = gtk_window_new ();

    gtk_window_set_child (GTK_WINDOW (window), form_halves_new (form, 100, drawing));
    gtk_window_set_default_size (GTK_WINDOW (window), cases[i].width, 300);
    gtk_window_present (GTK_WINDOW (window));
    gtk_test_widget_wait_for_draw (window);
    gtk_test_widget_wait_for_draw (window);
    g_assert_cmpfloat (top_of (drawing, window), ==,
                       top_of (form, window) + (cases[i].is_below ? 501 : 0));
    gtk_window_destroy (GTK_WINDOW (window));
    run_idle ();
  }
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/form-windows/a-new-car-is-handed-over-once",
                   test_a_new_car_is_handed_over_once);
  g_test_add_func ("/form-windows/an-open-car-comes-through-unchanged",
                   test_an_open_car_comes_through_unchanged);
  g_test_add_func ("/form-windows/drawing-below", test_a_drawing_goes_below_its_form);
  g_test_add_func ("/form-windows/windows-die-when-closed", test_windows_die_when_closed);
  return g_test_run ();
}
