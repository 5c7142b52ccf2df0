/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dialog/menus.h"
#include "window/entry/left-to-right.h"
#include "window/layout/wrap-row.h"
#include "window/mount/plate-window.h"
#include "window/question.h"
#include "window/setups/setup-panel.h"
#include "window/window-private.h"

#include "model/car/car-json.h"
#include "model/plate/plate-library.h"
#include "model/study/setup-title.h"
#include "model/words/unit.h"

#include <glib/gi18n-lib.h>

#define RECOVERY_DELAY 2 /* seconds after a change */

G_DEFINE_FINAL_TYPE (SwWindow, sw_window, GTK_TYPE_APPLICATION_WINDOW)

/* ", 20.0 mm lower"; nothing for a car that stands as measured. */
static char *
describe_height (double lowering)
{
  g_autofree char *length = unit_text (UNIT_LENGTH, ABS (lowering), 1);

  if (lowering > 0.0)
    return g_strdup_printf (_ (", %s lower"), length);
  if (lowering < 0.0)
    return g_strdup_printf (_ (", %s higher"), length);
  return g_strdup ("");
}

static void
show_title (SwWindow *self)
{
  SwDocument *document = sw_bench_get_document (self->bench);
  const Car *car = sw_document_get_car (document);
  g_autofree char *mount = sw_bench_describe_mount (self->bench);
  g_autofree char *height =
      describe_height (sw_bench_get_setup (self->bench)->lowering_mm);
  g_autofree char *subtitle =
      g_strdup_printf ("%s — %s%s", setup_title (sw_bench_get_setup (self->bench)), mount,
                       height);
  g_autofree char *title =
      g_strdup_printf ("%s%s", sw_document_is_modified (document) ? "• " : "", car->name);

  gtk_label_set_label (GTK_LABEL (self->title), title);
  gtk_label_set_label (GTK_LABEL (self->subtitle), subtitle);
  gtk_window_set_title (GTK_WINDOW (self), title);
}

static void
show_travel (SwWindow *self)
{
  const Study *study = sw_bench_get_study (self->bench);
  char text[64];
  const double z = study->travel;

  gtk_range_set_range (GTK_RANGE (self->travel), study->range.from, study->range.to);
  gtk_range_set_value (GTK_RANGE (self->travel), z);
  unit_format_whole (UNIT_LENGTH, z, 1, TRUE, text, sizeof text);
  gtk_label_set_label (self->travel_label, text);
}

/* A tick where the wheel stands as measured, and one where this setup stands. */
static void
show_marks (SwWindow *self)
{
  const Study *study = sw_bench_get_study (self->bench);

  gtk_scale_clear_marks (self->travel);
  gtk_scale_add_mark (self->travel, 0.0, GTK_POS_BOTTOM, NULL);
  if (study_in_hand (study)->lowering != 0.0)
    gtk_scale_add_mark (self->travel, study_in_hand (study)->lowering, GTK_POS_TOP, NULL);
}

static void
on_bench_solved_cb (SwWindow *self)
{
  show_title (self);
  show_travel (self);
  if (!sw_bench_is_dragging (self->bench))
    show_marks (self);
  window_update_actions (self);
}

/* By the user: what show_travel () puts there is not rounded, so that a wheel that stands
 * by its springs stays where it is. */
static void
on_travel_changed_cb (SwWindow *self)
{
  const double value = gtk_range_get_value (GTK_RANGE (self->travel));

  if (self->bench != NULL && value != sw_bench_get_study (self->bench)->travel)
    sw_bench_set_travel (self->bench, round (value * 10.0) / 10.0);
}

static void
show_on_sheet (SwWindow *self, const char *name)
{
  const Question *question = question_named (name);

  if (self->sheet == NULL || question == NULL)
    return;
  sw_sheet_view_set_ground_fixed (self->sheet, question->ground_fixed);
  sw_sheet_view_set_shows_forces (self->sheet, question->shows_forces);
}

static void
on_strip_changed_cb (SwWindow *self)
{
  window_follow_strip (self);
}

static void
on_question_changed_cb (SwWindow *self)
{
  const char *name = gtk_stack_get_visible_child_name (self->questions);

  if (name != NULL && gtk_stack_get_child_by_name (GTK_STACK (self->tools), name) != NULL)
    gtk_stack_set_visible_child_name (GTK_STACK (self->tools), name);
  show_on_sheet (self, name);
  window_show_strip (self);
}

static void
add_questions (SwWindow *self)
{
  guint n;
  const Question *all = questions (&n);

  for (guint i = 0; i < n; i++) {
    gtk_stack_add_named (GTK_STACK (self->tools),
                         question_part (&all[i], all[i].create_tools, self->bench),
                         all[i].name);
    gtk_stack_add_titled (self->questions,
                          question_part (&all[i], all[i].create, self->bench),
                          all[i].name, _ (all[i].title));
  }
}

static void
create_recent_popover (GtkMenuButton *button, gpointer data)
{
  gtk_menu_button_set_popover (button, window_recent_popover (SW_WINDOW (data)));
}

static gboolean
open_dropped (SwWindow *self, GFile *file)
{
  g_autofree char *name = g_file_get_basename (file);

  return plate_library_takes_name (name) ? sw_window_open_plate (self, file)
                                         : sw_window_open (self, file);
}

static gboolean
on_drop_cb (SwWindow *self, const GValue *value)
{
  if (G_VALUE_HOLDS (value, G_TYPE_FILE))
    return open_dropped (self, g_value_get_object (value));

  const GSList *files = g_value_get_boxed (value);
  return files != NULL && open_dropped (self, files->data);
}

static void
add_drop_target (SwWindow *self)
{
  GType types[] = { GDK_TYPE_FILE_LIST, G_TYPE_FILE };
  GtkDropTarget *target = gtk_drop_target_new (G_TYPE_INVALID, GDK_ACTION_COPY);

  gtk_drop_target_set_gtypes (target, types, G_N_ELEMENTS (types));
  g_signal_connect_swapped (target, "drop", G_CALLBACK (on_drop_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (target));
}

/* An empty car keeps every part of the window alive until a file is there. */
static void
fill (SwWindow *self)
{
  gtk_box_append (GTK_BOX (self->panel_place), sw_setup_panel_new (self->bench));
  self->sheet = SW_SHEET_VIEW (sw_sheet_view_new (self->bench));
  gtk_box_append (GTK_BOX (self->sheet_place), GTK_WIDGET (self->sheet));
  self->numbers = SW_NUMBERS_VIEW (sw_numbers_view_new (self->bench));
  window_add_strips (self, GTK_WIDGET (self->numbers));
  add_questions (self);
  g_signal_connect_object (self->bench, "solved", G_CALLBACK (on_bench_solved_cb), self,
                           G_CONNECT_SWAPPED);
}

static gboolean
sw_window_close_request (GtkWindow *window)
{
  SwWindow *self = SW_WINDOW (window);

  if (!self->may_close && self->bench != NULL &&
      sw_document_is_modified (sw_bench_get_document (self->bench))) {
    window_ask_close (self);
    return TRUE;
  }
  window_keep_size (self);
  return GTK_WINDOW_CLASS (sw_window_parent_class)->close_request (window);
}

static void
sw_window_dispose (GObject *object)
{
  SwWindow *self = SW_WINDOW (object);

  g_clear_pointer (&self->recovery, recovery_free);
  g_clear_pointer (&self->left_over, g_ptr_array_unref);
  g_clear_object (&self->bench);
  G_OBJECT_CLASS (sw_window_parent_class)->dispose (object);
}

static void
sw_window_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  window_fit_panes (SW_WINDOW (widget), width);
  GTK_WIDGET_CLASS (sw_window_parent_class)
      ->size_allocate (widget, width, height, baseline);
}

static void
bind_children (GtkWidgetClass *class)
{
  gtk_widget_class_bind_template_child (class, SwWindow, panes);
  gtk_widget_class_bind_template_child (class, SwWindow, panel_box);
  gtk_widget_class_bind_template_child (class, SwWindow, panel_place);
  gtk_widget_class_bind_template_child (class, SwWindow, sheet_place);
  gtk_widget_class_bind_template_child (class, SwWindow, strip_bar);
  gtk_widget_class_bind_template_child (class, SwWindow, strip_tools);
  gtk_widget_class_bind_template_child (class, SwWindow, strips);
  gtk_widget_class_bind_template_child (class, SwWindow, tools);
  gtk_widget_class_bind_template_child (class, SwWindow, title);
  gtk_widget_class_bind_template_child (class, SwWindow, subtitle);
  gtk_widget_class_bind_template_child (class, SwWindow, questions);
  gtk_widget_class_bind_template_child (class, SwWindow, travel);
  gtk_widget_class_bind_template_child (class, SwWindow, travel_bar);
  gtk_widget_class_bind_template_child (class, SwWindow, travel_label);
  gtk_widget_class_bind_template_child (class, SwWindow, message);
  gtk_widget_class_bind_template_child (class, SwWindow, message_label);
  gtk_widget_class_bind_template_child (class, SwWindow, recent);
  gtk_widget_class_bind_template_child (class, SwWindow, main_menu);
  gtk_widget_class_bind_template_child (class, SwWindow, tour);
}

static void
sw_window_class_init (SwWindowClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_window_dispose;
  GTK_WINDOW_CLASS (class)->close_request = sw_window_close_request;
  widget_class->size_allocate = sw_window_size_allocate;
  g_type_ensure (SW_TYPE_WRAP_ROW);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/strutwright/Strutwright/window.ui");
  bind_children (widget_class);
  window_install_recovery (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, on_travel_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, on_question_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, on_strip_changed_cb);
}

static void
sw_window_init (SwWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  window_take_kept_size (self);
  window_install_actions (self);
  keep_left_to_right (GTK_WIDGET (self->travel)); /* as the axes of the curves */
  keep_left_to_right (self->travel_bar);
  keep_left_to_right (GTK_WIDGET (self->travel_label));
  add_drop_target (self);
  menus_put (self->main_menu, "main_menu");
  gtk_menu_button_set_create_popup_func (self->recent, create_recent_popover, self, NULL);
}

SwWindow *
sw_window_new (GtkApplication *application)
{
  return g_object_new (SW_TYPE_WINDOW, "application", application, NULL);
}

gboolean
sw_window_shows_example (SwWindow *self)
{
  SwDocument *document = self->bench != NULL ? sw_bench_get_document (self->bench) : NULL;

  return document != NULL && sw_document_get_file (document) == NULL &&
         !sw_document_is_modified (document);
}

SwBench *
sw_window_get_bench (SwWindow *self)
{
  return self->bench;
}

void
window_take_document (SwWindow *self, SwDocument *document)
{
  g_clear_pointer (&self->recovery, recovery_free);
  if (self->bench == NULL) {
    self->bench = sw_bench_new (document);
    fill (self);
  } else {
    sw_bench_set_document (self->bench, document);
  }
  self->recovery = recovery_watch (document, RECOVERY_DELAY);
  g_signal_connect_object (document, "notify::modified", G_CALLBACK (show_title), self,
                           G_CONNECT_SWAPPED);
  on_bench_solved_cb (self);
}

static void
tell_refusal (SwWindow *self, GFile *file, const GError *error)
{
  g_autofree char *name = g_file_get_parse_name (file);
  g_autofree char *sentence =
      g_strdup_printf (_ ("%s was not opened. %s"), name, error->message);

  sw_window_show_message (self, sentence);
}

gboolean
sw_window_open (SwWindow *self, GFile *file)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwDocument) document = sw_document_load (file, &error);

  if (document == NULL) {
    tell_refusal (self, file, error);
    return FALSE;
  }

  g_autofree char *uri = g_file_get_uri (file);
  gtk_recent_manager_add_item (gtk_recent_manager_get_default (), uri);
  window_take_document (self, document);
  sw_window_show_message (self, NULL);
  return TRUE;
}

void
sw_window_open_example (SwWindow *self, GFile *file)
{
  g_autoptr (GError) error = NULL;
  Car *car = car_load (file, &error);

  if (car == NULL) {
    sw_window_show_message (self, error->message);
    return;
  }

  g_autoptr (SwDocument) document = sw_document_new_for_car (car);
  window_take_document (self, document);
}

gboolean
sw_window_open_plate (SwWindow *self, GFile *file)
{
  g_autoptr (GError) error = NULL;

  if (self->bench == NULL)
    return FALSE;
  if (!plate_window_open_file (GTK_WINDOW (self), sw_chooser_of (self->bench), file,
                               &error)) {
    tell_refusal (self, file, error);
    return FALSE;
  }
  g_action_group_change_action_state (G_ACTION_GROUP (self), "question",
                                      g_variant_new_string ("mount"));
  sw_window_show_message (self, NULL);
  return TRUE;
}

void
sw_window_show_message (SwWindow *self, const char *sentence)
{
  if (sentence != NULL)
    gtk_label_set_label (self->message_label, sentence);
  gtk_revealer_set_reveal_child (self->message, sentence != NULL);
}
