/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dialog/dialog-answer.h"
#include "window/measure/measure-window.h"
#include "window/settings/kept-settings.h"
#include "window/window-private.h"

#include <glib/gi18n-lib.h>

#define CAR_SUFFIX ".swcar"
#define MOST_RECENT 10

static void
add_car_filter (GtkFileChooser *chooser)
{
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();

  gtk_file_filter_set_name (filter, _ ("Cars"));
  gtk_file_filter_add_pattern (filter, "*" CAR_SUFFIX);
  gtk_file_chooser_add_filter (chooser, filter);
}

static void
begin_in_last_folder (GtkFileChooser *chooser)
{
  GSettings *settings = kept_settings ();
  g_autofree char *uri =
      settings != NULL ? g_settings_get_string (settings, "last-folder") : g_strdup ("");
  g_autoptr (GFile) folder = g_file_new_for_uri (uri);

  if (*uri != '\0' && g_file_query_exists (folder, NULL))
    gtk_file_chooser_set_current_folder (chooser, folder, NULL);
}

static void
keep_folder_of (GFile *file)
{
  GSettings *settings = kept_settings ();
  g_autoptr (GFile) folder = g_file_get_parent (file);

  if (settings != NULL && folder != NULL) {
    g_autofree char *uri = g_file_get_uri (folder);

    g_settings_set_string (settings, "last-folder", uri);
  }
}

static GtkFileChooserNative *
new_chooser (SwWindow *self,
             const char *title,
             GtkFileChooserAction action,
             const char *accept)
{
  GtkFileChooserNative *native =
      gtk_file_chooser_native_new (title, GTK_WINDOW (self), action, accept, NULL);

  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (native), TRUE);
  add_car_filter (GTK_FILE_CHOOSER (native));
  begin_in_last_folder (GTK_FILE_CHOOSER (native));
  return native;
}

/* A car with unsaved changes keeps its window; the file gets a new one. */
static void
open_somewhere (SwWindow *self, GFile *file)
{
  if (self->bench == NULL ||
      !sw_document_is_modified (sw_bench_get_document (self->bench))) {
    sw_window_open (self, file);
    return;
  }

  SwWindow *window = sw_window_new (gtk_window_get_application (GTK_WINDOW (self)));
  if (sw_window_open (window, file)) {
    gtk_window_present (GTK_WINDOW (window));
  } else {
    sw_window_show_message (self, gtk_label_get_label (window->message_label));
    gtk_window_destroy (GTK_WINDOW (window));
  }
}

static void
on_open_response_cb (GtkNativeDialog *native, int response, SwWindow *self)
{
  if (response == GTK_RESPONSE_ACCEPT) {
    g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (native));

    keep_folder_of (file);
    open_somewhere (self, file);
  }
  g_object_unref (native);
}

void
window_ask_open (SwWindow *self)
{
  GtkFileChooserNative *native =
      new_chooser (self, _ ("Open a car"), GTK_FILE_CHOOSER_ACTION_OPEN, _ ("_Open"));

  g_signal_connect (native, "response", G_CALLBACK (on_open_response_cb), self);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (native));
}

/* As with a file: a car with unsaved changes keeps its window. */
static void
take_new_car (Car *car, gpointer data)
{
  SwWindow *self = SW_WINDOW (data);
  g_autoptr (SwDocument) document = sw_document_new_unsaved (car);

  if (self->bench != NULL &&
      sw_document_is_modified (sw_bench_get_document (self->bench))) {
    self = sw_window_new (gtk_window_get_application (GTK_WINDOW (self)));
    window_take_document (self, document);
    gtk_window_present (GTK_WINDOW (self));
    return;
  }
  window_take_document (self, document);
  sw_window_show_message (self, NULL);
}

void
window_ask_new_car (SwWindow *self)
{
  measure_window_open_new (GTK_WINDOW (self), take_new_car, self);
}

static void
save_to (SwWindow *self, GFile *file)
{
  g_autoptr (GError) error = NULL;

  if (!sw_document_save (sw_bench_get_document (self->bench), file, &error)) {
    g_autofree char *sentence =
        g_strdup_printf (_ ("The car was not saved: %s"), error->message);

    sw_window_show_message (self, sentence);
    return;
  }

  g_autofree char *uri = g_file_get_uri (file);
  gtk_recent_manager_add_item (gtk_recent_manager_get_default (), uri);
  sw_window_show_message (self, NULL);
  if (self->closes_when_saved) {
    self->may_close = TRUE;
    gtk_window_close (GTK_WINDOW (self));
  }
}

/* The desktop's dialog leaves the suffix to us. */
static GFile *
with_suffix (GFile *file)
{
  g_autofree char *name = g_file_get_basename (file);
  g_autofree char *whole = NULL;
  g_autoptr (GFile) folder = g_file_get_parent (file);

  if (strchr (name, '.') != NULL || folder == NULL)
    return g_object_ref (file);
  whole = g_strconcat (name, CAR_SUFFIX, NULL);
  return g_file_get_child (folder, whole);
}

static void
on_save_response_cb (GtkNativeDialog *native, int response, SwWindow *self)
{
  if (response != GTK_RESPONSE_ACCEPT)
    self->closes_when_saved = FALSE;
  else {
    g_autoptr (GFile) chosen = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (native));
    g_autoptr (GFile) file = with_suffix (chosen);

    keep_folder_of (file);
    save_to (self, file);
  }
  g_object_unref (native);
}

void
window_ask_save_as (SwWindow *self)
{
  GtkFileChooserNative *native =
      new_chooser (self, _ ("Save the car"), GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"));
  SwDocument *document = sw_bench_get_document (self->bench);
  GFile *file = sw_document_get_file (document);
  g_autofree char *name =
      g_strconcat (sw_document_get_car (document)->name, CAR_SUFFIX, NULL);

  g_strdelimit (name, "/\n\r", '-');
  if (file != NULL)
    gtk_file_chooser_set_file (GTK_FILE_CHOOSER (native), file, NULL);
  else
    gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (native), name);
  g_signal_connect (native, "response", G_CALLBACK (on_save_response_cb), self);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (native));
}

void
window_save (SwWindow *self)
{
  SwDocument *document = sw_bench_get_document (self->bench);
  GFile *file = sw_document_get_file (document);

  if (file == NULL)
    window_ask_save_as (self);
  else if (g_file_query_exists (file, NULL) && sw_document_file_was_changed (document))
    window_ask_overwrite (self);
  else
    save_to (self, file);
}

static void
on_overwrite_response_cb (GtkDialog *dialog, int response, SwWindow *self)
{
  gtk_window_destroy (GTK_WINDOW (dialog));
  if (response == GTK_RESPONSE_YES)
    save_to (self, sw_document_get_file (sw_bench_get_document (self->bench)));
  else if (response == GTK_RESPONSE_NO)
    window_ask_save_as (self);
  else
    self->closes_when_saved = FALSE;
}

void
window_ask_overwrite (SwWindow *self)
{
  GFile *file = sw_document_get_file (sw_bench_get_document (self->bench));
  g_autofree char *base = g_file_get_basename (file);
  g_autofree char *name = g_filename_display_name (base);
  GtkWidget *dialog =
      gtk_message_dialog_new (GTK_WINDOW (self), GTK_DIALOG_MODAL, GTK_MESSAGE_QUESTION,
                              GTK_BUTTONS_NONE, _ ("Overwrite “%s”?"), name);

  gtk_message_dialog_format_secondary_text (
      GTK_MESSAGE_DIALOG (dialog),
      _ ("Another program has changed the file since it was read. What it wrote is lost when "
         "this car is saved over it."));
  dialog_add_answer (dialog, _ ("_Cancel"), GTK_RESPONSE_CANCEL);
  dialog_add_answer (dialog, _ ("Save _As…"), GTK_RESPONSE_NO);
  dialog_add_answer (dialog, _ ("_Overwrite"), GTK_RESPONSE_YES);
  gtk_dialog_set_default_response (GTK_DIALOG (dialog), GTK_RESPONSE_CANCEL);
  g_signal_connect (dialog, "response", G_CALLBACK (on_overwrite_response_cb), self);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
on_close_response_cb (GtkDialog *dialog, int response, SwWindow *self)
{
  gtk_window_destroy (GTK_WINDOW (dialog));
  self->closes_when_saved = response == GTK_RESPONSE_YES;
  self->may_close = response == GTK_RESPONSE_NO;
  if (self->closes_when_saved)
    window_save (self);
  else if (self->may_close)
    gtk_window_close (GTK_WINDOW (self));
}

void
window_ask_close (SwWindow *self)
{
  const Car *car = sw_document_get_car (sw_bench_get_document (self->bench));
  GtkWidget *dialog = gtk_message_dialog_new (GTK_WINDOW (self), GTK_DIALOG_MODAL,
                                              GTK_MESSAGE_QUESTION, GTK_BUTTONS_NONE,
                                              _ ("Save the changes to “%s”?"), car->name);

  gtk_message_dialog_format_secondary_text (GTK_MESSAGE_DIALOG (dialog),
                                            _ ("Without saving they are lost."));
  dialog_add_answer (dialog, _ ("_Discard"), GTK_RESPONSE_NO);
  dialog_add_answer (dialog, _ ("_Cancel"), GTK_RESPONSE_CANCEL);
  dialog_add_answer (dialog, _ ("_Save"), GTK_RESPONSE_YES);
  gtk_dialog_set_default_response (GTK_DIALOG (dialog), GTK_RESPONSE_YES);
  g_signal_connect (dialog, "response", G_CALLBACK (on_close_response_cb), self);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
on_recent_clicked_cb (GtkButton *button, SwWindow *self)
{
  const char *uri = g_object_get_data (G_OBJECT (button), "uri");
  g_autoptr (GFile) file = g_file_new_for_uri (uri);

  gtk_menu_button_popdown (self->recent);
  open_somewhere (self, file);
}

static GtkWidget *
new_recent_button (SwWindow *self, GtkRecentInfo *info)
{
  GtkWidget *button = gtk_button_new_with_label (gtk_recent_info_get_display_name (info));
  g_autofree char *place = gtk_recent_info_get_uri_display (info);

  gtk_button_set_has_frame (GTK_BUTTON (button), FALSE);
  gtk_label_set_xalign (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (button))), 0.0f);
  gtk_widget_set_tooltip_text (button, place);
  g_object_set_data_full (G_OBJECT (button), "uri",
                          g_strdup (gtk_recent_info_get_uri (info)), g_free);
  g_signal_connect_object (button, "clicked", G_CALLBACK (on_recent_clicked_cb), self, 0);
  return button;
}

static int
compare_recent (gconstpointer a, gconstpointer b)
{
  return g_date_time_compare (gtk_recent_info_get_modified ((GtkRecentInfo *) b),
                              gtk_recent_info_get_modified ((GtkRecentInfo *) a));
}

GtkWidget *
window_recent_popover (SwWindow *self)
{
  GList *items =
      g_list_sort (gtk_recent_manager_get_items (gtk_recent_manager_get_default ()),
                   compare_recent);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0),
            *popover = gtk_popover_new ();
  guint n = 0;

  for (GList *l = items; l != NULL && n < MOST_RECENT; l = l->next)
    if (g_str_has_suffix (gtk_recent_info_get_uri (l->data), CAR_SUFFIX) &&
        gtk_recent_info_exists (l->data)) {
      gtk_box_append (GTK_BOX (box), new_recent_button (self, l->data));
      n++;
    }
  if (n == 0)
    gtk_box_append (GTK_BOX (box), gtk_label_new (_ ("No car was opened before.")));
  g_list_free_full (items, (GDestroyNotify) gtk_recent_info_unref);
  gtk_popover_set_child (GTK_POPOVER (popover), box);
  return popover;
}
