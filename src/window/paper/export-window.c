/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/paper/export-window.h"
#include "window/dialog/dialog-answer.h"
#include "window/paper/export-preview.h"

#include <glib/gi18n-lib.h>

struct _SwExportWindow {
  GtkWindow parent_instance;

  SwBench *bench;
  SwExportPreview *preview;
  GtkDropDown *subject, *format, *background;
  GtkSpinButton *width, *height;
  GtkCheckButton *date;
  GtkLabel *message;
  GtkWidget *save, *place;
};

G_DEFINE_FINAL_TYPE (SwExportWindow, sw_export_window, GTK_TYPE_WINDOW)

static const char *const suffixes[] = { ".png", ".svg", ".pdf" };

static const CardSubject subjects[] = { CARD_CURVES,   CARD_SHEET,   CARD_MOUNT_MAP,
                                        CARD_LOWERING, CARD_SPRINGS, CARD_LOADS };

static CardSubject
chosen_subject (SwExportWindow *self)
{
  return subjects[MIN (gtk_drop_down_get_selected (self->subject),
                       G_N_ELEMENTS (subjects) - 1)];
}

/* The end of the name of a file, as in “Wren – curves.png”. */
static const char *
subject_word (CardSubject subject)
{
  switch (subject) {
  case CARD_CURVES:
    return C_ ("file name", "curves");
  case CARD_SHEET:
    return C_ ("file name", "sheet");
  case CARD_LOWERING:
    return C_ ("file name", "roll centre");
  case CARD_SPRINGS:
    return C_ ("file name", "springs");
  case CARD_LOADS:
    return C_ ("file name", "loads");
  default:
    return C_ ("file name", "mount map");
  }
}

static ExportWish
wish (SwExportWindow *self)
{
  return (ExportWish){
    .subject = chosen_subject (self),
    .options = { .width = gtk_spin_button_get_value_as_int (self->width),
                 .height = gtk_spin_button_get_value_as_int (self->height),
                 .background =
                     (ExportBackground) gtk_drop_down_get_selected (self->background) },
    .with_date = gtk_check_button_get_active (self->date),
  };
}

static void
on_changed_cb (SwExportWindow *self)
{
  if (self->preview != NULL)
    sw_export_preview_set_wish (self->preview, wish (self));
}

static const char *
chosen_suffix (SwExportWindow *self)
{
  return suffixes[MIN (gtk_drop_down_get_selected (self->format), 2)];
}

static gboolean
has_known_suffix (const char *path)
{
  for (gsize i = 0; i < G_N_ELEMENTS (suffixes); i++)
    if (g_str_has_suffix (path, suffixes[i]))
      return TRUE;
  return FALSE;
}

static void
show_message (SwExportWindow *self, const char *sentence)
{
  gtk_label_set_label (self->message, sentence);
  gtk_widget_set_visible (GTK_WIDGET (self->message), TRUE);
}

static void
write_to (SwExportWindow *self, GFile *file)
{
  g_autofree char *chosen = g_file_get_path (file);
  g_autofree char *path = chosen == NULL || has_known_suffix (chosen)
                              ? g_strdup (chosen)
                              : g_strconcat (chosen, chosen_suffix (self), NULL);
  const ExportWish w = wish (self);
  g_autoptr (GError) error = NULL;

  if (path == NULL)
    show_message (self, _ ("Choose a place on this computer."));
  else if (export_wish_write (&w, self->bench, path, &error))
    dialog_leave (GTK_WINDOW (self));
  else
    show_message (self, error->message);
}

static void
on_save_response_cb (GtkNativeDialog *native, int response, SwExportWindow *self)
{
  if (response == GTK_RESPONSE_ACCEPT) {
    g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (native));

    write_to (self, file);
  }
  g_object_unref (native);
}

static void
on_save_clicked_cb (SwExportWindow *self)
{
  GtkFileChooserNative *native =
      gtk_file_chooser_native_new (_ ("Export"), GTK_WINDOW (self),
                                   GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"), NULL);
  const Car *car = sw_document_get_car (sw_bench_get_document (self->bench));
  g_autofree char *name =
      g_strdup_printf ("%s – %s%s", car->name, subject_word (chosen_subject (self)),
                       chosen_suffix (self));

  g_strdelimit (name, "/\n\r", '-');
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (native), name);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (native), TRUE);
  g_signal_connect (native, "response", G_CALLBACK (on_save_response_cb), self);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (native));
}

static void
sw_export_window_dispose (GObject *object)
{
  g_clear_object (&SW_EXPORT_WINDOW (object)->bench);
  G_OBJECT_CLASS (sw_export_window_parent_class)->dispose (object);
}

static void
sw_export_window_class_init (SwExportWindowClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_export_window_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/org/strutwright/Strutwright/export-window.ui");
  gtk_widget_class_bind_template_child (widget_class, SwExportWindow, subject);
  gtk_widget_class_bind_template_child (widget_class, SwExportWindow, format);
  gtk_widget_class_bind_template_child (widget_class, SwExportWindow, background);
  gtk_widget_class_bind_template_child (widget_class, SwExportWindow, width);
  gtk_widget_class_bind_template_child (widget_class, SwExportWindow, height);
  gtk_widget_class_bind_template_child (widget_class, SwExportWindow, date);
  gtk_widget_class_bind_template_child (widget_class, SwExportWindow, message);
  gtk_widget_class_bind_template_child (widget_class, SwExportWindow, save);
  gtk_widget_class_bind_template_child (widget_class, SwExportWindow, place);
  gtk_widget_class_bind_template_callback (widget_class, on_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, on_save_clicked_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close",
                                       NULL);
}

static void
sw_export_window_init (SwExportWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
choose_subject (SwExportWindow *self, CardSubject subject)
{
  for (guint i = 0; i < G_N_ELEMENTS (subjects); i++)
    if (subjects[i] == subject)
      gtk_drop_down_set_selected (self->subject, i);
}

GtkWidget *
sw_export_window_new (GtkWindow *parent, SwBench *bench, CardSubject subject)
{
  SwExportWindow *self =
      g_object_new (SW_TYPE_EXPORT_WINDOW, "transient-for", parent, NULL);

  self->bench = g_object_ref (bench);
  self->preview = SW_EXPORT_PREVIEW (sw_export_preview_new (bench));
  gtk_box_append (GTK_BOX (self->place), GTK_WIDGET (self->preview));
  choose_subject (self, subject);
  on_changed_cb (self);
  return GTK_WIDGET (self);
}
