/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/bench/loader.h"
#include "window/layout/whole-text.h"
#include "window/layout/wrap-row.h"
#include "window/loads/load-cases.h"
#include "window/loads/loads-view.h"

#include <glib/gi18n-lib.h>

#define CHOICE_CHARS 14 /* what is seen of a choice at least */

typedef struct {
  SwLoader *loader;
  GtkWidget *load_case, *mode, *settle;
  GtkStringList *names;
  gboolean is_telling; /* while the widgets are being told: they do not answer */
} Bar;

static Bar *
bar_of (GtkWidget *box)
{
  return g_object_get_data (G_OBJECT (box), "loads-bar");
}

static gboolean
has_names (Bar *self, const CarLoadCase *cases, guint n)
{
  if (g_list_model_get_n_items (G_LIST_MODEL (self->names)) != n)
    return FALSE;
  for (guint i = 0; i < n; i++)
    if (g_strcmp0 (gtk_string_list_get_string (self->names, i),
                   car_load_case_title (cases[i].name)) != 0)
      return FALSE;
  return TRUE;
}

static void
show_names (Bar *self)
{
  SwBench *bench = sw_loader_get_bench (self->loader);
  CarLoadCase cases[LOAD_CASES_MOST];
  const guint n =
      (guint) car_load_cases (sw_document_get_car (sw_bench_get_document (bench)), cases);
  const char *names[LOAD_CASES_MOST + 1] = { NULL };

  if (has_names (self, cases, n))
    return;
  for (guint i = 0; i < n; i++)
    names[i] = car_load_case_title (cases[i].name);
  gtk_string_list_splice (self->names, 0,
                          g_list_model_get_n_items (G_LIST_MODEL (self->names)), names);
}

static void
show (GtkWidget *box)
{
  Bar *self = bar_of (box);

  self->is_telling = TRUE;
  show_names (self);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->load_case),
                              sw_loader_get_case (self->loader));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->mode),
                              sw_loader_get_mode (self->loader));
  gtk_widget_set_sensitive (self->settle, !sw_loader_is_settling (self->loader));
  self->is_telling = FALSE;
}

static void
on_case_selected_cb (Bar *self)
{
  const guint selected = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->load_case));

  if (!self->is_telling && selected != GTK_INVALID_LIST_POSITION)
    sw_loader_set_case (self->loader, selected);
}

static void
on_mode_selected_cb (Bar *self)
{
  const guint selected = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->mode));

  if (!self->is_telling && selected <= SPRING_BAR_ONLY)
    sw_loader_set_mode (self->loader, (SpringMode) selected);
}

static void
on_settle_clicked_cb (Bar *self)
{
  sw_loader_settle (self->loader);
}

static void
on_setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer data)
{
  GtkWidget *label = gtk_label_new ("");
  const int chars = GPOINTER_TO_INT (data);

  (void) factory;
  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  if (chars > 0) {
    gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
    gtk_label_set_width_chars (GTK_LABEL (label), chars);
    whole_text_tooltip_add (GTK_LABEL (label));
  }
  gtk_list_item_set_child (item, label);
}

static void
on_bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkStringObject *name = gtk_list_item_get_item (item);

  (void) factory;
  gtk_label_set_label (GTK_LABEL (gtk_list_item_get_child (item)),
                       gtk_string_object_get_string (name));
}

/* @chars 0: as wide as the text. */
static GtkListItemFactory *
new_factory (int chars)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", G_CALLBACK (on_setup_cb), GINT_TO_POINTER (chars));
  g_signal_connect (factory, "bind", G_CALLBACK (on_bind_cb), NULL);
  return factory;
}

/* Its button keeps its width whatever is chosen. */
static void
bound_width (GtkDropDown *drop_down)
{
  g_autoptr (GtkListItemFactory) button = new_factory (CHOICE_CHARS);
  g_autoptr (GtkListItemFactory) list = new_factory (0);

  gtk_drop_down_set_factory (drop_down, button);
  gtk_drop_down_set_list_factory (drop_down, list);
  gtk_widget_set_hexpand (GTK_WIDGET (drop_down), TRUE);
}

static GtkWidget *
new_drop_down (GListModel *names, const char *label, const char *hint)
{
  GtkWidget *drop_down = gtk_drop_down_new (names, NULL);

  bound_width (GTK_DROP_DOWN (drop_down));
  gtk_widget_set_tooltip_text (drop_down, hint);
  gtk_accessible_update_property (GTK_ACCESSIBLE (drop_down),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  /* its button is what has the focus */
  gtk_accessible_update_property (GTK_ACCESSIBLE (gtk_widget_get_first_child (drop_down)),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  return drop_down;
}

static GtkWidget *
new_mode (void)
{
  const char *const names[] = { [SPRING_AS_SET] = _ ("Springs as set"),
                                [SPRING_COIL_ONLY] = _ ("A coil carries all"),
                                [SPRING_BAR_ONLY] = _ ("The bar carries all"),
                                NULL };

  return new_drop_down (G_LIST_MODEL (gtk_string_list_new (names)),
                        _ ("What carries the load"),
                        _ ("Springs as they are set, or one of them alone"));
}

static GtkWidget *
pair (GtkWidget *choice, GtkWidget *button)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  gtk_box_append (GTK_BOX (box), choice);
  gtk_box_append (GTK_BOX (box), button);
  return box;
}

static void
add_parts (Bar *self, GtkWidget *box)
{
  self->names = gtk_string_list_new (NULL);
  self->load_case = new_drop_down (G_LIST_MODEL (self->names), _ ("Load case"),
                                   _ ("What the car is doing"));
  self->mode = new_mode ();
  self->settle = gtk_button_new_with_label (_ ("Let it settle"));
  gtk_widget_set_tooltip_text (self->settle,
                               _ ("The wheel goes back to where this load puts it"));
  gtk_widget_set_parent (pair (self->load_case, load_cases_button_new (self->loader)),
                         box);
  gtk_widget_set_parent (pair (self->mode, self->settle), box);
}

GtkWidget *
loads_bar_new (SwBench *bench)
{
  GtkWidget *box = g_object_new (SW_TYPE_WRAP_ROW, NULL);
  Bar *self = g_new0 (Bar, 1);

  g_object_set_data_full (G_OBJECT (box), "loads-bar", self, g_free);
  self->loader = sw_loader_of (bench);
  add_parts (self, box);
  gtk_widget_add_css_class (box, "aims-bar");
  gtk_widget_add_css_class (box, "loads-bar");
  show (box);
  g_signal_connect_swapped (self->load_case, "notify::selected",
                            G_CALLBACK (on_case_selected_cb), self);
  g_signal_connect_swapped (self->mode, "notify::selected",
                            G_CALLBACK (on_mode_selected_cb), self);
  g_signal_connect_swapped (self->settle, "clicked", G_CALLBACK (on_settle_clicked_cb),
                            self);
  g_signal_connect_object (self->loader, "changed", G_CALLBACK (show), box,
                           G_CONNECT_SWAPPED);
  return box;
}
