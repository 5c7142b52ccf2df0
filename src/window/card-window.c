/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/card-window.h"
#include "window/card-window-page.h"
#include "window/card-window-print.h"
#include "window/escape-key.h"

#include <glib/gi18n-lib.h>

typedef struct {
  GtkWindow *window;
  CardPage *page;
  GtkLabel *message;
} CardWindow;

static void
show_message (CardWindow *self, const char *sentence)
{
  gtk_label_set_label (self->message, sentence);
  gtk_widget_set_visible (GTK_WIDGET (self->message), TRUE);
}

static void
write_to (CardWindow *self, GFile *file)
{
  g_autofree char *chosen = g_file_get_path (file);
  g_autofree char *path = chosen == NULL || g_str_has_suffix (chosen, ".pdf")
                              ? g_strdup (chosen)
                              : g_strconcat (chosen, ".pdf", NULL);
  const FittingCard card = card_page_card (self->page);
  g_autoptr (GError) error = NULL;

  if (path == NULL)
    show_message (self, _ ("Choose a place on this computer."));
  else if (fitting_card_write (&card, path, &error))
    gtk_window_destroy (self->window);
  else
    show_message (self, error->message);
}

static void
on_save_response_cb (GtkNativeDialog *native, int response, CardWindow *self)
{
  if (response == GTK_RESPONSE_ACCEPT) {
    g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (native));

    write_to (self, file);
  }
  g_object_unref (native);
}

static void
on_save_clicked_cb (CardWindow *self)
{
  GtkFileChooserNative *native =
      gtk_file_chooser_native_new (_ ("Save the card"), self->window,
                                   GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"), NULL);
  g_autofree char *name =
      g_strdup_printf ("%s – %s.pdf", self->page->car->name, self->page->plate->name);

  g_strdelimit (name, "/\n\r", '-');
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (native), name);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (native), TRUE);
  g_signal_connect (native, "response", G_CALLBACK (on_save_response_cb), self);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (native));
}

static void
on_print_clicked_cb (CardWindow *self)
{
  g_autoptr (GtkPrintOperation) operation = card_print_operation_new (self->page);
  g_autoptr (GError) error = NULL;

  gtk_print_operation_set_allow_async (operation, TRUE);
  if (gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG,
                               self->window, &error) == GTK_PRINT_OPERATION_RESULT_ERROR)
    show_message (self, error->message);
}

static GtkWidget *
new_bar (CardWindow *self)
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
new_page (CardWindow *self)
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
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled),
                                 sw_card_preview_new (self->page));
  gtk_widget_set_vexpand (scrolled, TRUE);
  gtk_box_append (GTK_BOX (box), message);
  gtk_box_append (GTK_BOX (box), scrolled);
  return box;
}

static void
free_window (gpointer data)
{
  CardWindow *self = data;

  card_page_free (self->page);
  g_free (self);
}

gboolean
card_window_can_open (SwChooser *chooser)
{
  const Plate *plate = sw_chooser_get_plate (chooser);
  const char *set = sw_bench_get_setup (sw_chooser_get_bench (chooser))->plate;

  return plate != NULL &&
         (sw_chooser_find_answer (chooser) >= 0 || g_strcmp0 (set, plate->name) == 0);
}

void
card_window_open (GtkWindow *parent, SwChooser *chooser)
{
  CardPage *page = card_page_new (chooser);
  CardWindow *self;

  if (page == NULL)
    return;
  self = g_new0 (CardWindow, 1);
  self->page = page;
  self->window = g_object_new (GTK_TYPE_WINDOW, "transient-for", parent, "modal", TRUE,
                               "title", _ ("Fitting card"), "default-width", 700,
                               "default-height", 860, NULL);
  gtk_window_set_titlebar (self->window, new_bar (self));
  gtk_window_set_child (self->window, new_page (self));
  escape_key_closes (GTK_WIDGET (self->window));
  g_object_set_data_full (G_OBJECT (self->window), "card-window", self, free_window);
  gtk_window_present (self->window);
}
