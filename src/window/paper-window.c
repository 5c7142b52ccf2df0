/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/paper-window.h"
#include "window/escape-key.h"

#include <glib/gi18n-lib.h>

#define HEIGHT 860

typedef struct {
  GtkWindow *window;
  Paper paper;
  GtkLabel *message;
} PaperWindow;

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
  else if (self->paper.write (self->paper.paper, path, &error))
    gtk_window_destroy (self->window);
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
      gtk_file_chooser_native_new (self->paper.save_title, self->window,
                                   GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"), NULL);

  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (native), self->paper.file_name);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (native), TRUE);
  g_signal_connect (native, "response", G_CALLBACK (on_save_response_cb), self);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (native));
}

static void
on_print_clicked_cb (PaperWindow *self)
{
  g_autoptr (GtkPrintOperation) operation = self->paper.print (self->paper.paper);
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
  GtkWidget *save = gtk_button_new_with_label (_ ("Save as PDF…"));
  GtkWidget *print = gtk_button_new_with_label (_ ("Print…"));

  gtk_header_bar_set_show_title_buttons (GTK_HEADER_BAR (bar), FALSE);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (close), "window.close");
  gtk_widget_add_css_class (save, "suggested-action");
  g_signal_connect_swapped (save, "clicked", G_CALLBACK (on_save_clicked_cb), self);
  g_signal_connect_swapped (print, "clicked", G_CALLBACK (on_print_clicked_cb), self);
  gtk_header_bar_pack_start (GTK_HEADER_BAR (bar), close);
  gtk_header_bar_pack_end (GTK_HEADER_BAR (bar), save);
  gtk_header_bar_pack_end (GTK_HEADER_BAR (bar), print);
  gtk_window_set_default_widget (self->window, save);
  return bar;
}

static GtkWidget *
new_page (PaperWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkWidget *message = gtk_label_new ("");

  self->message = GTK_LABEL (message);
  gtk_label_set_wrap (self->message, TRUE);
  gtk_widget_add_css_class (message, "message");
  gtk_widget_set_visible (message, FALSE);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->paper.preview);
  gtk_widget_set_vexpand (scrolled, TRUE);
  gtk_box_append (GTK_BOX (box), message);
  gtk_box_append (GTK_BOX (box), scrolled);
  return box;
}

static void
free_window (gpointer data)
{
  PaperWindow *self = data;

  self->paper.free_paper (self->paper.paper);
  g_free (self->paper.file_name);
  g_free (self);
}

void
paper_window_open (GtkWindow *parent, Paper paper)
{
  PaperWindow *self = g_new0 (PaperWindow, 1);

  self->paper = paper;
  g_strdelimit (self->paper.file_name, "/", '-');
  self->window = g_object_new (GTK_TYPE_WINDOW, "transient-for", parent, "modal", TRUE,
                               "title", paper.title, "default-width", paper.width,
                               "default-height", HEIGHT, NULL);
  gtk_window_set_titlebar (self->window, new_bar (self));
  gtk_window_set_child (self->window, new_page (self));
  escape_key_closes (GTK_WIDGET (self->window));
  g_object_set_data_full (G_OBJECT (self->window), "paper-window", self, free_window);
  gtk_window_present (self->window);
}

GtkPageSetup *
paper_page_setup (const char *size)
{
  GtkPageSetup *setup = gtk_page_setup_new ();
  GtkPaperSize *paper = gtk_paper_size_new (size);

  gtk_page_setup_set_paper_size_and_default_margins (setup, paper);
  gtk_page_setup_set_orientation (setup, GTK_PAGE_ORIENTATION_PORTRAIT);
  gtk_paper_size_free (paper);
  return setup;
}
