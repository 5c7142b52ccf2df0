/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The window's words have room in the language that LANGUAGE names: it fits a small
 * screen, and no label is cut, of the window on any question or of its dialogs. */

#include "demo-window.h"

#include "window/loads/loads-table.h"
#include "window/mount/plate-window.h"
#include "window/question.h"
#include "window/springs/springs-panel.h"
#include "window/window-private.h"

#include <glib/gi18n-lib.h>
#include <locale.h>
#include <string.h>

#define SMALL_WIDTH 1024
#define SMALL_HEIGHT 640

static GtkApplication *application;

typedef struct {
  const char *where;
  const Car *car; /* whose names may be cut */
  guint n_labels;
  GString *found;
} Look;

static gboolean
is_own (const Car *car, const char *text)
{
  gboolean is_setup = FALSE;

  for (guint i = 0; i < car->setups->len; i++)
    is_setup = is_setup || strstr (text, car_setup (car, i)->name) != NULL;
  return is_setup || strstr (text, car->name) != NULL;
}

/* What tells the whole in a tooltip may be cut: the table of plates, and choices that
 * the drawing below them says again. */
static void
look_at_label (Look *look, GtkLabel *label)
{
  PangoLayout *layout = gtk_label_get_layout (label);
  const char *text = gtk_label_get_text (label);
  int width;

  if (text[0] == '\0' || is_own (look->car, text))
    return;
  look->n_labels++;
  pango_layout_get_pixel_size (layout, &width, NULL);
  if (pango_layout_is_ellipsized (layout)
          ? !gtk_widget_get_has_tooltip (GTK_WIDGET (label))
          : gtk_widget_get_width (GTK_WIDGET (label)) < width)
    g_string_append_printf (look->found, "\n%s cuts “%s”", look->where, text);
}

static void
look_at (Look *look, GtkWidget *widget)
{
  if (!gtk_widget_get_mapped (widget))
    return;
  if (GTK_IS_LABEL (widget))
    look_at_label (look, GTK_LABEL (widget));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    look_at (look, child);
}

static Look
look_new (SwWindow *window)
{
  SwDocument *document = sw_bench_get_document (window->bench);

  return (Look){ .car = sw_document_get_car (document), .found = g_string_new (NULL) };
}

static void
look_end (Look *look, guint least)
{
  if (look->found->len > 0)
    g_error ("%s: %s", g_getenv ("LANGUAGE"), look->found->str);
  g_assert_cmpuint (look->n_labels, >=, least);
  g_string_free (look->found, TRUE);
}

static void
settle (GtkWidget *widget)
{
  for (int i = 0; i < 3; i++) {
    gtk_test_widget_wait_for_draw (widget);
    run_idle ();
  }
}

static void
ask (SwWindow *window, const char *question)
{
  g_action_group_change_action_state (G_ACTION_GROUP (window), "question",
                                      g_variant_new_string (question));
  settle (GTK_WIDGET (window));
}

static void
look_at_questions (SwWindow *window, const char *size, Look *look)
{
  guint n;
  const Question *all = questions (&n);

  settle (GTK_WIDGET (window));
  for (guint i = 0; i < n; i++) {
    g_autofree char *where = g_strdup_printf ("%s window, %s", size, all[i].name);
    int least;

    ask (window, all[i].name);
    look->where = where;
    look_at (look, GTK_WIDGET (window));
    gtk_widget_measure (GTK_WIDGET (window), GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL,
                        NULL, NULL);
    g_test_message ("%s needs %d pixels", where, least);
    if (least > SMALL_WIDTH)
      g_string_append_printf (look->found, "\n%s needs %d pixels", where, least);
    if (gtk_orientable_get_orientation (GTK_ORIENTABLE (window->panes)) !=
        GTK_ORIENTATION_HORIZONTAL)
      g_string_append_printf (look->found, "\n%s has sheet above question", where);
  }
}

static void
test_the_questions_fit (void)
{
  SwWindow *window = demo_window_open (application, "dunnock.swcar");
  Look look = look_new (window);

  gtk_window_set_default_size (GTK_WINDOW (window), 1600, 1000);
  look_at_questions (window, "large", &look);
  gtk_window_set_default_size (GTK_WINDOW (window), SMALL_WIDTH, SMALL_HEIGHT);
  look_at_questions (window, "small", &look);
  look_end (&look, 500);
  demo_window_close (window);
}

static GtkWidget *
find_of_type (GtkWidget *widget, GType type)
{
  GtkWidget *found = G_TYPE_CHECK_INSTANCE_TYPE (widget, type) ? widget : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (widget);
       child != NULL && found == NULL; child = gtk_widget_get_next_sibling (child))
    found = find_of_type (child, type);
  return found;
}

static void
check_all (GtkWidget *widget)
{
  if (GTK_IS_CHECK_BUTTON (widget))
    gtk_check_button_set_active (GTK_CHECK_BUTTON (widget), TRUE);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    check_all (child);
}

/* It scrolls up and down alone. */
static void
look_at_scrolled (Look *look, GtkWidget *scrolled, int width)
{
  GtkAdjustment *along =
      gtk_scrolled_window_get_hadjustment (GTK_SCROLLED_WINDOW (scrolled));
  const double needed = gtk_adjustment_get_upper (along);
  const double room = gtk_adjustment_get_page_size (along);

  g_assert_cmpfloat (room, >, width / 3.0);
  if (needed > room)
    g_string_append_printf (look->found, "\n%s needs %.0f pixels, has %.0f at %d",
                            look->where, needed, room, width);
}

static void
look_at_strip (SwWindow *window, GtkWidget *scrolled, Look *look)
{
  static const struct {
    int width, height;
  } sizes[] = { { SMALL_WIDTH, SMALL_HEIGHT }, { 1280, 800 } };

  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++) {
    gtk_window_set_default_size (GTK_WINDOW (window), sizes[i].width, sizes[i].height);
    settle (GTK_WIDGET (window));
    look_at (look, scrolled);
    look_at_scrolled (look, scrolled, sizes[i].width);
  }
}

/* With every part there is. */
static void
test_the_springs_fit (void)
{
  SwWindow *window = demo_window_open (application, "wren.swcar");
  Look look = look_new (window);

  look.where = "springs";
  ask (window, "springs");
  GtkWidget *panel = find_of_type (GTK_WIDGET (window), SW_TYPE_SPRINGS_PANEL);
  check_all (panel);
  look_at_strip (window, find_of_type (panel, GTK_TYPE_SCROLLED_WINDOW), &look);
  look_end (&look, 80);
  demo_window_close (window);
}

/* With the column of the baseline. */
static void
test_the_joints_fit (void)
{
  SwWindow *window = demo_window_open (application, "wren.swcar");
  Look look = look_new (window);

  look.where = "joints";
  sw_bench_set_setup_index (window->bench, 1);
  ask (window, "loads");
  GtkWidget *table = find_of_type (GTK_WIDGET (window), SW_TYPE_LOADS_TABLE);
  look_at_strip (window, gtk_widget_get_ancestor (table, GTK_TYPE_SCROLLED_WINDOW),
                 &look);
  look_end (&look, 100);
  demo_window_close (window);
}

static GtkWindow *
shown_dialog (SwWindow *window)
{
  GListModel *all = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (all); i++) {
    g_autoptr (GtkWindow) one = g_list_model_get_item (all, i);

    if (one != GTK_WINDOW (window) && gtk_widget_get_visible (GTK_WIDGET (one)))
      return one;
  }
  return NULL;
}

static void
look_at_dialog (SwWindow *window, const char *name, Look *look)
{
  GtkWindow *dialog = shown_dialog (window);

  g_assert_nonnull (dialog);
  settle (GTK_WIDGET (dialog));
  look->where = name;
  look_at (look, GTK_WIDGET (dialog));
  gtk_window_close (dialog);
  run_idle ();
}

static void
test_the_dialogs_fit (void)
{
  static const char *const of_window[] = { "measured-points", "new-car",
                                           "guide",           "report",
                                           "export",          "restore",
                                           "quantities",      "show-help-overlay" };
  static const char *const of_program[] = { "units", "about", "cautions" };
  SwWindow *window = demo_window_open (application, "dunnock.swcar");
  Look look = look_new (window);

  for (gsize i = 0; i < G_N_ELEMENTS (of_window); i++) {
    g_action_group_activate_action (G_ACTION_GROUP (window), of_window[i], NULL);
    look_at_dialog (window, of_window[i], &look);
  }
  for (gsize i = 0; i < G_N_ELEMENTS (of_program); i++) {
    g_action_group_activate_action (G_ACTION_GROUP (application), of_program[i], NULL);
    look_at_dialog (window, of_program[i], &look);
  }
  plate_window_open (GTK_WINDOW (window), sw_chooser_of (window->bench), NULL);
  look_at_dialog (window, "plate", &look);
  look_end (&look, 200);
  demo_window_close (window);
}

int
main (int argc, char **argv)
{
  int status;

  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, g_getenv ("STRUTWRIGHT_LOCALEDIR"));
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
  application = demo_application (&argc, &argv);
  g_test_add_func ("/words-fit/questions", test_the_questions_fit);
  g_test_add_func ("/words-fit/springs", test_the_springs_fit);
  g_test_add_func ("/words-fit/joints", test_the_joints_fit);
  g_test_add_func ("/words-fit/dialogs", test_the_dialogs_fit);
  status = g_test_run ();
  g_object_unref (application);
  return status;
}
