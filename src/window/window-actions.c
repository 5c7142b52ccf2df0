/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/curves/curve-window.h"
#include "window/curves/lecture-window.h"
#include "window/curves/quantity-window.h"
#include "window/measure/measure-window.h"
#include "window/paper/export-window.h"
#include "window/paper/guide-window.h"
#include "window/paper/report-window.h"
#include "window/question.h"
#include "window/setups/restore-window.h"
#include "window/table-file.h"
#include "window/window-private.h"

#include "model/study/quantity-info.h"

#include <glib/gi18n-lib.h>

static void
on_open_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action;
  (void) parameter;
  window_ask_open (SW_WINDOW (data));
}

static void
on_new_car_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action;
  (void) parameter;
  window_ask_new_car (SW_WINDOW (data));
}

static void
on_measured_points_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action;
  (void) parameter;
  measure_window_open_car (GTK_WINDOW (data), SW_WINDOW (data)->bench);
}

static void
on_save_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action;
  (void) parameter;
  window_save (SW_WINDOW (data));
}

static void
on_save_as_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action;
  (void) parameter;
  window_ask_save_as (SW_WINDOW (data));
}

static void
on_undo_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action;
  (void) parameter;
  sw_document_undo (sw_bench_get_document (SW_WINDOW (data)->bench));
}

static void
on_redo_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action;
  (void) parameter;
  sw_document_redo (sw_bench_get_document (SW_WINDOW (data)->bench));
}

static void
on_export_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SwWindow *self = SW_WINDOW (data);
  const Question *question =
      question_named (gtk_stack_get_visible_child_name (self->questions));

  (void) action;
  (void) parameter;
  gtk_window_present (GTK_WINDOW (
      sw_export_window_new (GTK_WINDOW (self), self->bench, question->subject)));
}

static void
on_report_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action;
  (void) parameter;
  report_window_open (GTK_WINDOW (data), SW_WINDOW (data)->bench);
}

static void
on_save_table_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SwWindow *self = SW_WINDOW (data);

  (void) action;
  (void) parameter;
  table_file_ask (GTK_WINDOW (self), self->bench,
                  gtk_stack_get_visible_child_name (self->questions));
}

static void
on_copy_numbers_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SwWindow *self = SW_WINDOW (data);
  g_autofree char *text = sw_numbers_view_get_text (self->numbers);

  (void) action;
  (void) parameter;
  gdk_clipboard_set_text (gtk_widget_get_clipboard (GTK_WIDGET (self)), text);
}

static void
on_close_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action;
  (void) parameter;
  gtk_window_close (GTK_WINDOW (data));
}

static void
on_dismiss_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action;
  (void) parameter;
  sw_window_show_message (SW_WINDOW (data), NULL);
}

static void
on_restore_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action;
  (void) parameter;
  restore_window_present (GTK_WINDOW (data), SW_WINDOW (data)->bench);
}

static void
on_explain_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SwWindow *self = SW_WINDOW (data);

  (void) action;
  (void) parameter;
  gtk_window_present (
      GTK_WINDOW (sw_lecture_window_new (GTK_WINDOW (self), self->bench)));
}

static void
on_curve_table_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SwWindow *self = SW_WINDOW (data);

  (void) action;
  (void) parameter;
  curve_window_present (GTK_WINDOW (self), self->bench,
                        g_strcmp0 (gtk_stack_get_visible_child_name (self->questions),
                                   "springs") == 0);
}

/* By its key; "" for what is under the pointer or highlighted by keys, if anything is. */
static void
on_what_is_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SwWindow *self = SW_WINDOW (data);
  Quantity quantity;

  (void) action;
  if (quantity_from_key (g_variant_get_string (parameter, NULL), &quantity))
    quantity_window_present (GTK_WINDOW (self), (int) quantity);
  else
    quantity_window_present (GTK_WINDOW (self),
                             self->bench != NULL ? sw_bench_get_lit (self->bench) : -1);
}

static void
on_guide_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action;
  (void) parameter;
  guide_window_open (GTK_WINDOW (data), SW_WINDOW (data)->bench);
}

static void
on_quantities_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action;
  (void) parameter;
  quantity_window_present (GTK_WINDOW (data), -1);
}

/* For parts of the window that have a sentence to show. */
static void
on_tell_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void) action;
  sw_window_show_message (SW_WINDOW (data), g_variant_get_string (parameter, NULL));
}

static void
on_zoom_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SwSheetView *sheet = SW_WINDOW (data)->sheet;
  const char *name = g_action_get_name (G_ACTION (action));

  (void) parameter;
  if (g_str_equal (name, "fit"))
    sw_sheet_view_fit (sheet);
  else
    sw_sheet_view_zoom (sheet, g_str_equal (name, "zoom-in") ? 1.25 : 0.8);
}

static void
on_panel_cb (GSimpleAction *action, GVariant *state, gpointer data)
{
  gtk_widget_set_visible (SW_WINDOW (data)->panel_box, g_variant_get_boolean (state));
  g_simple_action_set_state (action, state);
}

static void
on_side_by_side_cb (GSimpleAction *action, GVariant *state, gpointer data)
{
  sw_numbers_view_set_side_by_side (SW_WINDOW (data)->numbers,
                                    g_variant_get_boolean (state));
  g_simple_action_set_state (action, state);
}

static void
on_question_cb (GSimpleAction *action, GVariant *state, gpointer data)
{
  GtkStack *stack = SW_WINDOW (data)->questions;
  const char *name = g_variant_get_string (state, NULL);

  if (gtk_stack_get_child_by_name (stack, name) != NULL) {
    gtk_stack_set_visible_child_name (stack, name);
    g_simple_action_set_state (action, state);
  }
}

/* Made when first asked for: GTK's own way would build it with every window, at a tenth
 * of the time to the first frame. GTK puts an action of this name in place of ours. */
static void
on_show_help_overlay_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  g_autoptr (GtkBuilder) builder = gtk_builder_new_from_resource (
      "/org/strutwright/Strutwright/help-overlay.ui");
  GObject *overlay = gtk_builder_get_object (builder, "help_overlay");

  (void) action;
  (void) parameter;
  gtk_application_window_set_help_overlay (GTK_APPLICATION_WINDOW (data),
                                           GTK_SHORTCUTS_WINDOW (overlay));
  gtk_window_present (GTK_WINDOW (overlay));
}

void
window_install_actions (SwWindow *self)
{
  static const GActionEntry entries[] = {
    { .name = "open", .activate = on_open_cb },
    { .name = "new-car", .activate = on_new_car_cb },
    { .name = "measured-points", .activate = on_measured_points_cb },
    { .name = "save", .activate = on_save_cb },
    { .name = "save-as", .activate = on_save_as_cb },
    { .name = "undo", .activate = on_undo_cb },
    { .name = "redo", .activate = on_redo_cb },
    { .name = "export", .activate = on_export_cb },
    { .name = "report", .activate = on_report_cb },
    { .name = "copy-numbers", .activate = on_copy_numbers_cb },
    { .name = "save-table", .activate = on_save_table_cb },
    { .name = "curve-table", .activate = on_curve_table_cb },
    { .name = "close", .activate = on_close_cb },
    { .name = "dismiss", .activate = on_dismiss_cb },
    { .name = "restore", .activate = on_restore_cb },
    { .name = "explain", .activate = on_explain_cb },
    { .name = "what-is", .activate = on_what_is_cb, .parameter_type = "s" },
    { .name = "guide", .activate = on_guide_cb },
    { .name = "quantities", .activate = on_quantities_cb },
    { .name = "tell", .activate = on_tell_cb, .parameter_type = "s" },
    { .name = "show-help-overlay", .activate = on_show_help_overlay_cb },
    { .name = "fit", .activate = on_zoom_cb },
    { .name = "zoom-in", .activate = on_zoom_cb },
    { .name = "zoom-out", .activate = on_zoom_cb },
    { .name = "panel", .state = "true", .change_state = on_panel_cb },
    { .name = "side-by-side", .state = "false", .change_state = on_side_by_side_cb },
    { .name = "question",
      .parameter_type = "s",
      .state = "'travel'",
      .change_state = on_question_cb },
  };

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries),
                                   self);
  window_update_actions (self);
}

static void
enable (SwWindow *self, const char *name, gboolean enabled)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self), name);

  g_simple_action_set_enabled (G_SIMPLE_ACTION (action), enabled);
}

void
window_update_actions (SwWindow *self)
{
  static const char *const on_a_car[] = {
    "save",       "save-as",  "export",          "report",       "copy-numbers",
    "save-table", "restore",  "explain",         "side-by-side", "fit",
    "zoom-in",    "zoom-out", "measured-points", "guide",        "curve-table"
  };
  SwDocument *document = self->bench != NULL ? sw_bench_get_document (self->bench) : NULL;
  const gboolean is_changing = document != NULL && sw_bench_is_dragging (self->bench);

  for (gsize i = 0; i < G_N_ELEMENTS (on_a_car); i++)
    enable (self, on_a_car[i], document != NULL);
  if (is_changing)
    return;
  enable (self, "undo",
          document != NULL && sw_document_get_undo_label (document) != NULL);
  enable (self, "redo",
          document != NULL && sw_document_get_redo_label (document) != NULL);
}
