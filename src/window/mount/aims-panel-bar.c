/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/layout/whole-text.h"
#include "window/mount/aims-panel.h"

#include "model/choice/choice-table.h"

#include <glib/gi18n-lib.h>

char *
aims_sentence (const Car *car)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < car->targets->len; i++) {
    const CarTarget *target = &g_array_index (car->targets, CarTarget, i);
    g_autofree char *range = choice_target_text (target);

    /* Translators: an aim and its range, as in “Camber −2.60 to −2.40°”. */
    g_ptr_array_add (parts, g_strdup_printf (C_ ("aim", "%s %s"),
                                             aim_info ((Aim) target->aim).name, range));
  }
  if (parts->len == 0)
    return g_strdup (_ ("Nothing is aimed for yet."));
  g_ptr_array_add (parts, NULL);
  return g_strjoinv (" · ", (char **) parts->pdata);
}

static void
show_sentence (GtkLabel *label, SwBench *bench)
{
  const Car *car = sw_document_get_car (sw_bench_get_document (bench));
  g_autofree char *sentence = aims_sentence (car);

  if (g_str_equal (sentence, gtk_label_get_label (label)))
    return;
  gtk_label_set_label (label, sentence);
}

static void
on_bench_solved_cb (GtkLabel *label, SwBench *bench)
{
  if (!sw_bench_is_dragging (bench))
    show_sentence (label, bench);
}

static void
create_popover (GtkMenuButton *button, gpointer data)
{
  GtkWidget *popover;

  if (gtk_menu_button_get_popover (button) != NULL)
    return;
  popover = gtk_popover_new ();
  gtk_popover_set_child (GTK_POPOVER (popover), aims_panel_new (data));
  gtk_menu_button_set_popover (button, popover);
}

static GtkWidget *
new_button (SwChooser *chooser)
{
  GtkWidget *button = gtk_menu_button_new ();

  gtk_menu_button_set_label (GTK_MENU_BUTTON (button), _ ("Aims…"));
  gtk_widget_set_tooltip_text (
      button, _ ("What the alignment aims for, what must stay free, what may be fitted"));
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Aims"), -1);
  gtk_menu_button_set_create_popup_func (GTK_MENU_BUTTON (button), create_popover,
                                         chooser, NULL);
  return button;
}

GtkWidget *
aims_bar_new (SwChooser *chooser)
{
  SwBench *bench = sw_chooser_get_bench (chooser);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *label = gtk_label_new ("");

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_lines (GTK_LABEL (label), 2);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (label, TRUE);
  whole_text_tooltip_add (GTK_LABEL (label));
  gtk_widget_add_css_class (box, "aims-bar");
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), new_button (chooser));
  g_signal_connect_object (bench, "solved", G_CALLBACK (on_bench_solved_cb), label,
                           G_CONNECT_SWAPPED);
  show_sentence (GTK_LABEL (label), bench);
  return box;
}
