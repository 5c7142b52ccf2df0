/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/setups/setup-row.h"
#include "window/canvas/style-sample.h"
#include "window/layout/whole-text.h"

#include "model/study/setup-title.h"

#include <glib/gi18n-lib.h>

struct _SwSetupRow {
  GtkListBoxRow parent_instance;

  GtkWidget *box, *name, *baseline, *shown;
  GtkWidget *popover, *entry; /* for renaming; NULL until then */
  gboolean is_telling;        /* while the widgets are being told: they do not answer */
};

G_DEFINE_FINAL_TYPE (SwSetupRow, sw_setup_row, GTK_TYPE_LIST_BOX_ROW)

enum {
  RENAMED,
  SHOWN,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

static void
on_name_entered_cb (SwSetupRow *self, GtkEntry *entry)
{
  g_autofree char *name = g_strdup (gtk_editable_get_text (GTK_EDITABLE (entry)));

  gtk_popover_popdown (GTK_POPOVER (self->popover));
  g_strstrip (name);
  if (name[0] != '\0')
    g_signal_emit (self, signals[RENAMED], 0, name);
}

/* Made when first asked for. */
static void
make_popover (SwSetupRow *self)
{
  GtkWidget *entry = gtk_entry_new ();

  self->popover = gtk_popover_new ();
  self->entry = entry;
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 28);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Name of the setup"), -1);
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (on_name_entered_cb), self);
  gtk_popover_set_child (GTK_POPOVER (self->popover), entry);
  gtk_widget_set_parent (self->popover, GTK_WIDGET (self));
}

static void
on_shown_toggled_cb (SwSetupRow *self)
{
  if (!self->is_telling)
    g_signal_emit (self, signals[SHOWN], 0,
                   gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->shown)));
}

static void
sw_setup_row_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  SwSetupRow *self = SW_SETUP_ROW (widget);

  GTK_WIDGET_CLASS (sw_setup_row_parent_class)
      ->size_allocate (widget, width, height, baseline);
  if (self->popover != NULL)
    gtk_popover_present (GTK_POPOVER (self->popover));
}

static void
sw_setup_row_dispose (GObject *object)
{
  SwSetupRow *self = SW_SETUP_ROW (object);

  g_clear_pointer (&self->popover, gtk_widget_unparent);
  G_OBJECT_CLASS (sw_setup_row_parent_class)->dispose (object);
}

static void
sw_setup_row_class_init (SwSetupRowClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sw_setup_row_dispose;
  GTK_WIDGET_CLASS (class)->size_allocate = sw_setup_row_size_allocate;
  signals[RENAMED] = g_signal_new ("renamed", SW_TYPE_SETUP_ROW, G_SIGNAL_RUN_LAST, 0,
                                   NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[SHOWN] = g_signal_new ("shown", SW_TYPE_SETUP_ROW, G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 1, G_TYPE_BOOLEAN);
}

static void
sw_setup_row_init (SwSetupRow *self)
{
  self->box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  self->name = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->name), 0.0f);
  gtk_label_set_ellipsize (GTK_LABEL (self->name), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (self->name, TRUE);
  whole_text_tooltip_add (GTK_LABEL (self->name));

  self->baseline = gtk_label_new (C_ ("mark of a setup", "base"));
  gtk_widget_add_css_class (self->baseline, "dim-label");
  gtk_widget_add_css_class (self->baseline, "caption");
  gtk_widget_set_tooltip_text (self->baseline,
                               _ ("The baseline: the other setups are compared with it"));

  self->shown = gtk_toggle_button_new ();
  gtk_button_set_icon_name (GTK_BUTTON (self->shown), "view-reveal-symbolic");
  gtk_button_set_has_frame (GTK_BUTTON (self->shown), FALSE);
  gtk_widget_set_tooltip_text (self->shown, _ ("Show this setup on the curves"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->shown),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Show this setup on the curves"), -1);
  g_signal_connect_swapped (self->shown, "toggled", G_CALLBACK (on_shown_toggled_cb),
                            self);

  gtk_box_append (GTK_BOX (self->box), self->name);
  gtk_box_append (GTK_BOX (self->box), self->baseline);
  gtk_box_append (GTK_BOX (self->box), self->shown);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (self), self->box);
}

GtkWidget *
sw_setup_row_new (guint index)
{
  SwSetupRow *self = g_object_new (SW_TYPE_SETUP_ROW, NULL);

  gtk_box_prepend (GTK_BOX (self->box), sw_style_sample_new (index));
  return GTK_WIDGET (self);
}

void
sw_setup_row_show (SwSetupRow *self, const CarSetup *setup, gboolean is_baseline)
{
  const char *title = setup_title (setup); /* longer: the panel would grow in a drag */

  self->is_telling = TRUE;
  gtk_label_set_label (GTK_LABEL (self->name), setup->name);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self),
                               g_str_equal (title, setup->name) ? NULL : title);
  gtk_widget_set_visible (self->baseline, is_baseline);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->shown), !setup->is_hidden);
  gtk_button_set_icon_name (GTK_BUTTON (self->shown), setup->is_hidden
                                                          ? "view-conceal-symbolic"
                                                          : "view-reveal-symbolic");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  title, -1);
  self->is_telling = FALSE;
}

void
sw_setup_row_rename (SwSetupRow *self)
{
  if (self->popover == NULL)
    make_popover (self);
  gtk_editable_set_text (GTK_EDITABLE (self->entry),
                         gtk_label_get_label (GTK_LABEL (self->name)));
  gtk_popover_popup (GTK_POPOVER (self->popover));
  gtk_widget_grab_focus (self->entry);
  gtk_editable_select_region (GTK_EDITABLE (self->entry), 0, -1);
}
