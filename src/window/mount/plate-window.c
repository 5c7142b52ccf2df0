/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/mount/plate-window.h"
#include "window/dialog/dialog-answer.h"
#include "window/dialog/escape-key.h"
#include "window/layout/form-halves.h"
#include "window/mount/plate-sketch-view.h"
#include "window/mount/plate-window-form.h"

#include "model/plate/plate-json.h"

#include <glib/gi18n-lib.h>

#define FORM_WIDTH 380

typedef struct {
  GtkWindow *window;
  SwChooser *chooser;
  GFile *file; /* the user's own that is changed, or NULL */
  char *old_name;
  gboolean is_own_in_hand;
  SwPlateForm *form;
  SwPlateSketchView *sketch;
  GtkWidget *sentence, *save;
} Editor;

static void
free_editor (gpointer data)
{
  Editor *editor = data;

  g_object_unref (editor->chooser);
  g_clear_object (&editor->file);
  g_free (editor->old_name);
  g_free (editor);
}

static void
tell (Editor *editor, const char *sentence)
{
  gtk_label_set_label (GTK_LABEL (editor->sentence), sentence != NULL ? sentence : "");
  gtk_widget_set_visible (editor->sentence, sentence != NULL);
}

/* Another plate of the user's has that name. */
static gboolean
is_taken (Editor *editor, const char *name)
{
  const ShelfPlate *there =
      plate_library_find (sw_chooser_get_library (editor->chooser), name);

  return there != NULL && there->origin != PLATE_FROM_PROGRAM &&
         (editor->file == NULL || !g_file_equal (there->file, editor->file));
}

static void
on_changed_cb (Editor *editor)
{
  g_autofree char *sentence = sw_plate_form_check (editor->form);
  const Plate *plate = sw_plate_form_read (editor->form);

  if (sentence == NULL && is_taken (editor, plate->name)) {
    sw_plate_form_mark_name (editor->form);
    sentence = g_strdup (_ ("You have another plate of this name already."));
  }
  tell (editor, sentence);
  gtk_widget_set_sensitive (editor->save, sentence == NULL);
  sw_plate_sketch_view_show (editor->sketch, plate);
}

static void
on_save_clicked_cb (Editor *editor)
{
  const Plate *plate = sw_plate_form_read (editor->form);
  g_autoptr (GFile) file = editor->file != NULL ? g_object_ref (editor->file)
                                                : plate_library_new_file (plate->name);
  g_autoptr (GError) error = NULL;

  if (!plate_save (plate, file, &error)) {
    g_autofree char *sentence =
        g_strdup_printf (_ ("The plate was not saved: %s"), error->message);

    tell (editor, sentence);
    return;
  }
  sw_chooser_reload_library (editor->chooser);
  sw_chooser_set_plate (editor->chooser, plate->name,
                        plate->can_swap && sw_chooser_is_swapped (editor->chooser));
  dialog_leave (editor->window);
}

static void
on_delete_response_cb (GtkDialog *dialog, int response, Editor *editor)
{
  g_autoptr (GError) error = NULL;

  gtk_window_destroy (GTK_WINDOW (dialog));
  if (response != GTK_RESPONSE_YES)
    return;
  if (!g_file_delete (editor->file, NULL, &error)) {
    g_autofree char *sentence =
        g_strdup_printf (_ ("The plate was not deleted: %s"), error->message);

    tell (editor, sentence);
    return;
  }
  sw_chooser_reload_library (editor->chooser);
  if (editor->is_own_in_hand &&
      plate_library_find (sw_chooser_get_library (editor->chooser), editor->old_name) ==
          NULL)
    sw_chooser_set_plate (editor->chooser, NULL, FALSE);
  dialog_leave (editor->window);
}

static void
on_delete_clicked_cb (Editor *editor)
{
  GtkWidget *dialog =
      gtk_message_dialog_new (editor->window, GTK_DIALOG_MODAL, GTK_MESSAGE_QUESTION,
                              GTK_BUTTONS_NONE, _ ("Delete “%s”?"), editor->old_name);

  gtk_message_dialog_format_secondary_text (
      GTK_MESSAGE_DIALOG (dialog),
      _ ("Its file is removed. Setups that were set by it keep their places."));
  dialog_add_answer (dialog, _ ("_Cancel"), GTK_RESPONSE_CANCEL);
  gtk_widget_add_css_class (dialog_add_answer (dialog, _ ("_Delete"), GTK_RESPONSE_YES),
                            "destructive-action");
  gtk_dialog_set_default_response (GTK_DIALOG (dialog), GTK_RESPONSE_CANCEL);
  g_signal_connect (dialog, "response", G_CALLBACK (on_delete_response_cb), editor);
  gtk_window_present (GTK_WINDOW (dialog));
}

static GtkWidget *
new_header (Editor *editor)
{
  GtkWidget *bar = gtk_header_bar_new ();
  GtkWidget *cancel = gtk_button_new_with_label (_ ("Cancel"));

  editor->save = gtk_button_new_with_label (_ ("Save"));
  gtk_widget_add_css_class (editor->save, "suggested-action");
  gtk_actionable_set_action_name (GTK_ACTIONABLE (cancel), "window.close");
  g_signal_connect_swapped (editor->save, "clicked", G_CALLBACK (on_save_clicked_cb),
                            editor);
  gtk_header_bar_set_show_title_buttons (GTK_HEADER_BAR (bar), FALSE);
  gtk_header_bar_pack_start (GTK_HEADER_BAR (bar), cancel);
  gtk_header_bar_pack_end (GTK_HEADER_BAR (bar), editor->save);
  return bar;
}

static GtkWidget *
new_foot (Editor *editor)
{
  GtkWidget *foot = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  editor->sentence = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (editor->sentence), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (editor->sentence), TRUE);
  gtk_widget_set_hexpand (editor->sentence, TRUE);
  gtk_widget_add_css_class (editor->sentence, "refusal");
  gtk_widget_add_css_class (foot, "dialog-foot");
  gtk_box_append (GTK_BOX (foot), editor->sentence);
  if (editor->file != NULL) {
    GtkWidget *delete = gtk_button_new_with_label (_ ("Delete Plate…"));

    g_signal_connect_swapped (delete, "clicked", G_CALLBACK (on_delete_clicked_cb),
                              editor);
    gtk_widget_set_hexpand (delete, TRUE);
    gtk_widget_set_halign (delete, GTK_ALIGN_END);
    gtk_box_append (GTK_BOX (foot), delete);
  }
  return foot;
}

static GtkWidget *
new_content (Editor *editor, const Plate *plate)
{
  GtkWidget *content = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *halves;

  editor->form = SW_PLATE_FORM (sw_plate_form_new (plate));
  editor->sketch = SW_PLATE_SKETCH_VIEW (sw_plate_sketch_view_new ());
  g_signal_connect_swapped (editor->form, "changed", G_CALLBACK (on_changed_cb), editor);
  halves = form_halves_new (GTK_WIDGET (editor->form), FORM_WIDTH,
                            GTK_WIDGET (editor->sketch));
  gtk_widget_set_vexpand (halves, TRUE);
  gtk_box_append (GTK_BOX (content), halves);
  gtk_box_append (GTK_BOX (content), gtk_separator_new (GTK_ORIENTATION_HORIZONTAL));
  gtk_box_append (GTK_BOX (content), new_foot (editor));
  return content;
}

/* What the entries begin with. */
static Plate *
first_draft (const ShelfPlate *plate)
{
  Plate *draft = plate != NULL ? plate_copy (plate->plate) : plate_new ();

  if (plate == NULL) {
    draft->kind = PLATE_SLOT;
    draft->along = (PlateScale){ 0.0, 20.0 };
    draft->across = (PlateScale){ 0.0, 20.0 };
    draft->radius_mm = 5.0;
  } else if (plate->origin == PLATE_FROM_PROGRAM) {
    g_free (draft->name);
    /* Translators: the name of a plate that is made after another one. */
    draft->name = g_strdup_printf (_ ("Copy of %s"), plate->plate->name);
  }
  return draft;
}

/* @own is the file that is changed, or NULL for a plate that has none yet. */
static void
open_editor (GtkWindow *parent, SwChooser *chooser, const Plate *draft, GFile *own)
{
  const Plate *in_hand = sw_chooser_get_plate (chooser);
  Editor *editor = g_new0 (Editor, 1);

  editor->chooser = g_object_ref (chooser);
  editor->file = own != NULL ? g_object_ref (own) : NULL;
  editor->old_name = g_strdup (draft->name);
  editor->is_own_in_hand = in_hand != NULL && g_strcmp0 (in_hand->name, draft->name) == 0;
  editor->window =
      g_object_new (GTK_TYPE_WINDOW, "transient-for", parent, "modal", TRUE, "title",
                    own != NULL ? _ ("Change Plate") : _ ("New Plate"), "default-width",
                    860, "default-height", 600, NULL);
  g_object_set_data_full (G_OBJECT (editor->window), "editor", editor, free_editor);
  gtk_window_set_titlebar (editor->window, new_header (editor));
  gtk_window_set_child (editor->window, new_content (editor, draft));
  gtk_window_set_default_widget (editor->window, editor->save);
  escape_key_closes (GTK_WIDGET (editor->window));
  on_changed_cb (editor);
  gtk_window_present (editor->window);
}

void
plate_window_open (GtkWindow *parent, SwChooser *chooser, const ShelfPlate *plate)
{
  const gboolean is_own = plate != NULL && plate->origin != PLATE_FROM_PROGRAM;
  g_autoptr (Plate) draft = first_draft (plate);

  open_editor (parent, chooser, draft, is_own ? plate->file : NULL);
}

/* Another file on the shelf may hide one of the same plate's name. */
static const ShelfPlate *
find_on_shelf (SwChooser *chooser, GFile *file)
{
  const GPtrArray *plates = sw_chooser_get_library (chooser)->plates;

  for (guint i = 0; i < plates->len; i++)
    if (g_file_equal (((const ShelfPlate *) plates->pdata[i])->file, file))
      return plates->pdata[i];
  return NULL;
}

gboolean
plate_window_open_file (GtkWindow *parent,
                        SwChooser *chooser,
                        GFile *file,
                        GError **error)
{
  g_autoptr (Plate) plate = plate_load (file, error);

  if (plate == NULL)
    return FALSE;
  sw_chooser_reload_library (chooser);

  const ShelfPlate *on_shelf = find_on_shelf (chooser, file);
  if (on_shelf != NULL)
    plate_window_open (parent, chooser, on_shelf);
  else
    open_editor (parent, chooser, plate, NULL);
  return TRUE;
}
