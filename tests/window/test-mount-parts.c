/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The question "Mount" in process: where a mount goes that is dragged or nudged, what its
 * parts share, that a window starts without them, and the card on a printer. */

#include "demo-window.h"

#include "window/mount/aims-panel-bound.h"
#include "window/mount/aims-panel.h"
#include "window/mount/answers-view-row.h"
#include "window/mount/mount-view-page.h"
#include "window/mount/mount-view-steps.h"
#include "window/paper/card-window-page.h"
#include "window/paper/paper-print.h"
#include "window/window-private.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

static GtkApplication *application;

static void
assert_place (MountOffset is, double inboard, double rearward, double up)
{
  g_assert_cmpfloat_with_epsilon (is.inboard, inboard, 1e-9);
  g_assert_cmpfloat_with_epsilon (is.rearward, rearward, 1e-9);
  g_assert_cmpfloat_with_epsilon (is.up, up, 1e-9);
}

static Plate *
new_slot (double direction_deg)
{
  Plate *plate = plate_new ();

  plate->kind = PLATE_SLOT;
  plate->direction_deg = direction_deg;
  plate->along = (PlateScale){ 0.0, 24.0 };
  plate->raises_mm = 6.0;
  return plate;
}

static void
add_hole (Plate *plate, double inboard, double rearward)
{
  const PlateHole hole = { g_strdup ("x"), inboard, rearward, NULL };

  plate->kind = PLATE_HOLES;
  g_array_append_val (plate->holes, hole);
}

static void
test_without_a_plate_in_steps_and_limits (void)
{
  const MountRail rail = { NULL, FALSE };

  assert_place (mount_rail_nearest (&rail, (MountOffset){ 12.34, -5.67, 2.0 }), 12.3,
                -5.7, 2.0);
  assert_place (mount_rail_nearest (&rail, (MountOffset){ 900.0, -900.0, 0.0 }), 150.0,
                -150.0, 0.0);
  assert_place (mount_rail_nudge (&rail, (MountOffset){ 1, 2, 3 }, 0.5, 1, 0), 0.5, 2, 3);
  assert_place (mount_rail_nudge (&rail, (MountOffset){ 1, 2, 3 }, 5.0, 0, 1), 1, 7, 3);
}

/* 20 mm inboard of the zero of a slot at 35° is 20 cos 35° = 16.38 along it. */
static void
test_a_drag_slides_along_the_slot (void)
{
  g_autoptr (Plate) plate = new_slot (35.0);
  const MountRail rail = { plate, FALSE };
  const double a = 35.0 * G_PI / 180.0;

  assert_place (mount_rail_nearest (&rail, (MountOffset){ 20.0, 0.0, 0.0 }),
                16.4 * cos (a), 16.4 * sin (a), 6.0);
  assert_place (mount_rail_nearest (&rail, (MountOffset){ -3.0, -3.0, 0.0 }), 0, 0, 6.0);
  assert_place (mount_rail_nearest (&rail, (MountOffset){ 90.0, 90.0, 0.0 }),
                24.0 * cos (a), 24.0 * sin (a), 6.0);
}

static void
test_arrows_move_along_the_slot_that_goes_their_way (void)
{
  g_autoptr (Plate) straight = new_slot (0.0), leaning = new_slot (35.0);
  const MountRail across = { straight, FALSE }, rail = { leaning, FALSE };
  const double a = 35.0 * G_PI / 180.0;
  const MountOffset from = { 10.0 * cos (a), 10.0 * sin (a), 6.0 };

  assert_place (mount_rail_nudge (&rail, from, 0.5, -1, 0), 10.5 * cos (a),
                10.5 * sin (a), 6.0);
  assert_place (mount_rail_nudge (&rail, from, 0.5, 0, 1), 10.5 * cos (a), 10.5 * sin (a),
                6.0);
  assert_place (mount_rail_nudge (&rail, from, 5.0, 1, 0), 5.0 * cos (a), 5.0 * sin (a),
                6.0);
  assert_place (mount_rail_nudge (&across, (MountOffset){ 10, 0, 6 }, 5.0, 0, 1), 10, 0,
                6);
  assert_place (mount_rail_nudge (&across, (MountOffset){ 22, 0, 6 }, 5.0, -1, 0), 24, 0,
                6);
}

/* The second scale is 90° further than the first, so at 0° it runs rearward. */
static void
test_arrows_take_the_scale_of_two_that_goes_their_way (void)
{
  g_autoptr (Plate) plate = new_slot (0.0);
  const MountRail rail = { plate, FALSE };

  plate->kind = PLATE_CROSSED_SLOTS;
  plate->across = (PlateScale){ -8.0, 12.0 };
  assert_place (mount_rail_nudge (&rail, (MountOffset){ 10, 2, 6 }, 0.5, -1, 0), 10.5, 2,
                6);
  assert_place (mount_rail_nudge (&rail, (MountOffset){ 10, 2, 6 }, 5.0, 0, -1), 10, -3,
                6);
  assert_place (mount_rail_nudge (&rail, (MountOffset){ 10, 11, 6 }, 5.0, 0, 1), 10, 12,
                6);
}

static void
test_arrows_go_to_the_next_hole_that_way (void)
{
  g_autoptr (Plate) plate = plate_new ();
  const MountRail rail = { plate, FALSE };
  const MountOffset zero = { 0 };

  add_hole (plate, 0, 0);
  add_hole (plate, 10, 0);
  add_hole (plate, 20, 0);
  add_hole (plate, 0, 10);
  assert_place (mount_rail_nudge (&rail, zero, 0.5, -1, 0), 10, 0, 0);
  assert_place (mount_rail_nudge (&rail, zero, 0.5, 0, 1), 0, 10, 0);
  assert_place (mount_rail_nudge (&rail, zero, 0.5, 1, 0), 0, 0, 0);
  assert_place (mount_rail_walk (&rail, zero, 1), 10, 0, 0);
  assert_place (mount_rail_walk (&rail, zero, -1), 0, 10, 0);
  assert_place (mount_rail_walk (&rail, (MountOffset){ 0, 10, 0 }, 1), 0, 0, 0);
}

/* On a circle of 10 mm, 5 mm of arc are 28.6°, and a full turn has no end. */
static void
test_arrows_turn_an_eccentric_past_its_zero (void)
{
  g_autoptr (Plate) plate = plate_new ();
  const MountRail rail = { plate, FALSE };
  const double step = 28.6 * G_PI / 180.0;

  plate->kind = PLATE_ECCENTRIC;
  plate->radius_mm = 10.0;
  plate->turn_least_deg = 0.0;
  plate->turn_most_deg = 360.0;
  assert_place (mount_rail_nudge (&rail, (MountOffset){ 10, 0, 0 }, 5.0, 0, 1),
                10 * cos (step), 10 * sin (step), 0);
  assert_place (mount_rail_nudge (&rail, (MountOffset){ 10, 0, 0 }, 5.0, 0, -1),
                10 * cos (step), -10 * sin (step), 0);
}

static void
type (GtkWidget *spin, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (spin), text);
  gtk_spin_button_update (GTK_SPIN_BUTTON (spin));
}

static void
test_an_open_end_is_empty_and_steps_from_its_start (void)
{
  const AimInfo camber = aim_info (AIM_CAMBER);
  GtkWidget *least = g_object_ref_sink (range_bound_new (TRUE, &camber, "at least"));
  GtkWidget *most = g_object_ref_sink (range_bound_new (FALSE, &camber, "at most"));
  int changed = 0;

  g_assert_cmpfloat (range_bound_get (least), ==, -INFINITY);
  g_assert_cmpfloat (range_bound_get (most), ==, INFINITY);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (most)), ==, "");

  range_bound_set_start (most, -2.5);
  g_signal_connect_swapped (most, "value-changed", G_CALLBACK (add_one), &changed);
  gtk_spin_button_spin (GTK_SPIN_BUTTON (most), GTK_SPIN_STEP_BACKWARD, 0.1);
  g_assert_cmpfloat (range_bound_get (most), ==, -2.5);
  g_assert_cmpint (changed, ==, 1);
  gtk_spin_button_spin (GTK_SPIN_BUTTON (most), GTK_SPIN_STEP_BACKWARD, 0.1);
  g_assert_cmpfloat_with_epsilon (range_bound_get (most), -2.6, 1e-9);
  type (most, "");
  g_assert_cmpfloat (range_bound_get (most), ==, INFINITY);
  type (least, "4.25");
  g_assert_cmpfloat (range_bound_get (least), ==, 4.25);
  range_bound_set (least, -INFINITY);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (least)), ==, "");
  g_object_unref (least);
  g_object_unref (most);
}

static SwChooser *
show_mount (SwWindow *window)
{
  gtk_widget_activate_action (GTK_WIDGET (window), "win.question", "s", "mount");
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  run_idle ();
  return sw_chooser_of (window->bench);
}

static void
test_nothing_is_made_before_the_page_is_shown (void)
{
  SwWindow *window = demo_window_open (application, "wren.swcar");

  run_idle ();
  g_assert_null (g_object_get_data (G_OBJECT (window->bench), "chooser"));
  gtk_widget_activate_action (GTK_WIDGET (window), "win.question", "s", "height");
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  g_assert_null (g_object_get_data (G_OBJECT (window->bench), "chooser"));
  show_mount (window);
  g_assert_nonnull (g_object_get_data (G_OBJECT (window->bench), "chooser"));
  demo_window_close (window);
}

static void
test_the_page_dies_with_its_window (void)
{
  SwWindow *window = demo_window_open (application, "fieldfare.swcar");
  SwChooser *chooser = show_mount (window);
  gpointer weak = chooser;

  g_object_add_weak_pointer (G_OBJECT (chooser), &weak);
  demo_window_close (window);
  g_assert_null (weak);
}

static void
test_answers_are_worked_out_once_and_not_for_a_moved_mount (void)
{
  SwWindow *window = demo_window_open (application, "wren.swcar");
  SwChooser *chooser = show_mount (window);
  int answered = 0;

  g_assert_cmpuint (sw_chooser_get_answers (chooser)->len, >, 0);
  g_signal_connect_swapped (chooser, "answered", G_CALLBACK (add_one), &answered);
  sw_bench_set_setup_index (window->bench, 1); /* not the baseline */
  run_idle ();
  g_assert_cmpint (answered, ==, 1);
  sw_bench_set_mount (window->bench, (MountOffset){ 3, 4, 0 });
  sw_bench_set_travel (window->bench, 12.0);
  run_idle ();
  g_assert_cmpint (answered, ==, 1);
  sw_bench_set_lowering (window->bench, 15.0);
  g_assert_cmpint (answered, ==, 1); /* not before the frame that shows it */
  run_idle ();
  g_assert_cmpint (answered, ==, 2);
  demo_window_close (window);
}

static void
test_no_answers_while_another_question_is_shown (void)
{
  SwWindow *window = demo_window_open (application, "wren.swcar");
  SwChooser *chooser = show_mount (window);
  int answered = 0;

  g_signal_connect_swapped (chooser, "answered", G_CALLBACK (add_one), &answered);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.question", "s", "travel");
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  sw_bench_set_lowering (window->bench, 15.0);
  run_idle ();
  g_assert_cmpint (answered, ==, 0);
  show_mount (window);
  g_assert_cmpint (answered, ==, 1);
  demo_window_close (window);
}

/* The mount and the name of its plate together. */
static void
test_a_place_on_a_plate_is_one_undo_step (void)
{
  SwWindow *window = demo_window_open (application, "wren.swcar");
  SwChooser *chooser = show_mount (window);
  SwDocument *document = sw_bench_get_document (window->bench);
  const char *name;

  sw_chooser_take_answer (chooser, 0);
  name = sw_chooser_get_plate (chooser)->name;
  sw_chooser_set_mount (chooser, (MountOffset){ 3, 4, 6 }, TRUE);
  g_assert_cmpstr (sw_bench_get_setup (window->bench)->plate, ==, name);
  sw_chooser_set_mount (chooser, (MountOffset){ 5, 4, 0 }, FALSE);
  g_assert_null (sw_bench_get_setup (window->bench)->plate);
  sw_document_undo (document);
  g_assert_cmpstr (sw_bench_get_setup (window->bench)->plate, ==, name);
  sw_document_undo (document);
  g_assert_null (sw_bench_get_setup (window->bench)->plate);
  assert_place (sw_bench_get_setup (window->bench)->mount, 0, 0, 0);
  g_assert_null (sw_document_get_undo_label (document));
  demo_window_close (window);
}

static void
test_the_right_side_is_set_by_itself (void)
{
  SwWindow *window = demo_window_open (application, "fieldfare.swcar");
  SwChooser *chooser = show_mount (window);
  SwDocument *document = sw_bench_get_document (window->bench);

  sw_chooser_set_side (chooser, SIDE_RIGHT);
  sw_chooser_set_mount (chooser, (MountOffset){ 7, 2, 0 }, FALSE);
  assert_place (sw_bench_get_setup (window->bench)->mount, 0, 0, 0);
  assert_place (sw_chooser_get_mount (chooser), 7, 2, 0);
  sw_chooser_set_side (chooser, SIDE_LEFT);
  assert_place (sw_chooser_get_mount (chooser), 0, 0, 0);
  sw_document_undo (document);
  g_assert_false (sw_bench_get_setup (window->bench)->right.is_own);
  demo_window_close (window);
}

static void
test_fitting_is_one_undo_step_and_comes_in_hand (void)
{
  SwWindow *window = demo_window_open (application, "wren.swcar");
  SwChooser *chooser = show_mount (window);
  SwDocument *document = sw_bench_get_document (window->bench);
  const guint before = sw_document_get_car (document)->setups->len;
  const ChoiceAnswer best =
      g_array_index (sw_chooser_get_answers (chooser), ChoiceAnswer, 0);
  g_autofree char *name = g_strdup (best.plate->name);
  const MountOffset mount = best.side[SIDE_LEFT].mount;

  sw_chooser_fit (chooser, 0);
  g_assert_cmpuint (sw_bench_get_setup_index (window->bench), ==, before);
  g_assert_cmpstr (sw_bench_get_setup (window->bench)->plate, ==, name);
  g_assert_cmpstr (sw_chooser_get_plate (chooser)->name, ==, name);
  assert_place (sw_bench_get_setup (window->bench)->mount, mount.inboard, mount.rearward,
                mount.up);
  sw_document_undo (document);
  g_assert_cmpuint (sw_document_get_car (document)->setups->len, ==, before);
  g_assert_null (sw_document_get_undo_label (document));
  demo_window_close (window);
}

/* The sentence over the map, and the panel that tells the document. */
static void
test_the_panel_of_aims_follows_and_lets_go (void)
{
  SwWindow *window = demo_window_open (application, "wren.swcar");
  SwChooser *chooser = show_mount (window);
  SwDocument *document = sw_bench_get_document (window->bench);
  GtkWidget *panel = g_object_ref_sink (aims_panel_new (chooser));
  const CarTarget target = {
    .aim = AIM_TRAIL, .least = 20, .most = INFINITY, .weight = 1
  };
  g_autofree char *before = aims_sentence (sw_document_get_car (document));
  g_autofree char *after = NULL;

  g_assert_true (g_str_has_prefix (before, "Camber −2.20 to −1.80° · Caster 5.00°"));
  sw_document_set_targets (document, &target, 1, "Aim");
  after = aims_sentence (sw_document_get_car (document));
  g_assert_cmpstr (after, ==, "Caster trail 20.0 mm or more");
  sw_document_set_targets (document, NULL, 0, "Aim");
  g_object_unref (panel);
  sw_document_undo (document); /* nobody listens any more */
  demo_window_close (window);
}

static gboolean
holds (const char *data, gsize length, const char *text)
{
  const gsize n = strlen (text);

  for (gsize i = 0; i + n <= length; i++)
    if (memcmp (data + i, text, n) == 0)
      return TRUE;
  return FALSE;
}

static void
test_the_card_prints_on_one_upright_a4 (void)
{
  SwWindow *window = demo_window_open (application, "fieldfare.swcar");
  SwChooser *chooser = show_mount (window);
  g_autofree char *folder = g_dir_make_tmp ("strutwright-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "card.pdf", NULL);
  g_autofree char *written = NULL;
  gsize length;
  g_autoptr (GError) error = NULL;

  sw_chooser_take_answer (chooser, 0);

  CardPage *page = card_page_new (chooser);
  g_autoptr (GtkPrintOperation) operation = paper_print_operation_new (&card_paper, page);
  card_page_free (page); /* it has a copy */
  gtk_print_operation_set_export_filename (operation, path);
  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_EXPORT, NULL, &error);
  g_assert_no_error (error);
  g_assert_true (g_file_get_contents (path, &written, &length, NULL));
  g_assert_true (g_str_has_prefix (written, "%PDF-"));
  g_assert_cmpuint (length, >, 5000); /* an empty page has 1 kB */
  /* A4, ISO 216: 210 by 297 mm are 595.276 by 841.890 points */
  g_assert_true (holds (written, length, "/MediaBox [ 0 0 595.27"));
  g_assert_true (holds (written, length, " 841.88"));
  g_assert_true (holds (written, length, "/Count 1\n"));
  g_unlink (path);
  g_rmdir (folder);
  demo_window_close (window);
}

/* Once a setup names the plate in hand, its own settings count, not the best ones. */
static void
test_the_card_is_of_what_is_set (void)
{
  SwWindow *window = demo_window_open (application, "wren.swcar");
  SwChooser *chooser = show_mount (window);
  CardPage *page;

  g_assert_null (card_page_new (chooser));
  sw_chooser_set_plate (chooser, "Three-hole camber plate", FALSE);
  const Plate *plate = sw_chooser_get_plate (chooser);
  sw_chooser_set_mount (chooser, plate_place (plate, (PlateSetting){ .place = 1 }), TRUE);
  page = card_page_new (chooser);
  g_assert_cmpuint (page->answer.side[SIDE_LEFT].setting.place, ==, 1);
  card_page_free (page);
  demo_window_close (window);
}

static gboolean
is_off (const ChoicePlace *place, ChoiceNumber number)
{
  return choice_number_misses_aim (place, number) ||
         choice_number_is_past_limit (place, number);
}

/* Each side by itself; how many figures have one side marked and the other not. */
static guint
check_marks (SwAnswerRow *row, const ChoiceAnswer *answer)
{
  guint n_apart = 0;

  for (ChoiceNumber i = 0; i < N_CHOICE_NUMBERS; i++) {
    if (sw_answer_row_get_number (row, i, SIDE_RIGHT) == NULL)
      continue;
    for (CarSide side = SIDE_LEFT; side <= SIDE_RIGHT; side++) {
      const char *text = sw_answer_row_get_number (row, i, side);
      const gboolean off = is_off (&answer->side[side], i);

      g_assert_cmpint (sw_answer_row_is_marked (row, i, side), ==, off);
      g_assert_cmpint (g_str_has_prefix (text, "! "), ==, off);
    }
    n_apart +=
        is_off (&answer->side[SIDE_LEFT], i) != is_off (&answer->side[SIDE_RIGHT], i);
  }
  return n_apart;
}

/* The colour goes with the sign; how many of the figures with two lines have one. */
static guint
check_colours (GtkWidget *widget)
{
  guint n_marked = 0, n_seen = 0, n_apart = 0;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child)) {
    n_apart += check_colours (child);
    if (!GTK_IS_LABEL (child) || !gtk_widget_has_css_class (child, "numeric") ||
        !gtk_widget_get_visible (child))
      continue;
    const gboolean is_coloured = gtk_widget_has_css_class (child, "off-aim");
    g_assert_cmpint (is_coloured, ==,
                     g_str_has_prefix (gtk_label_get_text (GTK_LABEL (child)), "! "));
    n_marked += is_coloured;
    n_seen++;
  }
  return n_apart + (n_seen == 2 && n_marked == 1);
}

static void
test_a_miss_colours_its_own_side (void)
{
  SwWindow *window = demo_window_open (application, "fieldfare.swcar");
  SwChooser *chooser = show_mount (window);
  const GArray *answers = sw_chooser_get_answers (chooser);
  const Car *car =
      sw_document_get_car (sw_bench_get_document (sw_chooser_get_bench (chooser)));
  guint n_apart = 0;

  for (guint i = 0; i < answers->len; i++) {
    const ChoiceAnswer *answer = &g_array_index (answers, ChoiceAnswer, i);
    g_autoptr (SwAnswerRow) row = sw_answer_row_new (car, answer, i + 1, TRUE);

    n_apart += check_marks (row, answer);
  }
  g_assert_cmpuint (n_apart, >, 0);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  g_assert_cmpuint (check_colours (GTK_WIDGET (window)), >, 0);
  demo_window_close (window);
}

static GtkLabel *
plate_label (GtkWidget *widget)
{
  if (GTK_IS_LABEL (widget) && gtk_widget_has_css_class (widget, "plate-name"))
    return GTK_LABEL (widget);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child)) {
    GtkLabel *label = plate_label (child);

    if (label != NULL)
      return label;
  }
  return NULL;
}

/* How many characters stand before the ellipsis, or all; the names are ASCII. */
static int
n_shown (GtkLabel *label)
{
  PangoLayoutIter *iter = pango_layout_get_iter (gtk_label_get_layout (label));
  int n = (int) strlen (gtk_label_get_text (label));

  do {
    const PangoLayoutRun *run = pango_layout_iter_get_run_readonly (iter);

    if (run != NULL && (run->item->analysis.flags & PANGO_ANALYSIS_FLAG_IS_ELLIPSIS) != 0)
      n = run->item->offset;
  } while (pango_layout_iter_next_run (iter));
  pango_layout_iter_free (iter);
  return n;
}

/* In a window as narrow as its parts allow, in a button as high as the one beside it. */
static void
test_names_of_plates_are_not_cut_to_nothing (void)
{
  SwWindow *window = demo_window_open (application, "wren.swcar");
  SwChooser *chooser = sw_chooser_of (window->bench);
  GtkWidget *narrow = gtk_window_new (), *tools = mount_tools_new (window->bench);
  GtkWidget *lines = gtk_widget_get_first_child (tools);
  GtkLabel *label = plate_label (tools);
  const PlateLibrary *library = sw_chooser_get_library (chooser);

  gtk_window_set_default_size (GTK_WINDOW (narrow), 1, 1);
  gtk_window_set_child (GTK_WINDOW (narrow), tools);
  gtk_window_present (GTK_WINDOW (narrow));
  g_assert_cmpuint (library->plates->len, >=, 8);
  for (guint i = 0; i < library->plates->len; i++) {
    const ShelfPlate *shelf = library->plates->pdata[i];
    const int length = (int) strlen (shelf->plate->name);
    int height;

    sw_chooser_set_plate (chooser, shelf->plate->name, FALSE);
    gtk_test_widget_wait_for_draw (narrow);
    g_test_message ("%s: %d of %d", shelf->plate->name, n_shown (label), length);
    g_assert_cmpint (n_shown (label), >=, MIN (length, 12));
    gtk_widget_measure (lines, GTK_ORIENTATION_VERTICAL, -1, &height, NULL, NULL, NULL);
    g_assert_cmpint (gtk_widget_get_height (gtk_widget_get_last_child (tools)), <=,
                     height);
  }
  gtk_window_destroy (GTK_WINDOW (narrow));
  demo_window_close (window);
}

int
main (int argc, char **argv)
{
  int status;

  application = demo_application (&argc, &argv);

  g_test_add_func ("/rail/free", test_without_a_plate_in_steps_and_limits);
  g_test_add_func ("/rail/slot", test_a_drag_slides_along_the_slot);
  g_test_add_func ("/rail/slot-arrows",
                   test_arrows_move_along_the_slot_that_goes_their_way);
  g_test_add_func ("/rail/two-scales",
                   test_arrows_take_the_scale_of_two_that_goes_their_way);
  g_test_add_func ("/rail/holes", test_arrows_go_to_the_next_hole_that_way);
  g_test_add_func ("/rail/circle", test_arrows_turn_an_eccentric_past_its_zero);
  g_test_add_func ("/aims/open-end", test_an_open_end_is_empty_and_steps_from_its_start);
  g_test_add_func ("/aims/panel", test_the_panel_of_aims_follows_and_lets_go);
  g_test_add_func ("/mount/late", test_nothing_is_made_before_the_page_is_shown);
  g_test_add_func ("/mount/dies", test_the_page_dies_with_its_window);
  g_test_add_func ("/chooser/answers",
                   test_answers_are_worked_out_once_and_not_for_a_moved_mount);
  g_test_add_func ("/chooser/shown", test_no_answers_while_another_question_is_shown);
  g_test_add_func ("/chooser/plate", test_a_place_on_a_plate_is_one_undo_step);
  g_test_add_func ("/chooser/right", test_the_right_side_is_set_by_itself);
  g_test_add_func ("/chooser/fit", test_fitting_is_one_undo_step_and_comes_in_hand);
  g_test_add_func ("/answers/colours", test_a_miss_colours_its_own_side);
  g_test_add_func ("/mount/plate-names", test_names_of_plates_are_not_cut_to_nothing);
  g_test_add_func ("/card/print", test_the_card_prints_on_one_upright_a4);
  g_test_add_func ("/card/set", test_the_card_is_of_what_is_set);
  status = g_test_run ();
  g_object_unref (application);
  return status;
}
