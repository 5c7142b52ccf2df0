/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The parts of the window in process: the bench that all of them share, opening and
 * refusing files, light and dark, drawing anew, and that everything dies with its window.
 */

#include "demo-window.h"

#include "window/application.h"
#include "window/curves/lecture-view.h"
#include "window/curves/lecture-window.h"
#include "window/curves/lowering-play.h"
#include "window/setups/restore-window.h"
#include "window/window-private.h"

#include <glib/gstdio.h>

static GtkApplication *application;

static void
test_solved_is_told_once_a_change (void)
{
  g_autoptr (SwBench) bench = demo_bench ("wren.swcar");
  int solved = 0;

  g_signal_connect_swapped (bench, "solved", G_CALLBACK (add_one), &solved);
  sw_bench_set_mount (bench, (MountOffset){ 10, 0, 0 });
  g_assert_cmpint (solved, ==, 1);
  sw_bench_set_mount (bench, (MountOffset){ 10, 0, 0 });
  g_assert_cmpint (solved, ==, 1);
  sw_bench_set_travel (bench, 25.0);
  g_assert_cmpint (solved, ==, 2);
  sw_bench_set_travel (bench, 25.0);
  g_assert_cmpint (solved, ==, 2);
  sw_bench_set_setup_index (bench, 1);
  g_assert_cmpint (solved, ==, 3);
  sw_document_undo (sw_bench_get_document (bench));
  g_assert_cmpint (solved, ==, 4);
}

/* Common practice, no published source: top of the strut in, more negative camber. */
static void
test_mount_inboard_is_solved_at_once (void)
{
  g_autoptr (SwBench) bench = demo_bench ("wren.swcar");
  const double before =
      study_in_hand (sw_bench_get_study (bench))->now.measures.value[QUANTITY_CAMBER];

  sw_bench_set_mount (bench, (MountOffset){ 10, 0, 0 });
  g_assert_cmpfloat (study_in_hand (sw_bench_get_study (bench))
                         ->now.measures.value[QUANTITY_CAMBER],
                     <, before);
  g_assert_cmpfloat (sw_bench_get_study (bench)
                         ->measured.now.measures.value[QUANTITY_CAMBER],
                     ==, before);
}

static void
test_travel_stops_at_the_ends (void)
{
  g_autoptr (SwBench) bench = demo_bench ("wren.swcar");

  sw_bench_set_travel (bench, 1000.0);
  g_assert_cmpfloat (sw_bench_get_study (bench)->travel, ==, 80.0);
  sw_bench_set_travel (bench, -1000.0);
  g_assert_cmpfloat (sw_bench_get_study (bench)->travel, ==, -80.0);
}

static void
test_travel_goes_where_the_setup_stands (void)
{
  g_autoptr (SwBench) bench = demo_bench ("wren.swcar");

  sw_bench_set_lowering (bench, 20.0);
  g_assert_cmpfloat (sw_bench_get_study (bench)->travel, ==, 20.0);
  sw_bench_set_travel (bench, 5.0);
  sw_bench_set_mount (bench, (MountOffset){ 10, 0, 0 });
  g_assert_cmpfloat (sw_bench_get_study (bench)->travel, ==, 5.0);
  sw_bench_set_lowering (bench, 30.0);
  g_assert_cmpfloat (sw_bench_get_study (bench)->travel, ==, 30.0);
}

static void
test_lit_is_told_once_a_change (void)
{
  g_autoptr (SwBench) bench = demo_bench ("wren.swcar");
  int lit = 0;

  g_signal_connect_swapped (bench, "lit", G_CALLBACK (add_one), &lit);
  sw_bench_set_lit (bench, QUANTITY_CASTER);
  sw_bench_set_lit (bench, QUANTITY_CASTER);
  sw_bench_set_lit (bench, -1);
  g_assert_cmpint (lit, ==, 2);
}

static void
test_one_curve_stays_and_room_is_limited (void)
{
  g_autoptr (SwBench) bench = demo_bench ("wren.swcar");
  int chosen = 0;
  guint n;

  g_signal_connect_swapped (bench, "chosen", G_CALLBACK (add_one), &chosen);
  for (Quantity q = 0; q < N_QUANTITIES; q++)
    sw_bench_choose (bench, q, FALSE);
  n = sw_bench_get_choice (bench).n_large + sw_bench_get_choice (bench).n_small;
  g_assert_cmpuint (n, ==, 1);
  g_assert_cmpint (chosen, >, 0);

  for (Quantity q = 0; q < N_QUANTITIES; q++)
    sw_bench_choose (bench, q, TRUE);
  g_assert_cmpuint (sw_bench_get_choice (bench).n_large, <=, 3);
  g_assert_cmpuint (sw_bench_get_choice (bench).n_small, ==, BOARD_MOST_SMALL);
  chosen = 0;
  for (Quantity q = 0; q < N_QUANTITIES; q++)
    if (!sw_bench_is_chosen (bench, q))
      g_assert_false (sw_bench_choose (bench, q, TRUE));
  g_assert_cmpint (chosen, ==, 0);
}

static void
test_mount_in_words (void)
{
  g_autoptr (SwBench) bench = demo_bench ("wren.swcar");
  g_autofree char *home = sw_bench_describe_mount (bench);

  g_assert_cmpstr (home, ==, "mount as measured");
  sw_bench_set_mount (bench, (MountOffset){ 15, -10, 2.5 });
  g_autofree char *moved = sw_bench_describe_mount (bench);
  g_assert_cmpstr (moved, ==, "15.0 mm inboard, 10.0 mm forward, 2.5 mm up");
}

static void
test_another_document_starts_anew (void)
{
  g_autoptr (SwBench) bench = demo_bench ("wren.swcar");
  g_autoptr (GFile) file = demo_file ("fieldfare.swcar");
  g_autoptr (SwDocument) other = sw_document_load (file, NULL);
  SwDocument *first = g_object_ref (sw_bench_get_document (bench));
  Adjustment moved = { .mount = { 3, 0, 0 } };
  int solved = 0;

  sw_bench_set_setup_index (bench, 1);
  sw_bench_set_document (bench, other);
  g_assert_cmpuint (sw_bench_get_setup_index (bench), ==, 0);
  g_signal_connect_swapped (bench, "solved", G_CALLBACK (add_one), &solved);
  sw_document_set_setup (first, 0, &moved, "Move");
  g_assert_cmpint (solved, ==, 0);
  g_object_unref (first);
}

static void
test_bench_lets_go_of_its_document (void)
{
  SwBench *bench = demo_bench ("wren.swcar");
  gpointer document = sw_bench_get_document (bench);

  g_object_add_weak_pointer (document, &document);
  g_object_unref (bench);
  g_assert_null (document);
}

static void
read_setup (SwBench *bench)
{
  g_assert_nonnull (sw_bench_get_setup (bench)->name);
}

/* A document tells of its state before it tells of its car. */
static void
test_the_setup_in_hand_is_always_there (void)
{
  g_autoptr (SwBench) bench = demo_bench ("wren.swcar");
  SwDocument *document = sw_bench_get_document (bench);

  g_signal_connect_swapped (document, "notify", G_CALLBACK (read_setup), bench);
  sw_document_add_setup (document, 0, NULL);
  sw_bench_set_setup_index (bench, 1);
  sw_bench_set_setup_index (bench, 3);
  sw_document_undo (document);
  g_assert_cmpuint (sw_bench_get_setup_index (bench), ==, 1);
  sw_bench_set_setup_index (bench, 2);
  while (sw_document_remove_setup (document, 0))
    ;
  g_assert_cmpuint (sw_bench_get_setup_index (bench), ==, 0);
}

static GtkWindow *
other_window (SwWindow *window)
{
  GList *all = gtk_window_list_toplevels ();
  GtkWindow *other = NULL;

  for (GList *l = all; l != NULL; l = l->next)
    if (l->data != window)
      other = l->data;
  g_list_free (all);
  return other;
}

static void
test_the_lecture_dies_with_its_window (void)
{
  SwWindow *window = demo_window_open (application, "wren.swcar");
  GtkWidget *lecture =
      sw_lecture_window_new (GTK_WINDOW (window), sw_window_get_bench (window));
  GtkWidget *view = gtk_window_get_child (GTK_WINDOW (lecture));
  gpointer weak = view;

  g_object_add_weak_pointer (weak, &weak);
  gtk_window_present (GTK_WINDOW (lecture));
  for (int step = 0; step < N_STORY_STEPS; step++) {
    gtk_test_widget_wait_for_draw (view);
    sw_lecture_view_walk (SW_LECTURE_VIEW (view), 1);
    sw_bench_set_travel (sw_window_get_bench (window), 10.0 * step);
  }
  gtk_window_destroy (GTK_WINDOW (lecture));
  run_idle ();
  g_assert_null (weak);
  demo_window_close (window);
}

static void
test_what_would_put_it_back_lets_go (void)
{
  SwWindow *window = demo_window_open (application, "wren.swcar");
  gpointer bench = sw_window_get_bench (window);

  g_object_add_weak_pointer (bench, &bench);
  sw_bench_set_setup_index (bench, 2);
  restore_window_present (GTK_WINDOW (window), bench);
  GtkWindow *question = other_window (window);
  g_assert_nonnull (question);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (question));
  sw_bench_set_lowering (bench, 25.0);
  gtk_window_destroy (question);
  sw_bench_set_lowering (bench, 30.0);
  demo_window_close (window);
  g_assert_null (bench);
}

static guint
count_shown (GtkWidget *widget, GType type)
{
  guint n = gtk_widget_get_mapped (widget) && G_TYPE_CHECK_INSTANCE_TYPE (widget, type);

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    n += count_shown (child, type);
  return n;
}

/* The baseline is told so once, in place of the goals. */
static void
test_the_baseline_has_nothing_to_put_back (void)
{
  SwWindow *window = demo_window_open (application, "wren.swcar");
  SwBench *bench = sw_window_get_bench (window);

  restore_window_present (GTK_WINDOW (window), bench);
  GtkWidget *question = GTK_WIDGET (other_window (window));
  GtkWidget *content = gtk_window_get_child (GTK_WINDOW (question));
  gtk_test_widget_wait_for_draw (question);
  g_assert_cmpuint (count_shown (content, GTK_TYPE_LABEL), ==, 1);
  g_assert_cmpuint (count_shown (content, GTK_TYPE_SPIN_BUTTON), ==, 0);

  sw_bench_set_setup_index (bench, 2);
  gtk_test_widget_wait_for_draw (question);
  g_assert_cmpuint (count_shown (content, GTK_TYPE_SPIN_BUTTON), ==, 4);
  sw_bench_set_setup_index (bench, 0);
  gtk_test_widget_wait_for_draw (question);
  g_assert_cmpuint (count_shown (content, GTK_TYPE_LABEL), ==, 1);
  gtk_window_destroy (GTK_WINDOW (question));
  demo_window_close (window);
}

static void
test_play_lowers_and_a_second_call_puts_back (void)
{
  SwWindow *window = demo_window_open (application, "wren.swcar");
  SwBench *bench = sw_window_get_bench (window);
  GtkWidget *sheet = GTK_WIDGET (window->sheet);
  const gint64 end = g_get_monotonic_time () + 60 * G_USEC_PER_SEC;

  g_object_set (gtk_settings_get_default (), "gtk-enable-animations", TRUE, NULL);
  lowering_play (sheet, bench);
  while (sw_bench_get_study (bench)->travel < 1.0 && g_get_monotonic_time () < end)
    g_main_context_iteration (NULL, TRUE);
  g_assert_cmpfloat (sw_bench_get_study (bench)->travel, >=, 1.0);
  g_assert_cmpfloat (sw_bench_get_study (bench)->travel, <=, 40.0);
  lowering_play (sheet, bench);
  g_assert_cmpfloat (sw_bench_get_study (bench)->travel, ==, 0.0);

  lowering_play (sheet, bench); /* and the window goes while it plays */
  demo_window_close (window);
  g_object_set (gtk_settings_get_default (), "gtk-enable-animations", FALSE, NULL);
}

static void
test_the_page_on_height_and_the_long_table_are_drawn (void)
{
  SwWindow *window = demo_window_open (application, "wren.swcar");
  GActionGroup *actions = G_ACTION_GROUP (window);

  g_action_group_change_action_state (actions, "question",
                                      g_variant_new_string ("height"));
  g_action_group_change_action_state (actions, "side-by-side",
                                      g_variant_new_boolean (TRUE));
  gtk_test_widget_wait_for_draw (gtk_stack_get_visible_child (window->questions));
  g_assert_cmpstr (gtk_stack_get_visible_child_name (window->questions), ==, "height");
  sw_document_remove_setup (sw_bench_get_document (window->bench), 0);
  sw_document_undo (sw_bench_get_document (window->bench));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window->numbers));
  demo_window_close (window);
}

static void
test_the_page_on_springs_is_drawn_and_dies (void)
{
  SwWindow *window = demo_window_open (application, "wren.swcar");
  SwDocument *document = sw_bench_get_document (window->bench);
  CarSprings springs = car_springs_none ();

  g_action_group_change_action_state (G_ACTION_GROUP (window), "question",
                                      g_variant_new_string ("springs"));
  gpointer panel = gtk_stack_get_visible_child (window->strips);
  g_object_add_weak_pointer (panel, &panel);
  gtk_test_widget_wait_for_draw (gtk_stack_get_visible_child (window->questions));
  g_assert_true (sw_document_set_car_springs (document, &springs, "Take all away"));
  g_assert_cmpuint (sw_bench_get_springs (window->bench)->setups[0].stands, ==,
                    STANDS_NOT_GIVEN);
  springs.coil = (CarCoil){ .is_there = TRUE,
                            .rate_n_per_mm = 25.0,
                            .shear_modulus_gpa = SPRING_DEFAULT_SHEAR_MODULUS,
                            .free_length_mm = 340.0,
                            .perch_mm = 140.0 };
  g_assert_true (sw_document_set_car_springs (document, &springs, "Add a coil"));
  gtk_test_widget_wait_for_draw (gtk_stack_get_visible_child (window->questions));
  g_assert_cmpuint (sw_bench_get_springs (window->bench)->setups[0].stands, ==,
                    STANDS_BY_SPRINGS);
  sw_bench_set_travel (window->bench, 20.0);
  g_assert_cmpfloat (sw_bench_get_springs (window->bench)->setups[0].now.coil_force, >,
                     sw_bench_get_springs (window->bench)
                         ->setups[0]
                         .at_height.coil_force);
  sw_document_undo (document);
  g_assert_cmpuint (sw_bench_get_springs (window->bench)->setups[0].stands, ==,
                    STANDS_NOT_GIVEN);
  gtk_test_widget_wait_for_draw (panel);
  demo_window_close (window);
  g_assert_null (panel);
}

static void
test_window_and_views_die_together (void)
{
  SwWindow *window = demo_window_open (application, "wren.swcar");
  gpointer bench = sw_window_get_bench (window), sheet = window->sheet,
           numbers = window->numbers, whole = window,
           board = gtk_stack_get_visible_child (window->questions);

  g_object_add_weak_pointer (bench, &bench);
  g_object_add_weak_pointer (sheet, &sheet);
  g_object_add_weak_pointer (numbers, &numbers);
  g_object_add_weak_pointer (board, &board);
  g_object_add_weak_pointer (whole, &whole);
  demo_window_close (window);
  g_assert_null (whole);
  g_assert_null (sheet);
  g_assert_null (numbers);
  g_assert_null (board);
  g_assert_null (bench);
}

static void
test_a_refused_file_leaves_the_car (void)
{
  g_autofree char *path = NULL;
  g_autoptr (GFile) bad = NULL;
  SwWindow *window = demo_window_open (application, "wren.swcar");
  SwDocument *before = sw_bench_get_document (sw_window_get_bench (window));
  const int handle = g_file_open_tmp ("strutwright-XXXXXX.swcar", &path, NULL);

  g_assert_cmpint (handle, >=, 0);
  g_close (handle, NULL);
  g_assert_true (g_file_set_contents (path, "{ \"format\": 3 }", -1, NULL));
  bad = g_file_new_for_path (path);
  g_assert_false (sw_window_open (window, bad));
  g_assert_true (sw_bench_get_document (sw_window_get_bench (window)) == before);
  g_assert_true (gtk_revealer_get_reveal_child (window->message));
  g_assert_nonnull (strstr (gtk_label_get_label (window->message_label), "format"));

  sw_window_show_message (window, NULL);
  g_assert_false (gtk_revealer_get_reveal_child (window->message));
  g_unlink (path);
  demo_window_close (window);
}

static void
test_another_car_comes_into_the_window (void)
{
  SwWindow *window = demo_window_open (application, "wren.swcar");
  g_autoptr (GFile) file = demo_file ("fieldfare.swcar");
  gpointer first = sw_bench_get_document (sw_window_get_bench (window));

  g_object_add_weak_pointer (first, &first);
  g_assert_true (sw_window_open (window, file));
  g_assert_null (first);
  g_assert_nonnull (strstr (gtk_window_get_title (GTK_WINDOW (window)), "Fieldfare"));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  demo_window_close (window);
}

static void
test_an_example_has_no_file (void)
{
  SwWindow *window = sw_window_new (application);
  g_autoptr (GFile) file = demo_file ("lapwing.swcar");

  sw_window_open_example (window, file);
  g_assert_null (sw_document_get_file (sw_bench_get_document (window->bench)));
  demo_window_close (window);
}

static void
test_dark_turns_the_drawings (void)
{
  SwWindow *window = demo_window_open (application, "wren.swcar");
  GActionGroup *actions = G_ACTION_GROUP (application);

  g_assert_false (sw_canvas_get_theme (SW_CANVAS (window->sheet)).is_dark);
  g_action_group_activate_action (actions, "dark", NULL);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  g_assert_true (sw_canvas_get_theme (SW_CANVAS (window->sheet)).is_dark);
  g_action_group_activate_action (actions, "dark", NULL);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  g_assert_false (sw_canvas_get_theme (SW_CANVAS (window->sheet)).is_dark);
  demo_window_close (window);
}

/* A canvas that counts its drawings. */
typedef struct {
  SwCanvas parent_instance;
  int n_drawn;
} CountingCanvas;
typedef SwCanvasClass CountingCanvasClass;
static GType counting_canvas_get_type (void);
G_DEFINE_TYPE (CountingCanvas, counting_canvas, SW_TYPE_CANVAS)

static void
counting_canvas_draw (SwCanvas *canvas, cairo_t *cr, double width, double height)
{
  (void) cr;
  g_assert_cmpfloat (width, >, 0.0);
  g_assert_cmpfloat (height, >, 0.0);
  ((CountingCanvas *) canvas)->n_drawn++;
}

static void
counting_canvas_class_init (CountingCanvasClass *class)
{
  SW_CANVAS_CLASS (class)->draw = counting_canvas_draw;
}

static void
counting_canvas_init (CountingCanvas *self)
{
  (void) self;
}

static void
test_a_canvas_draws_when_it_must (void)
{
  GtkWidget *window = gtk_window_new ();
  GtkWidget *canvas = g_object_new (counting_canvas_get_type (), NULL);
  CountingCanvas *counting = (CountingCanvas *) canvas;

  gtk_window_set_default_size (GTK_WINDOW (window), 300, 200);
  gtk_window_set_child (GTK_WINDOW (window), canvas);
  gtk_window_present (GTK_WINDOW (window));
  gtk_test_widget_wait_for_draw (canvas);
  const int first = counting->n_drawn;
  g_assert_cmpint (first, >, 0);

  gtk_widget_queue_draw (canvas);
  gtk_test_widget_wait_for_draw (canvas);
  g_assert_cmpint (counting->n_drawn, ==, first);
  sw_canvas_invalidate (SW_CANVAS (canvas));
  sw_canvas_invalidate (SW_CANVAS (canvas));
  gtk_test_widget_wait_for_draw (canvas);
  g_assert_cmpint (counting->n_drawn, ==, first + 1);
  gtk_window_destroy (GTK_WINDOW (window));
  run_idle ();
}

static void
test_icons_come_with_the_program (void)
{
  GtkIconTheme *theme = gtk_icon_theme_get_for_display (gdk_display_get_default ());

  g_assert_true (gtk_icon_theme_has_icon (theme, SW_APPLICATION_ID));
  g_assert_true (gtk_icon_theme_has_icon (theme, SW_APPLICATION_ID "-symbolic"));
}

int
main (int argc, char **argv)
{
  int status;

  application = demo_application (&argc, &argv);

  g_test_add_func ("/bench/solved-once", test_solved_is_told_once_a_change);
  g_test_add_func ("/bench/mount-inboard", test_mount_inboard_is_solved_at_once);
  g_test_add_func ("/bench/travel-ends", test_travel_stops_at_the_ends);
  g_test_add_func ("/bench/lowering", test_travel_goes_where_the_setup_stands);
  g_test_add_func ("/bench/lit-once", test_lit_is_told_once_a_change);
  g_test_add_func ("/bench/choose", test_one_curve_stays_and_room_is_limited);
  g_test_add_func ("/bench/words", test_mount_in_words);
  g_test_add_func ("/bench/another-document", test_another_document_starts_anew);
  g_test_add_func ("/bench/lets-go", test_bench_lets_go_of_its_document);
  g_test_add_func ("/bench/setup-is-there", test_the_setup_in_hand_is_always_there);
  g_test_add_func ("/lecture/dies", test_the_lecture_dies_with_its_window);
  g_test_add_func ("/restore/lets-go", test_what_would_put_it_back_lets_go);
  g_test_add_func ("/restore/baseline", test_the_baseline_has_nothing_to_put_back);
  g_test_add_func ("/lowering/play", test_play_lowers_and_a_second_call_puts_back);
  g_test_add_func ("/lowering/page",
                   test_the_page_on_height_and_the_long_table_are_drawn);
  g_test_add_func ("/springs/page", test_the_page_on_springs_is_drawn_and_dies);
  g_test_add_func ("/window/dies", test_window_and_views_die_together);
  g_test_add_func ("/window/refused", test_a_refused_file_leaves_the_car);
  g_test_add_func ("/window/another-car", test_another_car_comes_into_the_window);
  g_test_add_func ("/window/example", test_an_example_has_no_file);
  g_test_add_func ("/window/dark", test_dark_turns_the_drawings);
  g_test_add_func ("/canvas/draws-when-it-must", test_a_canvas_draws_when_it_must);
  g_test_add_func ("/icons", test_icons_come_with_the_program);
  status = g_test_run ();
  g_object_unref (application);
  return status;
}
