/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/paper/paper-window.h"
#include "window/dialog/dialog-answer.h"
#include "window/dialog/escape-key.h"
#include "window/paper/paper-print.h"

#include <glib/gi18n-lib.h>

struct PaperWindow {
  GtkWindow *window;
  const PaperKind *kind;
  gpointer pages;
  GtkWidget *box, *save, *print;
  GtkLabel *message;
};

static void
show_message (PaperWindow *self, const char *sentence)
{
  gtk_label_set_label (self->message, sentence);
  gtk_widget_set_visible (GTK_WIDGET (self->message), TRUE);
}

static void
write_to (PaperWindow *self, GFile *file)
{
  g_autofree char *chosen = g_file_get_path (file);
  g_autofree char *path = chosen == NULL || g_str_has_suffix (chosen, ".pdf")
                              ? g_strdup (chosen)
                              : g_strconcat (chosen, ".pdf", NULL);
  g_autoptr (GError) error = NULL;

  if (path == NULL)
    show_message (self, _ ("Choose a place on this computer."));
  else if (self->kind->write (self->pages, path, &error))
    dialog_leave (self->window);
  else
    show_message (self, error->message);
}

static void
on_save_response_cb (GtkNativeDialog *native, int response, PaperWindow *self)
{
  if (response == GTK_RESPONSE_ACCEPT) {
    g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (native));

    write_to (self, file);
  }
  g_object_unref (native);
}

static void
on_save_clicked_cb (PaperWindow *self)
{
  GtkFileChooserNative *native =
      gtk_file_chooser_native_new (_ ("Save as PDF"), self->window,
                                   GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"), NULL);
  g_autofree char *stem = self->kind->name (self->pages);
  g_autofree char *name = g_strconcat (stem, ".pdf", NULL);

  g_strdelimit (name, "/\n\r", '-');
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (native), name);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (native), TRUE);
  g_signal_connect (native, "response", G_CALLBACK (on_save_response_cb), self);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (native));
}

static void
on_print_clicked_cb (PaperWindow *self)
{
  g_autoptr (GtkPrintOperation) operation =
                 paper_print_operation_new (self->kind, self->pages);
  g_autoptr (GError) error = NULL;

  gtk_print_operation_set_allow_async (operation, TRUE);
  if (gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG,
                               self->window, &error) == GTK_PRINT_OPERATION_RESULT_ERROR)
    show_message (self, error->message);
}

static GtkWidget *
new_bar (PaperWindow *self)
{
  GtkWidget *bar = gtk_header_bar_new ();
  GtkWidget *close = gtk_button_new_with_label (_ ("Close"));

  self->save = gtk_button_new_with_label (_ ("Save as PDF…"));
  self->print = gtk_button_new_with_label (_ ("Print…"));
  gtk_header_bar_set_show_title_buttons (GTK_HEADER_BAR (bar), FALSE);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (close), "window.close");
  gtk_widget_add_css_class (self->save, "suggested-action");
  g_signal_connect_swapped (self->save, "clicked", G_CALLBACK (on_save_clicked_cb), self);
  g_signal_connect_swapped (self->print, "clicked", G_CALLBACK (on_print_clicked_cb),
                            self);
  gtk_header_bar_pack_start (GTK_HEADER_BAR (bar), close);
  gtk_header_bar_pack_end (GTK_HEADER_BAR (bar), self->save);
  gtk_header_bar_pack_end (GTK_HEADER_BAR (bar), self->print);
  gtk_window_set_default_widget (self->window, self->save);
  return bar;
}

static GtkWidget *
new_box (PaperWindow *self)
{
  GtkWidget *message = gtk_label_new ("");

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  self->message = GTK_LABEL (message);
  gtk_label_set_wrap (self->message, TRUE);
  gtk_widget_add_css_class (message, "message");
  gtk_widget_set_visible (message, FALSE);
  gtk_box_append (GTK_BOX (self->box), message);
  return self->box;
}

static void
free_window (gpointer data)
{
  PaperWindow *self = data;

  self->kind->free (self->pages);
  g_free (self);
}

PaperWindow *
paper_window_new (GtkWindow *parent,
                  const char *title,
                  const PaperKind *kind,
                  gpointer pages)
{
  PaperWindow *self = g_new0 (PaperWindow, 1);

  self->kind = kind;
  self->pages = pages;
  self->window = g_object_new (GTK_TYPE_WINDOW, "transient-for", parent, "modal", TRUE,
                               "title", title, "default-height", 860, NULL);
  gtk_window_set_titlebar (self->window, new_bar (self));
  gtk_window_set_child (self->window, new_box (self));
  escape_key_closes (GTK_WIDGET (self->window));
  g_object_set_data_full (G_OBJECT (self->window), "paper-window", self, free_window);
  return self;
}

GtkWindow *
paper_window_get_window (PaperWindow *self)
{
  return self->window;
}

void
paper_window_set_content (PaperWindow *self, GtkWidget *content)
{
  gtk_widget_set_vexpand (content, TRUE);
  gtk_box_append (GTK_BOX (self->box), content);
}

void
paper_window_set_ready (PaperWindow *self, gboolean is_ready)
{
  gtk_widget_set_sensitive (self->save, is_ready);
  gtk_widget_set_sensitive (self->print, is_ready);
}
