/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/springs/springs-panel-owner.h"
#include "window/springs/springs-panel-number.h"

#include <glib/gi18n-lib.h>

typedef struct {
  SpringsEdit *edit;
  SpringsGroup group;
  GtkWidget *words, *own, *as_car;
} Owner;

static const char *
owner_words (SetOwner owner, gboolean is_rod)
{
  switch (owner) {
  case SET_OF_CAR:
    return is_rod ? _ ("The car’s rod") : _ ("What the car stands on");
  case SET_INHERITED:
    return is_rod ? _ ("Rod as the car’s") : _ ("Springs as the car’s");
  default:
    return is_rod ? _ ("Its own rod") : _ ("Its own springs");
  }
}

static void
show (gpointer part)
{
  Owner *self = part;
  const SetOwner owner = springs_edit_owner (self->edit, self->group);

  gtk_label_set_label (GTK_LABEL (self->words),
                       owner_words (owner, self->group == SPRINGS_ROD));
  gtk_widget_set_visible (self->own, owner == SET_INHERITED);
  gtk_widget_set_visible (self->as_car, owner == SET_OWN);
}

static void
on_own_clicked_cb (Owner *self)
{
  springs_edit_make_own (self->edit, self->group, TRUE);
  gtk_widget_grab_focus (self->as_car);
}

static void
on_as_car_clicked_cb (Owner *self)
{
  springs_edit_make_own (self->edit, self->group, FALSE);
  gtk_widget_grab_focus (self->own);
}

static GtkWidget *
new_button (Owner *self, const char *label, const char *tooltip, GCallback clicked)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_widget_set_tooltip_text (button, tooltip);
  g_signal_connect_swapped (button, "clicked", clicked, self);
  return button;
}

GtkWidget *
springs_owner_new (SpringsEdit *edit, SpringsGroup group)
{
  Owner *self = g_new0 (Owner, 1);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  const gboolean is_rod = group == SPRINGS_ROD;

  self->edit = edit;
  self->group = group;
  self->words = springs_label_new ("", "heading");
  self->own = new_button (
      self, is_rod ? _ ("Give It Its Own Rod") : _ ("Give This Setup Its Own"),
      is_rod ? _ ("Copies the car’s rod into this setup, to be changed for it alone")
             : _ ("Copies the car’s springs into this setup, to be changed for it alone"),
      G_CALLBACK (on_own_clicked_cb));
  self->as_car =
      new_button (self, is_rod ? _ ("Take the Car’s Rod") : _ ("Stand as the Car"),
                  is_rod ? _ ("Takes this setup’s own rod away")
                         : _ ("Takes this setup’s own springs "
                              "away"),
                  G_CALLBACK (on_as_car_clicked_cb));
  gtk_box_append (GTK_BOX (box), self->words);
  gtk_box_append (GTK_BOX (box), self->own);
  gtk_box_append (GTK_BOX (box), self->as_car);
  springs_edit_add_part (edit, show, self);
  return box;
}
